/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads the chunks of a PNG held in memory, by the specification's words and with no help from libpng, so
 * that a test does not ask the writer's own library what it wrote. */
#pragma once

#include <glib.h>
#include <string.h>

static inline guint32
png_number(const guint8 *at) {
  return (guint32) at[0] << 24 | (guint32) at[1] << 16 | (guint32) at[2] << 8 | at[3];
}

/* The data of the NTH chunk of TYPE, its length in LENGTH; NULL when there is none. */
static inline const guint8 *
png_chunk(const GByteArray *png, const char *type, guint nth, guint32 *length) {
  gsize at = 8; /* after the signature */

  while (at + 12 <= png->len) {
    guint32 size = png_number(png->data + at);
    if (size > png->len - at - 12)
      return NULL;
    if (memcmp(png->data + at + 4, type, 4) == 0 && nth-- == 0) {
      *length = size;
      return png->data + at + 8;
    }
    at += (gsize) size + 12;
  }
  return NULL;
}

/* The text of a tEXt or iTXt chunk called KEYWORD, as it stands in the file; NULL when there is none. Free
 * with g_free(). */
static inline char *
png_text(const GByteArray *png, const char *type, const char *keyword) {
  const guint8 *data;
  guint32 length = 0;

  for (guint n = 0; (data = png_chunk(png, type, n, &length)) != NULL; n++) {
    gsize skip = strlen(keyword) + 1;
    if (length < skip || memcmp(data, keyword, skip) != 0)
      continue;
    if (strcmp(type, "iTXt") == 0)
      skip += 4; /* two compression bytes, an empty language, an empty translated keyword */
    return g_strndup((const char *) data + skip, length - skip);
  }
  return NULL;
}
