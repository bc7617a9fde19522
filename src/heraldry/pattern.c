/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kinds of pattern: finding them, their measures and texts, and laying them. */
#include "heraldry/kinds-private.h"

G_DEFINE_QUARK(spv_pattern_error, spv_pattern_error)

const char *const spv_profile_keys[] = { N_("plain"),      N_("indented"),
                                         N_("dancetty"),   N_("embattled"),
                                         N_("engrailed"),  N_("invected"),
                                         N_("wavy"),       N_("nebuly"),
                                         N_("dovetailed"), N_("raguly"),
                                         N_("potenty"),    N_("urdy"),
                                         N_("rayonny"),    NULL };
const char *const spv_band_edges[] = { N_("usual"), N_("both"), N_("first"), N_("second"), NULL };
const char *const spv_charged_keys[] = { N_("plain"), N_("charged"), NULL };

/* Where each group starts. */
static const struct {
  SpvPatternKind first;
  const SpvPatternInfo *kinds;
} groups[SPV_N_GROUPS] = {
  [SPV_GROUP_DIVISION] = { SPV_PATTERN_FIELD, spv_division_kinds },
  [SPV_GROUP_VARIED] = { SPV_PATTERN_PALY, spv_varied_kinds },
  [SPV_GROUP_ORDINARY] = { SPV_PATTERN_CHIEF, spv_ordinary_kinds },
  [SPV_GROUP_BORDER] = { SPV_PATTERN_JAGGED_BORDER, spv_border_kinds },
  [SPV_GROUP_CHARGE] = { SPV_PATTERN_ROUNDEL, spv_charge_kinds },
  [SPV_GROUP_OWN] = { SPV_PATTERN_PATH_CHARGE, spv_own_kinds },
};

SpvPatternGroup
spv_pattern_group(SpvPatternKind kind) {
  guint group = SPV_N_GROUPS - 1;

  while (kind < groups[group].first)
    group--;
  return (SpvPatternGroup) group;
}

const SpvPatternInfo *
spv_pattern_info(SpvPatternKind kind) {
  g_return_val_if_fail((guint) kind < SPV_N_PATTERNS, NULL);
  SpvPatternGroup group = spv_pattern_group(kind);

  return &groups[group].kinds[kind - groups[group].first];
}

gboolean
spv_pattern_kind_from_key(const char *key, SpvPatternKind *kind) {
  for (guint i = 0; i < SPV_N_PATTERNS; i++)
    if (g_strcmp0(key, spv_pattern_info((SpvPatternKind) i)->key) == 0) {
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

int
spv_pattern_text_index(SpvPatternKind kind, const char *key) {
  const SpvPatternInfo *info = spv_pattern_info(kind);

  for (guint i = 0; i < info->n_texts; i++)
    if (g_strcmp0(key, info->texts[i].key) == 0)
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

const char *
spv_pattern_text(const SpvPattern *pattern, guint index) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);

  g_return_val_if_fail(index < info->n_texts, NULL);
  return pattern->texts[index] ? pattern->texts[index] : info->texts[index].preset;
}

gboolean
spv_pattern_measure_counts(const SpvPattern *pattern, guint index) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  int choice;

  g_return_val_if_fail(index < info->n_measures, FALSE);
  if (info->measures[index].when == NULL)
    return TRUE;
  choice = spv_pattern_measure_index(pattern->kind, info->measures[index].when);
  return choice < 0 || spv_measure_resolve(&info->measures[choice], pattern->measures[choice], 1, 1, 0) > 0;
}

/* Moves all that DRAFT lays by T. */
static void
move_draft(SpvDraft *draft, SpvTransform t) {
  for (int slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
    SpvPath *area = draft->area[slot];
    if (area == NULL)
      continue;
    draft->area[slot] = spv_path_transform(area, t);
    spv_path_unref(area);
    for (guint i = 0; draft->cells[slot] != NULL && i < draft->cells[slot]->len; i++) {
      SpvRing *cell = g_ptr_array_index(draft->cells[slot], i);
      for (gsize k = 0; k < cell->n_points; k++)
        cell->points[k] = spv_transform_point(t, cell->points[k]);
    }
  }
  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot *dot = &g_array_index(draft->dots, SpvDraftDot, i);
    dot->at = spv_transform_point(t, dot->at);
  }
  for (guint i = 0; i < draft->lines->len; i++) {
    SpvDraftLine *line = &g_array_index(draft->lines, SpvDraftLine, i);
    line->from = spv_transform_point(t, line->from);
    line->to = spv_transform_point(t, line->to);
  }
}

/* Stands the dots of a draft that was moved on the panel's own OUTLINE. They no longer follow one of its
 * edges. */
static void
stand_on_panel(SpvDraft *draft, const SpvOutline *outline) {
  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot *dot = &g_array_index(draft->dots, SpvDraftDot, i);
    dot->s = spv_track_locate(spv_outline_track(outline), dot->at, NULL);
  }
  draft->dots_all_round = TRUE;
}

/* Lays a pattern that is not mirrored. */
static SpvDraft *
lay_plain(const SpvPattern *pattern, const SpvFrame *frame, const SpvOutline *outline) {
  SpvDraft *draft = g_new0(SpvDraft, 1);
  gboolean at_home = frame->outline == outline && spv_transform_is_identity(frame->place);

  draft->dots = g_array_new(FALSE, FALSE, sizeof(SpvDraftDot));
  draft->lines = g_array_new(FALSE, FALSE, sizeof(SpvDraftLine));
  spv_pattern_info(pattern->kind)->lay(pattern, frame, draft);
  if (at_home)
    return draft;
  move_draft(draft, frame->place);
  stand_on_panel(draft, outline);
  if (draft->frame) {
    SpvFrame *inner = draft->frame;
    draft->frame = spv_frame_on(inner, frame);
    spv_frame_unref(inner);
  }
  return draft;
}

/* The mirror image of DRAFT in the panel's centre line. */
static void
mirror_draft(SpvDraft *draft) {
  SpvFrame *frame = draft->frame;

  move_draft(draft, SPV_TRANSFORM_MIRROR);
  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot *dot = &g_array_index(draft->dots, SpvDraftDot, i);
    dot->s = -dot->s;
  }
  if (draft->dots_edge == SPV_EDGE_DEXTER || draft->dots_edge == SPV_EDGE_SINISTER)
    draft->dots_edge = draft->dots_edge == SPV_EDGE_DEXTER ? SPV_EDGE_SINISTER : SPV_EDGE_DEXTER;
  if (frame) {
    draft->frame = spv_frame_mirrored(frame);
    spv_frame_unref(frame);
  }
}

SpvDraft *
spv_pattern_lay_on(const SpvPattern *pattern, const SpvFrame *frame, const SpvOutline *outline) {
  if (!pattern->mirrored)
    return lay_plain(pattern, frame, outline);

  /* Mirrored with all that it is laid on, then mirrored back: so a whole design is mirrored by mirroring each
   * of its layers. */
  g_autoptr(SpvFrame) image = spv_frame_mirrored(frame);
  SpvDraft *draft = lay_plain(pattern, image, outline);
  mirror_draft(draft);
  return draft;
}

SpvDraft *
spv_pattern_lay(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvFrame) frame = spv_frame_new(outline);

  return spv_pattern_lay_on(pattern, frame, outline);
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
  g_clear_pointer(&draft->frame, spv_frame_unref);
  g_free(draft);
}
