/* SPDX-License-Identifier: GPL-3.0-or-later */
/* export-sheets SCHEME PAPER FORMAT DPI FOLDER [hatch]: writes the sheets of one of the schemes in coast.h
 * (the wardens, or a disc of as many mm), for tests that read the files with other programs. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "coast.h"
#include "sheet/sheet.h"

int
main(int argc, char **argv) {
  g_autoptr(GError) error = NULL;
  SpvSheetOptions options = spv_sheet_options_preset();
  SpvFormat format;

  if (argc < 6 || !spv_format_from_key(argv[3], &format))
    return 2;
  g_autoptr(SpvScheme) scheme = strcmp(argv[1], "wardens") == 0 ? coast_wardens() : coast_disc(atof(argv[1]));
  options.paper = spv_paper_from_key(argv[2]);
  options.hatch = argc > 6 && strcmp(argv[6], "hatch") == 0;
  g_autoptr(SpvSheets) sheets = spv_sheets_new(scheme, &options, NULL, &error);
  g_autoptr(GPtrArray) paths = NULL;
  if (sheets != NULL)
    paths = spv_sheets_export(sheets, argv[5], format, atoi(argv[4]), NULL, NULL, NULL, &error);
  if (paths == NULL) {
    fprintf(stderr, "%s\n", error->message);
    return 1;
  }
  for (guint i = 0; i < paths->len; i++)
    puts(g_ptr_array_index(paths, i));
  return 0;
}
