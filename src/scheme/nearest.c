/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The likest of many words. */
#include "scheme/nearest-private.h"

#include <string.h>

#include "heraldry/spelling.h"

char *
spv_nearest_words(const char *word, const char *(*word_at)(guint index), guint n, guint most) {
  g_autofree guint *away = g_new(guint, n);
  GString *out = g_string_new(NULL);

  for (guint i = 0; i < n; i++)
    away[i] = spv_spelling_distance(word, word_at(i));
  for (guint found = 0; found < MIN(most, n); found++) {
    guint best = 0;
    for (guint i = 1; i < n; i++)
      if (away[i] < away[best])
        best = i;
    if (away[best] > strlen(word) / 2)
      break;
    g_string_append_printf(out, "%s%s", found > 0 ? ", " : "", word_at(best));
    away[best] = G_MAXUINT;
  }
  return g_string_free(out, FALSE);
}
