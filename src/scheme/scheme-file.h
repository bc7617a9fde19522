/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme file: strict reading, stable writing, safe saving. The format is described in
 * resources/format.md and resources/scheme.schema.json. */
#pragma once

#include "scheme/scheme.h"

#define SPV_FILE_VERSION 1
#define SPV_FILE_MAX_BYTES (16 * 1024 * 1024)
#define SPV_FILE_MAX_DEPTH 32

/* Reads a scheme from LENGTH bytes of JSON. NAME is what errors call the file. An error reads
 * "NAME:LINE:COLUMN: what, and what to do
 * ($.path.to.it)". */
SpvScheme *spv_scheme_parse(const char *text, gsize length, const char *name, GError **error);

/* Reads the file at PATH. */
SpvScheme *spv_scheme_load(const char *path, GError **error);

/* The file's bytes: UTF-8 JSON, sorted keys, ends in a line feed; the same scheme gives the same bytes. Free
 * with g_free(); the length, without the closing NUL, goes to LENGTH unless NULL. */
char *spv_scheme_to_text(const SpvScheme *scheme, gsize *length);

/* Writes beside PATH, flushes, renames: PATH holds the old bytes or the new, whole, whatever happens. */
gboolean spv_scheme_save(const SpvScheme *scheme, const char *path, GError **error);
