/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A measure as the painter gave it, with its unit, and what a kind of pattern says of each of
 * its measures. */
#pragma once

#include <glib.h>

typedef enum {
  SPV_UNIT_AUTO,     /* not given: the pattern's own choice */
  SPV_UNIT_PLAIN,    /* a count, or the index of a choice */
  SPV_UNIT_MM,       /* millimetres on the panel */
  SPV_UNIT_RELATIVE, /* a fraction of the panel's measure that the spec's basis names */
  SPV_UNIT_DEGREES
} SpvUnit;

typedef struct {
  SpvUnit unit;
  double value;
} SpvMeasure;

typedef enum {
  SPV_MEASURE_COUNT,  /* a whole number: AUTO or PLAIN */
  SPV_MEASURE_LENGTH, /* AUTO, MM or RELATIVE */
  SPV_MEASURE_ANGLE,  /* AUTO or DEGREES */
  SPV_MEASURE_CHOICE  /* AUTO or PLAIN, an index into the choices */
} SpvMeasureType;

typedef enum { SPV_BASIS_NONE, SPV_BASIS_WIDTH, SPV_BASIS_HEIGHT, SPV_BASIS_SMALLER } SpvBasis;

typedef struct {
  const char *key;   /* in the file */
  const char *label; /* on screen, untranslated: mark with N_(), show through _() */
  const char *hint;  /* one sentence, likewise */
  SpvMeasureType type;
  SpvBasis basis;             /* LENGTH: what a relative value is a fraction of */
  SpvMeasure preset;          /* what a new layer starts with; AUTO when the pattern works it out */
  double min, max;            /* COUNT: whole numbers; LENGTH: mm; ANGLE: degrees */
  const char *const *choices; /* CHOICE: NULL-terminated keys, also the labels */
  const char *when;           /* the key of a CHOICE without which this has no effect, or NULL */
} SpvMeasureSpec;

/* The range of a relative LENGTH: as wide as the panel twice over, and on both sides where the spec's MIN is
 * below 0. */
#define SPV_RELATIVE_MAX 2.0

gboolean spv_measure_equal(SpvMeasure a, SpvMeasure b);

/* Whether VALUE has a unit and a number that SPEC allows. A finite number in range; counts and
 * choices whole. */
gboolean spv_measure_is_valid(const SpvMeasureSpec *spec, SpvMeasure value);

/* VALUE in the core's units: mm, radians, a count or a choice's index, on a panel of WIDTH by HEIGHT mm. An
 * AUTO value gives the preset's meaning, and FALLBACK where the preset is AUTO too. */
double spv_measure_resolve(const SpvMeasureSpec *spec, SpvMeasure value, double width, double height,
                           double fallback);
