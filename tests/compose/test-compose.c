/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Composition: the painter's order, and the exact partition that areas, checks and labels rest on. */
#include "support/near.h"

#include "compose/compose.h"
#include "support/scene.h"

static double
regions_area(const SpvPartition *partition) {
  double sum = 0;
  for (guint i = 0; i < partition->regions->len; i++)
    sum += spv_shape_area(((SpvRegion *) g_ptr_array_index(partition->regions, i))->shape);
  return sum;
}

static double
tincture_area(const SpvPartition *partition, int tincture) {
  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    if (region->tincture == tincture)
      return spv_shape_area(region->shape);
  }
  return 0;
}

static SpvPartition *
partition_of(const SpvScheme *scheme) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  GError *error = NULL;
  SpvPartition *partition = spv_partition_new(composition, NULL, &error);

  assert_null(error);
  assert_non_null(partition);
  return partition;
}

/* No piece thinner than the grid: its area would be smaller than what its length and one step of the grid
 * make. */
static void
assert_no_slivers(const SpvPartition *partition) {
  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    gsize n;
    const SpvPiece *pieces = spv_shape_pieces(region->shape, &n);
    for (gsize k = 0; k < n; k++) {
      double area = 0, length = 0;
      for (gsize r = 0; r < pieces[k].n_rings; r++) {
        area += spv_ring_area(pieces[k].rings[r]);
        length += spv_ring_length(pieces[k].rings[r]);
      }
      if (!(area > length / 2 * SPV_SNAP_GRID))
        fail_msg("a piece of %g mm² with an edge of %g mm", area, length);
    }
  }
}

static void
an_undivided_panel_is_bare(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_KNEEPAD, 3.4, 4.1);
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  (void) state;
  assert_int_equal(partition->regions->len, 1);
  assert_int_equal(((SpvRegion *) g_ptr_array_index(partition->regions, 0))->tincture, -1);
}

static void
layers_hide_what_lies_beneath(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 10, 10);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FIELD, "argent", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_PER_PALE, "vert", NULL);
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHIEF, "sable", NULL);
  scheme = scene_set(g_steal_pointer(&scheme), "depth", SPV_UNIT_MM, 2);
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(tincture_area(partition, 2), 20, 1e-7);
  assert_near(tincture_area(partition, 0), 40, 1e-7);
  assert_near(tincture_area(partition, 1), 40, 1e-7);
  assert_true(spv_shape_is_empty(partition->bare));

  /* Each layer lays one shape, so that the shape's index is the layer's. */
  const SpvComposition *composition = partition->composition;
  assert_int_equal(spv_composition_pick(composition, spv_point(-3, 1)), 2);
  assert_int_equal(spv_composition_pick(composition, spv_point(-3, 6)), 1);
  assert_int_equal(spv_composition_pick(composition, spv_point(3, 6)), 0);
  assert_int_equal(spv_composition_pick(composition, spv_point(8, 6)), -1);
}

static void
a_hidden_layer_lays_nothing(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 10, 10);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_FIELD, "argent", NULL);
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(scheme->panels[0]->layers[0], TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], 0, hidden);
  g_autoptr(SpvScheme) changed = spv_scheme_with_panel(scheme, 0, panel);
  g_autoptr(SpvPartition) partition = partition_of(changed);

  assert_near(spv_shape_area(partition->bare), 100, 1e-7);
  assert_null(g_ptr_array_index(partition->composition->drafts, 0));
}

/* Warenne, "Chequy or and azure" (Boutell ch. V no. 68), seven squares across (Britannica 9th ed. p. 698): on
 * a square field 25 squares of the one, 24 of the other. */
static void
warennes_chequy_is_parted_into_its_squares(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 7, 7);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, "argent", "vert");
  g_autoptr(SpvPartition) partition = partition_of(scheme);
  gsize n;

  assert_near(tincture_area(partition, 1), 25, 1e-8);
  assert_near(tincture_area(partition, 0), 24, 1e-8);
  spv_shape_pieces(((SpvRegion *) g_ptr_array_index(partition->regions, 0))->shape, &n);
  assert_int_equal(n, 24);
  spv_shape_pieces(((SpvRegion *) g_ptr_array_index(partition->regions, 1))->shape, &n);
  assert_int_equal(n, 25);
}

/* Half of a square to each, as straight_divisions_of_a_square_part_it_evenly() has it of the patterns; of a
 * panel that is higher than wide the line from corner to corner still makes two halves. */
static void
a_bend_parts_the_panel_into_halves(void **state) {
  static const SpvPatternKind bends[] = { SPV_PATTERN_PER_BEND, SPV_PATTERN_PER_BEND_SINISTER };
  static const double heights[] = { 7, 10, 14 };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(bends); i++)
    for (gsize k = 0; k < G_N_ELEMENTS(heights); k++) {
      double half = 5 * heights[k];
      g_autoptr(SpvScheme) both = scene_new(SPV_OUTLINE_RECTANGLE, 10, heights[k]);
      g_autoptr(SpvScheme) one = scene_new(SPV_OUTLINE_RECTANGLE, 10, heights[k]);
      both = scene_add(g_steal_pointer(&both), bends[i], "vert", "sable");
      one = scene_add(g_steal_pointer(&one), bends[i], "vert", NULL);
      g_autoptr(SpvPartition) parted = partition_of(both), bare = partition_of(one);

      assert_near(tincture_area(parted, 0), half, 1e-7);
      assert_near(tincture_area(parted, 2), half, 1e-7);
      assert_near(tincture_area(bare, 0), half, 1e-7);
      assert_near(spv_shape_area(bare->bare), half, 1e-7);
    }
}

/* A check of 20 by 20 cells over another: the second has nothing left where it stands on the same cells, and
 * takes all that the first leaves where it stands on the others. The two together, in one tincture, are the
 * whole panel in one piece. */
static void
checks_over_checks_share_the_panel(void **state) {
  static const gboolean other_cells[] = { FALSE, TRUE };
  static const char *const lower[] = { "sable", "vert" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(other_cells); i++)
    for (gsize k = 0; k < G_N_ELEMENTS(lower); k++) {
      g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_RECTANGLE, 20, 20);
      scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, lower[k], NULL);
      scheme = scene_set(g_steal_pointer(&scheme), "columns", SPV_UNIT_PLAIN, 20);
      scheme = scene_set(g_steal_pointer(&scheme), "rows", SPV_UNIT_PLAIN, 20);
      scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, other_cells[i] ? NULL : "vert",
                         other_cells[i] ? "vert" : NULL);
      scheme = scene_set(g_steal_pointer(&scheme), "columns", SPV_UNIT_PLAIN, 20);
      scheme = scene_set(g_steal_pointer(&scheme), "rows", SPV_UNIT_PLAIN, 20);
      g_autoptr(SpvPartition) partition = partition_of(scheme);
      double below = other_cells[i] ? 200 : 0;
      gsize n;

      assert_near(tincture_area(partition, 0), k == 0 ? 200 : 200 + below, 1e-7);
      assert_near(tincture_area(partition, 2), k == 0 ? below : 0, 1e-7);
      assert_near(spv_shape_area(partition->bare), 200 - below, 1e-7);
      spv_shape_pieces(((SpvRegion *) g_ptr_array_index(partition->regions, 0))->shape, &n);
      assert_int_equal(n, k == 1 && below > 0 ? 1 : 200);
    }
}

/* The flattened curve of a pad strays over its bounds by a hair, which is still some cell's. */
static void
a_check_leaves_nothing_of_a_narrow_pad(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_ROUND_PAD, 0.5, 131);

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, "argent", "vert");
  scheme = scene_set(g_steal_pointer(&scheme), "rows", SPV_UNIT_PLAIN, 71);
  g_autoptr(SpvPartition) partition = partition_of(scheme);

  assert_near(regions_area(partition) / spv_shape_area(spv_outline_shape(partition->composition->outline)), 1,
              1e-9);
  assert_true(spv_shape_is_empty(partition->bare));
}

static void
regions_always_add_up_to_the_panel(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(1066);

  (void) state;
  for (int round = 0; round < ROUNDS(120); round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 6);
    g_autoptr(SpvPartition) partition = partition_of(scheme);
    double whole = spv_shape_area(spv_outline_shape(partition->composition->outline));

    if (!(fabs(regions_area(partition) / whole - 1) <= 1e-9))
      fail_msg("round %d: the regions come to %.15g of the panel", round, regions_area(partition) / whole);
    assert_no_slivers(partition);
  }
}

static void
regions_do_not_overlap(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(33);

  (void) state;
  for (int round = 0; round < 12; round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 6);
    g_autoptr(SpvPartition) partition = partition_of(scheme);
    for (guint i = 0; i < partition->regions->len; i++)
      for (guint k = i + 1; k < partition->regions->len; k++) {
        const SpvRegion *a = g_ptr_array_index(partition->regions, i);
        const SpvRegion *b = g_ptr_array_index(partition->regions, k);
        g_autoptr(SpvShape) both = spv_shape_intersection(a->shape, b->shape);
        assert_true(spv_shape_area(both) <= 1e-7);
      }
  }
}

/* The partition and the painter's order must tell the same story: at a random place the region holds the
 * tincture of the topmost shape. */
static void
the_partition_shows_what_the_brush_shows(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(5);
  int compared = 0;

  (void) state;
  for (int round = 0; round < 25; round++) {
    g_autoptr(SpvScheme) scheme = scene_random(rand, 6);
    g_autoptr(SpvPartition) partition = partition_of(scheme);
    SpvBox box = spv_outline_bounds(partition->composition->outline);
    for (int k = 0; k < 20; k++) {
      SpvPoint point = { g_rand_double_range(rand, box.x0, box.x1),
                         g_rand_double_range(rand, box.y0, box.y1) };
      int top = spv_composition_pick(partition->composition, point);
      const SpvLaidShape *laid = top < 0 ? NULL
                                         : g_ptr_array_index(partition->composition->shapes, (guint) top);
      for (guint i = 0; laid && i < partition->regions->len; i++) {
        const SpvRegion *region = g_ptr_array_index(partition->regions, i);
        if (!spv_shape_contains(region->shape, point))
          continue;
        /* A place nearer to an edge than the chord error may fall either way. */
        if (region->tincture != (int) laid->tincture) {
          g_autoptr(SpvShape) inner = spv_shape_offset(region->shape, -3 * SPV_CHORD_ERROR);
          assert_false(spv_shape_contains(inner, point));
        }
        compared++;
      }
    }
  }
  assert_true(compared > 200);
}

static void
a_cancelled_partition_says_so(void **state) {
  g_autoptr(SpvScheme) scheme = scene_new(SPV_OUTLINE_DISC, 5, 5);
  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  g_autoptr(GError) error = NULL;

  (void) state;
  scheme = scene_add(g_steal_pointer(&scheme), SPV_PATTERN_CHECK, "argent", "vert");
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  g_cancellable_cancel(cancellable);
  assert_null(spv_partition_new(composition, cancellable, &error));
  assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(an_undivided_panel_is_bare),
    cmocka_unit_test(layers_hide_what_lies_beneath),
    cmocka_unit_test(a_hidden_layer_lays_nothing),
    cmocka_unit_test(a_bend_parts_the_panel_into_halves),
    cmocka_unit_test(warennes_chequy_is_parted_into_its_squares),
    cmocka_unit_test(checks_over_checks_share_the_panel),
    cmocka_unit_test(a_check_leaves_nothing_of_a_narrow_pad),
    cmocka_unit_test(regions_always_add_up_to_the_panel),
    cmocka_unit_test(regions_do_not_overlap),
    cmocka_unit_test(the_partition_shows_what_the_brush_shows),
    cmocka_unit_test(a_cancelled_partition_says_so),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
