/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/pattern-text-entry.h"

#include <glib/gi18n-lib.h>

#include "geometry/svg-path.h"
#include "heraldry/lettering.h"
#include "window/dialogs.h"
#include "window/roman-text.h"
#include "window/screen-text.h"
#include "window/tip.h"

#define PATH_HEIGHT 76 /* px: four lines */

/* How a text is given. */
typedef enum { FORM_LINE, FORM_WORDS, FORM_FONT, FORM_PATH } Form;

struct _SpvPatternTextEntry {
  GtkWidget parent_instance;

  GtkWidget *box, *top; /* the top holds the label, and what stands beside it */
  GtkLabel *message;
  GtkEntry *line;       /* FORM_LINE, FORM_WORDS */
  GtkTextView *path;    /* FORM_PATH */
  GtkFontChooser *font; /* FORM_FONT: a button */
  GtkWidget *roman;     /* FORM_WORDS: the button that turns numbers into numerals */

  const SpvTextSpec *spec;
  Form form;
  gboolean can_import;
  char *text;       /* the last good one, or NULL */
  gboolean typing;  /* the words in the field are the painter's, not ours */
  gboolean syncing; /* we are setting them ourselves */
};

G_DEFINE_FINAL_TYPE(SpvPatternTextEntry, spv_pattern_text_entry, GTK_TYPE_WIDGET)

enum { SIGNAL_CHANGED, SIGNAL_SETTLED, N_SIGNALS };
static guint signals[N_SIGNALS];

static Form
form_of(const SpvTextSpec *spec) {
  if (spec->check == spv_path_text_check)
    return FORM_PATH;
  if (spec->check == spv_lettering_font_check)
    return FORM_FONT;
  return spec->check == spv_lettering_text_check ? FORM_WORDS : FORM_LINE;
}

/* The widget that the text is typed into. */
static GtkWidget *
field_of(SpvPatternTextEntry *self) {
  switch (self->form) {
  case FORM_LINE:
  case FORM_WORDS:
    return GTK_WIDGET(self->line);
  case FORM_FONT:
    return GTK_WIDGET(self->font);
  case FORM_PATH:
    return GTK_WIDGET(self->path);
  }
  g_return_val_if_reached(NULL);
}

/* What stands in the field; free with g_free(). */
static char *
typed_text(SpvPatternTextEntry *self) {
  GtkTextBuffer *buffer;
  GtkTextIter start, end;

  switch (self->form) {
  case FORM_LINE:
  case FORM_WORDS:
    return g_strdup(gtk_editable_get_text(GTK_EDITABLE(self->line)));
  case FORM_PATH:
    buffer = gtk_text_view_get_buffer(self->path);
    gtk_text_buffer_get_bounds(buffer, &start, &end);
    return gtk_text_buffer_get_text(buffer, &start, &end, TRUE);
  case FORM_FONT:
    break;
  }
  PangoFontDescription *font = gtk_font_chooser_get_font_desc(self->font);
  /* The pattern's own measures say how large. */
  pango_font_description_unset_fields(font, PANGO_FONT_MASK_SIZE);
  char *words = pango_font_description_to_string(font);
  pango_font_description_free(font);
  return words;
}

static void
put_text(SpvPatternTextEntry *self, const char *text) {
  self->syncing = TRUE;
  switch (self->form) {
  case FORM_LINE:
  case FORM_WORDS:
    gtk_editable_set_text(GTK_EDITABLE(self->line), text);
    break;
  case FORM_PATH:
    gtk_text_buffer_set_text(gtk_text_view_get_buffer(self->path), text, -1);
    break;
  case FORM_FONT:
    gtk_font_chooser_set_font(self->font, text);
    break;
  }
  self->syncing = FALSE;
}

/* Says WORDS under the field; IS_ERROR: what stands in it is not taken. */
static void
say(SpvPatternTextEntry *self, const char *words, gboolean is_error) {
  g_autofree char *sentence = words ? spv_screen_text_sentence(words) : NULL;
  GtkWidget *field = field_of(self), *message = GTK_WIDGET(self->message);

  gtk_label_set_text(self->message, sentence ? sentence : "");
  gtk_widget_set_visible(message, words != NULL);
  gtk_accessible_update_state(GTK_ACCESSIBLE(field), GTK_ACCESSIBLE_STATE_INVALID,
                              is_error ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  if (is_error) {
    gtk_widget_add_css_class(field, "error");
    gtk_widget_add_css_class(message, "error");
    gtk_widget_remove_css_class(message, "dim-label");
  } else {
    gtk_widget_remove_css_class(field, "error");
    gtk_widget_remove_css_class(message, "error");
    gtk_widget_add_css_class(message, "dim-label");
  }
}

/* A font that is not here is no mistake: the file may come from another machine. */
static void
say_all_is_well(SpvPatternTextEntry *self) {
  const char *text = self->text ? self->text : self->spec->preset;

  if (self->form == FORM_FONT && text && !spv_lettering_font_is_installed(text))
    say(self, _("This font is not installed here; another takes its place."), FALSE);
  else
    say(self, NULL, FALSE);
}

static void
enable_roman(SpvPatternTextEntry *self) {
  if (!self->roman)
    return;
  g_autofree char *typed = typed_text(self), *roman = spv_roman_text(typed);
  gtk_widget_set_sensitive(self->roman, roman != NULL);
}

/* The painter gives TEXT, which is taken over; NULL: none. */
static void
give(SpvPatternTextEntry *self, char *text) {
  if (g_strcmp0(text, self->text) == 0) {
    g_free(text);
    return;
  }
  g_free(self->text);
  self->text = text;
  g_signal_emit(self, signals[SIGNAL_CHANGED], 0);
}

/* The painter gives what stands in the field, if that will do. */
static void
take_typed(SpvPatternTextEntry *self) {
  g_autofree char *typed = typed_text(self);
  g_autoptr(GError) error = NULL;

  enable_roman(self);
  /* An empty field may be on its way to another text; it means that none is given only once it is left so. */
  if (*typed != '\0' || self->spec->preset) {
    if (!self->spec->check(typed, &error)) {
      say(self, error->message, TRUE);
      return;
    }
    give(self, g_steal_pointer(&typed));
  }
  say_all_is_well(self);
}

static void
on_typed(SpvPatternTextEntry *self) {
  if (self->syncing)
    return;
  self->typing = TRUE;
  take_typed(self);
}

/* Puts our own words for the text in the field. */
static void
sync_text(SpvPatternTextEntry *self) {
  const char *text = self->text ? self->text : self->spec->preset;
  g_autofree char *shown = typed_text(self);

  self->typing = FALSE;
  if (g_strcmp0(shown, text ? text : "") != 0)
    put_text(self, text ? text : "");
  say_all_is_well(self);
  enable_roman(self);
}

/* What was refused stays in the field: a long path is not to be lost. */
static void
on_left(SpvPatternTextEntry *self) {
  g_autofree char *typed = typed_text(self);

  if (self->syncing)
    return;
  if (*typed == '\0' && !self->spec->preset)
    give(self, NULL);
  if (!gtk_widget_has_css_class(field_of(self), "error"))
    self->typing = FALSE;
  g_signal_emit(self, signals[SIGNAL_SETTLED], 0);
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
               SpvPatternTextEntry *self) {
  (void) controller;
  (void) keycode;
  (void) state;
  if (keyval != GDK_KEY_Escape || !gtk_widget_has_css_class(field_of(self), "error"))
    return FALSE;
  sync_text(self);
  return TRUE;
}

static void
on_roman_clicked(SpvPatternTextEntry *self) {
  g_autofree char *typed = typed_text(self), *roman = spv_roman_text(typed);

  if (!roman)
    return;
  gtk_editable_set_text(GTK_EDITABLE(self->line), roman);
  on_left(self);
}

static void
on_font_set(SpvPatternTextEntry *self) {
  on_typed(self);
  on_left(self);
}

/* From a file */

void
spv_pattern_text_entry_take_file(SpvPatternTextEntry *self, GFile *file) {
  g_autoptr(GError) error = NULL;
  g_autofree char *contents = NULL, *path = NULL;
  gsize length;

  g_return_if_fail(SPV_IS_PATTERN_TEXT_ENTRY(self) && self->form == FORM_PATH);
  if (g_file_load_contents(file, NULL, &contents, &length, NULL, &error))
    path = spv_svg_file_path(contents, length, &error);
  if (!path) {
    say(self, error->message, TRUE);
    return;
  }
  put_text(self, path);
  on_typed(self);
  on_left(self);
}

static void
weak_free(gpointer data) {
  g_weak_ref_clear(data);
  g_free(data);
}

/* The field may have gone while the painter was looking for a file. */
static void
on_drawing_chosen(GFile *file, gpointer data) {
  g_autoptr(SpvPatternTextEntry) self = g_weak_ref_get(data);

  if (self)
    spv_pattern_text_entry_take_file(self, file);
}

static void
on_import_clicked(SpvPatternTextEntry *self) {
  GtkRoot *root = gtk_widget_get_root(GTK_WIDGET(self));
  GWeakRef *field = g_new0(GWeakRef, 1);

  g_weak_ref_init(field, self);
  /* The question lives no longer than the window. */
  g_object_set_data_full(G_OBJECT(root), "spv-drawing-for", field, weak_free);
  spv_dialog_open_drawing(GTK_WINDOW(root), on_drawing_chosen, field);
}

/* Making it */

static void
watch(SpvPatternTextEntry *self, GtkWidget *field) {
  GtkEventController *keys = gtk_event_controller_key_new(), *focus = gtk_event_controller_focus_new();

  gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
  g_signal_connect(keys, "key-pressed", G_CALLBACK(on_key_pressed), self);
  gtk_widget_add_controller(field, keys);
  g_signal_connect_swapped(focus, "leave", G_CALLBACK(on_left), self);
  gtk_widget_add_controller(field, focus);
}

static GtkWidget *
button_new(SpvPatternTextEntry *self, const char *words, const char *tip, GCallback clicked) {
  GtkWidget *button = gtk_button_new_with_label(words);

  spv_tip_set(button, tip);
  g_signal_connect_swapped(button, "clicked", clicked, self);
  gtk_box_append(GTK_BOX(self->top), button);
  return button;
}

static void
add_line(SpvPatternTextEntry *self) {
  GtkWidget *line = gtk_entry_new();

  self->line = GTK_ENTRY(line);
  gtk_editable_set_width_chars(GTK_EDITABLE(line), 4);
  gtk_editable_set_enable_undo(GTK_EDITABLE(line), FALSE);
  g_signal_connect_swapped(line, "changed", G_CALLBACK(on_typed), self);
  g_signal_connect_swapped(line, "activate", G_CALLBACK(on_left), self);
  watch(self, line);
  if (self->form == FORM_WORDS) {
    self->roman = button_new(self, _("Roman"), _("Write the numbers in Roman numerals"),
                             G_CALLBACK(on_roman_clicked));
    gtk_box_append(GTK_BOX(self->box), line);
  } else {
    gtk_box_set_homogeneous(GTK_BOX(self->top), TRUE);
    gtk_box_append(GTK_BOX(self->top), line);
  }
}

static void
add_path(SpvPatternTextEntry *self) {
  GtkWidget *view = gtk_text_view_new(), *scroller = gtk_scrolled_window_new();

  self->path = GTK_TEXT_VIEW(view);
  gtk_text_view_set_wrap_mode(self->path, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab(self->path, FALSE);
  gtk_text_view_set_monospace(self->path, TRUE);
  gtk_widget_add_css_class(view, "spv-lines");
  gtk_text_buffer_set_enable_undo(gtk_text_view_get_buffer(self->path), FALSE);
  g_signal_connect_swapped(gtk_text_view_get_buffer(self->path), "changed", G_CALLBACK(on_typed), self);
  watch(self, view);
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height(GTK_SCROLLED_WINDOW(scroller), PATH_HEIGHT);
  gtk_scrolled_window_set_has_frame(GTK_SCROLLED_WINDOW(scroller), TRUE);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), view);
  gtk_box_append(GTK_BOX(self->box), scroller);
  if (self->can_import)
    button_new(self, _("From SVG file…"), _("Take the shapes of a drawing as the path"),
               G_CALLBACK(on_import_clicked));
}

static void
add_font(SpvPatternTextEntry *self) {
  GtkWidget *button = gtk_font_button_new();

  self->font = GTK_FONT_CHOOSER(button);
  gtk_font_chooser_set_level(self->font, GTK_FONT_CHOOSER_LEVEL_FAMILY | GTK_FONT_CHOOSER_LEVEL_STYLE);
  gtk_font_button_set_title(GTK_FONT_BUTTON(button), _("Font of the letters"));
  gtk_widget_set_hexpand(button, TRUE);
  g_signal_connect_swapped(button, "font-set", G_CALLBACK(on_font_set), self);
  gtk_box_append(GTK_BOX(self->box), button);
}

static void
add_field(SpvPatternTextEntry *self) {
  switch (self->form) {
  case FORM_LINE:
  case FORM_WORDS:
    add_line(self);
    break;
  case FORM_FONT:
    add_font(self);
    break;
  case FORM_PATH:
    add_path(self);
    break;
  }
}

void
spv_pattern_text_entry_show(SpvPatternTextEntry *self, const char *text) {
  gboolean same;

  g_return_if_fail(SPV_IS_PATTERN_TEXT_ENTRY(self));
  same = g_strcmp0(text, self->text) == 0;
  if (!same) {
    g_free(self->text);
    self->text = g_strdup(text);
  }
  if (!self->typing || !same)
    sync_text(self);
}

const char *
spv_pattern_text_entry_text(SpvPatternTextEntry *self) {
  g_return_val_if_fail(SPV_IS_PATTERN_TEXT_ENTRY(self), NULL);
  return self->text;
}

static gboolean
spv_pattern_text_entry_grab_focus(GtkWidget *widget) {
  return gtk_widget_grab_focus(field_of(SPV_PATTERN_TEXT_ENTRY(widget)));
}

static void
spv_pattern_text_entry_dispose(GObject *object) {
  SpvPatternTextEntry *self = SPV_PATTERN_TEXT_ENTRY(object);

  /* A field that loses the focus now must not tell anybody. */
  self->syncing = TRUE;
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_pointer(&self->text, g_free);
  G_OBJECT_CLASS(spv_pattern_text_entry_parent_class)->dispose(object);
}

static void
spv_pattern_text_entry_class_init(SpvPatternTextEntryClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  object_class->dispose = spv_pattern_text_entry_dispose;
  widget_class->grab_focus = spv_pattern_text_entry_grab_focus;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  signals[SIGNAL_CHANGED] = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_SETTLED] = g_signal_new("settled", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);
}

static void
spv_pattern_text_entry_init(SpvPatternTextEntry *self) {
  self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
}

static void
add_label(SpvPatternTextEntry *self) {
  GtkWidget *label = gtk_label_new(_(self->spec->label));

  self->top = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_widget_set_hexpand(label, TRUE);
  spv_tip_set(label, _(self->spec->hint));
  gtk_box_append(GTK_BOX(self->top), label);
  gtk_box_append(GTK_BOX(self->box), self->top);
}

static void
add_message(SpvPatternTextEntry *self) {
  self->message = GTK_LABEL(gtk_label_new(NULL));
  gtk_label_set_xalign(self->message, 0);
  gtk_label_set_wrap(self->message, TRUE);
  gtk_label_set_wrap_mode(self->message, PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class(GTK_WIDGET(self->message), "caption");
  gtk_widget_set_visible(GTK_WIDGET(self->message), FALSE);
  gtk_box_append(GTK_BOX(self->box), GTK_WIDGET(self->message));
}

GtkWidget *
spv_pattern_text_entry_new(SpvPatternKind kind, guint index) {
  const SpvPatternInfo *info = spv_pattern_info(kind);
  SpvPatternTextEntry *self;

  g_return_val_if_fail(index < info->n_texts, NULL);
  self = g_object_new(SPV_TYPE_PATTERN_TEXT_ENTRY, NULL);
  self->spec = &info->texts[index];
  self->form = form_of(self->spec);
  /* A free path is drawn on the panel, in its mm: a drawing of any size is not. */
  self->can_import = kind == SPV_PATTERN_PATH_CHARGE;
  add_label(self);
  add_field(self);
  add_message(self);
  spv_tip_set(field_of(self), _(self->spec->hint));
  gtk_accessible_update_property(GTK_ACCESSIBLE(field_of(self)), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _(self->spec->label), -1);
  return GTK_WIDGET(self);
}
