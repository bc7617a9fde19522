/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small scheme of the invented coast for the window's tests: two panels, three tinctures, a design
 * on the first. */
#pragma once

#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <glib/gstdio.h>

#include "scheme/scheme.h"

/* Runs the default context until CONDITION holds; fails after MS milliseconds. */
static inline gboolean
spv_test_late(gpointer late) {
  *(gboolean *) late = TRUE;
  return G_SOURCE_REMOVE;
}
#define WAIT_FOR(condition, ms)                                                                              \
  do {                                                                                                       \
    gboolean late_ = FALSE;                                                                                  \
    guint timer_ = g_timeout_add((ms), spv_test_late, &late_);                                               \
    while (!(condition) && !late_)                                                                           \
      g_main_context_iteration(NULL, TRUE);                                                                  \
    if (!late_)                                                                                              \
      g_source_remove(timer_);                                                                               \
    assert_true(condition);                                                                                  \
  } while (0)

static inline SpvPanel *
a_panel(const char *id, const char *name, SpvPoint place) {
  SpvOutlineSpec outline;
  spv_outline_spec_preset(SPV_OUTLINE_KNEEPAD, 3.4, 4.1, &outline);
  SpvSurface surface = { 0 };
  return spv_panel_new(id, name, SPV_SIDE_CENTRE, &outline, &surface, place);
}

/* "Heron Ferry Guild": a kneepad with a field and a check, and a bare one. Free with spv_scheme_unref(). */
static inline SpvScheme *
a_scheme(void) {
  static const SpvTincture tinctures[] = {
    { "argent", "bone", { 0xed, 0xe6, 0xd2 }, SPV_HATCH_ARGENT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "sable", "soot", { 0x33, 0x36, 0x4a }, SPV_HATCH_SABLE, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "vert", "deep sea green", { 0x21, 0x5e, 0x57 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 },
  };
  g_autoptr(SpvScheme) bare = spv_scheme_new("Heron Ferry Guild", "Two kneepads");
  SpvScheme *scheme = spv_scheme_ref(bare);
  for (gsize i = 0; i < G_N_ELEMENTS(tinctures); i++) {
    SpvScheme *more = spv_scheme_with_tincture_added(scheme, &tinctures[i]);
    spv_scheme_unref(scheme);
    scheme = more;
  }
  g_autoptr(SpvPanel) first = a_panel("kneepad-dexter", "kneepad, dexter", spv_point(-4, 0));
  g_autoptr(SpvPanel) second = a_panel("kneepad-sinister", "kneepad, sinister", spv_point(4, 0));
  g_autoptr(SpvLayer) field = spv_layer_new("field", SPV_PATTERN_FIELD, "argent", NULL);
  g_autoptr(SpvLayer) check = spv_layer_new("check", SPV_PATTERN_CHECK, "sable", NULL);
  SpvLayer *layers[] = { field, check };
  g_autoptr(SpvPanel) painted = spv_panel_with_layers(first, layers, 2);
  SpvPanel *panels[] = { painted, second };
  SpvScheme *whole = spv_scheme_with_panels(scheme, panels, 2);
  spv_scheme_unref(scheme);
  return whole;
}

/* A folder of its own for a test; remove_folder() takes it away. */
static inline char *
a_folder(void) {
  char *folder = g_dir_make_tmp("spolvero-test-XXXXXX", NULL);
  assert_non_null(folder);
  return folder;
}

static inline void
remove_folder(const char *folder) {
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  const char *name;
  while (dir && (name = g_dir_read_name(dir))) {
    g_autofree char *path = g_build_filename(folder, name, NULL);
    if (g_file_test(path, G_FILE_TEST_IS_DIR))
      remove_folder(path);
    else
      g_unlink(path);
  }
  g_rmdir(folder);
}

/* How many files lie in FOLDER. */
static inline guint
count_files(const char *folder) {
  guint n = 0;
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  while (dir && g_dir_read_name(dir))
    n++;
  return n;
}
