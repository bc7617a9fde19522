/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tinctures out of JSON: colours with their hatches, and furs, which may stand before what they are made of.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "scheme/reader-private.h"
#include "scheme/scheme-private.h"

static const char *
hatch_key_at(guint index) {
  return spv_hatch_key((SpvHatch) index);
}

/* The first fur is no fur. */
static const char *
fur_key_at(guint index) {
  return spv_fur_key((SpvFur) (index + 1));
}

/* The first of KEYS that OBJECT has, or NULL. */
static const char *
first_of(const json_t *object, const char *const *keys) {
  for (; *keys != NULL; keys++)
    if (json_object_get(object, *keys) != NULL)
      return *keys;
  return NULL;
}

static gboolean
read_colour(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvTincture *tincture) {
  static const char *const furs_own[] = { "of", "pitch", NULL };
  const char *colour, *hatch, *stray = first_of(object, furs_own);
  SpvJsonPath here = { at, "colour", 0 }, stray_at = { at, stray, 0 };
  if (stray != NULL)
    return spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, &stray_at,
                               _("only a fur has “%s”; add “fur”, or remove it"), stray);
  if (!spv_read_string(reader, object, at, "colour", &colour))
    return FALSE;
  if (!spv_rgb_parse(colour, &tincture->colour)) {
    g_autofree char *excerpt = spv_reader_excerpt(colour);
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                           _("“%s” is no colour; write it as \"#rrggbb\""), excerpt);
  }
  return spv_read_string(reader, object, at, "hatch", &hatch) &&
         (spv_hatch_from_key(hatch, &tincture->hatch) ||
          spv_read_fail_no_such(reader, at, "hatch", hatch, hatch_key_at, SPV_N_HATCHES));
}

/* The two ids; whether they name tinctures is asked when all have been read. */
static gboolean
read_parts(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvTincture *fur) {
  SpvJsonPath here = { at, "of", 0 };
  json_t *list;
  if (!spv_read_list(reader, object, at, "of", G_MAXSIZE, &list))
    return FALSE;
  if (json_array_size(list) != SPV_FUR_PARTS)
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                           _("a fur is “of” two tinctures, its ground and its spots, not %u"),
                           (guint) json_array_size(list));
  for (guint part = 0; part < SPV_FUR_PARTS; part++) {
    SpvJsonPath part_at = { &here, NULL, part };
    const json_t *item = json_array_get(list, part);
    if (!json_is_string(item))
      return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &part_at,
                             _("item %u must be a tincture's id, not %s"), part + 1,
                             spv_json_type_name(item));
    fur->of[part] = json_string_value(item);
  }
  return TRUE;
}

static gboolean
read_fur(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvTincture *fur) {
  static const char *const colours_own[] = { "colour", "hatch", NULL };
  const char *key, *stray = first_of(object, colours_own);
  SpvJsonPath stray_at = { at, stray, 0 };
  if (!spv_read_string(reader, object, at, "fur", &key))
    return FALSE;
  if (!spv_fur_from_key(key, &fur->fur))
    return spv_read_fail_no_such(reader, at, "fur", key, fur_key_at, SPV_N_FURS - 1);
  if (stray != NULL)
    return spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, &stray_at,
                               _("a fur has no “%s” of its own; remove it, or remove “fur”"), stray);
  return read_parts(reader, object, at, fur) &&
         (json_object_get(object, "pitch") == NULL ||
          spv_read_length(reader, object, at, "pitch", SPV_FUR_PITCH_MIN, SPV_FUR_PITCH_MAX, &fur->pitch));
}

static gboolean
read_tincture(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvTincture *tincture) {
  if (!spv_read_is_object(reader, object, at) || !spv_read_id(reader, object, at, &tincture->id) ||
      !spv_read_name(reader, object, at, "name", &tincture->name))
    return FALSE;
  if (json_object_get(object, "fur") != NULL)
    return read_fur(reader, object, at, tincture);
  return read_colour(reader, object, at, tincture);
}

/* The tincture called ID, or NULL. */
static const SpvTincture *
find(const SpvTincture *tinctures, guint n, const char *id) {
  for (guint i = 0; i < n; i++)
    if (g_strcmp0(tinctures[i].id, id) == 0)
      return &tinctures[i];
  return NULL;
}

/* Whether FUR, at AT, is made of plain ones of the N TINCTURES. */
static gboolean
check_parts(SpvReader *reader, const SpvJsonPath *at, const SpvTincture *fur, const SpvTincture *tinctures,
            guint n) {
  SpvJsonPath here = { at, "of", 0 };
  for (guint part = 0; fur->fur != SPV_FUR_NONE && part < SPV_FUR_PARTS; part++) {
    SpvJsonPath part_at = { &here, NULL, part };
    const SpvTincture *found = find(tinctures, n, fur->of[part]);
    if (found != NULL && found->fur == SPV_FUR_NONE)
      continue;
    g_autofree char *excerpt = spv_reader_excerpt(fur->of[part]);
    if (found == NULL)
      return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &part_at,
                             _("there is no tincture “%s”; add it to “tinctures”, or use one that is there"),
                             excerpt);
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &part_at,
                           _("“%s” is a fur itself; use a tincture with a colour"), excerpt);
  }
  return TRUE;
}

SpvScheme *
spv_read_tinctures(SpvReader *reader, const json_t *root, const SpvJsonPath *at, const SpvScheme *scheme,
                   json_t **unknown) {
  static const char *const known[] = { "id", "name", "colour", "hatch", "fur", "of", "pitch", NULL };
  SpvJsonPath here = { at, "tinctures", 0 };
  SpvTincture tinctures[SPV_SCHEME_MAX_TINCTURES] = { 0 };
  json_t *list;
  if (!spv_read_list(reader, root, at, "tinctures", SPV_SCHEME_MAX_TINCTURES, &list))
    return NULL;

  g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
  guint n = (guint) json_array_size(list);
  for (guint i = 0; i < n; i++) {
    SpvJsonPath item_at = { &here, NULL, i };
    const json_t *item = json_array_get(list, i);
    if (!read_tincture(reader, item, &item_at, &tinctures[i]) ||
        !spv_read_id_is_new(reader, used, tinctures[i].id, &item_at))
      return NULL;
    unknown[i] = spv_read_unknown(item, known);
  }
  for (guint i = 0; i < n; i++) {
    SpvJsonPath item_at = { &here, NULL, i };
    if (!check_parts(reader, &item_at, &tinctures[i], tinctures, n))
      return NULL;
  }
  return spv_scheme_with_tinctures(scheme, tinctures, n);
}
