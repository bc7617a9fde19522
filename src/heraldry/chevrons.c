/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chevron, and what is narrower. */
#include "heraldry/edges-private.h"

/* A fifth of the panel's width: Cussans p. 15; Kent no. 7. Half of it the chevronel, a quarter the
 * couple-close: Cussans p. 15. */
#define CHEVRON_WIDTH (1.0 / 5)
#define CHEVRONEL_WIDTH (1.0 / 10)
#define COUPLE_CLOSE_WIDTH (1.0 / 20)
/* How far the two of a pair of couple-closes are from each other, of the panel's width: a chevron of the
 * usual width stands between them, and a little space on either side. Common practice, no source. */
#define PAIR_APART 0.3

typedef struct {
  guint n;
  double half;  /* between a limb and the centre line, radians */
  double thick; /* of a limb, measured upright */
  double pitch; /* from one to the next, measured upright */
  double apex;  /* of the uppermost */
  double width; /* of a limb */
} Chevrons;

/* How much lower the limbs are, on the whole, than the points: half as far as at the panel's sides, but less
 * than half of the panel. */
static double
mean_drop(const SpvOutline *outline, double half) {
  return MIN(spv_outline_width(outline) / 2 / tan(half), spv_outline_height(outline)) / 2;
}

/* As wide as usual; where there are several, no wider than the spaces between. */
static double
usual_width(const SpvPattern *pattern, const SpvOutline *outline, guint n, double half) {
  double fraction = pattern->kind == SPV_PATTERN_CHEVRONEL      ? CHEVRONEL_WIDTH
                    : pattern->kind == SPV_PATTERN_COUPLE_CLOSE ? COUPLE_CLOSE_WIDTH
                                                                : CHEVRON_WIDTH;
  double width = fraction * spv_outline_width(outline);
  double room = spv_outline_height(outline) - mean_drop(outline, half);

  return n > 1 ? MIN(width, room / (2 * n + 1) * sin(half)) : width;
}

/* The space between two, measured upright, where all are spread evenly. */
static double
even_space(const Chevrons *chevrons, const SpvOutline *outline) {
  double room = spv_outline_height(outline) - mean_drop(outline, chevrons->half);

  return MAX(0, (room - chevrons->n * chevrons->thick) / (chevrons->n + 1));
}

/* One has its point in the middle of the panel (Cussans p. 15); a pair of couple-closes has room for that one
 * between them; others are spread over the height. */
static Chevrons
chevrons_of(const SpvPattern *pattern, const SpvOutline *outline) {
  Chevrons chevrons = { .n = (guint) spv_lay_measure(pattern, outline, "number", 1),
                        .half = spv_lay_measure(pattern, outline, "angle", G_PI / 2) / 2 };
  double wide = sin(chevrons.half), panel = spv_outline_width(outline);
  double middle = spv_outline_height(outline) / 2;
  gboolean pair = pattern->kind == SPV_PATTERN_COUPLE_CLOSE && chevrons.n == 2;

  chevrons.width = spv_lay_measure(pattern, outline, "width",
                                   usual_width(pattern, outline, chevrons.n, chevrons.half));
  chevrons.thick = chevrons.width / wide;
  double space = even_space(&chevrons, outline);
  double apart = spv_lay_measure(pattern, outline, "apart", pair ? PAIR_APART * panel : space * wide);
  chevrons.pitch = chevrons.thick + apart / wide;
  double apex = pair ? middle + (CHEVRON_WIDTH * panel / wide - chevrons.pitch - chevrons.thick) / 2
                : chevrons.n > 1 ? space
                                 : middle;
  chevrons.apex = spv_lay_measure(pattern, outline, "apex", apex);
  return chevrons;
}

/* One edge of the limb that falls to the viewer's right, from the point at Y: the upper one where SIDE is -1,
 * else the lower one, which is a notch. */
static SpvPath *
lay_limb(const Chevrons *chevrons, const SpvLine *line, const SpvOutline *outline, double y, double side) {
  return spv_corner_edge(line, outline, spv_point(0, y), spv_point(sin(chevrons->half), cos(chevrons->half)),
                         -side * chevrons->half, side);
}

/* The right half, and its mirror image. */
static void
add_chevron(const Chevrons *chevrons, const SpvLine *line, SpvBandEdges edges, const SpvOutline *outline,
            double apex, SpvPathBuilder *builder) {
  static const SpvLine plain = { .profile = SPV_PROFILE_PLAIN };
  gboolean on_upper = edges != SPV_EDGES_SECOND, on_lower = edges != SPV_EDGES_FIRST;
  g_autoptr(SpvPath) upper = lay_limb(chevrons, on_upper ? line : &plain, outline, apex, -1), lower = NULL;
  SpvPathBuilder *limb = spv_path_builder_new();
  SpvPoint across = spv_point_scale(spv_point(-cos(chevrons->half), sin(chevrons->half)), chevrons->width);

  /* A line that folds back would leave crumbs where the halves meet. */
  if (on_upper && on_lower && spv_profile_runs_alike(line->profile) && !spv_line_folds_back(line->profile))
    lower = spv_path_transform(upper, spv_transform_turn(0, across));
  else
    lower = lay_limb(chevrons, on_lower ? line : &plain, outline, apex + chevrons->thick, 1);
  g_autoptr(SpvPath) back = spv_path_reverse(lower);

  spv_path_builder_join(limb, upper);
  spv_path_builder_join(limb, back);
  spv_path_builder_close(limb);
  g_autoptr(SpvPath) right = spv_path_builder_build(limb);
  spv_add_mirrored(builder, right, 0);
}

/* The two edges of each limb. */
static void
add_lines(const Chevrons *chevrons, const SpvOutline *outline, double apex, guint number, SpvDraft *draft) {
  double reach = spv_outline_width(outline) + spv_outline_height(outline) + fabs(apex);

  for (guint i = 0; i < 4; i++) {
    SpvPoint from = { 0, apex + (i < 2 ? 0 : chevrons->thick) };
    SpvPoint down = { (i % 2 == 0 ? -1 : 1) * sin(chevrons->half), cos(chevrons->half) };
    spv_draft_add_line(draft, SPV_LINE_DIVISION, number + i, from,
                       spv_point_add(from, spv_point_scale(down, reach)));
  }
}

/* Along the middle of both limbs, through the point where that lies inside the panel. */
static void
add_spines(const Chevrons *chevrons, const SpvOutline *outline, double apex, GPtrArray *spines) {
  SpvAxis axis = { { 0, apex + chevrons->thick / 2 }, { sin(chevrons->half), cos(chevrons->half) } };
  SpvBox chord;

  if (!spv_axis_bounds(axis, outline, 0, 0, &chord) || !(chord.x1 > 0))
    return;
  SpvPoint foot = spv_axis_point(axis, chord.x1, 0), other = { -foot.x, foot.y };
  if (chord.x0 <= 0) {
    SpvPoint bent[3] = { other, axis.at, foot };
    g_ptr_array_add(spines, spv_track_new(bent, 3, FALSE));
    return;
  }
  SpvPoint head = spv_axis_point(axis, chord.x0, 0);
  spv_spines_add(spines, other, spv_point(-head.x, head.y));
  spv_spines_add(spines, head, foot);
}

/* An embattled line stands on the upper edge only: Fox-Davies pp. 93, 108. */
void
spv_lay_chevron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  Chevrons chevrons = chevrons_of(pattern, outline);
  /* About as long as a limb shows. */
  double span = spv_outline_width(outline) / 2 / sin(chevrons.half);
  SpvLine line = spv_line_on_band(pattern, outline, span, chevrons.width);
  SpvBandEdges usual = line.profile == SPV_PROFILE_EMBATTLED ? SPV_EDGES_FIRST : SPV_EDGES_BOTH;
  SpvBandEdges edges = spv_lay_edges(pattern, outline, usual);
  SpvPathBuilder *builder = spv_path_builder_new();
  GPtrArray *spines = spv_spines_new();

  for (guint i = 0; chevrons.width > 0 && i < chevrons.n; i++) {
    double apex = chevrons.apex + i * chevrons.pitch;
    add_chevron(&chevrons, &line, edges, outline, apex, builder);
    add_lines(&chevrons, outline, apex, 4 * i + 1, draft);
    add_spines(&chevrons, outline, apex, spines);
  }
  draft->area[0] = spv_path_builder_build(builder);
  draft->frame = spv_frame_of_limbs(outline, spines, chevrons.width);
}
