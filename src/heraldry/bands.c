/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries that are straight bands: chief and fillet; fess, pale and bend with all that is narrower. */
#include "heraldry/edges-private.h"

/* How wide each is when the painter gives no width, as a fraction of the panel's height (level bands) or
 * width. Where the handbooks disagree, what is taken is said beside it. */
static const struct {
  SpvPatternKind kind;
  double plain, charged;
} widths[] = {
  /* A third: Kent no. 5; Fox-Davies p. 117 ("seldom drawn so"). */
  { SPV_PATTERN_FESS, 1.0 / 3, 1.0 / 3 },
  /* A fifth: Kent no. 9; Cussans p. 15; Boutell. */
  { SPV_PATTERN_BAR, 1.0 / 5, 1.0 / 5 },
  /* Half a bar: Cussans p. 15. */
  { SPV_PATTERN_CLOSET, 1.0 / 10, 1.0 / 10 },
  /* A quarter of a bar: Cussans p. 15; Parker. Fox-Davies p. 119 and Boutell make it a half. */
  { SPV_PATTERN_BARRULET, 1.0 / 20, 1.0 / 20 },
  /* Pairs of barrulets: Fox-Davies pp. 119-120. */
  { SPV_PATTERN_BAR_GEMEL, 1.0 / 20, 1.0 / 20 },
  /* A third: Kent no. 3; Cussans p. 13. Half of it, and a quarter: Boutell ch. VI. */
  { SPV_PATTERN_PALE, 1.0 / 3, 1.0 / 3 },
  { SPV_PATTERN_PALLET, 1.0 / 6, 1.0 / 6 },
  { SPV_PATTERN_ENDORSE, 1.0 / 12, 1.0 / 12 },
  /* A fifth, a third when charged: Kent no. 4; Cussans p. 13. The bend sinister likewise: Manual of Heraldry,
   * 5th ed., ch. IV. */
  { SPV_PATTERN_BEND, 1.0 / 5, 1.0 / 3 },
  { SPV_PATTERN_BEND_SINISTER, 1.0 / 5, 1.0 / 3 },
  /* Half a bend: Fox-Davies p. 113; Manual of Heraldry, 5th ed., ch. IV. */
  { SPV_PATTERN_BENDLET, 1.0 / 10, 1.0 / 10 },
  { SPV_PATTERN_SCARPE, 1.0 / 10, 1.0 / 10 },
};

/* Bands side by side, each of one or two bars. */
typedef struct {
  guint n;       /* bands */
  guint bars;    /* in each */
  double width;  /* of a bar */
  double gap;    /* between the bars of one band */
  double apart;  /* between bands */
  double middle; /* of them all, across the axis */
} Group;

static double
band_width(const Group *group) {
  return group->bars * group->width + (group->bars - 1) * group->gap;
}

/* The usual width on a panel with BASIS mm for the fractions and EXTENT mm for all of them together: where
 * there are several, no wider than the spaces between. Fox-Davies p. 120: five, seven or nine level pieces
 * are two, three or four bars. */
static double
usual_width(const SpvPattern *pattern, const SpvOutline *outline, double basis, double extent, guint n,
            guint bars_and_gaps) {
  gboolean charged = spv_lay_charged(pattern, outline);
  double fraction = 0;

  for (gsize i = 0; i < G_N_ELEMENTS(widths); i++)
    if (widths[i].kind == pattern->kind)
      fraction = charged ? widths[i].charged : widths[i].plain;
  return n > 1 ? MIN(fraction * basis, extent / ((2 * n + 1) * bars_and_gaps)) : fraction * basis;
}

/* Where the middle of several bands that are spread evenly over the panel lies across AXIS: in the middle of
 * the panel's reach that way, shifted as AXIS is. It is off the axis where the panel is not alike on both
 * sides of that, as a shield under a bend. */
static double
middle_of_spread(const SpvOutline *outline, SpvAxis axis, SpvBox all) {
  SpvPoint shift = spv_point_subtract(axis.at, spv_point(0, spv_outline_height(outline) / 2));

  return (all.y0 + all.y1) / 2 + spv_point_cross(axis.along, shift);
}

/* N bands across AXIS: as wide, and as far apart, as PATTERN says, or evenly spread over the panel. */
static Group
group_of(const SpvPattern *pattern, const SpvOutline *outline, SpvAxis axis, double basis) {
  Group group = { .n = (guint) spv_lay_measure(pattern, outline, "number", 1), .bars = 1 };
  gboolean gemel = pattern->kind == SPV_PATTERN_BAR_GEMEL;
  SpvBox all;

  spv_axis_bounds(axis, outline, -INFINITY, INFINITY, &all);
  double extent = spv_box_height(all);
  group.bars = gemel ? 2 : 1;
  group.width = spv_lay_measure(pattern, outline, "width",
                                usual_width(pattern, outline, basis, extent, group.n, gemel ? 3 : 1));
  group.gap = gemel ? spv_lay_measure(pattern, outline, "gap", group.width) : 0;
  group.apart = spv_lay_measure(pattern, outline, "apart", -1);
  if (group.apart < 0) {
    group.apart = MAX(0, (extent - group.n * band_width(&group)) / (group.n + 1));
    group.middle = group.n > 1 ? middle_of_spread(outline, axis, all) : 0;
  }
  return group;
}

/* Fess, bar and what is narrower bear an embattled line on the upper edge only: Fox-Davies pp. 93, 108. */
static SpvBandEdges
usual_edges(const SpvPattern *pattern, SpvProfile profile) {
  if (pattern->kind >= SPV_PATTERN_FESS && pattern->kind <= SPV_PATTERN_BAR_GEMEL)
    return profile == SPV_PROFILE_EMBATTLED ? SPV_EDGES_FIRST : SPV_EDGES_BOTH;
  return SPV_EDGES_BOTH;
}

/* A band's middle, from where it enters the panel to where it leaves it. */
static void
add_spine(const SpvBand *band, const SpvOutline *outline, GPtrArray *spines) {
  double v = (band->v0 + band->v1) / 2;
  SpvBox chord;

  if (spv_axis_bounds(band->axis, outline, v, v, &chord))
    spv_spines_add(spines, spv_axis_point(band->axis, chord.x0, v), spv_axis_point(band->axis, chord.x1, v));
}

/* Lays GROUP along AXIS. One bar alone is a frame of its own; several are limbs. */
static void
lay_group(const SpvPattern *pattern, const SpvOutline *outline, SpvAxis axis, const Group *group,
          SpvDraft *draft) {
  SpvPathBuilder *builder = spv_path_builder_new();
  double pitch = band_width(group) + group->apart;
  double first = group->middle - (group->n * pitch - group->apart) / 2;
  GPtrArray *spines = spv_spines_new();

  for (guint i = 0; group->width > 0 && i < group->n * group->bars; i++) {
    double v = first + i / group->bars * pitch + i % group->bars * (group->width + group->gap);
    SpvBand band = spv_band_new(axis, outline, v, v + group->width, v + group->width / 2);
    band.line = spv_line_on_band(pattern, outline, band.high - band.low, group->width);
    band.edges = spv_lay_edges(pattern, outline, usual_edges(pattern, band.line.profile));
    spv_band_add(&band, builder);
    spv_band_add_lines(&band, 2 * i + 1, draft);
    add_spine(&band, outline, spines);
    if (group->n * group->bars == 1)
      draft->frame = spv_band_frame(&band, outline);
  }
  draft->area[0] = spv_path_builder_build(builder);
  if (group->n * group->bars > 1)
    draft->frame = spv_frame_of_limbs(outline, spines, group->width);
  else
    g_ptr_array_unref(spines);
}

void
spv_lay_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double shift = spv_lay_measure(pattern, outline, "shift", 0);
  SpvAxis axis = { { 0, spv_outline_height(outline) / 2 + shift }, { 1, 0 } };
  Group group = group_of(pattern, outline, axis, spv_outline_height(outline));

  lay_group(pattern, outline, axis, &group, draft);
}

/* Its first edge is the dexter one. */
void
spv_lay_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvAxis axis = { { spv_lay_measure(pattern, outline, "shift", 0), 0 }, { 0, -1 } };
  Group group = group_of(pattern, outline, axis, spv_outline_width(outline));

  lay_group(pattern, outline, axis, &group, draft);
}

/* The middle of a bend; its first edge is the upper one. A bend sinister falls to the other side. */
static SpvAxis
bend_axis(const SpvPattern *pattern, const SpvOutline *outline) {
  gboolean sinister = pattern->kind == SPV_PATTERN_BEND_SINISTER || pattern->kind == SPV_PATTERN_SCARPE;
  double diagonal = atan2(spv_outline_height(outline), spv_outline_width(outline));
  double angle = spv_lay_measure(pattern, outline, "angle", diagonal);

  return (SpvAxis){ { spv_lay_measure(pattern, outline, "shift", 0), spv_outline_height(outline) / 2 },
                    { cos(angle), sinister ? -sin(angle) : sin(angle) } };
}

void
spv_lay_bend(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvAxis axis = bend_axis(pattern, outline);
  Group group = group_of(pattern, outline, axis, spv_outline_width(outline));

  lay_group(pattern, outline, axis, &group, draft);
}

/* A pair, APART from each other. */
void
spv_lay_cotise(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  Group pair = { .n = 1,
                 .bars = 2,
                 .width = spv_lay_measure(pattern, outline, "width", 0),
                 .gap = spv_lay_measure(pattern, outline, "apart", 0) };

  lay_group(pattern, outline, bend_axis(pattern, outline), &pair, draft);
}

/* Couped: it ends square, before it reaches the edge. */
void
spv_lay_baton(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", 0);
  double length = spv_lay_measure(pattern, outline, "length", 0);
  SpvBand band = { .axis = bend_axis(pattern, outline),
                   .v0 = -width / 2,
                   .v1 = width / 2,
                   .u0 = -length / 2,
                   .u1 = length / 2,
                   .low = -length / 2,
                   .high = length / 2,
                   .line = spv_line_on_band(pattern, outline, length, width),
                   .edges = spv_lay_edges(pattern, outline, SPV_EDGES_BOTH) };
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_band_add(&band, builder);
  draft->area[0] = spv_path_builder_build(builder);
  if (!(width > 0 && length > 0))
    return;
  spv_band_add_lines(&band, 1, draft);
  draft->frame = spv_frame_new_box(spv_axis_point(band.axis, 0, band.v0),
                                   atan2(band.axis.along.y, band.axis.along.x), length, width);
}

/* Down from above the panel. Its line is on the lower edge: Fox-Davies pp. 93, 108. */
void
spv_lay_chief(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double depth = spv_lay_measure(pattern, outline, "depth", 0);
  SpvBox box = spv_lay_box(outline);
  SpvAxis axis = { { 0, 0 }, { 1, 0 } };
  SpvBand band = spv_band_new(axis, outline, box.y0, depth, depth);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (depth > 0) {
    band.line = spv_line_of(pattern, outline);
    band.edges = SPV_EDGES_SECOND;
    spv_band_add(&band, builder);
    spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_point(band.u0, depth), spv_point(band.u1, depth));
    draft->frame = spv_band_frame(&band, outline);
  }
  draft->area[0] = spv_path_builder_build(builder);
}

/* The lowest part of a chief, so its line is on the lower edge, too. */
void
spv_lay_fillet(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", 0);
  double level = spv_lay_measure(pattern, outline, "level", 0);
  SpvAxis axis = { { 0, 0 }, { 1, 0 } };
  SpvBand band = spv_band_new(axis, outline, level - width, level, level);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (width > 0) {
    band.line = spv_line_on_band(pattern, outline, band.high - band.low, width);
    band.edges = spv_lay_edges(pattern, outline, SPV_EDGES_SECOND);
    spv_band_add(&band, builder);
    spv_band_add_lines(&band, 1, draft);
    draft->frame = spv_band_frame(&band, outline);
  }
  draft->area[0] = spv_path_builder_build(builder);
}
