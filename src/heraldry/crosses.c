/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries whose limbs meet in one point: cross, saltire and pall. */
#include "heraldry/edges-private.h"

#define MAX_LIMBS 4

/* A fifth of the panel's width, a third when charged: Kent nos. 1 and 8; Manual of Heraldry, 5th ed., ch.
 * IV. */
#define LIMB_WIDTH (1.0 / 5)
#define CHARGED_LIMB_WIDTH (1.0 / 3)

typedef struct {
  SpvPoint centre;
  double width;
  guint n;
  double angles[MAX_LIMBS]; /* the way each limb goes, clockwise from one to the next, radians from the
                               viewer's right */
} Limbs;

static SpvPoint
direction_of(const Limbs *limbs, guint i) {
  double angle = limbs->angles[i % limbs->n];

  return spv_point(cos(angle), sin(angle));
}

/* How far from the centre, along either limb, the edges of limb I and the next meet. */
static double
fork_at(const Limbs *limbs, guint i) {
  double between = limbs->angles[(i + 1) % limbs->n] - limbs->angles[i % limbs->n];

  if (between < 0)
    between += 2 * G_PI;
  return limbs->width / 2 / tan(between / 2);
}

/* Where the teeth of limb I begin: beyond its forks, where they keep clear of those of its neighbours. */
static double
first_tooth(const Limbs *limbs, const SpvLine *line, guint i, double length) {
  double first = -INFINITY;

  for (guint k = 0; k < 2; k++) {
    guint at = k == 0 ? i + limbs->n - 1 : i;
    double corner = fork_at(limbs, at), half = atan2(limbs->width / 2, corner);
    first = MAX(first, corner + spv_corner_lead(line, length - corner, -half));
  }
  return first;
}

/* What all limbs have in common, from fork to fork, and each limb from the centre on. */
static void
add_limbs(const Limbs *limbs, const SpvLine *line, const SpvOutline *outline, SpvPathBuilder *builder) {
  gboolean alike = spv_profile_runs_alike(line->profile) && !spv_line_folds_back(line->profile);
  SpvPoint forks[MAX_LIMBS];

  for (guint i = 0; i < limbs->n; i++) {
    SpvAxis axis = { limbs->centre, direction_of(limbs, i) };
    forks[i] = spv_axis_point(axis, fork_at(limbs, i), limbs->width / 2);
  }
  spv_path_builder_polygon(builder, forks, limbs->n);
  for (guint i = 0; i < limbs->n; i++) {
    SpvAxis axis = { limbs->centre, direction_of(limbs, i) };
    SpvBand band = spv_band_new(axis, outline, -limbs->width / 2, limbs->width / 2, 0);

    band.u0 = 0;
    band.low = MAX(MAX(band.low, 0), first_tooth(limbs, line, i, band.high));
    band.line = *line;
    /* Edges that run alike do so from the centre. */
    band.blunt = !alike;
    spv_band_add(&band, builder);
  }
}

/* Both edges of each limb, from the fork on. */
static void
add_lines(const Limbs *limbs, const SpvOutline *outline, SpvDraft *draft) {
  double reach = spv_outline_width(outline) + spv_outline_height(outline) + spv_point_length(limbs->centre);

  for (guint i = 0; i < limbs->n; i++) {
    SpvAxis axis = { limbs->centre, direction_of(limbs, i) };
    double starts[2] = { fork_at(limbs, i + limbs->n - 1), fork_at(limbs, i) };
    for (guint k = 0; k < 2; k++) {
      double v = (k == 0 ? -0.5 : 0.5) * limbs->width;
      spv_draft_add_line(draft, SPV_LINE_DIVISION, 2 * i + k + 1, spv_axis_point(axis, starts[k], v),
                         spv_axis_point(axis, starts[k] + reach, v));
    }
  }
}

/* From the centre outward, along the part of each limb that lies inside the panel. */
static SpvFrame *
frame_of(const Limbs *limbs, const SpvOutline *outline) {
  GPtrArray *spines = spv_spines_new();

  for (guint i = 0; i < limbs->n; i++) {
    SpvAxis axis = { limbs->centre, direction_of(limbs, i) };
    SpvBox chord;
    if (spv_axis_bounds(axis, outline, 0, 0, &chord) && chord.x1 > 0)
      spv_spines_add(spines, spv_axis_point(axis, MAX(chord.x0, 0), 0), spv_axis_point(axis, chord.x1, 0));
  }
  return spv_frame_of_limbs(outline, spines, limbs->width);
}

static void
lay_limbs(const Limbs *limbs, const SpvPattern *pattern, const SpvOutline *outline, SpvDraft *draft) {
  /* About as long as a limb shows. */
  double span = (MIN(spv_outline_width(outline), spv_outline_height(outline)) - limbs->width) / 2;
  SpvLine line = spv_line_on_band(pattern, outline, span, limbs->width);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (limbs->width > 0) {
    add_limbs(limbs, &line, outline, builder);
    add_lines(limbs, outline, draft);
    draft->frame = frame_of(limbs, outline);
  }
  draft->area[0] = spv_path_builder_build(builder);
}

static double
limb_width(const SpvPattern *pattern, const SpvOutline *outline) {
  double fraction = spv_lay_charged(pattern, outline) ? CHARGED_LIMB_WIDTH : LIMB_WIDTH;

  return spv_lay_measure(pattern, outline, "width", fraction * spv_outline_width(outline));
}

void
spv_lay_cross(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  Limbs cross = { .centre = { spv_lay_measure(pattern, outline, "across", 0),
                              spv_outline_height(outline) / 2 +
                                  spv_lay_measure(pattern, outline, "down", 0) },
                  .width = limb_width(pattern, outline),
                  .n = 4,
                  .angles = { -G_PI / 2, 0, G_PI / 2, G_PI } };

  lay_limbs(&cross, pattern, outline, draft);
}

void
spv_lay_saltire(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double diagonal = atan2(spv_outline_height(outline), spv_outline_width(outline));
  double angle = spv_lay_measure(pattern, outline, "angle", diagonal);
  Limbs saltire = { .centre = { 0, spv_outline_height(outline) / 2 },
                    .width = limb_width(pattern, outline),
                    .n = 4,
                    .angles = { -G_PI + angle, -angle, angle, G_PI - angle } };

  lay_limbs(&saltire, pattern, outline, draft);
}

/* Up to the two upper corners, or as steeply as asked, and straight down. */
void
spv_lay_pall(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double down = spv_lay_measure(pattern, outline, "down", 0);
  double corners = 2 * atan2(spv_outline_width(outline) / 2, down);
  double half = spv_lay_measure(pattern, outline, "angle", CLAMP(corners, G_PI / 18, G_PI * 17 / 18)) / 2;
  Limbs pall = { .centre = { 0, down },
                 .width = limb_width(pattern, outline),
                 .n = 3,
                 .angles = { -G_PI / 2 - half, -G_PI / 2 + half, G_PI / 2 } };

  lay_limbs(&pall, pattern, outline, draft);
}
