/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of a layer: made by its kind's maker on what it is laid on, then brought to the panel. */
#include "window/canvas-handles-private.h"

static const SpvHandleMaker *const tables[SPV_N_GROUPS] = {
  [SPV_GROUP_DIVISION] = spv_handles_of_divisions,  [SPV_GROUP_VARIED] = spv_handles_of_varied,
  [SPV_GROUP_ORDINARY] = spv_handles_of_ordinaries, [SPV_GROUP_BORDER] = spv_handles_of_borders,
  [SPV_GROUP_CHARGE] = spv_handles_of_charges,      [SPV_GROUP_OWN] = spv_handles_of_own,
};

static void
run_maker(SpvHandleMaking *making) {
  SpvPatternKind kind = making->pattern->kind;

  for (const SpvHandleMaker *maker = tables[spv_pattern_group(kind)]; maker->make != NULL; maker++)
    if (kind >= maker->first && kind <= maker->last)
      maker->make(making);
}

SpvTransform
spv_layer_place(const SpvComposition *composition, guint index) {
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, index);

  if (!composition->panel->layers[index]->pattern.mirrored)
    return frame->place;
  g_autoptr(SpvFrame) image = spv_frame_mirrored(frame);
  return spv_transform_compose(SPV_TRANSFORM_MIRROR, image->place);
}

/* What PATTERN rules in FRAME's own mm. */
static SpvDraft *
lay_at_home(const SpvPattern *pattern, const SpvFrame *frame) {
  SpvPattern plain = *pattern;
  g_autoptr(SpvFrame) home = frame->spines == NULL
                                 ? spv_frame_new(frame->outline)
                                 : spv_frame_new_limbs(frame->outline, frame->spines, frame->breadth);

  plain.mirrored = FALSE;
  return spv_pattern_lay_on(&plain, home, frame->outline);
}

static SpvPoint
turned(SpvTransform t, SpvPoint direction) {
  return spv_point(t.a * direction.x + t.c * direction.y, t.b * direction.x + t.d * direction.y);
}

static void
bring_to_panel(GArray *handles, SpvTransform place) {
  gboolean mirrors = place.a * place.d < place.b * place.c;

  for (guint i = 0; i < handles->len; i++) {
    SpvHandle *handle = &g_array_index(handles, SpvHandle, i);

    handle->at = spv_transform_point(place, handle->at);
    handle->foot = spv_transform_point(place, handle->foot);
    handle->direction = turned(place, handle->direction);
    handle->second = turned(place, handle->second);
    handle->turn_sense *= mirrors ? -1 : 1;
  }
}

GArray *
spv_layer_handles(const SpvComposition *composition, guint index) {
  GArray *handles = g_array_new(FALSE, TRUE, sizeof(SpvHandle));
  const SpvLayer *layer = composition->panel->layers[index];
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, index);

  if (layer->hidden || layer->locked || draft == NULL)
    return handles;

  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, index);
  g_autoptr(SpvFrame) image = layer->pattern.mirrored ? spv_frame_mirrored(frame) : NULL;
  const SpvFrame *laid_on = image != NULL ? image : frame;
  SpvTransform place = spv_layer_place(composition, index);
  gboolean arranged = spv_pattern_group(layer->pattern.kind) == SPV_GROUP_CHARGE ||
                      layer->pattern.kind == SPV_PATTERN_PATH_CHARGE;
  g_autoptr(SpvDraft)
      at_home = arranged || spv_transform_is_identity(place) ? NULL : lay_at_home(&layer->pattern, laid_on);
  SpvHandleMaking making = { .pattern = &layer->pattern,
                             .frame = laid_on,
                             .outline = laid_on->outline,
                             .draft = at_home != NULL ? at_home : draft,
                             .width = spv_outline_width(laid_on->outline),
                             .height = spv_outline_height(laid_on->outline),
                             .handles = handles };

  making.smaller = MIN(making.width, making.height);
  making.middle = spv_point(0, making.height / 2);
  run_maker(&making);
  bring_to_panel(handles, place);
  return handles;
}
