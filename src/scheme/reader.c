/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme, its harness and its panels, out of JSON; what is not known is kept. */
#include "config.h"

#include "scheme/reader-private.h"

#include <glib/gi18n-lib.h>

#include "scheme/scheme-file.h"

/* Places of panels lie within this of the harness's middle, mm. */
#define PLACE_MAX 10000.0

char *
spv_read_join_keys(const char *(*key_of)(guint index), guint n) {
  GString *out = g_string_new(NULL);
  for (guint i = 0; i < n; i++)
    g_string_append_printf(out, "%s%s", i > 0 ? ", " : "", key_of(i));
  return g_string_free(out, FALSE);
}

static const char *
side_key_at(guint index) {
  return spv_side_key((SpvSide) index);
}

static const char *
family_key_at(guint index) {
  return spv_outline_info((SpvOutlineFamily) index)->key;
}

static const char *
surface_key_at(guint index) {
  return spv_surface_kind_key((SpvSurfaceKind) index);
}

gboolean
spv_read_fail_no_such(SpvReader *reader, const SpvJsonPath *at, const char *key, const char *given,
                      const char *(*key_of)(guint index), guint n) {
  SpvJsonPath here = { at, key, 0 };
  g_autofree char *excerpt = spv_reader_excerpt(given);
  g_autofree char *all = spv_read_join_keys(key_of, n);
  /* TRANSLATORS: a member's name, what it holds, what it may hold. */
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here, _("“%s” can't be “%s”; take one of %s"),
                         key, excerpt, all);
}

static gboolean
read_version(SpvReader *reader, const json_t *root, const SpvJsonPath *at) {
  SpvJsonPath here = { at, "spolvero", 0 };
  const json_t *version = json_object_get(root, "spolvero");
  if (version == NULL)
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, at,
                           _("this is not a scheme: “spolvero” is missing; add \"spolvero\": %d"),
                           SPV_FILE_VERSION);
  double number = json_number_value(version);
  if (!json_is_number(version) || number != floor(number) || number < 1)
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                           _("“spolvero” must be the format's version as a whole number; write %d"),
                           SPV_FILE_VERSION);
  char newer[G_ASCII_DTOSTR_BUF_SIZE];
  if (number > SPV_FILE_VERSION)
    return spv_reader_fail(
        reader, SPV_SCHEME_ERROR_INVALID, &here,
        _("made by a newer version of the program (format %s, this one reads %d); open it with that version"),
        g_ascii_formatd(newer, sizeof newer, "%.15g", number), SPV_FILE_VERSION);
  return TRUE;
}

/* Keeps the unknown members of the panel's member KEY, where there are any, under that key in UNKNOWN. */
static void
keep_nested(json_t **unknown, const char *key, const json_t *object, const char *const *known) {
  json_t *nested = spv_read_unknown(object, known);
  if (nested == NULL)
    return;
  if (*unknown == NULL)
    *unknown = json_object();
  json_object_set_new(*unknown, key, nested);
}

static gboolean
read_outline(SpvReader *reader, const json_t *panel, const SpvJsonPath *at, SpvOutlineSpec *spec,
             json_t **unknown) {
  SpvJsonPath here = { at, "outline", 0 };
  const char *known[SPV_OUTLINE_MEASURES + 4] = { "family", "width", "height" };
  json_t *object;
  const char *family;
  *spec = (SpvOutlineSpec){ 0 };
  if (!spv_read_object(reader, panel, at, "outline", &object) ||
      !spv_read_string(reader, object, &here, "family", &family))
    return FALSE;
  if (!spv_outline_family_from_key(family, &spec->family))
    return spv_read_fail_no_such(reader, &here, "family", family, family_key_at, SPV_N_OUTLINE_FAMILIES);
  if (!spv_read_length(reader, object, &here, "width", SPV_OUTLINE_MIN_MM, SPV_OUTLINE_MAX_MM,
                       &spec->width) ||
      !spv_read_length(reader, object, &here, "height", SPV_OUTLINE_MIN_MM, SPV_OUTLINE_MAX_MM,
                       &spec->height))
    return FALSE;

  const SpvOutlineInfo *info = spv_outline_info(spec->family);
  for (guint i = 0; i < info->n_own; i++) {
    known[3 + i] = info->own[i].key;
    if (!spv_read_length(reader, object, &here, info->own[i].key, 0, SPV_OUTLINE_MAX_MM, &spec->own[i]))
      return FALSE;
  }
  g_autoptr(GError) misfit = NULL;
  if (!spv_outline_spec_check(spec, &misfit))
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here, "%s", misfit->message);
  keep_nested(unknown, "outline", object, known);
  return TRUE;
}

static gboolean
read_surface(SpvReader *reader, const json_t *panel, const SpvJsonPath *at, double width, SpvSurface *surface,
             json_t **unknown) {
  static const char *const known[] = { "kind", "depth", NULL };
  SpvJsonPath here = { at, "surface", 0 };
  json_t *object;
  const char *kind;
  *surface = (SpvSurface){ 0 };
  if (!spv_read_object(reader, panel, at, "surface", &object) ||
      !spv_read_string(reader, object, &here, "kind", &kind))
    return FALSE;
  if (!spv_surface_kind_from_key(kind, &surface->kind))
    return spv_read_fail_no_such(reader, &here, "kind", kind, surface_key_at, SPV_N_SURFACES);
  gboolean needs_depth = surface->kind != SPV_SURFACE_FLAT || json_object_get(object, "depth") != NULL;
  if (needs_depth && !spv_read_length(reader, object, &here, "depth", 0, SPV_OUTLINE_MAX_MM, &surface->depth))
    return FALSE;
  g_autoptr(GError) misfit = NULL;
  if (!spv_surface_check(surface, width, &misfit))
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here, "%s", misfit->message);
  keep_nested(unknown, "surface", object, known);
  return TRUE;
}

static gboolean
read_place(SpvReader *reader, const json_t *panel, const SpvJsonPath *at, SpvPoint *place, json_t **unknown) {
  static const char *const known[] = { "x", "y", NULL };
  SpvJsonPath here = { at, "place", 0 };
  json_t *object;
  if (!spv_read_object(reader, panel, at, "place", &object) ||
      !spv_read_length(reader, object, &here, "x", -PLACE_MAX, PLACE_MAX, &place->x) ||
      !spv_read_length(reader, object, &here, "y", -PLACE_MAX, PLACE_MAX, &place->y))
    return FALSE;
  keep_nested(unknown, "place", object, known);
  return TRUE;
}

/* NULL with the error set. UNKNOWN is set also then. */
static SpvPanel *
read_panel_parts(SpvReader *reader, const json_t *object, const SpvJsonPath *at, json_t **unknown) {
  const char *id, *name, *side_key;
  SpvSide side;
  SpvOutlineSpec outline;
  SpvSurface surface;
  SpvPoint place;
  gboolean measured = FALSE;
  if (!spv_read_is_object(reader, object, at) || !spv_read_id(reader, object, at, &id) ||
      !spv_read_name(reader, object, at, "name", &name) ||
      !spv_read_string(reader, object, at, "side", &side_key))
    return NULL;
  if (!spv_side_from_key(side_key, &side)) {
    spv_read_fail_no_such(reader, at, "side", side_key, side_key_at, SPV_SIDE_SINISTER + 1);
    return NULL;
  }
  if (!read_outline(reader, object, at, &outline, unknown) ||
      !read_surface(reader, object, at, outline.width, &surface, unknown) ||
      !read_place(reader, object, at, &place, unknown) ||
      !spv_read_flag(reader, object, at, "measured", &measured))
    return NULL;
  g_autoptr(SpvPanel) panel = spv_panel_new(id, name, side, &outline, &surface, place);
  return spv_panel_with_measured(panel, measured);
}

static SpvPanel *
read_panel(SpvReader *reader, const json_t *object, const SpvJsonPath *at) {
  static const char *const known[] = {
    "id", "name", "side", "outline", "surface", "place", "measured", NULL
  };
  json_t *nested = NULL;
  g_autoptr(SpvPanel) panel = read_panel_parts(reader, object, at, &nested);
  SpvPanel *result = NULL;
  if (panel != NULL) {
    json_t *unknown = spv_read_unknown(object, known);
    if (unknown == NULL)
      unknown = json_incref(nested);
    else if (nested != NULL)
      json_object_update(unknown, nested);
    result = spv_panel_with_unknown(panel, unknown, NULL);
    json_decref(unknown);
  }
  json_decref(nested);
  return result;
}

/* SCHEME with the panels of HARNESS; NULL with the error set. */
static SpvScheme *
read_panels(SpvReader *reader, const json_t *harness, const SpvJsonPath *at, const SpvScheme *scheme) {
  SpvJsonPath here = { at, "panels", 0 };
  json_t *list;
  if (!spv_read_list(reader, harness, at, "panels", SPV_SCHEME_MAX_PANELS, &list))
    return NULL;
  g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
  g_autoptr(GPtrArray) panels = g_ptr_array_new_with_free_func((GDestroyNotify) spv_panel_unref);
  for (gsize i = 0; i < json_array_size(list); i++) {
    SpvJsonPath item_at = { &here, NULL, i };
    SpvPanel *panel = read_panel(reader, json_array_get(list, i), &item_at);
    if (panel == NULL)
      return NULL;
    g_ptr_array_add(panels, panel);
    if (!spv_read_id_is_new(reader, used, panel->id, &item_at))
      return NULL;
  }
  return spv_scheme_with_panels(scheme, (SpvPanel *const *) panels->pdata, panels->len);
}

/* SCHEME with the designs on its panels; NULL with the error set. */
static SpvScheme *
read_designs(SpvReader *reader, const json_t *root, const SpvJsonPath *at, const SpvScheme *scheme) {
  SpvJsonPath here = { at, "designs", 0 };
  json_t *designs, *design;
  const char *id;
  if (json_object_get(root, "designs") == NULL)
    return spv_scheme_ref(scheme);
  if (!spv_read_object(reader, root, at, "designs", &designs))
    return NULL;
  g_autofree SpvPanel **panels = g_memdup2(scheme->panels, scheme->n_panels * sizeof(SpvPanel *));
  g_autoptr(GPtrArray) made = g_ptr_array_new_with_free_func((GDestroyNotify) spv_panel_unref);
  json_object_foreach(designs, id, design) {
    SpvJsonPath item_at = { &here, id, 0 };
    int index = spv_scheme_find_panel(scheme, id);
    if (index < 0) {
      g_autofree char *excerpt = spv_reader_excerpt(id);
      spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, &item_at,
                          _("the harness has no panel “%s”; add the panel, or remove this design"), excerpt);
      return NULL;
    }
    panels[index] = spv_read_design(reader, design, &item_at, scheme, panels[index]);
    if (panels[index] == NULL)
      return NULL;
    g_ptr_array_add(made, panels[index]);
  }
  return spv_scheme_with_panels(scheme, panels, scheme->n_panels);
}

/* The scheme without what is unknown of it. */
static SpvScheme *
read_known(SpvReader *reader, const json_t *root, const SpvJsonPath *at, json_t **unknown_tinctures,
           json_t **harness) {
  SpvJsonPath harness_at = { at, "harness", 0 };
  const char *title, *harness_name, *note = "";
  double finest_line;
  if (!spv_read_name(reader, root, at, "title", &title) || !spv_read_note(reader, root, at, "note", &note) ||
      !spv_read_length(reader, root, at, "finest-line", SPV_FINEST_LINE_MIN, SPV_FINEST_LINE_MAX,
                       &finest_line) ||
      !spv_read_object(reader, root, at, "harness", harness) ||
      !spv_read_name(reader, *harness, &harness_at, "name", &harness_name))
    return NULL;

  g_autoptr(SpvScheme) bare = spv_scheme_new(title, harness_name);
  g_autoptr(SpvScheme) noted = spv_scheme_with_note(bare, note);
  g_autoptr(SpvScheme) lined = spv_scheme_with_finest_line(noted, finest_line);
  g_autoptr(SpvScheme) coloured = spv_read_tinctures(reader, root, at, lined, unknown_tinctures);
  if (coloured == NULL)
    return NULL;
  g_autoptr(SpvScheme) armed = read_panels(reader, *harness, &harness_at, coloured);
  return armed != NULL ? read_designs(reader, root, at, armed) : NULL;
}

SpvScheme *
spv_read_scheme(SpvReader *reader, const json_t *root) {
  static const char *const known[] = { "spolvero",  "title",   "note",    "finest-line",
                                       "tinctures", "harness", "designs", NULL };
  static const char *const harness_known[] = { "name", "panels", NULL };
  SpvJsonPath at = { NULL, NULL, 0 };
  json_t *unknown_tinctures[SPV_SCHEME_MAX_TINCTURES] = { NULL };
  json_t *harness = NULL;
  if (!spv_read_is_object(reader, root, &at) || !read_version(reader, root, &at))
    return NULL;

  g_autoptr(SpvScheme) scheme = read_known(reader, root, &at, unknown_tinctures, &harness);
  SpvScheme *result = NULL;
  if (scheme != NULL) {
    json_t *unknown = spv_read_unknown(root, known);
    json_t *unknown_harness = spv_read_unknown(harness, harness_known);
    gboolean any = FALSE;
    for (guint i = 0; i < scheme->n_tinctures; i++)
      any = any || unknown_tinctures[i] != NULL;
    result = spv_scheme_with_unknown(scheme, unknown, unknown_harness, any ? unknown_tinctures : NULL);
    json_decref(unknown);
    json_decref(unknown_harness);
  }
  for (guint i = 0; i < SPV_SCHEME_MAX_TINCTURES; i++)
    json_decref(unknown_tinctures[i]);
  return result;
}
