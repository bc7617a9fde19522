/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shipped harnesses and examples out of the program's resources, templates out of the painter's folder. */
#include "config.h"

#include "scheme/library.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "scheme/name-private.h"
#include "scheme/scheme-file.h"

#define DATA_PREFIX "/org/spolvero/data/"
#define TEMPLATE_SUFFIX ".scheme.json"
#define TEMPLATE_KEY_MAX 60 /* characters */

void
spv_library_entry_free(SpvLibraryEntry *entry) {
  if (entry == NULL)
    return;
  g_free(entry->key);
  g_free(entry->title);
  g_free(entry->path);
  g_free(entry);
}

char *
spv_library_folder(void) {
  return g_build_filename(g_get_user_data_dir(), "spolvero", "templates", NULL);
}

/* Where a shipped entry lies among the resources. Free with g_free(). */
static char *
resource_path(SpvLibraryKind kind, const char *key) {
  if (kind == SPV_LIBRARY_HARNESS)
    return g_strdup_printf(DATA_PREFIX "harnesses/%s.harness.json", key);
  return g_strdup_printf(DATA_PREFIX "examples/%s" TEMPLATE_SUFFIX, key);
}

static SpvScheme *
load_resource(const char *path, GError **error) {
  g_autoptr(GBytes) bytes = g_resources_lookup_data(path, G_RESOURCE_LOOKUP_FLAGS_NONE, error);
  if (bytes == NULL)
    return NULL;
  g_autofree char *name = g_path_get_basename(path);
  gsize length;
  const char *text = g_bytes_get_data(bytes, &length);
  return spv_scheme_parse(text, length, name, error);
}

SpvScheme *
spv_library_load(const SpvLibraryEntry *entry, GError **error) {
  if (entry->kind == SPV_LIBRARY_TEMPLATE)
    return spv_scheme_load(entry->path, error);
  g_autofree char *path = resource_path(entry->kind, entry->key);
  return load_resource(path, error);
}

/* Takes PATH. What can't be read is called by its key. */
static SpvLibraryEntry *
entry_new(SpvLibraryKind kind, const char *key, char *path) {
  SpvLibraryEntry *entry = g_new0(SpvLibraryEntry, 1);
  entry->kind = kind;
  entry->key = g_strdup(key);
  entry->path = path;
  g_autoptr(SpvScheme) scheme = spv_library_load(entry, NULL);
  const char *title = key;
  if (scheme != NULL)
    title = kind == SPV_LIBRARY_HARNESS ? scheme->harness : scheme->title;
  entry->title = g_strdup(title);
  return entry;
}

static void
list_shipped(SpvLibraryKind kind, GPtrArray *entries) {
  g_autoptr(GBytes)
      bytes = g_resources_lookup_data(DATA_PREFIX "index.json", G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  if (bytes == NULL)
    return;
  gsize length;
  const char *text = g_bytes_get_data(bytes, &length);
  json_t *index = json_loadb(text, length, 0, NULL);
  json_t *keys = json_object_get(index, kind == SPV_LIBRARY_HARNESS ? "harnesses" : "examples");
  for (gsize i = 0; i < json_array_size(keys); i++) {
    const char *key = json_string_value(json_array_get(keys, i));
    if (key != NULL)
      g_ptr_array_add(entries, entry_new(kind, key, NULL));
  }
  json_decref(index);
}

static int
compare_titles(gconstpointer a, gconstpointer b) {
  const SpvLibraryEntry *const *left = a, *const *right = b;
  int order = g_utf8_collate((*left)->title, (*right)->title);
  return order != 0 ? order : strcmp((*left)->key, (*right)->key);
}

static void
list_templates(GPtrArray *entries) {
  g_autofree char *folder = spv_library_folder();
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  const char *file;
  while (dir != NULL && (file = g_dir_read_name(dir)) != NULL) {
    if (file[0] == '.' || !g_str_has_suffix(file, TEMPLATE_SUFFIX))
      continue;
    g_autofree char *shown = g_filename_display_name(file);
    g_autofree char *key = g_strndup(shown, strlen(shown) - strlen(TEMPLATE_SUFFIX));
    g_ptr_array_add(entries, entry_new(SPV_LIBRARY_TEMPLATE, key, g_build_filename(folder, file, NULL)));
  }
  g_ptr_array_sort(entries, compare_titles);
}

GPtrArray *
spv_library_list(SpvLibraryKind kind) {
  GPtrArray *entries = g_ptr_array_new_with_free_func((GDestroyNotify) spv_library_entry_free);
  switch (kind) {
  case SPV_LIBRARY_HARNESS:
  case SPV_LIBRARY_EXAMPLE:
    list_shipped(kind, entries);
    break;
  case SPV_LIBRARY_TEMPLATE:
    list_templates(entries);
    break;
  }
  return entries;
}

static const SpvLibraryEntry *
find_key(GPtrArray *entries, const char *key) {
  for (guint i = 0; i < entries->len; i++) {
    const SpvLibraryEntry *entry = g_ptr_array_index(entries, i);
    if (strcmp(entry->key, key) == 0)
      return entry;
  }
  return NULL;
}

SpvScheme *
spv_library_load_key(const char *key, GError **error) {
  g_autoptr(GString) all = g_string_new(NULL);
  for (guint kind = SPV_LIBRARY_HARNESS; kind <= SPV_LIBRARY_TEMPLATE; kind++) {
    g_autoptr(GPtrArray) entries = spv_library_list((SpvLibraryKind) kind);
    const SpvLibraryEntry *entry = find_key(entries, key);
    if (entry != NULL)
      return spv_library_load(entry, error);
    for (guint i = 0; i < entries->len; i++) {
      const SpvLibraryEntry *other = g_ptr_array_index(entries, i);
      g_string_append_printf(all, "%s%s", all->len > 0 ? ", " : "", other->key);
    }
  }
  g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_UNKNOWN,
              _("there is no harness, example or template “%s”; there are: %s"), key,
              all->len > 0 ? all->str : _("none"));
  return NULL;
}

/* TITLE as a file name: a-z, 0-9 and single hyphens. Free with g_free(). */
static char *
key_from_title(const char *title) {
  /* With a locale of its own, so that the same title gives the same name everywhere. */
  g_autofree char *ascii = g_str_to_ascii(title, "C");
  GString *key = g_string_new(NULL);
  for (const char *p = ascii; *p != '\0' && key->len < TEMPLATE_KEY_MAX; p++) {
    if (g_ascii_isalnum(*p))
      g_string_append_c(key, g_ascii_tolower(*p));
    else if (key->len > 0 && key->str[key->len - 1] != '-')
      g_string_append_c(key, '-');
  }
  while (key->len > 0 && key->str[key->len - 1] == '-')
    g_string_truncate(key, key->len - 1);
  if (key->len == 0)
    g_string_assign(key, "template");
  return g_string_free(key, FALSE);
}

static gboolean
key_is_free(GPtrArray *templates, const char *folder, const char *key) {
  g_autofree char *path = g_strconcat(folder, G_DIR_SEPARATOR_S, key, TEMPLATE_SUFFIX, NULL);
  g_autoptr(GPtrArray) harnesses = spv_library_list(SPV_LIBRARY_HARNESS);
  g_autoptr(GPtrArray) examples = spv_library_list(SPV_LIBRARY_EXAMPLE);
  return find_key(templates, key) == NULL && find_key(harnesses, key) == NULL &&
         find_key(examples, key) == NULL && !g_file_test(path, G_FILE_TEST_EXISTS);
}

/* Where the template called TITLE lies or is to lie. */
static char *
template_path(const char *folder, const char *title) {
  g_autoptr(GPtrArray) templates = spv_library_list(SPV_LIBRARY_TEMPLATE);
  for (guint i = 0; i < templates->len; i++) {
    const SpvLibraryEntry *entry = g_ptr_array_index(templates, i);
    if (strcmp(entry->title, title) == 0)
      return g_strdup(entry->path);
  }
  g_autofree char *base = key_from_title(title);
  g_autofree char *key = g_strdup(base);
  for (guint n = 2; !key_is_free(templates, folder, key); n++) {
    g_free(key);
    key = g_strdup_printf("%s-%u", base, n);
  }
  return g_strconcat(folder, G_DIR_SEPARATOR_S, key, TEMPLATE_SUFFIX, NULL);
}

char *
spv_library_save_template(const SpvScheme *scheme, const char *title, GError **error) {
  g_autofree char *clean = spv_name_clean(title);
  if (clean == NULL) {
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_INVALID,
                _("the template has no name; give it one"));
    return NULL;
  }
  g_autofree char *folder = spv_library_folder();
  if (g_mkdir_with_parents(folder, 0755) != 0) {
    int number = errno;
    g_autofree char *shown = g_filename_display_name(folder);
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: the folder of templates could not be made: %s"), shown, g_strerror(number));
    return NULL;
  }
  g_autofree char *path = template_path(folder, clean);
  g_autoptr(SpvScheme) titled = spv_scheme_with_title(scheme, clean);
  return spv_scheme_save(titled, path, error) ? g_steal_pointer(&path) : NULL;
}
