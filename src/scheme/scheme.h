/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The document: one faction's tinctures, and a harness of panels with a design on each. A sealed, counted
 * value: read its fields, never write them. An edit makes a new scheme that shares all that it did not touch,
 * so undo is a list of schemes and any thread may read one. */
#pragma once

#include "scheme/panel.h"
#include "scheme/tincture.h"

typedef struct {
  const char *title;
  const char *note;    /* the painter's words; may be "" */
  const char *harness; /* the harness's name: "Armoured trooper, 32 mm" */
  double finest_line;  /* mm: the finest line that the painter's brush holds */
  guint n_tinctures;
  const SpvTincture *tinctures;
  guint n_panels;
  SpvPanel *const *panels;
  /* private */
  json_t *unknown, *unknown_harness;
  json_t **unknown_tinctures; /* one a tincture, each may be NULL; or NULL */
  gatomicrefcount refs;
} SpvScheme;

#define SPV_FINEST_LINE_PRESET 0.25 /* mm: from memory; see the window's own words on it */
#define SPV_FINEST_LINE_MIN 0.05
#define SPV_FINEST_LINE_MAX 5.0
#define SPV_SCHEME_MAX_PANELS 256
#define SPV_SCHEME_MAX_TINCTURES 64

SpvScheme *spv_scheme_new(const char *title, const char *harness);
SpvScheme *spv_scheme_ref(const SpvScheme *scheme);
void spv_scheme_unref(SpvScheme *scheme);

/* Indices, or -1. A NULL id gives -1. */
int spv_scheme_find_panel(const SpvScheme *scheme, const char *id);
int spv_scheme_find_tincture(const SpvScheme *scheme, const char *id);
/* The first fur that is made of the tincture called ID. */
int spv_scheme_find_fur_of(const SpvScheme *scheme, const char *id);

/* Each returns a new reference: SCHEME itself where nothing would change. Indices must be in range. */
SpvScheme *spv_scheme_with_title(const SpvScheme *scheme, const char *title);
SpvScheme *spv_scheme_with_note(const SpvScheme *scheme, const char *note);
SpvScheme *spv_scheme_with_finest_line(const SpvScheme *scheme, double mm);
SpvScheme *spv_scheme_with_panel(const SpvScheme *scheme, guint index, const SpvPanel *panel);
SpvScheme *spv_scheme_with_panels(const SpvScheme *scheme, SpvPanel *const *panels, guint n);
/* Replaces tincture INDEX; a new id is followed by every layer and every fur that used the old one. Here and
 * below, SCHEME itself where a fur would not be made of two plain tinctures that there are, or has a pitch
 * that it can't have: a tincture that furs are made of can't become one. */
SpvScheme *spv_scheme_with_tincture(const SpvScheme *scheme, guint index, const SpvTincture *tincture);
SpvScheme *spv_scheme_with_tincture_added(const SpvScheme *scheme, const SpvTincture *tincture);
/* NULL, with ERROR set, while a layer or a fur uses the tincture: the message names it. */
SpvScheme *spv_scheme_with_tincture_removed(const SpvScheme *scheme, guint index, GError **error);
/* The same designs on another harness: each panel of HARNESS takes the layers of the panel with its id, where
 * there is one. */
SpvScheme *spv_scheme_with_harness(const SpvScheme *scheme, const SpvScheme *harness);
SpvScheme *spv_scheme_with_unknown(const SpvScheme *scheme, json_t *unknown, json_t *unknown_harness,
                                   json_t **unknown_tinctures);

typedef enum {
  SPV_SCHEME_ERROR_READ,    /* the file could not be read */
  SPV_SCHEME_ERROR_SYNTAX,  /* not JSON */
  SPV_SCHEME_ERROR_INVALID, /* JSON, but not a scheme: wrong type, range, reference or version */
  SPV_SCHEME_ERROR_LIMIT,   /* beyond a stated limit */
  SPV_SCHEME_ERROR_WRITE,   /* could not be saved; the old file is whole */
  SPV_SCHEME_ERROR_IN_USE,  /* a tincture is still used */
  SPV_SCHEME_ERROR_UNKNOWN  /* no such harness or template */
} SpvSchemeError;
#define SPV_SCHEME_ERROR (spv_scheme_error_quark())
GQuark spv_scheme_error_quark(void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvScheme, spv_scheme_unref)
