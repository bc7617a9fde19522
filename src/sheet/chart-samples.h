/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is on the sampler, before it is laid on pages. */
#pragma once

#include "scheme/scheme.h"

typedef enum {
  SPV_SAMPLES_LINES,
  SPV_SAMPLES_DIVISIONS,
  SPV_SAMPLES_VARIED,
  SPV_SAMPLES_ORDINARIES,
  SPV_SAMPLES_BORDERS,
  SPV_SAMPLES_FURS,
  SPV_SAMPLES_CHARGES,
  SPV_SAMPLES_ARRANGEMENTS,
  SPV_SAMPLES_EDGES,    /* ordinaries and borders with lines of partition */
  SPV_SAMPLES_TOGETHER, /* what layers can do to one another */
  SPV_SAMPLES_OWN
} SpvSampleGroup;
#define SPV_N_SAMPLE_GROUPS (SPV_SAMPLES_OWN + 1)

/* One plate of the sampler. */
typedef struct {
  SpvSampleGroup group;
  guint panel;     /* index into the samples' scheme */
  char *word;      /* translated */
  double smallest; /* mm: a charge's smallest size; 0 for what is no charge */
} SpvSample;

typedef struct {
  SpvScheme *scheme;
  GPtrArray *samples; /* SpvSample, group by group */
} SpvSamples;

/* The size of each plate, mm. */
#define SPV_SAMPLE_WIDTH 15.0
#define SPV_SAMPLE_HEIGHT 17.8

/* Every sample; the smallest sizes are for a line of FINEST_LINE mm. */
SpvSamples *spv_samples_new(double finest_line);
void spv_samples_free(SpvSamples *samples);
/* "Lines of partition": translated. */
const char *spv_samples_heading(SpvSampleGroup group);
/* What a heading says further, in smaller words, or NULL. */
const char *spv_samples_note(SpvSampleGroup group);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvSamples, spv_samples_free)
