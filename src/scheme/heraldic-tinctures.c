/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which tincture of the scheme a word of a blazon means, and which word says a tincture. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "scheme/heraldic-private.h"

gboolean
spv_heraldic_is_hidden(const SpvPanel *panel, guint index) {
  const SpvLayer *layer = panel->layers[index];
  int on = layer->on ? spv_panel_find_layer(panel, layer->on) : -1;
  int across = layer->counterchange ? spv_panel_find_layer(panel, layer->counterchange) : -1;

  return layer->hidden || (on >= 0 && spv_heraldic_is_hidden(panel, (guint) on)) ||
         (across >= 0 && spv_heraldic_is_hidden(panel, (guint) across));
}

static gboolean
is_plain(const SpvScheme *scheme, int index) {
  return index >= 0 && scheme->tinctures[index].fur == SPV_FUR_NONE;
}

/* The plain tincture that the heraldic WORD means, or -1. */
static int
find_word(const SpvScheme *scheme, const char *word) {
  SpvHatch hatch;
  int index = spv_scheme_find_tincture(scheme, word);

  if (is_plain(scheme, index))
    return index;
  for (guint i = 0; spv_hatch_from_key(word, &hatch) && i < scheme->n_tinctures; i++)
    if (is_plain(scheme, (int) i) && scheme->tinctures[i].hatch == hatch &&
        !g_strv_contains(spv_blazon_tinctures, scheme->tinctures[i].id))
      return (int) i;
  return -1;
}

/* The tincture, plain or not, with NAME, or with that id; or -1. */
static int
find_own(const SpvScheme *scheme, const char *name) {
  for (guint i = 0; i < scheme->n_tinctures; i++)
    if (g_strcmp0(scheme->tinctures[i].name, name) == 0)
      return (int) i;
  return spv_scheme_find_tincture(scheme, name);
}

static int
find_fur(const SpvScheme *scheme, SpvFur fur, const char *ground, const char *spots) {
  for (guint i = 0; i < scheme->n_tinctures; i++) {
    const SpvTincture *tincture = &scheme->tinctures[i];
    if (tincture->fur == fur && g_strcmp0(tincture->of[0], ground) == 0 &&
        g_strcmp0(tincture->of[1], spots) == 0)
      return (int) i;
  }
  return -1;
}

/* Adds TINCTURE to SCHEME under an id like ID that is free; that goes to GIVEN. FALSE where it is full. */
static gboolean
add(SpvScheme **scheme, SpvTincture tincture, const char *id, char **given, GError **error) {
  g_autofree char *free_id = g_strdup(id);

  if ((*scheme)->n_tinctures >= SPV_SCHEME_MAX_TINCTURES) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                _("the scheme has its %d tinctures already; use one of them"), SPV_SCHEME_MAX_TINCTURES);
    return FALSE;
  }
  for (guint n = 2; spv_scheme_find_tincture(*scheme, free_id) >= 0; n++) {
    g_free(free_id);
    free_id = g_strdup_printf("%s-%u", id, n);
  }
  tincture.id = free_id;
  SpvScheme *more = spv_scheme_with_tincture_added(*scheme, &tincture);
  spv_scheme_unref(*scheme);
  *scheme = more;
  *given = g_steal_pointer(&free_id);
  return TRUE;
}

/* The id of a plain tincture by the heraldic WORD. */
static gboolean
resolve_word(SpvScheme **scheme, const char *word, char **id, GError **error) {
  int index = find_word(*scheme, word);
  SpvTincture tincture = { .name = word };

  if (index >= 0) {
    *id = g_strdup((*scheme)->tinctures[index].id);
    return TRUE;
  }
  /* "Proper" has no hatch: it stands for whatever colour a thing has by nature, and starts as argent. */
  spv_hatch_from_key(word, &tincture.hatch);
  tincture.colour = spv_hatch_usual_colour(tincture.hatch);
  return add(scheme, tincture, word, id, error);
}

static gboolean
resolve_own(SpvScheme **scheme, const char *name, char **id, GError **error) {
  int index = find_own(*scheme, name);

  if (index < 0) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                _("the scheme has no tincture “%s”; add it, or take one that is there"), name);
    return FALSE;
  }
  *id = g_strdup((*scheme)->tinctures[index].id);
  return TRUE;
}

static gboolean
resolve_part(SpvScheme **scheme, const SpvBlazonTincture *tincture, guint part, char **id, GError **error) {
  return tincture->own[part] ? resolve_own(scheme, tincture->parts[part], id, error)
                             : resolve_word(scheme, tincture->parts[part], id, error);
}

/* WORDS as an id: what is no letter becomes a hyphen. */
static char *
id_from(const char *words) {
  GString *id = g_string_new(NULL);

  for (const char *c = words; *c != '\0' && id->len < 40; c++)
    if (g_ascii_isalnum(*c))
      g_string_append_c(id, g_ascii_tolower(*c));
    else if (id->len > 0 && id->str[id->len - 1] != '-')
      g_string_append_c(id, '-');
  while (id->len > 0 && id->str[id->len - 1] == '-')
    g_string_truncate(id, id->len - 1);
  return g_string_free(id, FALSE);
}

static gboolean
resolve_fur(SpvScheme **scheme, const SpvBlazonTincture *tincture, const char *words, char **id,
            GError **error) {
  g_autofree char *ground = NULL, *spots = NULL;

  if (!resolve_part(scheme, tincture, 0, &ground, error) || !resolve_part(scheme, tincture, 1, &spots, error))
    return FALSE;
  int index = find_fur(*scheme, tincture->fur, ground, spots);
  if (index >= 0) {
    *id = g_strdup((*scheme)->tinctures[index].id);
    return TRUE;
  }
  if (!is_plain(*scheme, spv_scheme_find_tincture(*scheme, ground)) ||
      !is_plain(*scheme, spv_scheme_find_tincture(*scheme, spots)) || g_str_equal(ground, spots)) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                _("“%s”: a fur is made of two tinctures that are no furs; name two others"), words);
    return FALSE;
  }
  SpvTincture fur = { .name = words, .fur = tincture->fur, .of = { ground, spots } };
  g_autofree char *wanted = id_from(words);
  return add(scheme, fur, wanted, id, error);
}

gboolean
spv_heraldic_resolve(SpvScheme **scheme, const char *words, char **id, GError **error) {
  g_auto(SpvBlazonTincture) tincture = { 0 };

  if (!spv_blazon_tincture_read(words, &tincture)) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON, _("“%s” is no tincture"), words);
    return FALSE;
  }
  if (tincture.fur != SPV_FUR_NONE)
    return resolve_fur(scheme, &tincture, words, id, error);
  return resolve_part(scheme, &tincture, 0, id, error);
}

/* How the plain tincture INDEX is said: into part PART of TINCTURE. */
static void
say_plain(const SpvScheme *scheme, guint index, SpvBlazonTincture *tincture, guint part) {
  const SpvTincture *said = &scheme->tinctures[index];
  const char *hatch = spv_hatch_key(said->hatch);
  const char *word = NULL;

  if (g_strv_contains(spv_blazon_tinctures, said->id))
    word = said->id;
  else if (find_word(scheme, hatch) == (int) index)
    word = hatch;
  tincture->own[part] = word == NULL;
  if (word == NULL)
    word = find_own(scheme, said->name) == (int) index ? said->name : said->id;
  tincture->parts[part] = g_strdup(word);
}

char *
spv_heraldic_words(const SpvScheme *scheme, const char *id) {
  int index = id ? spv_scheme_find_tincture(scheme, id) : -1;
  g_auto(SpvBlazonTincture) tincture = { 0 };

  if (index < 0)
    return NULL;
  const SpvTincture *said = &scheme->tinctures[index];
  if (said->fur == SPV_FUR_NONE) {
    say_plain(scheme, (guint) index, &tincture, 0);
  } else if (find_fur(scheme, said->fur, said->of[0], said->of[1]) == index) {
    tincture.fur = said->fur;
    for (guint part = 0; part < 2; part++)
      say_plain(scheme, (guint) spv_scheme_find_tincture(scheme, said->of[part]), &tincture, part);
  } else {
    tincture.own[0] = TRUE;
    tincture.parts[0] = g_strdup(find_own(scheme, said->name) == index ? said->name : said->id);
  }
  return spv_blazon_tincture_write(&tincture);
}
