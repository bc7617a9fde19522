/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/blazon-entry.h"

#include "scheme/heraldic.h"
#include "window/screen-text.h"
#include "window/word-completion.h"

#define MAX_LINES 3 /* a longer blazon scrolls */
#define PADDING 12  /* px, above and below the lines together */

struct _SpvBlazonEntry {
  SpvPane parent_instance;

  GtkScrolledWindow *scroller;
  GtkTextView *view;
  GtkWidget *placeholder;
  GtkLabel *message;
  SpvWordCompletion *completion;
  GtkTextTag *wrong; /* marks the word that is wrong */

  char *described;  /* the panel's blazon when it was last looked at */
  gboolean typing;  /* the words in the view are the painter's, not yet laid */
  gboolean syncing; /* we are setting them ourselves */
};

G_DEFINE_FINAL_TYPE(SpvBlazonEntry, spv_blazon_entry, SPV_TYPE_PANE)

static GtkTextBuffer *
buffer_of(SpvBlazonEntry *self) {
  return gtk_text_view_get_buffer(self->view);
}

static char *
typed_text(SpvBlazonEntry *self) {
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds(buffer_of(self), &start, &end);
  return gtk_text_buffer_get_text(buffer_of(self), &start, &end, TRUE);
}

/* Marks the word at PLACE and says below what could stand there; NULL: nothing is wrong. */
static void
show_error(SpvBlazonEntry *self, const GError *error, SpvBlazonPlace place) {
  g_autofree char *sentence = error ? spv_screen_text_sentence(error->message) : NULL;
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds(buffer_of(self), &start, &end);
  gtk_text_buffer_remove_tag(buffer_of(self), self->wrong, &start, &end);
  gtk_label_set_text(self->message, sentence ? sentence : "");
  gtk_widget_set_visible(GTK_WIDGET(self->message), error != NULL);
  gtk_accessible_update_state(GTK_ACCESSIBLE(self->view), GTK_ACCESSIBLE_STATE_INVALID,
                              error ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  if (!error)
    return;
  gtk_text_buffer_get_iter_at_offset(buffer_of(self), &start, (int) place.start);
  gtk_text_buffer_get_iter_at_offset(buffer_of(self), &end, (int) (place.start + place.length));
  gtk_text_buffer_apply_tag(buffer_of(self), self->wrong, &start, &end);
  if (place.length == 0)
    return;
  gtk_text_buffer_place_cursor(buffer_of(self), &end);
  gtk_text_view_scroll_mark_onscreen(self->view, gtk_text_buffer_get_insert(buffer_of(self)));
}

static void
show_text(SpvBlazonEntry *self, const char *text) {
  g_autofree char *shown = typed_text(self);
  GtkTextIter start;

  self->syncing = TRUE;
  if (!g_str_equal(shown, text)) {
    gtk_text_buffer_set_text(buffer_of(self), text, -1);
    gtk_text_buffer_get_start_iter(buffer_of(self), &start);
    gtk_text_buffer_place_cursor(buffer_of(self), &start);
  }
  self->syncing = FALSE;
  self->typing = FALSE;
  gtk_widget_set_visible(self->placeholder, *text == '\0');
  show_error(self, NULL, (SpvBlazonPlace){ 0, 0 });
}

static void
spv_blazon_entry_refill(SpvPane *pane) {
  SpvBlazonEntry *self = SPV_BLAZON_ENTRY(pane);
  SpvSession *session = spv_pane_session(pane);
  gboolean has_panel = spv_session_chosen_panel(session) != NULL;
  g_autofree char *now = has_panel ? spv_heraldic_describe(spv_session_scheme(session),
                                                           (guint) spv_session_panel(session))
                                   : g_strdup("");

  gtk_widget_set_sensitive(GTK_WIDGET(self->view), has_panel);
  /* What is half typed stays for as long as it is about the layers that it was begun on. */
  if (self->typing && g_strcmp0(now, self->described) == 0)
    return;
  g_free(self->described);
  self->described = g_steal_pointer(&now);
  show_text(self, self->described);
}

/* Completion */

static guint
cursor_of(SpvBlazonEntry *self) {
  GtkTextIter cursor;

  gtk_text_buffer_get_iter_at_mark(buffer_of(self), &cursor, gtk_text_buffer_get_insert(buffer_of(self)));
  return (guint) gtk_text_iter_get_offset(&cursor);
}

/* The words for where the cursor is; ALL: also where none was begun. */
static void
offer_words(SpvBlazonEntry *self, gboolean all) {
  static const char *const none[] = { NULL };
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  g_autofree char *text = typed_text(self);
  g_auto(GStrv) words = NULL;
  guint cursor = cursor_of(self), start = cursor;

  if (session)
    words = spv_heraldic_complete(spv_session_scheme(session), text, cursor, &start);
  if (!words || (start == cursor && !all)) {
    spv_word_completion_offer(self->completion, none);
    return;
  }
  g_autofree char *begun = g_utf8_substring(text, start, cursor);
  /* A word that is written out needs no help. */
  gboolean whole = words[0] && !words[1] && g_ascii_strcasecmp(words[0], begun) == 0;
  spv_word_completion_offer(self->completion, whole ? none : (const char *const *) words);
}

static void
on_word_chosen(SpvWordCompletion *completion, const char *word, SpvBlazonEntry *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  g_autofree char *text = typed_text(self);
  guint cursor = cursor_of(self), begin = cursor;
  GtkTextIter start, end;

  (void) completion;
  if (!session)
    return;
  g_auto(GStrv) words = spv_heraldic_complete(spv_session_scheme(session), text, cursor, &begin);
  gtk_text_buffer_get_iter_at_offset(buffer_of(self), &start, (int) begin);
  gtk_text_buffer_get_iter_at_offset(buffer_of(self), &end, (int) cursor);
  gboolean spaced = g_unichar_isspace(gtk_text_iter_get_char(&end));
  self->syncing = TRUE;
  gtk_text_buffer_delete(buffer_of(self), &start, &end);
  gtk_text_buffer_insert(buffer_of(self), &start, word, -1);
  if (!spaced)
    gtk_text_buffer_insert(buffer_of(self), &start, " ", 1);
  self->syncing = FALSE;
  self->typing = TRUE;
}

static void
on_typed(SpvBlazonEntry *self) {
  if (self->syncing)
    return;
  self->typing = TRUE;
  gtk_widget_set_visible(self->placeholder, gtk_text_buffer_get_char_count(buffer_of(self)) == 0);
  show_error(self, NULL, (SpvBlazonPlace){ 0, 0 });
  offer_words(self, FALSE);
}

/* Keys */

/* Makes the layers what the painter typed. */
static void
lay(SpvBlazonEntry *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  g_autofree char *text = typed_text(self);
  g_autoptr(GError) error = NULL;
  SpvBlazonPlace place = { 0, 0 };

  if (!session || !self->typing)
    return;
  self->typing = FALSE;
  if (spv_session_lay_blazon(session, text, &place, &error)) {
    spv_pane_refill(SPV_PANE(self));
    return;
  }
  self->typing = TRUE;
  show_error(self, error, place);
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
               SpvBlazonEntry *self) {
  (void) controller;
  (void) keycode;
  if ((state & GDK_CONTROL_MASK) && keyval == GDK_KEY_space) {
    offer_words(self, TRUE);
    return TRUE;
  }
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK))
    return FALSE;
  if (spv_word_completion_take_key(self->completion, keyval))
    return TRUE;
  switch (keyval) {
  case GDK_KEY_Return:
  case GDK_KEY_KP_Enter:
    lay(self);
    return TRUE;
  case GDK_KEY_Escape:
    if (!self->typing)
      return FALSE;
    show_text(self, self->described ? self->described : "");
    return TRUE;
  default:
    return FALSE;
  }
}

static void
on_left(SpvBlazonEntry *self) {
  static const char *const none[] = { NULL };

  spv_word_completion_offer(self->completion, none);
}

void
spv_blazon_entry_edit(SpvBlazonEntry *self) {
  GtkTextIter start, end;

  g_return_if_fail(SPV_IS_BLAZON_ENTRY(self));
  gtk_widget_grab_focus(GTK_WIDGET(self->view));
  gtk_text_buffer_get_bounds(buffer_of(self), &start, &end);
  gtk_text_buffer_select_range(buffer_of(self), &start, &end);
}

/* As high as its words, up to so many lines in whatever font there is. */
static void
limit_height(SpvBlazonEntry *self) {
  PangoContext *context = gtk_widget_get_pango_context(GTK_WIDGET(self->view));
  PangoFontMetrics *metrics = pango_context_get_metrics(context, NULL, NULL);
  int line = PANGO_PIXELS_CEIL(pango_font_metrics_get_height(metrics));

  pango_font_metrics_unref(metrics);
  gtk_scrolled_window_set_max_content_height(self->scroller, MAX_LINES * line + PADDING);
}

static void
spv_blazon_entry_dispose(GObject *object) {
  SpvBlazonEntry *self = SPV_BLAZON_ENTRY(object);

  if (self->completion)
    gtk_widget_unparent(GTK_WIDGET(g_steal_pointer(&self->completion)));
  G_OBJECT_CLASS(spv_blazon_entry_parent_class)->dispose(object);
}

static void
spv_blazon_entry_finalize(GObject *object) {
  g_free(SPV_BLAZON_ENTRY(object)->described);
  G_OBJECT_CLASS(spv_blazon_entry_parent_class)->finalize(object);
}

static void
spv_blazon_entry_class_init(SpvBlazonEntryClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_blazon_entry_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_blazon_entry_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_blazon_entry_refill;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/blazon-entry.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvBlazonEntry, scroller);
  gtk_widget_class_bind_template_child(widget_class, SpvBlazonEntry, view);
  gtk_widget_class_bind_template_child(widget_class, SpvBlazonEntry, placeholder);
  gtk_widget_class_bind_template_child(widget_class, SpvBlazonEntry, message);
  gtk_widget_class_bind_template_callback(widget_class, on_key_pressed);
  gtk_widget_class_bind_template_callback(widget_class, on_left);
}

static void
spv_blazon_entry_init(SpvBlazonEntry *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->wrong = gtk_text_buffer_create_tag(buffer_of(self), NULL, "underline", PANGO_UNDERLINE_ERROR, NULL);
  self->completion = spv_word_completion_new(self->view, GTK_WIDGET(self));
  g_signal_connect(self->completion, "chosen", G_CALLBACK(on_word_chosen), self);
  g_signal_connect_swapped(buffer_of(self), "changed", G_CALLBACK(on_typed), self);
  g_signal_connect_swapped(self->view, "realize", G_CALLBACK(limit_height), self);
}

GtkWidget *
spv_blazon_entry_new(void) {
  return g_object_new(SPV_TYPE_BLAZON_ENTRY, NULL);
}
