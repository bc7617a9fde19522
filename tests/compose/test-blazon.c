/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazon all the way to what shows: old coats as their books have them, and any design said and laid again.
 */
#include "support/near.h"

#include <string.h>

#include "compose/compose.h"
#include "scheme/heraldic.h"
#include "support/scene.h"

static SpvPartition *
partition_of(const SpvScheme *scheme) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  SpvPartition *partition = spv_partition_new(composition, NULL, NULL);

  assert_non_null(partition);
  return partition;
}

/* The area of the tincture called ID, of the whole panel's. */
static double
share_of(const SpvPartition *partition, const char *id) {
  int tincture = spv_scheme_find_tincture(partition->composition->scheme, id);
  double whole = spv_shape_area(spv_outline_shape(partition->composition->outline));

  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    if (tincture >= 0 && region->tincture == tincture)
      return spv_shape_area(region->shape) / whole;
  }
  return 0;
}

/* TEXT laid on a square panel, in the usual tinctures. */
static SpvScheme *
square_coat(const char *text) {
  g_autoptr(SpvScheme) scheme = spv_scheme_new("Old coats", "A square");
  SpvOutlineSpec outline = { .family = SPV_OUTLINE_RECTANGLE, .width = 30, .height = 30 };
  g_autoptr(SpvPanel) panel = spv_panel_new("square", "square", SPV_SIDE_CENTRE, &outline,
                                            &(SpvSurface){ SPV_SURFACE_FLAT, 0 }, spv_point(0, 0));
  SpvPanel *panels[] = { panel };
  g_autoptr(SpvScheme) bare = spv_scheme_with_panels(scheme, panels, 1);
  g_autoptr(GError) error = NULL;
  SpvScheme *coat = spv_heraldic_lay(bare, 0, text, NULL, &error);

  if (coat == NULL)
    fail_msg("“%s”: %s", text, error->message);
  return coat;
}

/* What each tincture comes to on a square, by the widths of Kent (1726), Cussans (1866) and Boutell (11th
 * ed.) and plane geometry; the coats as Boutell and Fox-Davies have them (tests/reference/blazons.csv). */
static const struct {
  const char *text, *id;
  double share;
} coats[] = {
  /* Seven squares across (Britannica 9th ed. p. 698): 25 of 49. */
  { "Chequy or and azure", "or", 25.0 / 49 },
  { "Chequy or and azure, a fess gules", "gules", 1.0 / 3 },
  { "Barry of six argent and azure", "azure", 0.5 },
  { "Barry of eight or and azure", "or", 0.5 },
  { "Gyronny or and sable", "or", 0.5 },
  { "Gyronny or and azure", "azure", 0.5 },
  { "Quarterly or and vert", "vert", 0.5 },
  /* Whole periods on either side of the middle: what a tooth takes the next one gives back. */
  { "Per fess wavy or and gules", "gules", 0.5 },
  { "Per bend embattled argent and gules", "gules", 0.5 },
  { "Or, two bars gules", "gules", 2.0 / 5 },
  { "Argent, a pale sable", "sable", 1.0 / 3 },
  /* A bend of w on a unit square: 1 - (1 - w/√2)²; a saltire 2 (1 - (1 - w/√2)²) - w²; w a fifth. */
  { "Azure, a bend or", "or", 0.262843 },
  { "Azure, a saltire argent", "argent", 0.485685 },
  { "Argent, a cross gules", "gules", 2.0 / 5 - 1.0 / 25 },
  { "Or, a fess chequy azure and argent", "or", 2.0 / 3 },
  { "Paly of six or and azure, a quarter ermine", "azure", 0.5 - 0.25 * 1.0 / 3 },
  /* The zig-zag band is as large as a plain one: width by thickness (reference table, section 10). */
  { "Or, a fess dancetty sable", "sable", 1.0 / 3 },
};

static void
old_coats_have_their_proportions(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(coats); i++) {
    g_autoptr(SpvScheme) scheme = square_coat(coats[i].text);
    g_autoptr(SpvPartition) partition = partition_of(scheme);
    double share = share_of(partition, coats[i].id);

    /* Teeth that a corner cuts make a little of a difference. */
    if (fabs(share - coats[i].share) > 3e-3)
      fail_msg("“%s”: %s is %.5f, not %.5f", coats[i].text, coats[i].id, share, coats[i].share);
  }
}

/* The first field of LINE, a line of CSV (RFC 4180) whose quoted fields hold no line breaks. */
static char *
first_field(const char *line) {
  const char *end = line[0] == '"' ? strchr(line + 1, '"') : strchr(line, ',');

  assert_non_null(end);
  return line[0] == '"' ? g_strndup(line + 1, (gsize) (end - line - 1))
                        : g_strndup(line, (gsize) (end - line));
}

/* What is borne on old coats that we don't draw. */
static const char *
undrawn_in(const char *text) {
  static const char *const words[] = { "martlet", "eaglet", "lioncel" };

  for (guint i = 0; i < G_N_ELEMENTS(words); i++)
    if (strstr(text, words[i]))
      return words[i];
  return NULL;
}

/* Every coat of the reference table is laid and composed whole, except where a beast or a bird is borne: that
 * is named, not dropped. */
static void
every_old_coat_is_laid_or_its_beast_is_named(void **state) {
  g_autofree char *path = g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "tests", "reference",
                                           "blazons.csv", NULL);
  g_autofree char *csv = NULL;
  guint laid = 0, named = 0;

  (void) state;
  assert_true(g_file_get_contents(path, &csv, NULL, NULL));
  g_auto(GStrv) lines = g_strsplit(csv, "\n", -1);
  for (guint i = 1; lines[i] != NULL && lines[i][0] != '\0'; i++) {
    g_autofree char *text = first_field(lines[i]);
    const char *undrawn = undrawn_in(text);
    g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_PLATE, 24, 28);
    g_autoptr(GError) error = NULL;
    g_autoptr(SpvScheme) coat = spv_heraldic_lay(scheme, 0, text, NULL, &error);

    if (undrawn != NULL) {
      assert_null(coat);
      assert_non_null(strstr(error->message, undrawn));
      named++;
      continue;
    }
    if (coat == NULL)
      fail_msg("“%s”: %s", text, error->message);
    g_autoptr(SpvPartition) partition = partition_of(coat);
    assert_true(spv_shape_is_empty(partition->bare));
    assert_true(partition->regions->len >= 2);
    laid++;
  }
  assert_true(laid >= 25);
  assert_int_equal(named, 3);
}

static void
assert_same_picture(const SpvScheme *one, const SpvScheme *other, const char *words) {
  g_autoptr(SpvPartition) a = partition_of(one), b = partition_of(other);

  for (guint i = 0; i < one->n_tinctures; i++) {
    double before = share_of(a, one->tinctures[i].id), after = share_of(b, one->tinctures[i].id);
    if (fabs(before - after) > 1e-9)
      fail_msg("“%s”: %s is %.10g, not %.10g", words, one->tinctures[i].name, after, before);
  }
  assert_int_equal(a->regions->len, b->regions->len);
}

/* Any design without free paths, said and laid again on the bare panel, shows the same regions. */
static void
what_is_said_composes_the_same_regions(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(1566);

  (void) state;
  for (int round = 0; round < ROUNDS(100); round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 5);
    g_autofree char *words = spv_heraldic_describe(scheme, 0);
    g_autoptr(SpvPanel) bare = spv_panel_with_layers(scheme->panels[0], NULL, 0);
    g_autoptr(SpvScheme) emptied = spv_scheme_with_panel(scheme, 0, bare);
    g_autoptr(GError) error = NULL;
    g_autoptr(SpvScheme) again = spv_heraldic_lay(emptied, 0, words, NULL, &error);

    if (again == NULL)
      fail_msg("“%s”: %s", words, error->message);
    assert_int_equal(again->n_tinctures, scheme->n_tinctures);
    assert_same_picture(scheme, again, words);
  }
}

/* Said and laid on the panel that it was said of, nothing changes: the window's entry follows the layers, and
 * leaving it does no harm. */
static void
laying_what_is_there_changes_nothing(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(77);

  (void) state;
  for (int round = 0; round < ROUNDS(100); round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 5);
    g_autofree char *words = spv_heraldic_describe(scheme, 0);
    g_autoptr(SpvScheme) again = spv_heraldic_lay(scheme, 0, words, NULL, NULL);

    assert_non_null(again);
    if (again != scheme)
      fail_msg("“%s” makes another scheme of the same", words);
  }
}

static void
names_locks_and_hidden_layers_are_kept(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_PLATE, 12, 14);
  g_autoptr(GError) error = NULL;

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FIELD, "vert", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_PALE, "sable", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_MULLET, "argent", NULL);
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(scheme->panels[0]->layers[1], TRUE);
  g_autoptr(SpvLayer) named = spv_layer_with_name(scheme->panels[0]->layers[2], "Ferry star");
  SpvLayer *layers[] = { scheme->panels[0]->layers[0], hidden, named };
  g_autoptr(SpvPanel) panel = spv_panel_with_layers(scheme->panels[0], layers, 3);
  g_autoptr(SpvScheme) before = spv_scheme_with_panel(scheme, 0, panel);
  g_autoptr(SpvScheme)
      after = spv_heraldic_lay(before, 0, "Sable, a chief vert, a mullet argent", NULL, &error);

  assert_null(error);
  assert_int_equal(after->panels[0]->n_layers, 4);
  assert_string_equal(after->panels[0]->layers[0]->tinctures[0], "sable");
  assert_true(after->panels[0]->layers[1]->hidden);
  assert_int_equal(after->panels[0]->layers[2]->pattern.kind, SPV_PATTERN_CHIEF);
  assert_string_equal(after->panels[0]->layers[3]->name, "Ferry star");
}

static void
unknown_names_and_words_are_told(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_PLATE, 12, 14);
  g_autoptr(GError) error = NULL;
  SpvBlazonPlace place = { 0, 0 };

  (void) state;
  assert_null(spv_heraldic_lay(scheme, 0, "Vert, a fess \"moonlight\"", &place, &error));
  assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON));
  assert_non_null(strstr(error->message, "moonlight"));
  assert_true(place.length > 0);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(old_coats_have_their_proportions),
    cmocka_unit_test(every_old_coat_is_laid_or_its_beast_is_named),
    cmocka_unit_test(what_is_said_composes_the_same_regions),
    cmocka_unit_test(laying_what_is_there_changes_nothing),
    cmocka_unit_test(names_locks_and_hidden_layers_are_kept),
    cmocka_unit_test(unknown_names_and_words_are_told),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
