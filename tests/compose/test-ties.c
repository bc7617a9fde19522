/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Layers laid on others and counterchanged across them, furs, parts in three, and mirror images: what shows
 * is what closed forms say. */
#include "support/near.h"

#include "compose/compose.h"
#include "support/scene.h"

/* Places in scene_new()'s scheme. */
enum { VERT, ARGENT, SABLE };

static SpvPartition *
partition_of(const SpvScheme *scheme) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  SpvPartition *partition = spv_partition_new(composition, NULL, NULL);

  assert_non_null(partition);
  return partition;
}

static const SpvShape *
region_of(const SpvPartition *partition, int tincture) {
  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    if (region->tincture == tincture)
      return region->shape;
  }
  return NULL;
}

static double
area_of(const SpvPartition *partition, int tincture) {
  const SpvShape *region = region_of(partition, tincture);

  return region ? spv_shape_area(region) : 0;
}

/* A square field of 12 mm in vert. */
static SpvScheme *
square(void) {
  return scene_add(scene_new(SPV_OUTLINE_RECTANGLE, 12, 12), SPV_PATTERN_FIELD, "vert", NULL);
}

/* "A fess chequy azure and argent" (Stewart; Fox-Davies p. 86): the fess, a third of the field (Kent no. 5),
 * in squares; with an even number of columns they are half of it. */
static void
a_fess_chequy_is_half_and_half(void **state) {
  g_autoptr(SpvScheme) scheme = square();

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FESS, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, "argent", "sable");
  scheme = scene_set(g_steal_pointer(&scheme), "columns", SPV_UNIT_PLAIN, 6);
  scheme = scene_lay_on(g_steal_pointer(&scheme), "fess");
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(area_of(partition, ARGENT), 24, 1e-7);
  assert_near(area_of(partition, SABLE), 24, 1e-7);
  assert_near(area_of(partition, VERT), 96, 1e-7);
}

/* A pale laid on a chief is as high as the chief, and a third of its width (Kent nos. 2 and 3). */
static void
an_ordinary_is_laid_within_another(void **state) {
  g_autoptr(SpvScheme) scheme = square();

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHIEF, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_PALE, "sable", NULL);
  scheme = scene_lay_on(g_steal_pointer(&scheme), "chief");
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FESS, "vert", NULL);
  scheme = scene_lay_on(g_steal_pointer(&scheme), "pale");
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  /* The chief is 12 by 4, the pale on it 4 by 4, the fess on that 4 by 4/3. */
  assert_near(area_of(partition, ARGENT), 48 - 16, 1e-7);
  assert_near(area_of(partition, SABLE), 16 - 16.0 / 3, 1e-7);
  assert_near(area_of(partition, VERT), 96 + 16.0 / 3, 1e-7);
}

static void
charges_on_a_bend_stay_on_it(void **state) {
  g_autoptr(SpvScheme) scheme = square();

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_BEND, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_ROUNDEL, "sable", NULL);
  scheme = scene_set(g_steal_pointer(&scheme), "number", SPV_UNIT_PLAIN, 3);
  scheme = scene_set(g_steal_pointer(&scheme), "diameter", SPV_UNIT_MM, 1);
  scheme = scene_lay_on(g_steal_pointer(&scheme), "bend");
  g_autoptr(SpvPartition) partition = partition_of(scheme);
  const SpvShape *roundels = region_of(partition, SABLE);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(roundels, &n);

  assert_int_equal(n, 3);
  assert_near(spv_shape_area(roundels), 3 * G_PI / 4, 0.01);
  /* The bend runs from corner to corner: so do the middles of what it bears. */
  for (gsize i = 0; i < n; i++) {
    SpvPoint middle = spv_box_centre(spv_ring_bounds(pieces[i].rings[0]));
    assert_near(middle.x + 6, middle.y, 1e-3);
  }
}

/* Charges on a charge are arranged within it: none is cut. */
static void
charges_on_a_roundel_stay_within_it(void **state) {
  for (guint number = 1; number <= 6; number++) {
    g_autoptr(SpvScheme) scheme = square();

    (void) state;
    scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_ROUNDEL, "argent", NULL);
    scheme = scene_set(g_steal_pointer(&scheme), "diameter", SPV_UNIT_MM, 8);
    scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_ROUNDEL, "sable", NULL);
    scheme = scene_set(g_steal_pointer(&scheme), "number", SPV_UNIT_PLAIN, number);
    scheme = scene_lay_on(g_steal_pointer(&scheme), "roundel");
    g_autoptr(SpvPartition) partition = partition_of(scheme);
    double size = spv_composition_charge_size(partition->composition, 2);
    gsize n;

    spv_shape_pieces(region_of(partition, SABLE), &n);
    assert_int_equal(n, number);
    assert_near(area_of(partition, SABLE), number * G_PI * size * size / 4, 0.05);
    assert_near(area_of(partition, SABLE) + area_of(partition, ARGENT), 16 * G_PI, 0.05);
  }
}

/* A roundel of 4 mm over "per pale argent and sable": half of it in each, on the other side. */
static void
a_counterchanged_roundel_changes_sides(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 12, 12);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_PER_PALE, "argent", "sable");
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_ROUNDEL, "vert", NULL);
  scheme = scene_set(g_steal_pointer(&scheme), "diameter", SPV_UNIT_MM, 4);
  scheme = scene_counterchange(g_steal_pointer(&scheme), "per-pale");
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(area_of(partition, ARGENT), 72, 1e-6);
  assert_near(area_of(partition, SABLE), 72, 1e-6);
  assert_near(area_of(partition, VERT), 0, 1e-12);
  assert_true(spv_shape_contains(region_of(partition, SABLE), spv_point(-1, 6)));
  assert_true(spv_shape_contains(region_of(partition, ARGENT), spv_point(1, 6)));
  assert_true(spv_shape_contains(region_of(partition, ARGENT), spv_point(-3, 6)));
}

/* Over a division with one part only, the charge shows in that part's tincture, and only over the other. */
static void
counterchanged_across_half_a_division(void **state) {
  g_autoptr(SpvScheme) scheme = square();

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_PER_PALE, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FESS, "sable", NULL);
  scheme = scene_counterchange(g_steal_pointer(&scheme), "per-pale");
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(area_of(partition, ARGENT), 72 + 24, 1e-6);
  assert_near(area_of(partition, VERT), 72 - 24, 1e-6);
  assert_near(area_of(partition, SABLE), 0, 1e-12);
}

/* A chief ermine: its spots and their ground are the chief, and no spot leaves it. */
static void
a_fur_fills_what_it_is_laid_on(void **state) {
  g_autoptr(SpvScheme) scheme = scene_add_fur(square(), SPV_FUR_ERMINE, "argent", "sable", 2);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHIEF, "ermine", NULL);
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(area_of(partition, ARGENT) + area_of(partition, SABLE), 48, 1e-7);
  assert_near(area_of(partition, VERT), 96, 1e-7);
  assert_true(area_of(partition, SABLE) > 3);
  assert_true(spv_shape_bounds(region_of(partition, SABLE)).y1 <= 4 + 1e-9);
}

/* Vair is half the one and half the other (Fox-Davies ch. VI, from memory); without a pitch its pieces are as
 * small as the painter's line allows. */
static void
a_fur_without_a_pitch_follows_the_line(void **state) {
  g_autoptr(SpvScheme) scheme = scene_add_fur(square(), SPV_FUR_VAIR, "argent", "sable", 0);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FIELD, "vair", NULL);
  g_autoptr(SpvPartition) fine = partition_of(scheme);
  g_autoptr(SpvScheme) coarser = spv_scheme_with_finest_line(scheme, 2 * scheme->finest_line);
  g_autoptr(SpvPartition) coarse = partition_of(coarser);
  gsize n_fine, n_coarse;

  spv_shape_pieces(region_of(fine, SABLE), &n_fine);
  spv_shape_pieces(region_of(coarse, SABLE), &n_coarse);
  assert_true(n_fine > 2 * n_coarse);
  assert_near(area_of(fine, SABLE) / 144, 0.5, 0.05);
}

static void
three_parts_with_any_of_them_left_out(void **state) {
  static const char *const given[] = { "vert", "argent", "sable" };

  (void) state;
  for (guint left_out = 0; left_out < 4; left_out++) {
    g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 12, 12);
    g_autoptr(SpvLayer) layer = spv_layer_new("parts", SPV_PATTERN_TIERCED_IN_PALE, NULL, NULL);
    for (guint slot = 0; slot < 3; slot++) {
      SpvLayer *next = spv_layer_with_tincture(layer, slot, slot == left_out ? NULL : given[slot]);
      spv_layer_unref(layer);
      layer = next;
    }
    g_autoptr(SpvPanel) panel = spv_panel_with_layer_added(scheme->panels[0], 0, layer);
    g_autoptr(SpvScheme) laid = spv_scheme_with_panel(scheme, 0, panel);
    g_autoptr(SpvPartition) partition = partition_of(laid);

    for (guint slot = 0; slot < 3; slot++)
      assert_near(area_of(partition, (int) slot), slot == left_out ? 0 : 48, 1e-6);
    assert_near(spv_shape_area(partition->bare), left_out < 3 ? 48 : 0, 1e-6);
  }
}

/* What is laid on a hidden layer, or counterchanged across one, is hidden with it. */
static void
a_hidden_base_hides_what_stands_on_it(void **state) {
  g_autoptr(SpvScheme) scheme = square();

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHIEF, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_ROUNDEL, "sable", NULL);
  scheme = scene_lay_on(g_steal_pointer(&scheme), "chief");
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(scheme->panels[0]->layers[1], TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], 1, hidden);
  g_autoptr(SpvScheme) changed = spv_scheme_with_panel(scheme, 0, panel);
  g_autoptr(SpvPartition) partition = partition_of(changed);

  assert_near(area_of(partition, VERT), 144, 1e-7);
  assert_null(g_ptr_array_index(partition->composition->drafts, 2));
}

/* Every tincture of a mirrored design has the area that it has in the design, and every place the tincture of
 * the place across from it. */
static void
a_mirrored_design_is_the_mirror_image(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(1415);
  int compared = 0;

  (void) state;
  for (int round = 0; round < 60; round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 4);
    g_autoptr(SpvScheme) image = scene_mirror(spv_scheme_ref(scheme));
    g_autoptr(SpvComposition) one = spv_compose(scheme, 0), other = spv_compose(image, 0);
    SpvBox box = spv_outline_bounds(one->outline);
    int differing = 0;

    for (guint i = 0; i < one->panel->n_layers; i++)
      if (one->panel->layers[i]->pattern.kind == SPV_PATTERN_LETTERING)
        differing = -1000; /* Words keep their reading. */
    for (int k = 0; k < 60; k++) {
      SpvPoint at = { g_rand_double_range(rand, box.x0, box.x1), g_rand_double_range(rand, box.y0, box.y1) };
      int here = spv_composition_pick(one, at), there = spv_composition_pick(other, spv_point(-at.x, at.y));
      int a = here < 0 ? -1 : (int) ((SpvLaidShape *) g_ptr_array_index(one->shapes, (guint) here))->tincture;
      int b = there < 0 ? -1
                        : (int) ((SpvLaidShape *) g_ptr_array_index(other->shapes, (guint) there))->tincture;

      differing += a != b;
      compared++;
    }
    /* A place on an edge may fall to either side. */
    if (differing > 1)
      fail_msg("round %d: %d places differ", round, differing);
  }
  assert_int_equal(compared, 3600);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_fess_chequy_is_half_and_half),
    cmocka_unit_test(an_ordinary_is_laid_within_another),
    cmocka_unit_test(charges_on_a_bend_stay_on_it),
    cmocka_unit_test(charges_on_a_roundel_stay_within_it),
    cmocka_unit_test(a_counterchanged_roundel_changes_sides),
    cmocka_unit_test(counterchanged_across_half_a_division),
    cmocka_unit_test(a_fur_fills_what_it_is_laid_on),
    cmocka_unit_test(a_fur_without_a_pitch_follows_the_line),
    cmocka_unit_test(three_parts_with_any_of_them_left_out),
    cmocka_unit_test(a_hidden_base_hides_what_stands_on_it),
    cmocka_unit_test(a_mirrored_design_is_the_mirror_image),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
