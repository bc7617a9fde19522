/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tinctures between a scheme and the words of a blazon. */
#pragma once

#include "scheme/heraldic.h"

/* Whether layer INDEX of PANEL isn't to be seen: hidden itself, or laid on or counterchanged across one that
 * is. */
gboolean spv_heraldic_is_hidden(const SpvPanel *panel, guint index);

/* The id of the tincture that WORDS mean in SCHEME, which is replaced by one that has it where it had none;
 * goes to ID (free with g_free()). FALSE, with ERROR set, where a name in quotes is no tincture's, or the
 * scheme is full. */
gboolean spv_heraldic_resolve(SpvScheme **scheme, const char *words, char **id, GError **error);

/* The words by which spv_heraldic_resolve() finds the tincture called ID; NULL for NULL. Free with g_free().
 */
char *spv_heraldic_words(const SpvScheme *scheme, const char *id);
