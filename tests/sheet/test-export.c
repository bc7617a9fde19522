/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sheets as files: names, progress, cancelling, the same bytes, and nothing half-written whatever fails. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <sys/resource.h>

#include "coast.h"
#include "png-chunks.h"
#include "sheet/sheet.h"

#define DPI 150

static const SpvFormat formats[] = { SPV_FORMAT_PNG, SPV_FORMAT_PDF, SPV_FORMAT_SVG };

static void
remove_folder(const char *path) {
  GDir *dir = g_dir_open(path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name(dir)) != NULL) {
    g_autofree char *child = g_build_filename(path, name, NULL);
    if (g_file_test(child, G_FILE_TEST_IS_DIR))
      remove_folder(child);
    else
      g_unlink(child);
  }
  if (dir != NULL)
    g_dir_close(dir);
  g_rmdir(path);
}

static int
make_folder(void **state) {
  *state = g_dir_make_tmp("spolvero-sheets-XXXXXX", NULL);
  return *state == NULL ? -1 : 0;
}

static int
drop_folder(void **state) {
  remove_folder(*state);
  g_free(*state);
  return 0;
}

/* How many files FOLDER holds, hidden ones too. */
static guint
count_files(const char *folder) {
  GDir *dir = g_dir_open(folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name(dir) != NULL)
    n++;
  if (dir != NULL)
    g_dir_close(dir);
  return n;
}

static SpvSheets *
sheets_titled(const char *title) {
  g_autoptr(SpvScheme) wardens = coast_wardens();
  g_autoptr(SpvScheme) scheme = spv_scheme_with_title(wardens, title);
  SpvSheetOptions options = spv_sheet_options_preset();

  return spv_sheets_new(scheme, &options, NULL, NULL);
}

/* Sheets of one small panel: quick to write. */
static SpvSheets *
small_sheets(const char *title) {
  g_autoptr(SpvScheme) disc = coast_disc(12);
  g_autoptr(SpvScheme) scheme = spv_scheme_with_title(disc, title);
  SpvSheetOptions options = spv_sheet_options_preset();

  options.paper = spv_paper_from_key("a5");
  return spv_sheets_new(scheme, &options, NULL, NULL);
}

static void
each_sheet_is_a_file_with_its_number(void **state) {
  g_autofree char *folder = g_build_filename(*state, "new", "folder", NULL);
  g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray)
      paths = spv_sheets_export(sheets, folder, SPV_FORMAT_PNG, DPI, NULL, NULL, NULL, &error);

  assert_null(error);
  assert_true(spv_sheets_count(sheets) > 1);
  assert_int_equal(paths->len, spv_sheets_count(sheets));
  assert_int_equal(count_files(folder), paths->len);
  for (guint i = 0; i < paths->len; i++) {
    g_autofree char *name = g_strdup_printf("saltmarsh-wardens-%u.png", i + 1);
    g_autofree char *expected = g_build_filename(folder, name, NULL);
    assert_string_equal(g_ptr_array_index(paths, i), expected);
    assert_true(g_file_test(expected, G_FILE_TEST_IS_REGULAR));
  }
}

static void
a_pdf_holds_all_the_sheets(void **state) {
  g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");
  g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, *state, SPV_FORMAT_PDF, DPI, NULL, NULL, NULL, NULL);
  g_autofree char *expected = g_build_filename(*state, "saltmarsh-wardens.pdf", NULL);

  assert_int_equal(paths->len, 1);
  assert_string_equal(g_ptr_array_index(paths, 0), expected);
  assert_int_equal(count_files(*state), 1);
}

static void
any_title_makes_a_name_within_the_folder(void **state) {
  static const char *const titles[][2] = {
    { "Heron Ferry Guild", "heron-ferry-guild-1.svg" },
    { "../../tmp/x", "tmp-x-1.svg" },
    { "/", "sheet-1.svg" },
    { "...", "sheet-1.svg" },
    { "\u00c9t\u00e9 & Gr\u00fcn", "ete-grun-1.svg" },
    { "\u6e7f\u5730", "sheet-1.svg" },
    { "a\nb", "a-b-1.svg" },
    { "-- Pikes --", "pikes-1.svg" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS(titles); i++) {
    g_autoptr(SpvSheets) sheets = small_sheets(titles[i][0]);
    g_autoptr(GPtrArray)
        paths = spv_sheets_export(sheets, *state, SPV_FORMAT_SVG, DPI, NULL, NULL, NULL, NULL);
    g_autofree char *expected = g_build_filename(*state, titles[i][1], NULL);
    assert_non_null(paths);
    assert_string_equal(g_ptr_array_index(paths, 0), expected);
  }
}

static void
the_same_sheets_give_the_same_bytes(void **state) {
  for (gsize i = 0; i < G_N_ELEMENTS(formats); i++) {
    g_autofree char *texts[2] = { NULL, NULL };
    gsize lengths[2] = { 0, 0 };
    for (int j = 0; j < 2; j++) {
      g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");
      g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, *state, formats[i], DPI, NULL, NULL, NULL, NULL);
      assert_non_null(paths);
      assert_true(g_file_get_contents(g_ptr_array_index(paths, 0), &texts[j], &lengths[j], NULL));
      if (j == 0 && formats[i] == SPV_FORMAT_PDF)
        g_usleep(1100000); /* so that a time in the file would differ */
    }
    if (lengths[0] != lengths[1] || memcmp(texts[0], texts[1], lengths[0]) != 0)
      fail_msg("two %s files differ", spv_format_key(formats[i]));
    g_free(g_steal_pointer(&texts[1]));
  }
}

static void
the_png_says_what_it_is(void **state) {
  g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");
  g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, *state, SPV_FORMAT_PNG, DPI, NULL, NULL, NULL, NULL);
  char *bytes = NULL;
  gsize length = 0;

  assert_true(g_file_get_contents(g_ptr_array_index(paths, 0), &bytes, &length, NULL));
  g_autoptr(GByteArray) png = g_byte_array_new_take((guint8 *) bytes, length);
  g_autofree char *title = png_text(png, "tEXt", "Title");
  g_autofree char *software = png_text(png, "tEXt", "Software");
  g_autofree char *description = png_text(png, "iTXt", "Description"); /* a thin space isn't Latin-1 */
  assert_string_equal(title, "Lantern Company");
  assert_true(g_str_has_prefix(software, "Spolvero "));
  assert_non_null(strstr(description, "100\u2009%"));
}

/* The page's size in millimetres: A5, ISO 216. */
static void
the_svg_has_its_size_in_millimetres(void **state) {
  g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");
  g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, *state, SPV_FORMAT_SVG, DPI, NULL, NULL, NULL, NULL);
  g_autofree char *text = NULL;

  assert_true(g_file_get_contents(g_ptr_array_index(paths, 0), &text, NULL, NULL));
  assert_non_null(strstr(text, "width=\"148mm\" height=\"210mm\" viewBox=\"0 0 148 210\""));
}

typedef struct {
  GCancellable *cancellable;
  guint calls, cancel_at;
  double last;
} Watch;

static void
watch_progress(double fraction, gpointer data) {
  Watch *watch = data;

  assert_true(fraction >= watch->last && fraction <= 1 + 1e-12);
  watch->last = fraction;
  if (++watch->calls == watch->cancel_at)
    g_cancellable_cancel(watch->cancellable);
}

static void
progress_rises_to_one_in_every_format(void **state) {
  for (gsize i = 0; i < G_N_ELEMENTS(formats); i++) {
    g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");
    Watch watch = { NULL, 0, 0, 0 };
    g_autoptr(GPtrArray)
        paths = spv_sheets_export(sheets, *state, formats[i], DPI, NULL, watch_progress, &watch, NULL);
    assert_non_null(paths);
    assert_true(watch.calls >= spv_sheets_count(sheets));
    assert_true(fabs(watch.last - 1) < 1e-9);
  }
}

/* Whether each file in FOLDER is whole: a PNG ends with its IEND chunk. */
static void
assert_only_whole_pngs(const char *folder) {
  GDir *dir = g_dir_open(folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name(dir)) != NULL) {
    g_autofree char *path = g_build_filename(folder, name, NULL);
    g_autofree char *bytes = NULL;
    gsize length = 0;
    assert_true(g_str_has_suffix(name, ".png"));
    assert_true(g_file_get_contents(path, &bytes, &length, NULL));
    assert_true(length > 12 && memcmp(bytes + length - 8, "IEND", 4) == 0);
  }
  g_dir_close(dir);
}

static void
a_cancel_at_any_moment_leaves_whole_files_only(void **state) {
  g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");
  Watch whole = { NULL, 0, 0, 0 };
  g_autoptr(GPtrArray)
      all = spv_sheets_export(sheets, *state, SPV_FORMAT_PNG, DPI, NULL, watch_progress, &whole, NULL);

  for (guint at = 1; at < whole.calls; at += 5) {
    g_autofree char *folder = g_strdup_printf("%s/%u", (const char *) *state, at);
    g_autoptr(GCancellable) cancellable = g_cancellable_new();
    g_autoptr(GError) error = NULL;
    Watch watch = { cancellable, 0, at, 0 };
    assert_null(
        spv_sheets_export(sheets, folder, SPV_FORMAT_PNG, DPI, cancellable, watch_progress, &watch, &error));
    assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
    assert_int_equal(watch.calls, at);
    assert_true(count_files(folder) < all->len);
    assert_only_whole_pngs(folder);
  }
}

static void
a_cancelled_pdf_is_not_there(void **state) {
  g_autoptr(SpvSheets) sheets = sheets_titled("Saltmarsh Wardens");

  for (guint at = 1; at < spv_sheets_count(sheets); at++) {
    g_autoptr(GCancellable) cancellable = g_cancellable_new();
    g_autoptr(GError) error = NULL;
    Watch watch = { cancellable, 0, at, 0 };
    assert_null(
        spv_sheets_export(sheets, *state, SPV_FORMAT_PDF, DPI, cancellable, watch_progress, &watch, &error));
    assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
    assert_int_equal(count_files(*state), 0);
  }
}

static void
limit_file_size(rlim_t bytes) {
  struct rlimit limit;

  assert_int_equal(getrlimit(RLIMIT_FSIZE, &limit), 0);
  limit.rlim_cur = bytes;
  assert_int_equal(setrlimit(RLIMIT_FSIZE, &limit), 0);
}

/* RLIMIT_FSIZE stands in for a full disk: writing beyond it fails. */
static void
a_full_disk_at_any_size_leaves_the_old_file(void **state) {
  signal(SIGXFSZ, SIG_IGN);
  for (gsize i = 0; i < G_N_ELEMENTS(formats); i++) {
    g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");
    g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, *state, formats[i], DPI, NULL, NULL, NULL, NULL);
    g_autofree char *before = NULL;
    gsize length = 0;
    guint files = count_files(*state);
    assert_true(g_file_get_contents(g_ptr_array_index(paths, 0), &before, &length, NULL));
    for (gsize room = 0; room < length; room += 1 + length / 11) {
      g_autoptr(GError) error = NULL;
      g_autofree char *after = NULL;
      gsize after_length = 0;
      limit_file_size(room);
      GPtrArray *none = spv_sheets_export(sheets, *state, formats[i], DPI, NULL, NULL, NULL, &error);
      limit_file_size(RLIM_INFINITY);
      assert_null(none);
      assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE));
      assert_int_equal(count_files(*state), files);
      assert_true(g_file_get_contents(g_ptr_array_index(paths, 0), &after, &after_length, NULL));
      assert_int_equal(after_length, length);
      assert_memory_equal(before, after, length);
    }
  }
}

/* A file where the folder should be: root may write anywhere else. */
static void
a_folder_that_cannot_be_made_is_named(void **state) {
  g_autofree char *file = g_build_filename(*state, "file", NULL);
  g_autofree char *folder = g_build_filename(file, "folder", NULL);
  g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");
  g_autoptr(GError) error = NULL;

  assert_true(g_file_set_contents(file, "", 0, NULL));
  assert_null(spv_sheets_export(sheets, folder, SPV_FORMAT_PNG, DPI, NULL, NULL, NULL, &error));
  assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE));
  assert_non_null(strstr(error->message, folder));
}

static void
a_place_that_is_taken_by_a_folder_is_reported(void **state) {
  g_autofree char *taken = g_build_filename(*state, "lantern-company-1.png", NULL);
  g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");
  g_autoptr(GError) error = NULL;

  assert_int_equal(g_mkdir(taken, 0777), 0);
  assert_null(spv_sheets_export(sheets, *state, SPV_FORMAT_PNG, DPI, NULL, NULL, NULL, &error));
  assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE));
  assert_int_equal(count_files(*state), 1);
}

static void
a_resolution_out_of_range_is_refused(void **state) {
  static const int wrong[] = { 0, -600, SPV_DPI_MIN - 1, SPV_DPI_MAX + 1 };
  g_autoptr(SpvSheets) sheets = small_sheets("Lantern Company");

  for (gsize i = 0; i < G_N_ELEMENTS(wrong); i++) {
    g_autoptr(GError) error = NULL;
    assert_null(spv_sheets_export(sheets, *state, SPV_FORMAT_PNG, wrong[i], NULL, NULL, NULL, &error));
    assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION));
    assert_int_equal(count_files(*state), 0);
  }
}

#define IN_A_FOLDER(test) cmocka_unit_test_setup_teardown(test, make_folder, drop_folder)

int
main(void) {
  const struct CMUnitTest tests[] = {
    IN_A_FOLDER(each_sheet_is_a_file_with_its_number),
    IN_A_FOLDER(a_pdf_holds_all_the_sheets),
    IN_A_FOLDER(any_title_makes_a_name_within_the_folder),
    IN_A_FOLDER(the_same_sheets_give_the_same_bytes),
    IN_A_FOLDER(the_png_says_what_it_is),
    IN_A_FOLDER(the_svg_has_its_size_in_millimetres),
    IN_A_FOLDER(progress_rises_to_one_in_every_format),
    IN_A_FOLDER(a_cancel_at_any_moment_leaves_whole_files_only),
    IN_A_FOLDER(a_cancelled_pdf_is_not_there),
    IN_A_FOLDER(a_full_disk_at_any_size_leaves_the_old_file),
    IN_A_FOLDER(a_folder_that_cannot_be_made_is_named),
    IN_A_FOLDER(a_place_that_is_taken_by_a_folder_is_reported),
    IN_A_FOLDER(a_resolution_out_of_range_is_refused),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
