/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Frames: the panel, and what else can be laid on. */
#include "heraldry/frame.h"

static SpvFrame *
frame_new(SpvOutline *outline, SpvTransform place, double breadth, GPtrArray *spines) {
  SpvFrame *frame = g_new0(SpvFrame, 1);

  frame->outline = outline;
  frame->place = place;
  frame->breadth = breadth;
  frame->spines = spines;
  g_atomic_ref_count_init(&frame->refs);
  return frame;
}

SpvFrame *
spv_frame_new(const SpvOutline *outline) {
  return frame_new(spv_outline_ref(outline), SPV_TRANSFORM_IDENTITY, 0, NULL);
}

SpvFrame *
spv_frame_new_limbs(const SpvOutline *outline, GPtrArray *spines, double breadth) {
  return frame_new(spv_outline_ref(outline), SPV_TRANSFORM_IDENTITY, breadth, g_ptr_array_ref(spines));
}

SpvFrame *
spv_frame_new_box(SpvPoint datum, double angle, double width, double height) {
  SpvOutlineSpec spec = { .family = SPV_OUTLINE_RECTANGLE, .width = width, .height = height };

  return frame_new(spv_outline_new(&spec), spv_transform_turn(angle, datum), MIN(width, height), NULL);
}

SpvFrame *
spv_frame_new_outline(const SpvOutline *outline, SpvPoint datum, double angle) {
  return frame_new(spv_outline_ref(outline), spv_transform_turn(angle, datum), 0, NULL);
}

SpvFrame *
spv_frame_ref(const SpvFrame *frame) {
  SpvFrame *own = (SpvFrame *) frame;
  g_atomic_ref_count_inc(&own->refs);
  return own;
}

void
spv_frame_unref(SpvFrame *frame) {
  if (!frame || !g_atomic_ref_count_dec(&frame->refs))
    return;
  spv_outline_unref(frame->outline);
  g_clear_pointer(&frame->spines, g_ptr_array_unref);
  g_free(frame);
}

SpvFrame *
spv_frame_on(const SpvFrame *frame, const SpvFrame *outer) {
  return frame_new(spv_outline_ref(frame->outline), spv_transform_compose(outer->place, frame->place),
                   frame->breadth, frame->spines ? g_ptr_array_ref(frame->spines) : NULL);
}

static SpvTrack *
mirrored_track(const SpvTrack *track) {
  gsize n;
  const SpvPoint *points = spv_track_points(track, &n);
  g_autofree SpvPoint *image = g_new(SpvPoint, n);

  for (gsize i = 0; i < n; i++)
    image[i] = spv_transform_point(SPV_TRANSFORM_MIRROR, points[i]);
  return spv_track_new(image, n, spv_track_is_closed(track));
}

static void
unref_track(gpointer track) {
  spv_track_unref(track);
}

/* The outline is its own mirror image; so the frame's mirror image is the same outline at the place that
 * mirrors before and after. */
SpvFrame *
spv_frame_mirrored(const SpvFrame *frame) {
  SpvTransform place = spv_transform_compose(SPV_TRANSFORM_MIRROR,
                                             spv_transform_compose(frame->place, SPV_TRANSFORM_MIRROR));
  GPtrArray *spines = NULL;

  if (frame->spines) {
    spines = g_ptr_array_new_with_free_func(unref_track);
    for (guint i = 0; i < frame->spines->len; i++)
      g_ptr_array_add(spines, mirrored_track(g_ptr_array_index(frame->spines, i)));
  }
  return frame_new(spv_outline_ref(frame->outline), place, frame->breadth, spines);
}
