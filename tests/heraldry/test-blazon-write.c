/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazons that are written: in plain words where those will do, and read as the same patterns whatever they
 * are. */
#include "support/near.h"

#include "heraldry/random-blazon.h"

static void
assert_same(const GPtrArray *items, const char *text, guint seed) {
  SpvBlazonPlace place = { 0, 0 };
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) again = spv_blazon_parse(text, &place, &error);

  if (!again)
    fail_msg("seed %u: %s\n%s", seed, text, error->message);
  if (again->len != items->len)
    fail_msg("seed %u: %u items, not %u:\n%s", seed, again->len, items->len, text);
  for (guint i = 0; i < items->len; i++)
    if (!spv_blazon_item_equal(g_ptr_array_index(items, i), g_ptr_array_index(again, i)))
      fail_msg("seed %u: item %u is not the same:\n%s", seed, i, text);
}

static void
what_is_written_reads_as_the_same(void **state) {
  (void) state;
  for (guint seed = 0; seed < 8000; seed++) {
    GRand *rand = g_rand_new_with_seed(seed);
    g_autoptr(GPtrArray) items = random_items(rand);
    g_autofree char *text = spv_blazon_write(items);

    assert_same(items, text, seed);
    g_rand_free(rand);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = { cmocka_unit_test(what_is_written_reads_as_the_same) };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
