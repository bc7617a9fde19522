/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From JSON values to a scheme. */
#pragma once

#include "scheme/fields-private.h"

/* The scheme that ROOT is; NULL with the reader's error set. */
SpvScheme *spv_read_scheme(SpvReader *reader, const json_t *root);

/* SCHEME with the tinctures of ROOT, which stands at AT; what is unknown of each goes to UNKNOWN, which has
 * room for the most there can be. NULL with the error set. */
SpvScheme *spv_read_tinctures(SpvReader *reader, const json_t *root, const SpvJsonPath *at,
                              const SpvScheme *scheme, json_t **unknown);

/* PANEL with the design that DESIGN, at AT, describes; its tinctures are those of SCHEME. */
SpvPanel *spv_read_design(SpvReader *reader, const json_t *design, const SpvJsonPath *at,
                          const SpvScheme *scheme, const SpvPanel *panel);

/* Sets the error that the member KEY of what stands at AT can't be GIVEN, but one of the N keys that KEY_OF
 * gives. Returns FALSE. */
gboolean spv_read_fail_no_such(SpvReader *reader, const SpvJsonPath *at, const char *key, const char *given,
                               const char *(*key_of)(guint index), guint n);

/* "vert, azure, …": the N keys that KEY_OF gives. Free with g_free(). */
char *spv_read_join_keys(const char *(*key_of)(guint index), guint n);
