/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the scheme, and choosing panels by their ids. */
#include "config.h"

#include "command/input.h"

#include <gio/gunixinputstream.h>
#include <glib/gi18n-lib.h>
#include <unistd.h>

#include "scheme/scheme-file.h"

const char *
spv_input_name(const char *file) {
  return g_str_equal(file, "-") ? _("standard input") : file;
}

/* All of standard input, or one byte more than a scheme may have: the reader then refuses it. Polls for the
 * cancellable, so that an interrupt ends a read that waits for a keyboard. */
static GByteArray *
read_standard_input(GCancellable *cancellable, GError **error) {
  g_autoptr(GInputStream) stream = g_unix_input_stream_new(STDIN_FILENO, FALSE);
  g_autoptr(GByteArray) bytes = g_byte_array_new();
  while (bytes->len <= SPV_FILE_MAX_BYTES) {
    guint8 block[65536];
    gsize room = MIN(sizeof block, (gsize) SPV_FILE_MAX_BYTES + 1 - bytes->len);
    gssize n = g_input_stream_read(stream, block, room, cancellable, error);
    if (n < 0)
      return NULL;
    if (n == 0)
      break;
    g_byte_array_append(bytes, block, n);
  }
  return g_steal_pointer(&bytes);
}

SpvScheme *
spv_input_scheme(SpvCall *call, const char *file) {
  g_autoptr(GError) error = NULL;
  SpvScheme *scheme = NULL;
  if (!g_str_equal(file, "-")) {
    scheme = spv_scheme_load(file, &error);
  } else {
    g_autoptr(GByteArray) bytes = read_standard_input(call->cancellable, &error);
    if (!bytes)
      g_prefix_error(&error, "%s: ", spv_input_name(file));
    else
      scheme = spv_scheme_parse((const char *) bytes->data, bytes->len, spv_input_name(file), &error);
  }
  if (!scheme)
    spv_call_fail(call, NULL, error->message);
  return scheme;
}

static void
fail_on_panel(SpvCall *call, const char *file, const SpvScheme *scheme, const char *id) {
  g_autoptr(GString) known = g_string_new(NULL);
  for (guint i = 0; i < scheme->n_panels; i++)
    g_string_append_printf(known, "%s%s", i ? ", " : "", scheme->panels[i]->id);
  g_autofree char *message = g_strdup_printf(_("no panel is called “%s”; take one of: %s"), id, known->str);
  spv_call_fail(call, spv_input_name(file), message);
}

GArray *
spv_input_panels(SpvCall *call, const char *file, const SpvScheme *scheme, char *const *ids,
                 gboolean with_design) {
  g_autofree gboolean *chosen = g_new0(gboolean, scheme->n_panels + 1);
  for (guint i = 0; i < scheme->n_panels && !ids; i++)
    chosen[i] = !with_design || spv_panel_has_design(scheme->panels[i]);
  for (char *const *id = ids; id && *id; id++) {
    int panel = spv_scheme_find_panel(scheme, *id);
    if (panel < 0) {
      fail_on_panel(call, file, scheme, *id);
      return NULL;
    }
    chosen[panel] = TRUE;
  }
  GArray *panels = g_array_new(FALSE, FALSE, sizeof(guint));
  for (guint i = 0; i < scheme->n_panels; i++)
    if (chosen[i])
      g_array_append_val(panels, i);
  return panels;
}
