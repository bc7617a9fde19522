/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of the kinds of pattern and their measures. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "heraldry/lay-private.h"

#define AUTO                                                                                                 \
  { SPV_UNIT_AUTO, 0 }
#define OF(fraction)                                                                                         \
  { SPV_UNIT_RELATIVE, fraction }
#define COUNT(n)                                                                                             \
  { SPV_UNIT_PLAIN, n }
#define CHOICE(i)                                                                                            \
  { SPV_UNIT_PLAIN, i }
#define DEGREES(angle)                                                                                       \
  { SPV_UNIT_DEGREES, angle }
#define LONGEST SPV_OUTLINE_MAX_MM

/* The keys of the file, and through _() the words on screen. */
static const char *const centre_choices[] = { N_("best"), N_("line"), N_("cell"), NULL };
static const char *const row_choices[] = { N_("along"), N_("straight"), NULL };
static const char *const edge_choices[] = { N_("chief"),    N_("dexter"), N_("base"),
                                            N_("sinister"), N_("all"),    NULL };

/* clang-format off */
static const SpvMeasureSpec per_pale_measures[] = {
  { "shift", N_("Shift"), N_("How far the line lies from the centre line, towards sinister"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, OF(0), -LONGEST, LONGEST, NULL },
};

static const SpvMeasureSpec per_fess_measures[] = {
  { "shift", N_("Shift"), N_("How far the line lies below half the height"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, OF(0), -LONGEST, LONGEST, NULL },
};

static const SpvMeasureSpec per_bend_measures[] = {
  { "angle", N_("Slope"), N_("How steeply the line falls; from corner to corner when not given"),
    SPV_MEASURE_ANGLE, SPV_BASIS_NONE, AUTO, 1, 89, NULL },
  { "shift", N_("Shift"), N_("How far from the centre line it crosses half the height, towards sinister"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, OF(0), -LONGEST, LONGEST, NULL },
};

static const SpvMeasureSpec per_chevron_measures[] = {
  { "apex", N_("Apex"), N_("How far the point lies below the top edge"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, OF(0.4), -LONGEST, LONGEST, NULL },
  { "angle", N_("Angle"), N_("Between the two legs"),
    SPV_MEASURE_ANGLE, SPV_BASIS_NONE, DEGREES(90), 10, 170, NULL },
};

static const SpvMeasureSpec per_saltire_measures[] = {
  { "angle", N_("Slope"), N_("How steeply the lines fall; from corner to corner when not given"),
    SPV_MEASURE_ANGLE, SPV_BASIS_NONE, AUTO, 1, 89, NULL },
};

static const SpvMeasureSpec quarterly_measures[] = {
  { "across", N_("Shift across"), N_("How far the upright line lies from the centre line, towards sinister"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, OF(0), -LONGEST, LONGEST, NULL },
  { "down", N_("Shift down"), N_("How far the level line lies below half the height"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, OF(0), -LONGEST, LONGEST, NULL },
};

static const SpvMeasureSpec stripes_measures[] = {
  { "pieces", N_("Pieces"), N_("How many stripes, both tinctures together"),
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, COUNT(6), 2, SPV_PATTERN_MAX_COUNT, NULL },
};

static const SpvMeasureSpec bendy_measures[] = {
  { "pieces", N_("Pieces"), N_("How many stripes, both tinctures together"),
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, COUNT(6), 2, SPV_PATTERN_MAX_COUNT, NULL },
  { "angle", N_("Slope"), N_("How steeply the stripes fall; from corner to corner when not given"),
    SPV_MEASURE_ANGLE, SPV_BASIS_NONE, AUTO, 1, 89, NULL },
};

/* Seven cells across: Encyclopaedia Britannica, 9th ed., vol. 11, p. 698. */
static const SpvMeasureSpec check_measures[] = {
  { "columns", N_("Columns"), N_("How many cells lie across the panel, where no cell size is given"),
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, COUNT(7), 1, SPV_PATTERN_MAX_COUNT, NULL },
  { "cell", N_("Cell"), N_("How wide a cell is; empty it to go by the columns"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, AUTO, 0.05, LONGEST, NULL },
  { "rows", N_("Rows"), N_("How many cells lie down the panel; square cells when not given"),
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, AUTO, 1, SPV_PATTERN_MAX_COUNT, NULL },
  { "centre", N_("Centred on"), N_("A line or a cell; best keeps the cells at the edge as wide as they can be"),
    SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(SPV_CENTRE_BEST), 0, 0, centre_choices },
  { "across", N_("Shift across"), N_("Moves the grid towards sinister"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, AUTO, -LONGEST, LONGEST, NULL },
  { "down", N_("Shift down"), N_("Moves the grid down"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, AUTO, -LONGEST, LONGEST, NULL },
};

static const SpvMeasureSpec jagged_measures[] = {
  { "edge", N_("Edge"), N_("The edge that the points stand on"),
    SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(2), 0, 0, edge_choices },
  { "points", N_("Points"), N_("How many points, where no pitch is given"),
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, COUNT(6), 1, SPV_PATTERN_MAX_COUNT, NULL },
  { "pitch", N_("Pitch"), N_("From point to point along the edge, made to come out whole; empty it to go by the number of points"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, AUTO, 0.05, LONGEST, NULL },
  { "depth", N_("Depth"), N_("How far the points stand over their roots"),
    SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER, OF(0.18), 0, LONGEST, NULL },
  { "width", N_("Width"), N_("How wide the border is under the points"),
    SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER, OF(0.08), 0, LONGEST, NULL },
  { "lean", N_("Lean"), N_("How far the points lean over, clockwise along the edge; 0 stands square on it"),
    SPV_MEASURE_ANGLE, SPV_BASIS_NONE, DEGREES(0), -60, 60, NULL },
  { "row", N_("Row"), N_("Along the edge, square on it everywhere, or in a straight line across; all round goes along the edge"),
    SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(0), 0, 0, row_choices },
};

/* A bordure has no fixed width (Fox-Davies 1909, p. 138); a tenth of the panel is common practice, no source. */
static const SpvMeasureSpec bordure_measures[] = {
  { "width", N_("Width"), N_("How wide the bordure is all round"),
    SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER, OF(0.1), 0, LONGEST, NULL },
};

/* A third of the field: Kent, The Banner Display'd (1726); Cussans (1866) p. 13. */
static const SpvMeasureSpec chief_measures[] = {
  { "depth", N_("Depth"), N_("How far the chief comes down from the top edge"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, OF(1.0 / 3), 0, LONGEST, NULL },
};

static const SpvMeasureSpec roundel_measures[] = {
  { "across", N_("Shift across"), N_("How far its centre lies from the centre line, towards sinister"),
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, OF(0), -LONGEST, LONGEST, NULL },
  { "down", N_("Below datum"), N_("How far its centre lies below the top edge"),
    SPV_MEASURE_LENGTH, SPV_BASIS_HEIGHT, OF(0.5), -LONGEST, LONGEST, NULL },
  { "diameter", N_("Diameter"), N_("How wide the roundel is"),
    SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER, OF(0.4), 0, LONGEST, NULL },
};

#define MEASURES(table) G_N_ELEMENTS(table), table

static const SpvPatternInfo kinds[SPV_N_PATTERNS] = {
  [SPV_PATTERN_FIELD] = { "field", N_("Field"), 1, { N_("Field"), NULL }, 0, NULL, spv_lay_field },
  [SPV_PATTERN_PER_PALE] = { "per-pale", N_("Per pale"), 2, { N_("Dexter"), N_("Sinister") },
                             MEASURES(per_pale_measures), spv_lay_per_pale },
  [SPV_PATTERN_PER_FESS] = { "per-fess", N_("Per fess"), 2, { N_("Chief"), N_("Base") },
                             MEASURES(per_fess_measures), spv_lay_per_fess },
  [SPV_PATTERN_PER_BEND] = { "per-bend", N_("Per bend"), 2, { N_("Sinister chief"), N_("Dexter base") },
                             MEASURES(per_bend_measures), spv_lay_per_bend },
  [SPV_PATTERN_PER_BEND_SINISTER] = { "per-bend-sinister", N_("Per bend sinister"), 2,
                                      { N_("Dexter chief"), N_("Sinister base") },
                                      MEASURES(per_bend_measures), spv_lay_per_bend },
  [SPV_PATTERN_PER_CHEVRON] = { "per-chevron", N_("Per chevron"), 2, { N_("Chief"), N_("Base") },
                                MEASURES(per_chevron_measures), spv_lay_per_chevron },
  [SPV_PATTERN_PER_SALTIRE] = { "per-saltire", N_("Per saltire"), 2, { N_("Chief and base"), N_("Flanks") },
                                MEASURES(per_saltire_measures), spv_lay_per_saltire },
  [SPV_PATTERN_QUARTERLY] = { "quarterly", N_("Quarterly"), 2, { N_("First and fourth"), N_("Second and third") },
                              MEASURES(quarterly_measures), spv_lay_quarterly },
  [SPV_PATTERN_PALY] = { "paly", N_("Paly"), 2, { N_("First"), N_("Second") }, MEASURES(stripes_measures),
                         spv_lay_stripes },
  [SPV_PATTERN_BARRY] = { "barry", N_("Barry"), 2, { N_("First"), N_("Second") }, MEASURES(stripes_measures),
                          spv_lay_stripes },
  [SPV_PATTERN_BENDY] = { "bendy", N_("Bendy"), 2, { N_("First"), N_("Second") }, MEASURES(bendy_measures),
                          spv_lay_stripes },
  [SPV_PATTERN_CHECK] = { "check", N_("Check"), 2, { N_("First"), N_("Second") }, MEASURES(check_measures),
                          spv_lay_check },
  [SPV_PATTERN_JAGGED_BORDER] = { "jagged-border", N_("Jagged border"), 1, { N_("Border"), NULL },
                                  MEASURES(jagged_measures), spv_lay_jagged_border },
  [SPV_PATTERN_BORDURE] = { "bordure", N_("Bordure"), 1, { N_("Bordure"), NULL }, MEASURES(bordure_measures),
                            spv_lay_bordure },
  [SPV_PATTERN_CHIEF] = { "chief", N_("Chief"), 1, { N_("Chief"), NULL }, MEASURES(chief_measures),
                          spv_lay_chief },
  [SPV_PATTERN_ROUNDEL] = { "roundel", N_("Roundel"), 1, { N_("Roundel"), NULL }, MEASURES(roundel_measures),
                            spv_lay_roundel },
};
/* clang-format on */

const SpvPatternInfo *
spv_pattern_info(SpvPatternKind kind) {
  g_return_val_if_fail((guint) kind < SPV_N_PATTERNS, NULL);
  return &kinds[kind];
}

gboolean
spv_pattern_kind_from_key(const char *key, SpvPatternKind *kind) {
  for (guint i = 0; i < SPV_N_PATTERNS; i++)
    if (g_strcmp0(key, kinds[i].key) == 0) {
      *kind = (SpvPatternKind) i;
      return TRUE;
    }
  return FALSE;
}

int
spv_pattern_measure_index(SpvPatternKind kind, const char *key) {
  const SpvPatternInfo *info = spv_pattern_info(kind);

  for (guint i = 0; i < info->n_measures; i++)
    if (g_strcmp0(key, info->measures[i].key) == 0)
      return (int) i;
  return -1;
}

SpvPattern
spv_pattern_preset(SpvPatternKind kind) {
  const SpvPatternInfo *info = spv_pattern_info(kind);
  SpvPattern pattern = { .kind = kind };

  for (guint i = 0; i < info->n_measures; i++)
    pattern.measures[i] = info->measures[i].preset;
  return pattern;
}

double
spv_pattern_measure(const SpvPattern *pattern, guint index, const SpvOutline *outline, double fallback) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);

  g_return_val_if_fail(index < info->n_measures, fallback);
  return spv_measure_resolve(&info->measures[index], pattern->measures[index], spv_outline_width(outline),
                             spv_outline_height(outline), fallback);
}

SpvDraft *
spv_pattern_lay(const SpvPattern *pattern, const SpvOutline *outline) {
  SpvDraft *draft = g_new0(SpvDraft, 1);

  draft->dots = g_array_new(FALSE, FALSE, sizeof(SpvDraftDot));
  draft->lines = g_array_new(FALSE, FALSE, sizeof(SpvDraftLine));
  spv_pattern_info(pattern->kind)->lay(pattern, outline, draft);
  return draft;
}

void
spv_draft_free(SpvDraft *draft) {
  if (!draft)
    return;
  for (int slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
    g_clear_pointer(&draft->area[slot], spv_path_unref);
    g_clear_pointer(&draft->cells[slot], g_ptr_array_unref);
  }
  g_array_unref(draft->dots);
  g_array_unref(draft->lines);
  g_free(draft);
}
