/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bar that offers unsaved work which an earlier run kept. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "scheme/scheme-file.h"
#include "window/dialogs.h"
#include "window/window-private.h"

/* "14:32", and the day before it when it was another. */
static char *
format_time(gint64 seconds) {
  g_autoptr(GDateTime) then = g_date_time_new_from_unix_local(seconds);
  g_autoptr(GDateTime) now = g_date_time_new_now_local();
  gboolean today = g_date_time_get_year(then) == g_date_time_get_year(now) &&
                   g_date_time_get_day_of_year(then) == g_date_time_get_day_of_year(now);
  /* Translators: how a moment of another day is written; see strftime(). */
  return g_date_time_format(then, today ? "%H:%M" : _("%-d %B, %H:%M"));
}

static void
show_first(SpvWindow *window) {
  gboolean any = window->kept && window->kept->len > 0;
  gtk_widget_set_visible(window->kept_bar, any);
  if (!any)
    return;
  const SpvRecovery *kept = g_ptr_array_index(window->kept, 0);
  g_autofree char *time = format_time(kept->time);
  g_autofree char *name = kept->origin ? g_filename_display_basename(kept->origin) : NULL;
  g_autofree char *words = name ? g_strdup_printf(_("Unsaved work on “%s” from %s was kept."), name, time)
                                : g_strdup_printf(_("Unsaved work from %s was kept."), time);
  gtk_label_set_text(GTK_LABEL(window->kept_label), words);
}

void
spv_window_offer_kept(SpvWindow *window, GPtrArray *kept) {
  if (!window->kept)
    window->kept = g_ptr_array_new_with_free_func((GDestroyNotify) spv_recovery_free);
  while (kept->len > 0)
    g_ptr_array_add(window->kept, g_ptr_array_steal_index(kept, 0));
  show_first(window);
}

/* Where the file is open and unchanged the kept work is an edit of it, so that undo shows what
 * the file holds. */
static SpvWindow *
show_restored(SpvWindow *window, const SpvScheme *scheme, GFile *origin) {
  SpvWindow *owner = origin ? spv_window_of_file(window, origin) : NULL;
  if (owner && !spv_session_is_modified(owner->session)) {
    spv_session_push(owner->session, scheme, _("Restore kept work"), NULL);
    return owner;
  }
  SpvWindow *shown = spv_window_show_scheme(window, scheme, origin);
  spv_session_mark_unsaved(shown->session);
  return shown;
}

void
spv_window_restore_kept(SpvWindow *window) {
  if (!window->kept || window->kept->len == 0)
    return;
  const SpvRecovery *first = g_ptr_array_index(window->kept, 0);
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvScheme) scheme = spv_scheme_load(first->path, &error);
  if (!scheme) {
    spv_dialog_message(GTK_WINDOW(window), _("The kept work could not be read"), error->message);
    return;
  }
  SpvRecovery *kept = g_ptr_array_steal_index(window->kept, 0);
  g_autoptr(GFile) origin = kept->origin ? g_file_new_for_path(kept->origin) : NULL;
  SpvWindow *shown = show_restored(window, scheme, origin);
  spv_autosave_adopt(shown->autosave, kept);
  show_first(window);
  gtk_window_present(GTK_WINDOW(shown));
}

void
spv_window_discard_kept(SpvWindow *window) {
  if (!window->kept || window->kept->len == 0)
    return;
  spv_recovery_discard(g_ptr_array_steal_index(window->kept, 0));
  show_first(window);
}
