/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/harness-view.h"

#include <glib/gi18n-lib.h>

#include "window/harness-view-picture.h"

#define LEAST_WIDTH 200
#define WIDTH 240
#define MARGIN 12.0     /* px around the panels; the chosen one's frame goes there */
#define FRAME 6.0       /* px between a panel and its frame */
#define LEAST_HIT 16.0  /* px */
#define MOST_SCALE 16.0 /* px a mm: a harness of one small panel need not fill the pane */
#define WORDS_GAP 8.0
#define WORDS_ALPHA 0.65

struct _SpvHarnessView {
  GtkWidget parent_instance;
  SpvSession *session;
  GArray *pictures; /* SpvPanelPicture, one a panel */
};

G_DEFINE_FINAL_TYPE(SpvHarnessView, spv_harness_view, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_SESSION, N_PROPS };
static GParamSpec *props[N_PROPS];

/* --- Where everything lies --- */

static guint
n_panels(SpvHarnessView *view) {
  return view->session == NULL ? 0 : spv_session_scheme(view->session)->n_panels;
}

/* The panel's bounds in the harness's millimetres. */
static SpvBox
panel_bounds(SpvHarnessView *view, guint index) {
  SpvBox box = spv_outline_bounds(spv_session_composition_of(view->session, index)->outline);
  SpvPoint place = spv_session_scheme(view->session)->panels[index]->place;

  return (SpvBox){ box.x0 + place.x, box.y0 + place.y, box.x1 + place.x, box.y1 + place.y };
}

static SpvBox
harness_bounds(SpvHarnessView *view) {
  SpvBox all = { 0, 0, 1, 1 };

  for (guint i = 0; i < n_panels(view); i++) {
    SpvBox box = panel_bounds(view, i);

    all = i == 0 ? box
                 : (SpvBox){ MIN(all.x0, box.x0), MIN(all.y0, box.y0), MAX(all.x1, box.x1),
                             MAX(all.y1, box.y1) };
  }
  return all;
}

static PangoLayout *
side_words(SpvHarnessView *view, const char *words) {
  PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(view), words);
  PangoAttrList *attributes = pango_attr_list_new();

  pango_attr_list_insert(attributes, pango_attr_scale_new(PANGO_SCALE_SMALL));
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
  return layout;
}

static double
words_height(SpvHarnessView *view) {
  g_autoptr(PangoLayout) layout = side_words(view, C_("wearer's side", "dexter"));
  int height;

  pango_layout_get_pixel_size(layout, NULL, &height);
  return height + WORDS_GAP;
}

typedef struct {
  double scale;   /* px a mm */
  SpvPoint datum; /* where the harness's (0, 0) lies, px */
} Laid;

static Laid
lay_out(SpvHarnessView *view, double width, double height) {
  SpvBox all = harness_bounds(view);
  double room = height - 2 * MARGIN - words_height(view);
  double scale = MIN((width - 2 * MARGIN) / spv_box_width(all), room / spv_box_height(all));
  Laid laid = { CLAMP(scale, 1e-3, MOST_SCALE), { 0, 0 } };
  SpvPoint middle = spv_box_centre(all);

  laid.datum = spv_point(width / 2 - middle.x * laid.scale, MARGIN - all.y0 * laid.scale);
  return laid;
}

static Laid
laid_now(SpvHarnessView *view) {
  return lay_out(view, gtk_widget_get_width(GTK_WIDGET(view)), gtk_widget_get_height(GTK_WIDGET(view)));
}

static SpvBox
box_px(const Laid *laid, SpvBox box) {
  return (SpvBox){ laid->datum.x + box.x0 * laid->scale, laid->datum.y + box.y0 * laid->scale,
                   laid->datum.x + box.x1 * laid->scale, laid->datum.y + box.y1 * laid->scale };
}

gboolean
spv_harness_view_panel_box(SpvHarnessView *view, guint panel, SpvBox *box) {
  Laid laid;
  SpvPoint middle;
  double half_width, half_height;

  if (panel >= n_panels(view))
    return FALSE;
  laid = laid_now(view);
  *box = box_px(&laid, panel_bounds(view, panel));
  middle = spv_box_centre(*box);
  half_width = MAX(spv_box_width(*box), LEAST_HIT) / 2;
  half_height = MAX(spv_box_height(*box), LEAST_HIT) / 2;
  *box = (SpvBox){ middle.x - half_width, middle.y - half_height, middle.x + half_width,
                   middle.y + half_height };
  return TRUE;
}

/* Of the panels whose box holds the place, the one whose middle is nearest; -1 when none does. */
static int
panel_at(SpvHarnessView *view, double x, double y) {
  double best = INFINITY;
  int found = -1;
  SpvBox box;

  for (guint i = 0; spv_harness_view_panel_box(view, i, &box); i++) {
    double distance = spv_point_distance(spv_box_centre(box), spv_point(x, y));

    if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1 || distance >= best)
      continue;
    best = distance;
    found = (int) i;
  }
  return found;
}

/* How far BOX lies from FROM that way: sideways counts double, so that a row is walked along. INFINITY when
 * it does not lie that way at all. */
static double
way_to(SpvBox from, SpvBox box, int dx, int dy) {
  SpvPoint step = spv_point_subtract(spv_box_centre(box), spv_box_centre(from));
  double along = step.x * dx + step.y * dy, aside = fabs(step.x * dy) + fabs(step.y * dx);

  return along > 1 ? along + 2 * aside : INFINITY;
}

guint
spv_harness_view_neighbour(SpvHarnessView *view, guint from, int dx, int dy) {
  double best = INFINITY;
  guint found = from;
  SpvBox here, box;

  if (!spv_harness_view_panel_box(view, from, &here))
    return from;
  for (guint i = 0; spv_harness_view_panel_box(view, i, &box); i++) {
    double way = i == from ? INFINITY : way_to(here, box, dx, dy);

    if (way < best) {
      best = way;
      found = i;
    }
  }
  return found;
}

/* --- Drawing --- */

/* Ink, or where the toolkit's surface is dark a grey that stands out on it. */
static SpvRgb
outline_colour(SpvHarnessView *view) {
  const SpvRgb on_dark = { 0xa6, 0xac, 0xb4 };
  GdkRGBA text;

  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(view)), &text);
  return text.green > 0.5f ? on_dark : spv_ink;
}

static const SpvPanelPicture *
picture_of(SpvHarnessView *view, guint index, double scale) {
  SpvPanelPicture *picture = &g_array_index(view->pictures, SpvPanelPicture, index);
  int factor = gtk_widget_get_scale_factor(GTK_WIDGET(view));

  spv_panel_picture_update(picture, spv_session_composition_of(view->session, index), scale * factor, factor,
                           outline_colour(view));
  return picture;
}

static void
snapshot_panel(SpvHarnessView *view, GtkSnapshot *snapshot, const Laid *laid, guint index) {
  const SpvPanelPicture *picture = picture_of(view, index, laid->scale);
  SpvPoint place = spv_session_scheme(view->session)->panels[index]->place;
  SpvBox box = spv_panel_picture_box(picture);
  double factor = gtk_widget_get_scale_factor(GTK_WIDGET(view));
  double x = laid->datum.x + (place.x + box.x0) * laid->scale;
  double y = laid->datum.y + (place.y + box.y0) * laid->scale;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT((float) (round(x * factor) / factor),
                                              (float) (round(y * factor) / factor),
                                              (float) (gdk_texture_get_width(picture->texture) / factor),
                                              (float) (gdk_texture_get_height(picture->texture) / factor));

  gtk_snapshot_append_texture(snapshot, picture->texture, &bounds);
}

static void
snapshot_frame(GtkSnapshot *snapshot, SpvBox box) {
  const float width[4] = { 1.5f, 1.5f, 1.5f, 1.5f };
  const GdkRGBA accent = { spv_accent.red / 255.0f, spv_accent.green / 255.0f, spv_accent.blue / 255.0f, 1 };
  const GdkRGBA colours[4] = { accent, accent, accent, accent };
  SpvBox frame = spv_box_grow(box, FRAME);
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect(&outline,
                                  &GRAPHENE_RECT_INIT((float) floor(frame.x0), (float) floor(frame.y0),
                                                      (float) ceil(spv_box_width(frame)),
                                                      (float) ceil(spv_box_height(frame))),
                                  0);
  gtk_snapshot_append_border(snapshot, &outline, width, colours);
}

/* At the foot, where the look has them: a quarter in from either side. */
static void
snapshot_words(SpvHarnessView *view, GtkSnapshot *snapshot, const char *words, double fraction, double y) {
  g_autoptr(PangoLayout) layout = side_words(view, words);
  GdkRGBA colour;
  int width;

  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(view)), &colour);
  colour.alpha *= WORDS_ALPHA;
  pango_layout_get_pixel_size(layout, &width, NULL);
  gtk_snapshot_save(snapshot);
  gtk_snapshot_translate(
      snapshot,
      &GRAPHENE_POINT_INIT((float) (floor(gtk_widget_get_width(GTK_WIDGET(view)) * fraction) - width / 2),
                           (float) floor(y)));
  gtk_snapshot_append_layout(snapshot, layout, &colour);
  gtk_snapshot_restore(snapshot);
}

static void
spv_harness_view_snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  SpvHarnessView *view = SPV_HARNESS_VIEW(widget);
  Laid laid = laid_now(view);
  SpvBox box;
  double foot;

  if (n_panels(view) == 0)
    return;
  g_array_set_size(view->pictures, n_panels(view));
  for (guint i = 0; i < n_panels(view); i++)
    snapshot_panel(view, snapshot, &laid, i);
  if (spv_harness_view_panel_box(view, (guint) spv_session_panel(view->session), &box))
    snapshot_frame(snapshot, box);
  foot = laid.datum.y + harness_bounds(view).y1 * laid.scale + MARGIN;
  snapshot_words(view, snapshot, C_("wearer's side", "dexter"), 0.25, foot);
  snapshot_words(view, snapshot, C_("wearer's side", "sinister"), 0.75, foot);
  if (gtk_widget_has_visible_focus(widget))
    gtk_snapshot_render_focus(snapshot, gtk_widget_get_style_context(widget), 0, 0,
                              gtk_widget_get_width(widget), gtk_widget_get_height(widget));
}

static GtkSizeRequestMode
spv_harness_view_request_mode(GtkWidget *widget) {
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
spv_harness_view_measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline) {
  SpvHarnessView *view = SPV_HARNESS_VIEW(widget);
  double width = MAX(for_size < 0 ? LEAST_WIDTH : for_size, LEAST_WIDTH);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = LEAST_WIDTH;
    *natural = WIDTH;
    return;
  }
  *minimum = *natural = 0;
  if (n_panels(view) > 0) {
    SpvBox all = harness_bounds(view);
    double scale = MIN((width - 2 * MARGIN) / spv_box_width(all), MOST_SCALE);

    *minimum = *natural = (int) ceil(scale * spv_box_height(all) + 2 * MARGIN + words_height(view));
  }
}

/* The surface may have turned dark, or the words larger. */
static void
spv_harness_view_css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(spv_harness_view_parent_class)->css_changed(widget, change);
  g_array_set_size(SPV_HARNESS_VIEW(widget)->pictures, 0);
  gtk_widget_queue_resize(widget);
}

/* --- What the session says --- */

static void
describe(SpvHarnessView *view) {
  const SpvPanel *panel = view->session == NULL ? NULL : spv_session_chosen_panel(view->session);
  g_autofree char *description = panel == NULL
                                     ? g_strdup(_("No panel is chosen."))
                                     : g_strdup_printf(_("Chosen: %s (%d of %u)"), panel->name,
                                                       spv_session_panel(view->session) + 1, n_panels(view));

  gtk_accessible_update_property(GTK_ACCESSIBLE(view), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Harness"),
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
}

static void
on_selection_changed(SpvHarnessView *view) {
  describe(view);
  gtk_widget_queue_draw(GTK_WIDGET(view));
}

static void
on_scheme_changed(SpvHarnessView *view) {
  describe(view);
  gtk_widget_queue_resize(GTK_WIDGET(view));
}

static void
set_session(SpvHarnessView *view, SpvSession *session) {
  if (view->session == session)
    return;
  if (view->session != NULL)
    g_signal_handlers_disconnect_by_data(view->session, view);
  g_set_object(&view->session, session);
  g_array_set_size(view->pictures, 0);
  if (session != NULL) {
    g_signal_connect_swapped(session, "scheme-changed", G_CALLBACK(on_scheme_changed), view);
    g_signal_connect_swapped(session, "selection-changed", G_CALLBACK(on_selection_changed), view);
  }
  on_scheme_changed(view);
}

/* --- Hands --- */

static void
on_pressed(GtkGestureClick *gesture, int n_press, double x, double y, SpvHarnessView *view) {
  int panel = panel_at(view, x, y);

  (void) gesture;
  (void) n_press;
  gtk_widget_grab_focus(GTK_WIDGET(view));
  if (panel >= 0)
    spv_session_choose_panel(view->session, panel);
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
               SpvHarnessView *view) {
  guint chosen = view->session == NULL ? 0 : (guint) spv_session_panel(view->session);

  (void) controller;
  (void) code;
  if (n_panels(view) == 0 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return FALSE;
  switch (key) {
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    chosen = spv_harness_view_neighbour(view, chosen, -1, 0);
    break;
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    chosen = spv_harness_view_neighbour(view, chosen, 1, 0);
    break;
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    chosen = spv_harness_view_neighbour(view, chosen, 0, -1);
    break;
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    chosen = spv_harness_view_neighbour(view, chosen, 0, 1);
    break;
  case GDK_KEY_Home:
    chosen = 0;
    break;
  case GDK_KEY_End:
    chosen = n_panels(view) - 1;
    break;
  default:
    return FALSE;
  }
  spv_session_choose_panel(view->session, (int) chosen);
  return TRUE;
}

static gboolean
on_query_tooltip(GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip, gpointer data) {
  SpvHarnessView *view = SPV_HARNESS_VIEW(widget);
  int panel = n_panels(view) == 0 ? -1 : keyboard ? spv_session_panel(view->session) : panel_at(view, x, y);
  SpvBox box;

  (void) data;
  if (panel < 0 || !spv_harness_view_panel_box(view, (guint) panel, &box))
    return FALSE;
  gtk_tooltip_set_text(tooltip, spv_session_scheme(view->session)->panels[panel]->name);
  gtk_tooltip_set_tip_area(tooltip, &(GdkRectangle){ (int) box.x0, (int) box.y0, (int) spv_box_width(box),
                                                     (int) spv_box_height(box) });
  return TRUE;
}

/* --- The object --- */

static void
spv_harness_view_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  if (id == PROP_SESSION)
    g_value_set_object(value, SPV_HARNESS_VIEW(object)->session);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_harness_view_set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  if (id == PROP_SESSION)
    set_session(SPV_HARNESS_VIEW(object), g_value_get_object(value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_harness_view_dispose(GObject *object) {
  SpvHarnessView *view = SPV_HARNESS_VIEW(object);

  if (view->session != NULL)
    g_signal_handlers_disconnect_by_data(view->session, view);
  g_clear_object(&view->session);
  G_OBJECT_CLASS(spv_harness_view_parent_class)->dispose(object);
}

static void
spv_harness_view_finalize(GObject *object) {
  g_array_unref(SPV_HARNESS_VIEW(object)->pictures);
  G_OBJECT_CLASS(spv_harness_view_parent_class)->finalize(object);
}

static void
spv_harness_view_class_init(SpvHarnessViewClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  object_class->get_property = spv_harness_view_get_property;
  object_class->set_property = spv_harness_view_set_property;
  object_class->dispose = spv_harness_view_dispose;
  object_class->finalize = spv_harness_view_finalize;
  widget_class->snapshot = spv_harness_view_snapshot;
  widget_class->measure = spv_harness_view_measure;
  widget_class->css_changed = spv_harness_view_css_changed;
  widget_class->get_request_mode = spv_harness_view_request_mode;
  props[PROP_SESSION] = g_param_spec_object("session", NULL, NULL, SPV_TYPE_SESSION,
                                            G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties(object_class, N_PROPS, props);
  gtk_widget_class_set_css_name(widget_class, "harness");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
spv_harness_view_init(SpvHarnessView *view) {
  GtkGesture *click = gtk_gesture_click_new();
  GtkEventController *keys = gtk_event_controller_key_new();

  view->pictures = g_array_new(FALSE, TRUE, sizeof(SpvPanelPicture));
  g_array_set_clear_func(view->pictures, spv_panel_picture_clear);
  gtk_widget_set_focusable(GTK_WIDGET(view), TRUE);
  gtk_widget_set_has_tooltip(GTK_WIDGET(view), TRUE);
  g_signal_connect(view, "query-tooltip", G_CALLBACK(on_query_tooltip), NULL);
  g_signal_connect(click, "pressed", G_CALLBACK(on_pressed), view);
  g_signal_connect(keys, "key-pressed", G_CALLBACK(on_key_pressed), view);
  gtk_widget_add_controller(GTK_WIDGET(view), GTK_EVENT_CONTROLLER(click));
  gtk_widget_add_controller(GTK_WIDGET(view), keys);
  describe(view);
}

GtkWidget *
spv_harness_view_new(void) {
  return g_object_new(SPV_TYPE_HARNESS_VIEW, NULL);
}
