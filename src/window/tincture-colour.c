/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-colour.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  SpvSession *session;
  char *id;
} Question;

static void
question_free(gpointer data, GClosure *closure) {
  Question *question = data;

  (void) closure;
  g_object_unref(question->session);
  g_free(question->id);
  g_free(question);
}

static guint8
channel(float value) {
  return (guint8) lroundf(CLAMP(value, 0, 1) * 255);
}

static void
on_response(GtkDialog *dialog, int response, Question *question) {
  const SpvScheme *scheme = spv_session_scheme(question->session);
  int index = spv_scheme_find_tincture(scheme, question->id);
  GdkRGBA rgba;

  if (response == GTK_RESPONSE_OK && index >= 0) {
    SpvTincture tincture = scheme->tinctures[index];
    gtk_color_chooser_get_rgba(GTK_COLOR_CHOOSER(dialog), &rgba);
    tincture.colour = (SpvRgb){ channel(rgba.red), channel(rgba.green), channel(rgba.blue) };
    g_autoptr(SpvScheme) edited = spv_scheme_with_tincture(scheme, (guint) index, &tincture);
    spv_session_push(question->session, edited, _("Change colour"), NULL);
  }
  gtk_window_destroy(GTK_WINDOW(dialog));
}

GtkWidget *
spv_tincture_colour_ask(GtkWidget *widget, SpvSession *session, const char *id) {
  const SpvScheme *scheme = spv_session_scheme(session);
  int index = spv_scheme_find_tincture(scheme, id);
  GtkRoot *root = gtk_widget_get_root(widget);
  Question *question;
  GtkWidget *dialog;

  g_return_val_if_fail(index >= 0, NULL);
  const SpvTincture *tincture = &scheme->tinctures[index];
  GdkRGBA rgba = { tincture->colour.red / 255.0f, tincture->colour.green / 255.0f,
                   tincture->colour.blue / 255.0f, 1 };
  g_autofree char *title = g_strdup_printf(_("Colour of %s"), tincture->name);
  dialog = gtk_color_chooser_dialog_new(title, GTK_IS_WINDOW(root) ? GTK_WINDOW(root) : NULL);
  gtk_window_set_modal(GTK_WINDOW(dialog), TRUE);
  gtk_color_chooser_set_use_alpha(GTK_COLOR_CHOOSER(dialog), FALSE);
  gtk_color_chooser_set_rgba(GTK_COLOR_CHOOSER(dialog), &rgba);
  question = g_new(Question, 1);
  question->session = g_object_ref(session);
  question->id = g_strdup(id);
  g_signal_connect_data(dialog, "response", G_CALLBACK(on_response), question, question_free, 0);
  gtk_window_present(GTK_WINDOW(dialog));
  return dialog;
}
