/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From JSON values to a scheme. */
#pragma once

#include "scheme/fields-private.h"

/* The scheme that ROOT is; NULL with the reader's error set. */
SpvScheme *spv_read_scheme(SpvReader *reader, const json_t *root);

/* PANEL with the design that DESIGN, at AT, describes; its tinctures are those of SCHEME. */
SpvPanel *spv_read_design(SpvReader *reader, const json_t *design, const SpvJsonPath *at,
                          const SpvScheme *scheme, const SpvPanel *panel);

/* "vert, azure, …": the N keys that KEY_OF gives. Free with g_free(). */
char *spv_read_join_keys(const char *(*key_of)(guint index), guint n);
