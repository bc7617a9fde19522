/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/pane.h"

typedef struct {
  SpvSession *session;
  GSignalGroup *signals;
} SpvPanePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE(SpvPane, spv_pane, GTK_TYPE_BOX)

enum { PROP_0, PROP_SESSION, N_PROPS };
static GParamSpec *props[N_PROPS];

void
spv_pane_refill(SpvPane *pane) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);

  if (priv->session)
    SPV_PANE_GET_CLASS(pane)->refill(pane);
}

void
spv_pane_settle(SpvPane *pane) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);

  if (!priv->session)
    return;
  spv_session_settle(priv->session);
  SPV_PANE_GET_CLASS(pane)->refill(pane);
}

static void
findings_came(SpvPane *pane) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);
  SpvPaneClass *klass = SPV_PANE_GET_CLASS(pane);

  if (priv->session && klass->findings_came)
    klass->findings_came(pane);
}

SpvSession *
spv_pane_session(SpvPane *pane) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);

  return priv->session;
}

void
spv_pane_set_session(SpvPane *pane, SpvSession *session) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);

  g_return_if_fail(SPV_IS_PANE(pane));
  if (!g_set_object(&priv->session, session))
    return;
  g_signal_group_set_target(priv->signals, session);
  spv_pane_refill(pane);
  findings_came(pane);
  g_object_notify_by_pspec(G_OBJECT(pane), props[PROP_SESSION]);
}

static void
spv_pane_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  if (id == PROP_SESSION)
    g_value_set_object(value, spv_pane_session(SPV_PANE(object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_pane_set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  if (id == PROP_SESSION)
    spv_pane_set_session(SPV_PANE(object), g_value_get_object(value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_pane_dispose(GObject *object) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(SPV_PANE(object));

  if (priv->signals)
    g_signal_group_set_target(priv->signals, NULL);
  g_clear_object(&priv->signals);
  g_clear_object(&priv->session);
  G_OBJECT_CLASS(spv_pane_parent_class)->dispose(object);
}

static void
spv_pane_class_init(SpvPaneClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);

  object_class->get_property = spv_pane_get_property;
  object_class->set_property = spv_pane_set_property;
  object_class->dispose = spv_pane_dispose;
  props[PROP_SESSION] = g_param_spec_object("session", NULL, NULL, SPV_TYPE_SESSION,
                                            G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY |
                                                G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties(object_class, N_PROPS, props);
}

static void
spv_pane_init(SpvPane *pane) {
  SpvPanePrivate *priv = spv_pane_get_instance_private(pane);

  gtk_orientable_set_orientation(GTK_ORIENTABLE(pane), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing(GTK_BOX(pane), 6);
  gtk_widget_add_css_class(GTK_WIDGET(pane), "spv-pane");
  priv->signals = g_signal_group_new(SPV_TYPE_SESSION);
  g_signal_group_connect_swapped(priv->signals, "scheme-changed", G_CALLBACK(spv_pane_refill), pane);
  g_signal_group_connect_swapped(priv->signals, "selection-changed", G_CALLBACK(spv_pane_refill), pane);
  g_signal_group_connect_swapped(priv->signals, "findings-changed", G_CALLBACK(findings_came), pane);
}
