/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of findings share: finding them, holding them to their words, and small designs. Include
 * cmocka.h first. */
#pragma once

#include <math.h>
#include <string.h>

#include "check/check.h"
#include "guide/design.h"

#define assert_close(a, b, within) assert_true(fabs((a) - (b)) < (within))

/* A width is measured to within 0.002 mm on a curve that is flattened to within 0.001 mm on either side. */
#define MEASURED 0.005

#define ARGENT 0
#define SABLE 2

static inline GPtrArray *
findings_of(const SpvScheme *scheme) {
  g_autoptr(GError) error = NULL;
  GPtrArray *findings = spv_check_panel(scheme, 0, NULL, &error);

  assert_null(error);
  assert_non_null(findings);
  return findings;
}

static inline const SpvFinding *
nth(const GPtrArray *findings, guint index) {
  assert_true(index < findings->len);
  return g_ptr_array_index(findings, index);
}

static inline guint
count_warnings(const GPtrArray *findings) {
  guint n = 0;

  for (guint i = 0; i < findings->len; i++)
    n += nth(findings, i)->severity == SPV_SEVERITY_WARNING;
  return n;
}

static inline void
assert_says(const SpvFinding *finding, const SpvScheme *scheme, const char *message, const char *remedy) {
  g_autofree char *said = spv_finding_message(finding, scheme);
  g_autofree char *advice = spv_finding_remedy(finding, scheme);

  assert_string_equal(said, message);
  if (remedy == NULL)
    assert_null(advice);
  else
    assert_string_equal(advice, remedy);
}

/* That carrying out the remedy of FINDING leaves no warning on the panel. */
static inline void
assert_mends(const SpvFinding *finding, const SpvScheme *scheme) {
  g_autoptr(SpvScheme) mended = NULL;
  g_autoptr(GPtrArray) after = NULL;

  assert_true(finding->has_remedy);
  mended = spv_finding_apply(finding, scheme);
  after = findings_of(mended);
  assert_int_equal(count_warnings(after), 0);
}

/* SCHEME with measure KEY of layer LAYER set to VALUE. */
static inline SpvScheme *
with(const SpvScheme *scheme, guint layer, const char *key, SpvUnit unit, double value) {
  SpvLayer *changed = design_set(spv_layer_ref(scheme->panels[0]->layers[layer]), key, unit, value);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], layer, changed);

  spv_layer_unref(changed);
  return spv_scheme_with_panel(scheme, 0, panel);
}

static inline guint
count_warnings_with(const SpvScheme *scheme, guint layer, const char *key, SpvUnit unit, double value) {
  g_autoptr(SpvScheme) changed = with(scheme, layer, key, unit, value);
  g_autoptr(GPtrArray) findings = findings_of(changed);

  return count_warnings(findings);
}

static inline SpvLayer *
columns_of(int columns) {
  return design_set(spv_layer_new("check", SPV_PATTERN_CHECK, "argent", "sable"), "columns", SPV_UNIT_PLAIN,
                    columns);
}

static inline SpvLayer *
stripes_of(SpvPatternKind kind, int pieces) {
  return design_set(spv_layer_new("stripes", kind, "argent", "sable"), "pieces", SPV_UNIT_PLAIN, pieces);
}

static inline SpvLayer *
points_of(int points, double depth, double width) {
  SpvLayer *layer = spv_layer_new("border", SPV_PATTERN_JAGGED_BORDER, "sable", NULL);

  layer = design_set(layer, "points", SPV_UNIT_PLAIN, points);
  layer = design_set(layer, "depth", SPV_UNIT_MM, depth);
  return design_set(layer, "width", SPV_UNIT_MM, width);
}

static inline SpvLayer *
roundel_of(const char *id, double across, double down, double diameter) {
  SpvLayer *layer = spv_layer_new(id, SPV_PATTERN_ROUNDEL, "sable", NULL);

  layer = design_set(layer, "across", SPV_UNIT_MM, across);
  layer = design_set(layer, "down", SPV_UNIT_MM, down);
  return design_set(layer, "diameter", SPV_UNIT_MM, diameter);
}
