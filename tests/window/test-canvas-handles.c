/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Handles: they lie on what they move, and a drag gives the measure that puts them under the pointer. */
#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "test-canvas-scene.h"
#include "window/canvas-handles.h"

#define FINE 0.004 /* mm: what chords and free rounding may add up to */

static const SpvLayer *
layer_of(const SpvScheme *scheme) {
  return scheme->panels[0]->layers[scheme->panels[0]->n_layers - 1];
}

static SpvScheme *
with_layer(const SpvScheme *scheme, const SpvLayer *layer) {
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], scheme->panels[0]->n_layers - 1, layer);

  return spv_scheme_with_panel(scheme, 0, panel);
}

static GArray *
handles_of(const SpvScheme *scheme) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);

  return spv_layer_handles(composition, scheme->panels[0]->n_layers - 1);
}

/* Whether a plain KIND has anything to drag: a field has no measures, a gyron only those of its line, and a
 * free path has nodes instead. */
static gboolean
has_measures(SpvPatternKind kind) {
  return kind != SPV_PATTERN_FIELD && kind != SPV_PATTERN_GYRON && kind != SPV_PATTERN_FREE_PATH;
}

/* Every kind with measures has a handle; every handle stands where its own drag would put it. */
static void
test_drag_to_itself(void **state) {
  (void) state;
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
      g_autoptr(SpvScheme) scheme = scene_scheme((SpvOutlineFamily) family, 9, 9, (SpvPatternKind) kind);
      g_autoptr(GArray) handles = handles_of(scheme);

      assert_true((handles->len > 0) == has_measures((SpvPatternKind) kind));
      for (guint i = 0; i < handles->len; i++) {
        const SpvHandle *handle = &g_array_index(handles, SpvHandle, i);
        double values[2];

        spv_handle_drag(handle, handle->at, FALSE, values);
        assert_true(fabs(values[0] - handle->values[0]) < FINE);
        if (handle->n_measures > 1)
          assert_true(fabs(values[1] - handle->values[1]) < FINE);
      }
    }
  }
}

/* Where HANDLE says that it is, at VALUES. */
static SpvPoint
place_at(const SpvHandle *handle, const double values[2]) {
  double angle;

  switch (handle->motion) {
  case SPV_MOTION_SLIDE:
    return spv_point_add(handle->foot, spv_point_scale(handle->direction, values[0]));
  case SPV_MOTION_MOVE:
    return spv_point_add(handle->foot, spv_point_add(spv_point_scale(handle->direction, values[0]),
                                                     spv_point_scale(handle->second, values[1])));
  case SPV_MOTION_DIVIDE:
    return spv_point_add(handle->foot, spv_point_scale(handle->direction, 1 / values[0]));
  case SPV_MOTION_TURN:
    break;
  }
  angle = handle->turn_sense * values[0] / handle->turn_factor;
  return spv_point_add(handle->foot,
                       spv_point(handle->direction.x * cos(angle) - handle->direction.y * sin(angle),
                                 handle->direction.x * sin(angle) + handle->direction.y * cos(angle)));
}

/* LAYER with the measures called KEY at VALUE, where its kind has such a one. */
static SpvLayer *
with_measure(const SpvLayer *layer, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(layer->pattern.kind, key);

  return index < 0 ? spv_layer_ref(layer)
                   : spv_layer_with_measure(layer, (guint) index, (SpvMeasure){ unit, value });
}

/* What a drag of these changes besides, so that the place where the handle then stands is another one: where
 * the columns of a check or of lozenges begin, which corner of a check is nearest to the middle, how the
 * points of a border are spread to come out whole, the spaces of chevrons that their angle leaves, a circle
 * of words, words no wider than the width, charges that make room for each other as they turn. */
static gboolean
moves_more(const SpvHandle *handle, const SpvLayer *layer) {
  static const struct {
    const char *kind, *measure;
  } loose[] = {
    { "check", "columns" },       { "check", "across" },        { "lozengy", "columns" },
    { "fusily", "columns" },      { "jagged-border", "pitch" }, { "jagged-border", "depth" },
    { "jagged-border", "width" }, { "jagged-border", "lean" },  { "chevronel", "angle" },
    { "couple-close", "angle" },  { "chevron", "angle" },
  };

  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  const char *key = info->measures[handle->measures[0]].key;
  int spacing = spv_pattern_measure_index(layer->pattern.kind, "spacing");
  gboolean spaced = spacing >= 0 && layer->pattern.measures[spacing].unit != SPV_UNIT_AUTO;

  if (spv_pattern_measure_index(layer->pattern.kind, "arrangement") >= 0)
    return g_str_equal(key, "turn") || (g_str_equal(key, "spacing") && !spaced);
  for (guint i = 0; i < G_N_ELEMENTS(loose); i++)
    if (g_str_equal(info->key, loose[i].kind) &&
        g_str_equal(info->measures[handle->measures[0]].key, loose[i].measure))
      return TRUE;
  return FALSE;
}

/* A little more than VALUE, of a measure of TYPE. */
static double
a_little_more(SpvMeasureType type, double value) {
  switch (type) {
  case SPV_MEASURE_ANGLE:
    return value + G_PI / 60;
  case SPV_MEASURE_LENGTH:
    return value + 0.11;
  case SPV_MEASURE_COUNT:
    return value + 1;
  case SPV_MEASURE_CHOICE:
    break;
  }
  return value;
}

/* Drags HANDLE of the layer of SCHEME a little: the layer as it is then laid has its handle where the drag
 * said. */
static gboolean
follows(const SpvScheme *scheme, const SpvHandle *handle) {
  const SpvPatternInfo *info = spv_pattern_info(layer_of(scheme)->pattern.kind);
  const SpvMeasureSpec *spec = &info->measures[handle->measures[0]];
  double more[2] = { a_little_more(spec->type, handle->values[0]), handle->values[1] + 0.07 }, values[2];
  SpvPoint expected = place_at(handle, more);

  spv_handle_drag(handle, expected, FALSE, values);
  g_autoptr(SpvLayer) layer = spv_handle_apply_to_layer(handle, layer_of(scheme), values);
  g_autoptr(SpvScheme) next = with_layer(scheme, layer);
  g_autoptr(GArray) after = handles_of(next);
  const SpvHandle *now = spv_handles_find(after, handle);

  if (now != NULL && fabs(now->values[0] - values[0]) < FINE &&
      (moves_more(handle, layer_of(scheme)) || spv_point_distance(now->at, expected) < FINE))
    return TRUE;
  print_error("%s, %s: asked for %g at (%g, %g), got %g at (%g, %g)\n", info->key, spec->key, values[0],
              expected.x, expected.y, now == NULL ? NAN : now->values[0], now == NULL ? NAN : now->at.x,
              now == NULL ? NAN : now->at.y);
  return FALSE;
}

/* A scheme whose top layer is of KIND, several where there can be several, with a line of partition where
 * LINED; mirrored, or laid on a bend. */
typedef enum { AS_IT_IS, LINED, SEVERAL, GIVEN, MIRRORED, ON_A_BEND, ON_A_MIRRORED_BEND, N_WAYS } Way;

static SpvScheme *
on_a_bend(const SpvScheme *scheme, gboolean mirrored) {
  const SpvPanel *panel = scheme->panels[0];
  g_autoptr(SpvLayer) plain = spv_layer_new("bend", SPV_PATTERN_BEND, "gules", NULL);
  g_autoptr(SpvLayer) bend = spv_layer_with_mirrored(plain, mirrored);
  g_autoptr(SpvLayer) laid = spv_layer_with_on(layer_of(scheme), "bend");
  g_autoptr(SpvPanel) more = spv_panel_with_layer_added(panel, panel->n_layers - 1, bend);
  g_autoptr(SpvPanel) all = spv_panel_with_layer(more, more->n_layers - 1, laid);

  return spv_scheme_with_panel(scheme, 0, all);
}

static SpvScheme *
scene_in_a_way(SpvPatternKind kind, Way way) {
  g_autoptr(SpvScheme) plain = scene_scheme(SPV_OUTLINE_KNEEPAD, 9, 10, kind);
  g_autoptr(SpvLayer) lined = with_measure(layer_of(plain), "line", SPV_UNIT_PLAIN, 1);
  g_autoptr(SpvLayer) several = with_measure(layer_of(plain), "number", SPV_UNIT_PLAIN, 3);
  g_autoptr(SpvLayer) wide = with_measure(several, "width", SPV_UNIT_MM, 0.8);
  g_autoptr(SpvLayer) apart = with_measure(wide, "apart", SPV_UNIT_MM, 0.9);
  g_autoptr(SpvLayer) pointed = with_measure(apart, "apex", SPV_UNIT_MM, 2);
  g_autoptr(SpvLayer) given = with_measure(pointed, "spacing", SPV_UNIT_MM, 2);
  g_autoptr(SpvLayer) image = spv_layer_with_mirrored(layer_of(plain), TRUE);

  switch (way) {
  case AS_IT_IS:
    return spv_scheme_ref(plain);
  case LINED:
    return with_layer(plain, lined);
  case SEVERAL:
    return with_layer(plain, several);
  case GIVEN:
    return with_layer(plain, given);
  case MIRRORED:
    return with_layer(plain, image);
  case ON_A_BEND:
    return on_a_bend(plain, FALSE);
  case ON_A_MIRRORED_BEND: {
    g_autoptr(SpvScheme) mirrored = with_layer(plain, image);
    return on_a_bend(mirrored, TRUE);
  }
  case N_WAYS:
    break;
  }
  return NULL;
}

static void
test_handle_follows(void **state) {
  gboolean all = TRUE;

  (void) state;
  for (guint kind = 1; kind < SPV_N_PATTERNS; kind++)
    for (guint way = 0; way < N_WAYS; way++) {
      g_autoptr(SpvScheme) scheme = scene_in_a_way((SpvPatternKind) kind, (Way) way);
      g_autoptr(GArray) handles = handles_of(scheme);

      for (guint i = 0; i < handles->len; i++)
        all &= follows(scheme, &g_array_index(handles, SpvHandle, i));
    }
  assert_true(all);
}

/* Why a LENGTH or ANGLE that counts has no handle; NULL where it must have one. */
static const char *
no_handle(const SpvLayer *layer, const char *key) {
  gboolean edge = FALSE;
  int baseline = spv_pattern_measure_index(layer->pattern.kind, "baseline");

  if (layer->pattern.kind == SPV_PATTERN_CHECK && g_str_equal(key, "cell"))
    return "its columns are dragged until a size is given";
  if (baseline < 0)
    return NULL;
  edge = layer->pattern.measures[baseline].value >= 2;
  if (g_str_equal(key, "width") && edge)
    return "words along an edge have no sides to drag: it only limits them";
  if (g_str_equal(key, "bow") && edge)
    return "only an arc bends";
  if (g_str_equal(key, "inset") && !edge)
    return "only along an edge";
  if (g_str_equal(key, "down") && edge)
    return "words in chief and in base move across only";
  return NULL;
}

static gboolean
is_on_a_handle(const GArray *handles, guint measure) {
  for (guint i = 0; i < handles->len; i++) {
    const SpvHandle *handle = &g_array_index(handles, SpvHandle, i);

    if (handle->measures[0] == measure || (handle->n_measures > 1 && handle->measures[1] == measure))
      return TRUE;
  }
  return FALSE;
}

/* With several of each, a line of partition and every baseline: all that has a length or an angle can be
 * dragged. */
static void
test_every_measure(void **state) {
  gboolean all = TRUE;

  (void) state;
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++)
    for (int baseline = 0; baseline < 3; baseline++) {
      const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);
      g_autoptr(SpvScheme) plain = scene_scheme(SPV_OUTLINE_KNEEPAD, 9, 10, (SpvPatternKind) kind);
      g_autoptr(SpvLayer) lined = with_measure(layer_of(plain), "line", SPV_UNIT_PLAIN, 3);
      g_autoptr(SpvLayer) several = with_measure(lined, "number", SPV_UNIT_PLAIN, 3);
      g_autoptr(SpvLayer) layer = with_measure(several, "baseline", SPV_UNIT_PLAIN, baseline);
      g_autoptr(SpvScheme) scheme = with_layer(plain, layer);
      g_autoptr(GArray) handles = handles_of(scheme);

      for (guint m = 0; m < info->n_measures; m++) {
        if ((info->measures[m].type != SPV_MEASURE_LENGTH && info->measures[m].type != SPV_MEASURE_ANGLE) ||
            !spv_pattern_measure_counts(&layer->pattern, m) || is_on_a_handle(handles, m) ||
            no_handle(layer, info->measures[m].key) != NULL)
          continue;
        print_error("%s: no handle for %s\n", info->key, info->measures[m].key);
        all = FALSE;
      }
    }
  assert_true(all);
}

/* On a panel that is its own mirror image, the handles of a mirrored layer are the mirror images. */
static void
test_mirrored(void **state) {
  (void) state;
  for (guint kind = 1; kind < SPV_N_PATTERNS; kind++) {
    g_autoptr(SpvScheme) plain = scene_in_a_way((SpvPatternKind) kind, AS_IT_IS);
    g_autoptr(SpvScheme) mirrored = scene_in_a_way((SpvPatternKind) kind, MIRRORED);
    g_autoptr(GArray) handles = handles_of(plain), images = handles_of(mirrored);

    assert_int_equal(handles->len, images->len);
    for (guint i = 0; i < handles->len; i++) {
      SpvPoint at = g_array_index(handles, SpvHandle, i).at, image = g_array_index(images, SpvHandle, i).at;

      assert_true(spv_point_distance(spv_point(-at.x, at.y), image) < FINE);
    }
  }
}

/* A roundel on a bend: its middle is the bend's own, and across runs along the bend. */
static void
test_laid_on(void **state) {
  g_autoptr(SpvScheme) scheme = scene_in_a_way(SPV_PATTERN_ROUNDEL, ON_A_BEND);
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  g_autoptr(GArray) handles = handles_of(scheme);
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, scheme->panels[0]->n_layers - 1);
  const SpvHandle *size = &g_array_index(handles, SpvHandle, 0),
                  *place = &g_array_index(handles, SpvHandle, 1);
  /* On this panel the bend falls from corner to corner. */
  double slope = atan2(10, 9);

  (void) state;
  assert_int_equal(place->motion, SPV_MOTION_MOVE);
  assert_true(fabs(place->direction.x - cos(slope)) < 1e-6);
  assert_true(fabs(place->direction.y - sin(slope)) < 1e-6);
  assert_true(
      spv_path_contains(((SpvDraft *) g_ptr_array_index(composition->drafts, 1))->area[0], place->at));
  assert_true(fabs(size->basis.y - spv_outline_height(frame->outline)) < 1e-9);
}

static int
pick_slot(const SpvComposition *composition, SpvPoint at) {
  int index = spv_composition_pick(composition, at);

  return index < 0
             ? -1
             : (int) ((const SpvLaidShape *) g_ptr_array_index(composition->shapes, (guint) index))->tincture;
}

/* These handles lie on a boundary of what is drawn: another tincture on either side. */
static void
test_on_the_boundary(void **state) {
  const SpvPatternKind kinds[] = {
    SPV_PATTERN_PER_PALE,    SPV_PATTERN_PER_FESS, SPV_PATTERN_PER_BEND, SPV_PATTERN_PER_BEND_SINISTER,
    SPV_PATTERN_PER_CHEVRON, SPV_PATTERN_PALY,     SPV_PATTERN_BARRY,    SPV_PATTERN_BENDY,
    SPV_PATTERN_BORDURE,     SPV_PATTERN_CHIEF,    SPV_PATTERN_ROUNDEL,
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(kinds); i++) {
    g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_RECTANGLE, 9, 10, kinds[i]);
    g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
    g_autoptr(GArray) handles = spv_layer_handles(composition, 1);
    const SpvHandle *handle = &g_array_index(handles, SpvHandle, 0);
    SpvPoint step = spv_point_scale(spv_point_unit(handle->direction), 0.02);

    assert_int_not_equal(pick_slot(composition, spv_point_add(handle->at, step)),
                         pick_slot(composition, spv_point_subtract(handle->at, step)));
  }
}

/* The width's handle is as far inside the edge as the border is wide, the depth's as far as the tips are. */
static void
test_jagged(void **state) {
  int edge_index = spv_pattern_measure_index(SPV_PATTERN_JAGGED_BORDER, "edge");
  int row_index = spv_pattern_measure_index(SPV_PATTERN_JAGGED_BORDER, "row");

  (void) state;
  for (int trial = 0; trial < 10; trial++) {
    g_autoptr(SpvScheme) preset = scene_scheme(SPV_OUTLINE_STRIP, 9, 10, SPV_PATTERN_JAGGED_BORDER);
    g_autoptr(SpvLayer) turned = spv_layer_with_measure(layer_of(preset), (guint) edge_index,
                                                        (SpvMeasure){ SPV_UNIT_PLAIN, trial / 2 });
    g_autoptr(SpvLayer)
        placed = spv_layer_with_measure(turned, (guint) row_index, (SpvMeasure){ SPV_UNIT_PLAIN, trial % 2 });
    g_autoptr(SpvScheme) scheme = with_layer(preset, placed);
    g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
    g_autoptr(GArray) handles = spv_layer_handles(composition, 1);
    const SpvDraft *draft = g_ptr_array_index(composition->drafts, 1);
    const SpvTrack *track = spv_outline_track(composition->outline);
    double distance, farthest = 0, inside[2] = { 0, 0 };

    assert_int_equal(handles->len, 4);
    for (guint i = 0; i < 2; i++)
      spv_track_locate(track, g_array_index(handles, SpvHandle, i).at, &inside[i]);
    for (guint i = 0; i < draft->dots->len; i++) {
      spv_track_locate(track, g_array_index(draft->dots, SpvDraftDot, i).at, &distance);
      farthest = MAX(farthest, distance);
    }
    assert_true(fabs(farthest - inside[1]) < FINE);
    assert_true(fabs(inside[0] - g_array_index(handles, SpvHandle, 0).values[0]) < FINE);
    assert_true(fabs(inside[1] - inside[0] - g_array_index(handles, SpvHandle, 1).values[0]) < FINE);
  }
}

/* A check's grid, wherever the pattern put it, can be taken up and moved. */
static void
test_check_grid(void **state) {
  const double cells[] = { 0, 1.3 };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(cells); i++) {
    g_autoptr(SpvScheme) preset = scene_scheme(SPV_OUTLINE_ROUND_PAD, 9, 8.5, SPV_PATTERN_CHECK);
    int cell = spv_pattern_measure_index(SPV_PATTERN_CHECK, "cell");
    SpvMeasure given = { cells[i] > 0 ? SPV_UNIT_MM : SPV_UNIT_AUTO, cells[i] };
    g_autoptr(SpvLayer) sized = spv_layer_with_measure(layer_of(preset), (guint) cell, given);
    g_autoptr(SpvScheme) scheme = with_layer(preset, sized);
    g_autoptr(GArray) handles = handles_of(scheme);
    const SpvHandle *handle = &g_array_index(handles, SpvHandle, 0);
    double values[2] = { handle->values[0] + 0.2, handle->values[1] - 0.15 };
    g_autoptr(SpvLayer) moved = spv_handle_apply_to_layer(handle, sized, values);
    g_autoptr(SpvScheme) next = with_layer(scheme, moved);
    g_autoptr(GArray) after = handles_of(next);
    SpvPoint at = g_array_index(after, SpvHandle, 0).at;
    double pitch = cells[i] > 0 ? cells[i] : 9.0 / 7;

    assert_int_equal(handle->motion, SPV_MOTION_MOVE);
    /* The same grid 0.2 to the right and 0.15 up; the corner shown may be another one. */
    assert_true(fabs(remainder(at.x - handle->at.x - 0.2, pitch)) < FINE);
    assert_true(fabs(remainder(at.y - handle->at.y + 0.15, pitch)) < FINE);
  }
}

/* mm stay mm, a fraction stays one, what was not given becomes mm or degrees. */
static void
test_units(void **state) {
  g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF);
  const SpvMeasure before[] = { { SPV_UNIT_MM, 2 }, { SPV_UNIT_RELATIVE, 0.25 }, { SPV_UNIT_AUTO, 0 } };
  const SpvMeasure expected[] = { { SPV_UNIT_MM, 3.35 },
                                  { SPV_UNIT_RELATIVE, 0.335 },
                                  { SPV_UNIT_MM, 3.35 } };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(before); i++) {
    g_autoptr(SpvLayer) layer = spv_layer_with_measure(layer_of(scheme), 0, before[i]);
    g_autoptr(SpvScheme) given = with_layer(scheme, layer);
    g_autoptr(GArray) handles = handles_of(given);
    const SpvHandle *handle = &g_array_index(handles, SpvHandle, 0);
    g_autoptr(SpvLayer) dragged = NULL;
    double values[2];

    spv_handle_drag(handle, spv_point(1.234, 3.361), TRUE, values);
    dragged = spv_handle_apply_to_layer(handle, layer, values);
    assert_true(spv_measure_equal(dragged->pattern.measures[0], expected[i]));
  }
}

/* Dragged beyond what a measure allows, it stops at the end; nothing invalid ever reaches the layer. */
static void
test_range(void **state) {
  const SpvPoint far[] = { { 1e5, 1e5 }, { -1e5, -1e5 }, { 0, 0 }, { 1e5, -1e5 } };

  (void) state;
  for (guint kind = 1; kind < SPV_N_PATTERNS; kind++) {
    g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_GREAVE, 6, 12, (SpvPatternKind) kind);
    g_autoptr(GArray) handles = handles_of(scheme);
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);

    for (guint i = 0; i < handles->len; i++) {
      for (guint j = 0; j < G_N_ELEMENTS(far); j++) {
        const SpvHandle *handle = &g_array_index(handles, SpvHandle, i);
        g_autoptr(SpvLayer) layer = NULL;
        double values[2];

        spv_handle_drag(handle, far[j], TRUE, values);
        layer = spv_handle_apply_to_layer(handle, layer_of(scheme), values);
        for (guint m = 0; m < info->n_measures; m++)
          assert_true(spv_measure_is_valid(&info->measures[m], layer->pattern.measures[m]));
      }
    }
  }
}

static void
test_snap(void **state) {
  g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF);
  g_autoptr(GArray) handles = handles_of(scheme);
  double values[2];

  (void) state;
  spv_handle_drag(&g_array_index(handles, SpvHandle, 0), spv_point(0, 0.7234), TRUE, values);
  assert_true(values[0] == 0.7);
  spv_handle_drag(&g_array_index(handles, SpvHandle, 0), spv_point(0, 0.7234), FALSE, values);
  assert_true(values[0] == 0.723);
}

static void
test_hidden_and_locked(void **state) {
  g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_DISC, 9, 9, SPV_PATTERN_ROUNDEL);
  g_autoptr(SpvLayer) locked = spv_layer_with_locked(layer_of(scheme), TRUE);
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(layer_of(scheme), TRUE);
  g_autoptr(SpvScheme) with_locked = with_layer(scheme, locked);
  g_autoptr(SpvScheme) with_hidden = with_layer(scheme, hidden);
  g_autoptr(GArray) none = handles_of(with_locked), nor_here = handles_of(with_hidden);

  (void) state;
  assert_int_equal(none->len, 0);
  assert_int_equal(nor_here->len, 0);
}

/* The panel's own handles lie on its edge, and a drag gives the new width and height. */
static void
test_panel(void **state) {
  (void) state;
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    g_autoptr(SpvScheme) scheme = scene_scheme((SpvOutlineFamily) family, 9, 9, SPV_PATTERN_FIELD);
    g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
    g_autoptr(GArray) handles = spv_panel_handles(composition);

    assert_int_equal(handles->len, family == SPV_OUTLINE_DISC ? 1 : 2);
    for (guint i = 0; i < handles->len; i++) {
      const SpvHandle *handle = &g_array_index(handles, SpvHandle, i);
      g_autoptr(SpvPanel) panel = NULL;
      double values[2];

      if (handle->measures[0] == SPV_PANEL_WIDTH) {
        double distance;

        spv_track_locate(spv_outline_track(composition->outline), handle->at, &distance);
        /* A greave with rounded corners does not quite reach its width. */
        assert_true(distance < 0.1);
      }
      for (double size = 0.1; size < 16; size *= 2) {
        g_clear_pointer(&panel, spv_panel_unref);
        spv_handle_drag(handle, spv_point(size / 2 + 0.01, size + 0.01), TRUE, values);
        panel = spv_handle_apply_to_panel(handle, scheme->panels[0], values);
        assert_true(spv_outline_spec_check(&panel->outline, NULL));
      }
      assert_true(
          fabs((handle->measures[0] == SPV_PANEL_WIDTH ? panel->outline.width : panel->outline.height) -
               values[0]) < 1e-9);
    }
  }
}

static void
test_caption(void **state) {
  g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_DISC, 9, 9, SPV_PATTERN_ROUNDEL);
  g_autoptr(GArray) handles = handles_of(scheme);
  const double values[2] = { 0.7, -1.25 };
  g_autofree char *one = spv_handle_caption(&g_array_index(handles, SpvHandle, 0), &layer_of(scheme)->pattern,
                                            values);
  g_autofree char *two = spv_handle_caption(&g_array_index(handles, SpvHandle, 1), &layer_of(scheme)->pattern,
                                            values);

  (void) state;
  assert_string_equal(one, "Diameter 0.70\u2009mm");
  assert_string_equal(two, "Shift across 0.70\u2009mm\nBelow datum -1.25\u2009mm");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_drag_to_itself), cmocka_unit_test(test_handle_follows),
    cmocka_unit_test(test_every_measure),  cmocka_unit_test(test_mirrored),
    cmocka_unit_test(test_laid_on),        cmocka_unit_test(test_on_the_boundary),
    cmocka_unit_test(test_jagged),         cmocka_unit_test(test_check_grid),
    cmocka_unit_test(test_units),          cmocka_unit_test(test_range),
    cmocka_unit_test(test_snap),           cmocka_unit_test(test_hidden_and_locked),
    cmocka_unit_test(test_panel),          cmocka_unit_test(test_caption),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
