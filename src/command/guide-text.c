/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A guide as text for the painter: one table each of dots, runs and rulings. */
#include "config.h"

#include "command/guide-text.h"

#include <glib/gi18n-lib.h>

#include "command/table.h"

const char *
spv_dot_kind_key(SpvDotKind kind) {
  switch (kind) {
  case SPV_DOT_TIP:
    return N_("tip");
  case SPV_DOT_ROOT:
    return N_("root");
  }
  g_return_val_if_reached("");
}

const char *
spv_line_kind_key(SpvLineKind kind) {
  switch (kind) {
  case SPV_LINE_DIVISION:
    return "division";
  case SPV_LINE_COLUMN:
    return "column";
  case SPV_LINE_ROW:
    return "row";
  }
  g_return_val_if_reached("");
}

static const char *
layer_id(const SpvGuide *guide, guint layer) {
  return guide->composition->panel->layers[layer]->id;
}

/* Adds a row that starts with FIRST, KIND and LAYER and ends with the place. */
static void
add_place(SpvTable *table, const char *first, const char *kind, const char *layer, SpvPoint at, SpvEdge edge,
          double along, double from_datum) {
  g_autofree char *x = spv_guide_format(at.x);
  g_autofree char *y = spv_guide_format(at.y);
  g_autofree char *along_text = spv_guide_format(along);
  g_autofree char *datum_text = spv_guide_format(from_datum);
  const char *const cells[] = { first, kind, layer, x, y, _(spv_edge_key(edge)), along_text, datum_text };
  spv_table_add(table, cells);
}

static void
add_head(SpvTable *table, const char *first, const char *kind) {
  const char *const cells[] = { first, kind, _("layer"), "x", "y", _("edge"), _("along"), _("from datum") };
  spv_table_add(table, cells);
}

static void
print_dots(const SpvGuide *guide, GString *out) {
  if (!guide->dots->len)
    return;
  g_autoptr(SpvTable) table = spv_table_new("rllrrlrr");
  add_head(table, _("dot"), _("kind"));
  for (guint i = 0; i < guide->dots->len; i++) {
    const SpvDot *dot = &g_array_index(guide->dots, SpvDot, i);
    g_autofree char *number = g_strdup_printf("%u", dot->number);
    add_place(table, number, _(spv_dot_kind_key(dot->kind)), layer_id(guide, dot->layer), dot->at, dot->edge,
              dot->along, dot->from_datum);
  }
  g_string_append_c(out, '\n');
  spv_table_print(table, out, 2);
}

static void
print_runs(const SpvGuide *guide, GString *out) {
  if (!guide->runs->len)
    return;
  g_autoptr(SpvTable) table = spv_table_new("rllr");
  spv_table_add(table, (const char *const[]){ _("dots"), _("kind"), _("layer"), _("spacing") });
  for (guint i = 0; i < guide->runs->len; i++) {
    const SpvDotRun *run = &g_array_index(guide->runs, SpvDotRun, i);
    g_autofree char *numbers = run->first == run->last ? g_strdup_printf("%u", run->first)
                                                       : g_strdup_printf("%u–%u", run->first, run->last);
    g_autofree char *spacing = spv_guide_format(run->spacing);
    const char *const cells[] = { numbers, _(spv_dot_kind_key(run->kind)), layer_id(guide, run->layer),
                                  spacing };
    spv_table_add(table, cells);
  }
  g_string_append_c(out, '\n');
  spv_table_print(table, out, 2);
}

/* Two rows a ruling, one an end: eighty columns hold no more. */
static void
print_rulings(const SpvGuide *guide, GString *out) {
  if (!guide->rulings->len)
    return;
  g_autoptr(SpvTable) table = spv_table_new("rllrrlrr");
  add_head(table, _("ruling"), _("name"));
  for (guint i = 0; i < guide->rulings->len; i++) {
    const SpvRuling *ruling = &g_array_index(guide->rulings, SpvRuling, i);
    g_autofree char *number = g_strdup_printf("%u", ruling->number);
    g_autofree char *name = spv_ruling_name(ruling);
    for (guint end = 0; end < 2; end++) {
      const SpvRulingEnd *place = &ruling->ends[end];
      add_place(table, end ? "" : number, end ? "" : name, end ? "" : layer_id(guide, ruling->layer),
                place->at, place->edge, place->along, place->from_datum);
    }
  }
  g_string_append_c(out, '\n');
  spv_table_print(table, out, 2);
}

/* The narrowest cell of each check that the panel's edge cuts. */
static void
print_partials(const SpvGuide *guide, GString *out) {
  const SpvComposition *composition = guide->composition;
  for (guint i = 0; i < composition->drafts->len; i++) {
    const SpvDraft *draft = composition->drafts->pdata[i];
    if (!draft || draft->smallest_partial <= 0)
      continue;
    g_autofree char *width = spv_guide_format(draft->smallest_partial);
    g_string_append_printf(out, _("  %s: the narrowest cell at the edge is %s\u2009mm wide\n"),
                           layer_id(guide, i), width);
  }
}

static void
print_size(const SpvPanel *panel, GString *out) {
  g_autofree char *width = spv_guide_format(panel->outline.width);
  g_autofree char *height = spv_guide_format(panel->outline.height);
  g_string_append_printf(out, _("  %s × %s\u2009mm, %s"), width, height,
                         _(spv_surface_kind_key(panel->surface.kind)));
  if (panel->surface.depth > 0) {
    g_autofree char *depth = spv_guide_format(panel->surface.depth);
    g_string_append_printf(out, _(", %s\u2009mm deep"), depth);
  }
  if (!panel->measured)
    g_string_append(out, _("; typical sizes, not measured yet"));
  g_string_append_c(out, '\n');
}

void
spv_guide_print_text(const SpvGuide *guide, GString *out) {
  const SpvPanel *panel = guide->composition->panel;
  g_string_append_printf(out, "%s: %s\n", panel->id, panel->name);
  print_size(panel, out);
  print_partials(guide, out);
  print_dots(guide, out);
  print_runs(guide, out);
  print_rulings(guide, out);
}
