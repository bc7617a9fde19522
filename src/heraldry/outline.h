/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The panel's edge, flat: parametric families, all symmetrical about the vertical centre line. The datum (0,
 * 0) is where the centre line meets the top edge. The outline runs clockwise on screen from the datum: along
 * the chief to the viewer's right (the wearer's sinister), down, along the base to the viewer's left,
 * and up. */
#pragma once

#include "geometry/shape.h"
#include "geometry/track.h"

typedef enum {
  SPV_OUTLINE_ROUND_PAD, /* an ellipse, with a straight lower rim if wanted */
  SPV_OUTLINE_KNEEPAD,   /* arched top edge, swelling sides, blunt base */
  SPV_OUTLINE_PLATE,     /* heater shield: straight sides, then arcs that meet in a point */
  SPV_OUTLINE_GREAVE,    /* narrowing from the top to the foot */
  SPV_OUTLINE_RECTANGLE, /* rounded corners if wanted */
  SPV_OUTLINE_STRIP,     /* a plain band */
  SPV_OUTLINE_DISC,      /* a circle: its height is its width */
  SPV_OUTLINE_BANNER     /* hung from its top edge, with two tails if wanted */
} SpvOutlineFamily;
#define SPV_N_OUTLINE_FAMILIES 8

/* The most own measures that a family has. */
#define SPV_OUTLINE_MEASURES 2

typedef struct {
  const char *key;   /* in the file */
  const char *label; /* on screen, untranslated */
  const char *hint;
} SpvOutlineMeasure;

typedef struct {
  const char *key;
  const char *label;
  guint n_own;
  SpvOutlineMeasure own[SPV_OUTLINE_MEASURES];
} SpvOutlineInfo;

/* Everything that fixes an outline; mm. */
typedef struct {
  SpvOutlineFamily family;
  double width, height;
  double own[SPV_OUTLINE_MEASURES]; /* in the order of the family's info; unused ones 0 */
} SpvOutlineSpec;

/* The sides, as the wearer bears them: dexter is the viewer's left. */
typedef enum { SPV_EDGE_CHIEF, SPV_EDGE_SINISTER, SPV_EDGE_BASE, SPV_EDGE_DEXTER } SpvEdge;
#define SPV_N_EDGES 4

#define SPV_OUTLINE_MIN_MM 0.5
#define SPV_OUTLINE_MAX_MM 500.0

typedef struct _SpvOutline SpvOutline;

const SpvOutlineInfo *spv_outline_info(SpvOutlineFamily family);
gboolean spv_outline_family_from_key(const char *key, SpvOutlineFamily *family);
const char *spv_edge_key(SpvEdge edge);

/* Whether the measures go together: all finite, width and height from SPV_OUTLINE_MIN_MM to
 * SPV_OUTLINE_MAX_MM, own measures as the family allows. Sets ERROR (SPV_OUTLINE_ERROR) with which one, and
 * what would do. */
gboolean spv_outline_spec_check(const SpvOutlineSpec *spec, GError **error);

/* What the family's own measures are for a panel of WIDTH by HEIGHT mm when the painter has not measured
 * them. */
void spv_outline_spec_preset(SpvOutlineFamily family, double width, double height, SpvOutlineSpec *spec);

/* SPEC must have passed spv_outline_spec_check(). */
SpvOutline *spv_outline_new(const SpvOutlineSpec *spec);
SpvOutline *spv_outline_ref(const SpvOutline *outline);
void spv_outline_unref(SpvOutline *outline);

double spv_outline_width(const SpvOutline *outline);
double spv_outline_height(const SpvOutline *outline);
SpvBox spv_outline_bounds(const SpvOutline *outline);
/* The analytic curve, for drawing. */
const SpvPath *spv_outline_path(const SpvOutline *outline);
/* The flattened curve, closed, clockwise, 0 at the datum. */
const SpvTrack *spv_outline_track(const SpvOutline *outline);
/* The flattened curve as an area. */
const SpvShape *spv_outline_shape(const SpvOutline *outline);

/* The part of the track that is EDGE, from S0 to S1 (the chief starts below 0: it holds the datum). S1 is S0
 * where no part of the outline faces that way, as on a greave so low that its slanting sides all
 * face down. */
void spv_outline_edge(const SpvOutline *outline, SpvEdge edge, double *s0, double *s1);
/* Which edge the place S along the track lies on. */
SpvEdge spv_outline_edge_at(const SpvOutline *outline, double s);
/* How far S lies along its edge as a painter reads it: the chief and the base from their dexter end, the
 * sides from their upper end; mm. */
double spv_outline_along_edge(const SpvOutline *outline, double s);
/* How far S lies from the datum along the outline by the shorter way: positive towards the wearer's sinister;
 * mm. */
double spv_outline_from_datum(const SpvOutline *outline, double s);

typedef enum { SPV_OUTLINE_ERROR_RANGE, SPV_OUTLINE_ERROR_MISFIT } SpvOutlineError;
#define SPV_OUTLINE_ERROR (spv_outline_error_quark())
GQuark spv_outline_error_quark(void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvOutline, spv_outline_unref)
