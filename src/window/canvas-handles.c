/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a drag becomes a measure, whatever the pattern. */
#include "config.h"

#include "window/canvas-handles.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define DEGREE (G_PI / 180)
#define THIN_SPACE "\u2009"

/* How many steps a millimetre, and a degree, has. Free drags are still rounded, to what no hand could tell
 * from exact: files stay readable. */
#define SNAPPED_PER_MM (1 / SPV_HANDLE_SNAP)
#define FREE_PER_MM 1000.0
#define SNAPPED_PER_DEGREE 1.0
#define FREE_PER_DEGREE 10.0

/* VALUE to the nearest of PER whole steps a unit. Dividing, not multiplying by a step, gives the very double
 * that a file's decimals read as. */
static double
round_to(double value, double per) {
  return round(value * per) / per;
}

/* The angle from the handle's zero direction to POINT, in its sense, within half a turn. */
static double
turned(const SpvHandle *handle, SpvPoint point) {
  SpvPoint arm = spv_point_subtract(point, handle->foot);
  double angle = atan2(spv_point_cross(handle->direction, arm), spv_point_dot(handle->direction, arm));

  return handle->turn_sense * handle->turn_factor * angle;
}

static double
along(const SpvHandle *handle, SpvPoint point) {
  SpvPoint arm = spv_point_subtract(point, handle->foot);

  return spv_point_dot(arm, handle->direction) / spv_point_dot(handle->direction, handle->direction);
}

void
spv_handle_drag(const SpvHandle *handle, SpvPoint point, gboolean snap, double values[2]) {
  double per_mm = snap ? SNAPPED_PER_MM : FREE_PER_MM, part;
  SpvPoint arm;

  values[1] = handle->values[1];
  switch (handle->motion) {
  case SPV_MOTION_SLIDE:
    values[0] = round_to(along(handle, point), per_mm);
    break;
  case SPV_MOTION_MOVE:
    arm = spv_point_subtract(point, handle->foot);
    values[0] = round_to(spv_point_dot(arm, handle->direction), per_mm);
    values[1] = round_to(spv_point_dot(arm, handle->second), per_mm);
    break;
  case SPV_MOTION_TURN:
    values[0] = round_to(turned(handle, point) / DEGREE, snap ? SNAPPED_PER_DEGREE : FREE_PER_DEGREE) *
                DEGREE;
    break;
  case SPV_MOTION_DIVIDE:
    part = along(handle, point);
    values[0] = part > 1.0 / SPV_PATTERN_MAX_COUNT ? MAX(round(1 / part), 1) : SPV_PATTERN_MAX_COUNT;
    break;
  }
}

static double
basis_of(const SpvMeasureSpec *spec, SpvPoint basis) {
  switch (spec->basis) {
  case SPV_BASIS_WIDTH:
    return basis.x;
  case SPV_BASIS_HEIGHT:
    return basis.y;
  case SPV_BASIS_SMALLER:
    return MIN(basis.x, basis.y);
  case SPV_BASIS_NONE:
    break;
  }
  return 1;
}

static SpvMeasure
length_of(const SpvMeasureSpec *spec, SpvMeasure old, double mm, SpvPoint basis) {
  double least = spec->min < 0 ? -SPV_RELATIVE_MAX : 0;

  if (old.unit != SPV_UNIT_RELATIVE)
    return (SpvMeasure){ SPV_UNIT_MM, CLAMP(round_to(mm, 1e4), spec->min, spec->max) };
  return (SpvMeasure){ SPV_UNIT_RELATIVE,
                       CLAMP(round_to(mm / basis_of(spec, basis), 1e6), least, SPV_RELATIVE_MAX) };
}

static SpvMeasure
measure_of(const SpvMeasureSpec *spec, SpvMeasure old, double value, SpvPoint basis) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, CLAMP(round(value), spec->min, spec->max) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, CLAMP(round_to(value / DEGREE, 1e3), spec->min, spec->max) };
  case SPV_MEASURE_LENGTH:
    return length_of(spec, old, value, basis);
  case SPV_MEASURE_CHOICE:
    break;
  }
  return old;
}

SpvLayer *
spv_handle_apply_to_layer(const SpvHandle *handle, const SpvLayer *layer, const double values[2]) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  SpvLayer *changed = spv_layer_ref(layer);

  for (guint i = 0; i < handle->n_measures; i++) {
    guint index = handle->measures[i];
    SpvMeasure measure = measure_of(&info->measures[index], layer->pattern.measures[index], values[i],
                                    handle->basis);
    SpvLayer *next;

    if (!spv_measure_is_valid(&info->measures[index], measure))
      continue;
    next = spv_layer_with_measure(changed, index, measure);
    spv_layer_unref(changed);
    changed = next;
  }
  return changed;
}

/* Own measures follow in proportion where they no longer fit as they are, and fall back to the family's own
 * choice where that does not fit either. */
static gboolean
make_fit(SpvOutlineSpec *spec, const SpvOutlineSpec *old) {
  double factor = MIN(spec->width / old->width, spec->height / old->height);

  if (spv_outline_spec_check(spec, NULL))
    return TRUE;
  for (guint i = 0; i < SPV_OUTLINE_MEASURES; i++)
    spec->own[i] = round_to(spec->own[i] * factor, 1e4);
  if (spv_outline_spec_check(spec, NULL))
    return TRUE;
  spv_outline_spec_preset(spec->family, spec->width, spec->height, spec);
  return spv_outline_spec_check(spec, NULL);
}

SpvPanel *
spv_handle_apply_to_panel(const SpvHandle *handle, const SpvPanel *panel, const double values[2]) {
  SpvOutlineSpec spec = panel->outline;
  double value = CLAMP(round_to(values[0], 1e4), SPV_OUTLINE_MIN_MM, SPV_OUTLINE_MAX_MM);
  gboolean is_disc = spec.family == SPV_OUTLINE_DISC;

  if (handle->measures[0] == SPV_PANEL_WIDTH || is_disc)
    spec.width = value;
  if (handle->measures[0] == SPV_PANEL_HEIGHT || is_disc)
    spec.height = value;
  if (!make_fit(&spec, &panel->outline) || !spv_surface_check(&panel->surface, spec.width, NULL))
    return spv_panel_ref(panel);
  return spv_panel_with_outline(panel, &spec);
}

/* --- What it says --- */

static char *
value_text(SpvMeasureType type, double value) {
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  switch (type) {
  case SPV_MEASURE_ANGLE:
    g_ascii_formatd(number, sizeof number, "%.1f", value / DEGREE);
    if (g_str_has_suffix(number, ".0"))
      number[strlen(number) - 2] = '\0';
    return g_strconcat(number, "°", NULL);
  case SPV_MEASURE_LENGTH:
    g_ascii_formatd(number, sizeof number, "%.2f", value);
    return g_strconcat(number, THIN_SPACE "mm", NULL);
  case SPV_MEASURE_COUNT:
  case SPV_MEASURE_CHOICE:
    break;
  }
  return g_strdup_printf("%.0f", value);
}

char *
spv_handle_caption(const SpvHandle *handle, const SpvPattern *pattern, const double values[2]) {
  GString *caption = g_string_new(NULL);

  for (guint i = 0; i < handle->n_measures; i++) {
    const SpvMeasureSpec *spec = handle->owner == SPV_HANDLE_OF_LAYER
                                     ? &spv_pattern_info(pattern->kind)->measures[handle->measures[i]]
                                     : NULL;
    const char *label = spec != NULL                             ? _(spec->label)
                        : handle->measures[i] == SPV_PANEL_WIDTH ? _("Width")
                                                                 : _("Height");
    g_autofree char *value = value_text(spec != NULL ? spec->type : SPV_MEASURE_LENGTH, values[i]);

    g_string_append_printf(caption, "%s%s %s", i > 0 ? "\n" : "", label, value);
  }
  return g_string_free(caption, FALSE);
}

const SpvHandle *
spv_handles_find(const GArray *handles, const SpvHandle *handle) {
  for (guint i = 0; i < handles->len; i++) {
    const SpvHandle *other = &g_array_index(handles, SpvHandle, i);

    if (other->owner == handle->owner && other->motion == handle->motion &&
        other->measures[0] == handle->measures[0])
      return other;
  }
  return NULL;
}
