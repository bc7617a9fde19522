/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words that choose what goes on sheets. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "sheet/sheet.h"

static void
the_preset_is_everything_in_colour_on_a4(void **state) {
  SpvSheetOptions options = spv_sheet_options_preset();

  (void) state;
  assert_string_equal(options.paper->key, "a4");
  assert_int_equal(options.content, SPV_CONTENT_ALL);
  assert_false(options.hatch);
  assert_null(options.date);
  assert_null(options.panels);
}

static void
each_format_is_found_by_its_key(void **state) {
  static const SpvFormat formats[] = { SPV_FORMAT_PNG, SPV_FORMAT_PDF, SPV_FORMAT_SVG };
  SpvFormat format = SPV_FORMAT_PNG;

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(formats); i++) {
    assert_true(spv_format_from_key(spv_format_key(formats[i]), &format));
    assert_int_equal(format, formats[i]);
  }
  assert_false(spv_format_from_key("PNG", &format));
  assert_false(spv_format_from_key("", &format));
  assert_int_equal(format, SPV_FORMAT_SVG);
}

static void
a_list_gives_its_contents(void **state) {
  static const struct {
    const char *list;
    guint content;
  } rows[] = {
    { "templates", SPV_CONTENT_TEMPLATES },
    { "offsets,templates", SPV_CONTENT_TEMPLATES | SPV_CONTENT_OFFSETS },
    { " enlargements , offsets ", SPV_CONTENT_ENLARGEMENTS | SPV_CONTENT_OFFSETS },
    { "templates,enlargements,offsets", SPV_CONTENT_ALL },
    { "offsets,offsets", SPV_CONTENT_OFFSETS },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
    guint content = 0;
    assert_true(spv_content_from_list(rows[i].list, &content, NULL));
    assert_int_equal(content, rows[i].content);
  }
}

static void
a_wrong_list_is_named_and_changes_nothing(void **state) {
  static const char *const lists[][2] = { { "", "No content" },
                                          { "templates,", "\"\"" },
                                          { "offsets,stencils", "\"stencils\"" },
                                          { "Offsets", "\"Offsets\"" } };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(lists); i++) {
    g_autoptr(GError) error = NULL;
    guint content = 99;
    assert_false(spv_content_from_list(lists[i][0], &content, &error));
    assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION));
    assert_non_null(strstr(error->message, lists[i][1]));
    assert_int_equal(content, 99);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_preset_is_everything_in_colour_on_a4),
    cmocka_unit_test(each_format_is_found_by_its_key),
    cmocka_unit_test(a_list_gives_its_contents),
    cmocka_unit_test(a_wrong_list_is_named_and_changes_nothing),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
