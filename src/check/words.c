/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a finding says, and what would mend it, in a sentence each. */
#include "config.h"

#include "check/check-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Lengths are said to this, mm. */
#define SAID_TO 0.01

/* Numbers of a painter's counts, in words, at the start of a sentence; larger ones in digits. */
static const char *const numbers[] = {
  N_("One"),   N_("Two"),   N_("Three"), N_("Four"), N_("Five"),   N_("Six"),
  N_("Seven"), N_("Eight"), N_("Nine"),  N_("Ten"),  N_("Eleven"), N_("Twelve"),
};

/* A measure that a remedy may change. */
typedef struct {
  const char *key;
  const char *overruled_by; /* the measure that takes its place where given, or NULL */
  const char *length;       /* the sentence for a length, or NULL for a count: see count_format() */
} Mendable;

static const Mendable mendables[] = {
  { "columns", "cell", NULL },
  { "rows", NULL, NULL },
  { "pieces", NULL, NULL },
  { "points", "pitch", NULL },
  { "bends", NULL, NULL },
  { "courses", NULL, NULL },
  { "number", NULL, NULL },
  { "periods", "pitch", NULL },
  { "cell", NULL, N_("Cells of %s would do.") },
  { "pitch", NULL, N_("A pitch of %s would do.") },
  { "depth", NULL, N_("A depth of %s would do.") },
  { "width", NULL, N_("A width of %s would do.") },
  { "diameter", NULL, N_("A diameter of %s would do.") },
  { "size", NULL, N_("A size of %s would do.") },
  { "height", NULL, N_("A height of %s would do.") },
  { "amplitude", NULL, N_("Teeth %s deep would do.") },
  { "joint", NULL, N_("Joints of %s would do.") },
  { "gap", NULL, N_("A gap of %s would do.") },
};

static const Mendable *
find_mendable(const char *key) {
  for (guint i = 0; i < G_N_ELEMENTS(mendables); i++)
    if (g_strcmp0(key, mendables[i].key) == 0)
      return &mendables[i];
  return NULL;
}

gboolean
spv_words_can_mend(const char *key) {
  return find_mendable(key) != NULL;
}

const char *
spv_words_overruled_by(const char *key) {
  const Mendable *mendable = find_mendable(key);

  return mendable != NULL ? mendable->overruled_by : NULL;
}

/* "0.25 mm", with a point whatever the locale. */
static char *
say_length(double mm) {
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd(text, sizeof text, "%.2f", mm);
  return g_strdup_printf(_("%s mm"), text);
}

/* WIDTH as a length that is less than LIMIT is: never rounded up to the same words. */
static char *
say_width(double width, double limit) {
  double said = round(width / SAID_TO);

  if (said >= round(limit / SAID_TO))
    said = floor(width / SAID_TO + 1e-9);
  return say_length(said * SAID_TO);
}

/* The layer that FINDING is about, or NULL. */
static const SpvLayer *
finding_layer(const SpvFinding *finding, const SpvScheme *scheme) {
  if (finding->panel >= scheme->n_panels || finding->layer < 0)
    return NULL;
  const SpvPanel *panel = scheme->panels[finding->panel];
  return (guint) finding->layer < panel->n_layers ? panel->layers[finding->layer] : NULL;
}

/* Whether a jagged border's narrow stroke is its band, not its points. */
static gboolean
is_band(const SpvFinding *finding, const SpvScheme *scheme, const SpvLayer *layer) {
  g_autoptr(SpvOutline) outline = spv_panel_outline(scheme->panels[finding->panel]);
  int index = spv_pattern_measure_index(layer->pattern.kind, "width");
  double width = index >= 0 ? spv_pattern_measure(&layer->pattern, (guint) index, outline, 0) : 0;

  return width > 0 && fabs(finding->width - width) <= SAID_TO;
}

static const char *
stripes_format(SpvCause cause) {
  switch (cause) {
  case SPV_CAUSE_PATTERN:
    return _("Stripes are %s wide; your line is %s.");
  case SPV_CAUSE_EDGE:
    return _("Stripes at the edge are %s wide; your line is %s.");
  case SPV_CAUSE_COVER:
    return _("Stripes beside a later layer are %s wide; your line is %s.");
  }
  g_return_val_if_reached("%s%s");
}

static const char *
cells_format(SpvCause cause) {
  switch (cause) {
  case SPV_CAUSE_PATTERN:
    return _("Cells are %s wide; your line is %s.");
  case SPV_CAUSE_EDGE:
    return _("Cells at the edge are %s wide; your line is %s.");
  case SPV_CAUSE_COVER:
    return _("Cells beside a later layer are %s wide; your line is %s.");
  }
  g_return_val_if_reached("%s%s");
}

/* The sentence for what is called by its kind, with room for the width and the line; NULL for what is called
 * by its name. */
static const char *
kind_format(const SpvFinding *finding, const SpvScheme *scheme, const SpvLayer *layer) {
  SpvPatternKind kind = layer->pattern.kind;

  if (kind == SPV_PATTERN_CHECK || kind == SPV_PATTERN_LOZENGY || kind == SPV_PATTERN_FUSILY ||
      kind == SPV_PATTERN_BARRY_BENDY || kind == SPV_PATTERN_PALY_BENDY)
    return cells_format(finding->cause);
  if (spv_pattern_measure_index(kind, "pieces") >= 0 && kind != SPV_PATTERN_GYRONNY)
    return stripes_format(finding->cause);
  if (kind != SPV_PATTERN_JAGGED_BORDER || finding->cause == SPV_CAUSE_COVER)
    return NULL;
  return is_band(finding, scheme, layer) ? _("The border is %s wide under its points; your line is %s.")
                                         : _("Points are %s wide; your line is %s.");
}

/* The formats come from the tables above; each takes its strings and nothing else. */
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
static char *
fill(const char *format, const char *first, const char *second) {
  return g_strdup_printf(format, first, second);
}
#pragma GCC diagnostic pop

static char *
narrow_message(const SpvFinding *finding, const SpvScheme *scheme) {
  g_autofree char *width = say_width(finding->width, finding->limit);
  g_autofree char *limit = say_length(finding->limit);
  const SpvLayer *layer = finding_layer(finding, scheme);
  const char *format = layer != NULL ? kind_format(finding, scheme, layer) : NULL;

  if (format != NULL)
    return fill(format, width, limit);
  if (layer != NULL && finding->cause == SPV_CAUSE_COVER)
    return g_strdup_printf(_("%s is %s wide beside a later layer; your line is %s."), layer->name, width,
                           limit);
  return g_strdup_printf(_("%s is %s at its narrowest; your line is %s."),
                         layer != NULL ? layer->name : _("The panel"), width, limit);
}

static char *
bare_message(const SpvFinding *finding) {
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  double percent = finding->share * 100;

  if (finding->share >= 1)
    return g_strdup(_("The panel has no tincture."));
  /* Neither none nor all, when it is neither. */
  if (percent < 1)
    g_ascii_formatd(text, sizeof text, "%.2g", MAX(percent, 0.01));
  else
    g_ascii_formatd(text, sizeof text, "%.0f", MIN(percent, 99));
  return g_strdup_printf(_("Part of the panel has no tincture: %s %%."), text);
}

char *
spv_finding_message(const SpvFinding *finding, const SpvScheme *scheme) {
  switch (finding->kind) {
  case SPV_FINDING_NARROW_STROKE:
    return narrow_message(finding, scheme);
  case SPV_FINDING_BARE:
    return bare_message(finding);
  case SPV_FINDING_NOT_MEASURED:
    return g_strdup(_("These are typical sizes; measure your own with calipers."));
  }
  g_return_val_if_reached(NULL);
}

/* The sentence for a count of N. Plurals are found by translators only where both forms stand in one call. */
static const char *
count_format(const char *key, guint n) {
  if (g_str_equal(key, "columns"))
    return ngettext("%s column would do.", "%s columns would do.", n);
  if (g_str_equal(key, "rows"))
    return ngettext("%s row would do.", "%s rows would do.", n);
  if (g_str_equal(key, "pieces"))
    return ngettext("%s piece would do.", "%s pieces would do.", n);
  if (g_str_equal(key, "bends"))
    return ngettext("%s bend would do.", "%s bends would do.", n);
  if (g_str_equal(key, "courses"))
    return ngettext("%s course would do.", "%s courses would do.", n);
  if (g_str_equal(key, "number"))
    return ngettext("%s of them would do.", "%s of them would do.", n);
  if (g_str_equal(key, "periods"))
    return ngettext("%s tooth would do.", "%s teeth would do.", n);
  return ngettext("%s point would do.", "%s points would do.", n);
}

static char *
say_count(const Mendable *mendable, double count) {
  guint n = (guint) count;
  g_autofree char *number = n >= 1 && n <= G_N_ELEMENTS(numbers) ? g_strdup(_(numbers[n - 1]))
                                                                 : g_strdup_printf("%u", n);

  return fill(count_format(mendable->key, n), number, "");
}

static char *
remedy_sentence(const SpvFinding *finding, const SpvScheme *scheme) {
  const SpvLayer *layer = finding_layer(finding, scheme);
  const SpvPatternInfo *info = layer != NULL ? spv_pattern_info(layer->pattern.kind) : NULL;
  const Mendable *mendable = info != NULL && finding->remedy.measure < info->n_measures
                                 ? find_mendable(info->measures[finding->remedy.measure].key)
                                 : NULL;

  if (mendable == NULL)
    return NULL;
  if (mendable->length == NULL)
    return say_count(mendable, finding->remedy.value.value);
  g_autofree char *length = say_length(finding->remedy.value.value);
  return fill(_(mendable->length), length, "");
}

/* The fur in which FINDING's layer shows the tincture that is too fine, or NULL. */
static const SpvTincture *
fur_at_fault(const SpvFinding *finding, const SpvScheme *scheme) {
  const SpvLayer *layer = finding_layer(finding, scheme);

  if (finding->tincture < 0)
    return NULL;
  const char *fine = scheme->tinctures[finding->tincture].id;
  for (guint slot = 0; layer != NULL && slot < SPV_PATTERN_SLOTS; slot++) {
    int index = spv_scheme_find_tincture(scheme, layer->tinctures[slot]);
    const SpvTincture *tincture = index >= 0 ? &scheme->tinctures[index] : NULL;

    if (tincture != NULL && tincture->fur != SPV_FUR_NONE && tincture->pitch > 0 &&
        (g_strcmp0(tincture->of[0], fine) == 0 || g_strcmp0(tincture->of[1], fine) == 0))
      return tincture;
  }
  return NULL;
}

/* What pitch the fur would need. */
static char *
fur_sentence(const SpvTincture *fur, double limit) {
  g_autofree char *pitch = say_length(ceil(spv_fur_smallest_pitch(fur->fur, limit) / 0.05 - 1e-9) * 0.05);

  return g_strdup_printf(_("Give %s a pitch of %s."), fur->name, pitch);
}

/* What to do about a narrow stroke when no one change of a measure would do. */
static const char *
cause_sentence(SpvCause cause) {
  switch (cause) {
  case SPV_CAUSE_PATTERN:
    return _("Widen it, or leave it out.");
  case SPV_CAUSE_EDGE:
    return _("You may leave them out.");
  case SPV_CAUSE_COVER:
    return _("Paint the later layer over it.");
  }
  g_return_val_if_reached(NULL);
}

static char *
narrow_remedy(const SpvFinding *finding, const SpvScheme *scheme) {
  const SpvTincture *fur = fur_at_fault(finding, scheme);

  if (finding->has_remedy)
    return remedy_sentence(finding, scheme);
  if (fur != NULL && finding->cause == SPV_CAUSE_PATTERN)
    return fur_sentence(fur, finding->limit);
  return g_strdup(cause_sentence(finding->cause));
}

char *
spv_finding_remedy(const SpvFinding *finding, const SpvScheme *scheme) {
  switch (finding->kind) {
  case SPV_FINDING_NARROW_STROKE:
    return narrow_remedy(finding, scheme);
  case SPV_FINDING_BARE:
    return g_strdup(_("Add a field below the others."));
  case SPV_FINDING_NOT_MEASURED:
    return NULL;
  }
  g_return_val_if_reached(NULL);
}

const char *
spv_finding_key(SpvFindingKind kind) {
  switch (kind) {
  case SPV_FINDING_NARROW_STROKE:
    return "narrow-stroke";
  case SPV_FINDING_BARE:
    return "bare";
  case SPV_FINDING_NOT_MEASURED:
    return "not-measured";
  }
  g_return_val_if_reached(NULL);
}

const char *
spv_severity_key(SpvSeverity severity) {
  switch (severity) {
  case SPV_SEVERITY_NOTE:
    return "note";
  case SPV_SEVERITY_WARNING:
    return "warning";
  }
  g_return_val_if_reached(NULL);
}

const char *
spv_cause_key(SpvCause cause) {
  switch (cause) {
  case SPV_CAUSE_PATTERN:
    return "pattern";
  case SPV_CAUSE_EDGE:
    return "edge";
  case SPV_CAUSE_COVER:
    return "cover";
  }
  g_return_val_if_reached(NULL);
}
