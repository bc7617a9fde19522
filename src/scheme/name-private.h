/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rules for ids, names and notes, and the shared strings that hold them inside a scheme's values. */
#pragma once

#include <glib.h>

#define SPV_ID_MAX 64      /* characters */
#define SPV_NAME_MAX 200   /* characters */
#define SPV_NOTE_MAX 10000 /* characters */

/* Whether TEXT is 1 to SPV_ID_MAX characters of a-z, 0-9 and "-". */
gboolean spv_id_is_valid(const char *text);

typedef enum { SPV_NAME_GOOD, SPV_NAME_EMPTY, SPV_NAME_LONG, SPV_NAME_CONTROL } SpvNameFault;
/* What is wrong with TEXT (valid UTF-8) as a name. */
SpvNameFault spv_name_check(const char *text);
/* Likewise as a note: may be empty, may hold line feeds and tabs. */
SpvNameFault spv_note_check(const char *text);

/* TEXT as a name that spv_name_check() finds good: control characters become spaces, what is too long is cut;
 * NULL when nothing but space is left. Free with g_free(). */
char *spv_name_clean(const char *text);
/* Likewise as a note; never NULL. */
char *spv_note_clean(const char *text);

/* Strings inside values are counted, so that copies of a value share them. NULL gives NULL. */
const char *spv_shared_new(const char *text);
const char *spv_shared_ref(const char *shared);
void spv_shared_unref(const char *shared);
/* Puts a new string with TEXT in PLACE, whose old one is let go; TEXT may lie in that. */
void spv_shared_replace(const char **place, const char *text);
