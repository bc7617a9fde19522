/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/application.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#define SETTINGS_ID "org.spolvero.Spolvero"

struct _SpvApplication {
  GtkApplication parent_instance;
  GSettings *settings; /* or NULL */
};

G_DEFINE_FINAL_TYPE(SpvApplication, spv_application, GTK_TYPE_APPLICATION)

GSettings *
spv_application_settings(SpvApplication *application) {
  return application->settings;
}

/* g_settings_new() ends the program when the schema is missing; a program run from where it was built must
 * not end for that. */
static GSettings *
find_settings(void) {
  GSettingsSchemaSource *source = g_settings_schema_source_get_default();
  g_autoptr(GSettingsSchema) schema = source ? g_settings_schema_source_lookup(source, SETTINGS_ID, TRUE) : NULL;
  return schema ? g_settings_new_full(schema, NULL, NULL) : NULL;
}

static void
spv_application_finalize(GObject *object) {
  g_clear_object(&SPV_APPLICATION(object)->settings);
  G_OBJECT_CLASS(spv_application_parent_class)->finalize(object);
}

static void
spv_application_class_init(SpvApplicationClass *klass) {
  G_OBJECT_CLASS(klass)->finalize = spv_application_finalize;
}

static void
spv_application_init(SpvApplication *application) {
  application->settings = find_settings();
}

SpvApplication *
spv_application_new(void) {
  return g_object_new(SPV_TYPE_APPLICATION, "application-id", SPV_APP_ID, "flags", G_APPLICATION_HANDLES_OPEN, NULL);
}
