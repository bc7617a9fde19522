/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "heraldry/spelling.h"

#include <string.h>

/* No key and no word of ours is as long. */
#define LONGEST 64

guint
spv_spelling_distance(const char *a, const char *b) {
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
