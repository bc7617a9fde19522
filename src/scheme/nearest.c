/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The edit distance with swaps of neighbours (optimal string alignment). */
#include "scheme/nearest-private.h"

#include <string.h>

/* Of a longer word only this much is looked at: no key is as long. */
#define LONGEST 64

static guint
distance(const char *a, const char *b) {
  gsize n_a = MIN(strlen(a), LONGEST), n_b = MIN(strlen(b), LONGEST);
  guint rows[LONGEST + 1][LONGEST + 1];

  for (gsize i = 0; i <= n_a; i++)
    for (gsize j = 0; j <= n_b; j++) {
      if (i == 0 || j == 0) {
        rows[i][j] = (guint) (i + j);
        continue;
      }
      guint changed = rows[i - 1][j - 1] + (a[i - 1] != b[j - 1]);
      rows[i][j] = MIN(changed, MIN(rows[i - 1][j], rows[i][j - 1]) + 1);
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        rows[i][j] = MIN(rows[i][j], rows[i - 2][j - 2] + 1);
    }
  return rows[n_a][n_b];
}

char *
spv_nearest_words(const char *word, const char *(*word_at)(guint index), guint n, guint most) {
  g_autofree guint *away = g_new(guint, n);
  GString *out = g_string_new(NULL);

  for (guint i = 0; i < n; i++)
    away[i] = distance(word, word_at(i));
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
