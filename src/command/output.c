/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "command/output.h"

#include <glib/gi18n-lib.h>

#include "scheme/scheme-file.h"

int
spv_output_scheme(SpvCall *call, const SpvScheme *scheme, const char *output, gboolean force) {
  if (g_str_equal(output, "-")) {
    gsize length = 0;
    g_autofree char *text = spv_scheme_to_text(scheme, &length);
    g_string_append_len(call->out, text, length);
    return SPV_EXIT_DONE;
  }
  gboolean taken = g_file_test(output, G_FILE_TEST_EXISTS) || g_file_test(output, G_FILE_TEST_IS_SYMLINK);
  if (taken && !force)
    return spv_call_fail(call, output,
                         _("there is such a file; take another name, or --force to replace it"));
  g_autoptr(GError) error = NULL;
  if (!spv_scheme_save(scheme, output, &error))
    return spv_call_fail(call, NULL, error->message);
  return SPV_EXIT_DONE;
}
