/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be asked of a sheet, by the words that the command line uses. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "sheet/sheet.h"

G_DEFINE_QUARK(spv_sheet_error, spv_sheet_error)

static const char *const format_keys[] = {
  [SPV_FORMAT_PNG] = "png",
  [SPV_FORMAT_PDF] = "pdf",
  [SPV_FORMAT_SVG] = "svg",
};

static const struct {
  const char *key;
  SpvContent flag;
} contents[] = {
  { "templates", SPV_CONTENT_TEMPLATES },
  { "enlargements", SPV_CONTENT_ENLARGEMENTS },
  { "offsets", SPV_CONTENT_OFFSETS },
};

SpvSheetOptions
spv_sheet_options_preset(void) {
  SpvSheetOptions options = { .paper = spv_paper_from_key("a4"), .content = SPV_CONTENT_ALL };

  return options;
}

const char *
spv_format_key(SpvFormat format) {
  return format_keys[format];
}

gboolean
spv_format_from_key(const char *key, SpvFormat *format) {
  for (gsize i = 0; i < G_N_ELEMENTS(format_keys); i++)
    if (g_strcmp0(key, format_keys[i]) == 0) {
      *format = (SpvFormat) i;
      return TRUE;
    }
  return FALSE;
}

static guint
content_from_key(const char *key) {
  for (gsize i = 0; i < G_N_ELEMENTS(contents); i++)
    if (strcmp(key, contents[i].key) == 0)
      return contents[i].flag;
  return 0;
}

gboolean
spv_content_from_list(const char *list, guint *content, GError **error) {
  g_auto(GStrv) words = g_strsplit(list, ",", -1);
  guint read = 0;

  for (gsize i = 0; words[i] != NULL; i++) {
    const char *word = g_strstrip(words[i]);
    guint flag = content_from_key(word);
    if (flag == 0) {
      g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION,
                  _("\"%s\" is no content of a sheet; take any of templates, enlargements, offsets, with "
                    "commas between"),
                  word);
      return FALSE;
    }
    read |= flag;
  }
  if (read == 0) {
    g_set_error_literal(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION,
                        _("No content is named; take any of templates, enlargements, offsets"));
    return FALSE;
  }
  *content = read;
  return TRUE;
}
