/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/autosave.h"

struct _SpvAutosave {
  SpvSession *session;
  char *folder;
  void (*failed)(const char *message, gpointer data);
  gpointer data;
  SpvRecovery *recovery; /* NULL while nothing is kept */
  SpvScheme *kept;       /* the scheme that RECOVERY holds, or NULL */
  guint timeout;
  gint64 first_change; /* monotonic; 0 when everything is kept */
};

static void
drop(SpvAutosave *autosave) {
  g_clear_handle_id(&autosave->timeout, g_source_remove);
  autosave->first_change = 0;
  g_clear_pointer(&autosave->kept, spv_scheme_unref);
  g_clear_pointer(&autosave->recovery, spv_recovery_remove);
}

static SpvRecovery *
place_for(SpvAutosave *autosave, GError **error) {
  GFile *file = spv_session_file(autosave->session);
  g_autofree char *origin = file ? g_file_get_path(file) : NULL;
  return spv_recovery_new(autosave->folder, origin, error);
}

gboolean
spv_autosave_flush(SpvAutosave *autosave, GError **error) {
  g_clear_handle_id(&autosave->timeout, g_source_remove);
  autosave->first_change = 0;
  const SpvScheme *scheme = spv_session_scheme(autosave->session);
  if (!spv_session_is_modified(autosave->session) || autosave->kept == scheme)
    return TRUE;
  if (!autosave->recovery)
    autosave->recovery = place_for(autosave, error);
  if (!autosave->recovery || !spv_recovery_write(autosave->recovery, scheme, error))
    return FALSE;
  g_clear_pointer(&autosave->kept, spv_scheme_unref);
  autosave->kept = spv_scheme_ref(scheme);
  return TRUE;
}

static gboolean
keep_now(gpointer data) {
  SpvAutosave *autosave = data;
  autosave->timeout = 0;
  g_autoptr(GError) error = NULL;
  if (!spv_autosave_flush(autosave, &error) && autosave->failed)
    autosave->failed(error->message, autosave->data);
  return G_SOURCE_REMOVE;
}

/* Waits for a pause in the work, but not for ever. */
static void
keep_soon(SpvAutosave *autosave) {
  gint64 now = g_get_monotonic_time() / 1000;
  if (autosave->first_change == 0)
    autosave->first_change = now;
  gint64 latest = autosave->first_change + SPV_AUTOSAVE_LIMIT - now;
  g_clear_handle_id(&autosave->timeout, g_source_remove);
  autosave->timeout = g_timeout_add((guint) CLAMP(latest, 0, SPV_AUTOSAVE_DELAY), keep_now, autosave);
}

static void
follow(SpvAutosave *autosave) {
  if (!spv_session_is_modified(autosave->session))
    drop(autosave);
  else if (autosave->kept != spv_session_scheme(autosave->session))
    keep_soon(autosave);
}

void
spv_autosave_adopt(SpvAutosave *autosave, SpvRecovery *recovery) {
  g_clear_pointer(&autosave->recovery, spv_recovery_free);
  autosave->recovery = recovery;
  g_clear_pointer(&autosave->kept, spv_scheme_unref);
  autosave->kept = spv_scheme_ref(spv_session_scheme(autosave->session));
  follow(autosave);
}

SpvAutosave *
spv_autosave_new(SpvSession *session, const char *folder, void (*failed)(const char *message, gpointer data),
                 gpointer data) {
  SpvAutosave *autosave = g_new0(SpvAutosave, 1);
  autosave->session = g_object_ref(session);
  autosave->folder = g_strdup(folder);
  autosave->failed = failed;
  autosave->data = data;
  g_signal_connect_swapped(session, "scheme-changed", G_CALLBACK(follow), autosave);
  g_signal_connect_swapped(session, "notify::modified", G_CALLBACK(follow), autosave);
  follow(autosave);
  return autosave;
}

void
spv_autosave_free(SpvAutosave *autosave) {
  g_signal_handlers_disconnect_by_data(autosave->session, autosave);
  g_clear_handle_id(&autosave->timeout, g_source_remove);
  g_clear_pointer(&autosave->kept, spv_scheme_unref);
  g_clear_pointer(&autosave->recovery, spv_recovery_free);
  g_object_unref(autosave->session);
  g_free(autosave->folder);
  g_free(autosave);
}
