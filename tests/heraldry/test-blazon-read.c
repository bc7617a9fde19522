/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazons that are read: what each phrase lays, and in which words it is said again. */
#include "support/near.h"

#include "heraldry/blazon.h"

static void
append_measure(GString *out, const SpvMeasureSpec *spec, SpvMeasure value) {
  g_string_append_printf(out, " %s=", spec->key);
  if (value.unit == SPV_UNIT_AUTO)
    g_string_append(out, "auto");
  else if (spec->type == SPV_MEASURE_CHOICE)
    g_string_append(out, spec->choices[(guint) value.value]);
  else
    g_string_append_printf(out, "%g%s", value.value,
                           value.unit == SPV_UNIT_MM        ? "mm"
                           : value.unit == SPV_UNIT_DEGREES ? "°"
                                                            : "");
}

/* One item: its key, the measures that are not the preset's, its texts, its tinctures and what it lies on. */
static void
append_item(GString *out, const SpvBlazonItem *item) {
  const SpvPatternInfo *info = spv_pattern_info(item->pattern.kind);
  SpvPattern preset = spv_pattern_preset(item->pattern.kind);

  g_string_append_printf(out, "%s%s", out->len > 0 ? " | " : "", info->key);
  for (guint i = 0; i < info->n_measures; i++)
    if (!spv_measure_equal(item->pattern.measures[i], preset.measures[i]))
      append_measure(out, &info->measures[i], item->pattern.measures[i]);
  for (guint i = 0; i < info->n_texts; i++)
    if (item->texts[i])
      g_string_append_printf(out, " %s=<%s>", info->texts[i].key, item->texts[i]);
  g_string_append(out, item->pattern.mirrored ? " mirrored" : "");
  for (guint slot = 0; slot < info->n_slots && item->counterchange < 0; slot++)
    g_string_append_printf(out, "%s%s", slot == 0 ? ": " : ", ",
                           item->tinctures[slot] ? item->tinctures[slot] : "-");
  if (item->counterchange >= 0)
    g_string_append_printf(out, " across %d", item->counterchange);
  if (item->on >= 0)
    g_string_append_printf(out, " on %d", item->on);
}

static char *
say_items(const GPtrArray *items) {
  GString *out = g_string_new(NULL);

  for (guint i = 0; i < items->len; i++)
    append_item(out, g_ptr_array_index(items, i));
  return g_string_free(out, FALSE);
}

typedef struct {
  const char *text, *items;
  const char *again; /* NULL: the text itself */
} Phrase;

static void
check_phrases(const Phrase *phrases, guint n) {
  for (guint i = 0; i < n; i++) {
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) items = spv_blazon_parse(phrases[i].text, NULL, &error);
    if (!items)
      fail_msg("“%s”: %s", phrases[i].text, error->message);
    g_autofree char *said = say_items(items), *again = spv_blazon_write(items);
    if (!g_str_equal(said, phrases[i].items))
      fail_msg("“%s” lays\n%s, not\n%s", phrases[i].text, said, phrases[i].items);
    assert_string_equal(again, phrases[i].again ? phrases[i].again : phrases[i].text);
  }
}

static void
fields(void **state) {
  static const Phrase phrases[] = {
    { "", "", NULL },
    { "Azure", "field: azure", NULL },
    { "gold.", "field: or", "Or" },
    { "\"Deep sea\"", "field: \"Deep sea\"", NULL },
    { "“Deep sea”", "field: \"Deep sea\"", "\"Deep sea\"" },
    { "Ermine", "field: ermine", NULL },
    { "Vairy or and gules", "field: vairy or and gules", NULL },
    { "vairy argent and azure", "field: vair", "Vair" },
    { "Argent ermined gules", "field: argent ermined gules", NULL },
    { "Or ermined sable", "field: erminois", "Erminois" },
    { "Counter-vair", "field: counter-vair", NULL },
    { "Per bend indented azure and or", "per-bend line=indented: azure, or", NULL },
    { "party per pale rayonné gules and argent", "per-pale line=rayonny: gules, argent",
      "Per pale rayonny gules and argent" },
    { "Tierced in pale azure, or and gules", "tierced-in-pale: azure, or, gules", NULL },
    { "tierced per pale azure, or, and gules", "tierced-in-pale: azure, or, gules",
      "Tierced in pale azure, or and gules" },
    { "Gyronny of ten or and sable", "gyronny pieces=10: or, sable", NULL },
    { "barry argent and azure", "barry: argent, azure", "Barry of six argent and azure" },
    { "Barry wavy of eight argent and azure", "barry pieces=8 line=wavy: argent, azure", NULL },
    { "barry of eight undy argent and azure", "barry pieces=8 line=wavy: argent, azure",
      "Barry wavy of eight argent and azure" },
    { "CHECKY gules and argent", "check: gules, argent", "Chequy gules and argent" },
    { "Azure fretty or", "field: azure | fretty: or", NULL },
    { "Argent masoned of eight courses sable", "field: argent | masoned courses=8: sable", NULL },
    { "Azure semy of mullets of six points or", "field: azure | mullet arrangement=semy points=6: or", NULL },
    { "azure billety or", "field: azure | billet arrangement=semy: or", "Azure semy of billets or" },
    { "Per pale azure and bare", "per-pale: azure, -", NULL },
    { "Fretty or", "fretty: or", NULL },
  };

  (void) state;
  check_phrases(phrases, G_N_ELEMENTS(phrases));
}

static void
ordinaries(void **state) {
  static const Phrase phrases[] = {
    { "Chequy gules and argent, a bordure sable", "check: gules, argent | bordure: sable", NULL },
    { "or a fess dancetty sable", "field: or | fess line=dancetty: sable", "Or, a fess dancetty sable" },
    { "Ermine, two bars gemelles gules", "field: ermine | bar-gemel number=2: gules", NULL },
    { "Or, a bar gules", "field: or | bar number=1: gules", NULL },
    { "Or, three chevronels gules", "field: or | chevronel: gules", NULL },
    { "Or, a bend sinister and a chief azure", "field: or | bend-sinister: azure | chief: azure",
      "Or, a bend sinister azure, a chief azure" },
    { "Or, a double tressure vert", "field: or | tressure number=2: vert", "Or, two tressures vert" },
    { "Or, a pair of flaunches vert", "field: or | flaunches: vert", "Or, flaunches vert" },
    { "Or, a label of five points vert", "field: or | label points=5: vert", NULL },
    { "Or, a fess wavy [width 2.5 mm, shift 0.1] gules",
      "field: or | fess width=2.5mm shift=0.1 line=wavy: gules", NULL },
    { "Or, a fess gules [width 25%]", "field: or | fess width=0.25: gules", "Or, a fess [width 0.25] gules" },
    { "Or, a bend [angle 30 degrees] gules", "field: or | bend angle=30°: gules",
      "Or, a bend [angle 30°] gules" },
    { "Or, a bend [angle 30 deg, edges first] gules", "field: or | bend angle=30° edges=first: gules",
      "Or, a bend [angle 30°, edges first] gules" },
    { "Or, a chief [depth auto] gules", "field: or | chief depth=auto: gules", NULL },
    { "Or, a jagged border of four points [edge base] sable", "field: or | jagged-border points=4: sable",
      "Or, a jagged border of four points sable" },
    { "Or, a fess chequy azure and argent", "field: or | fess: - | check: azure, argent on 1", NULL },
    { "Or, a fess bare", "field: or | fess: -", NULL },
    { "Or, a cross plain potent", "field: or | cross: potent", NULL },
    { "Or, a cross potent azure", "field: or | cross-potent: azure", NULL },
    { "Or, a fess potenty azure", "field: or | fess line=potenty: azure", NULL },
    { "Or, a fess plain potenty azure and gules", "field: or | fess: potenty azure and gules", NULL },
    { "Azure. A bend or; a chief gules.", "field: azure | bend: or | chief: gules",
      "Azure, a bend or, a chief gules" },
    { "Azure, a bend or, all within a bordure gules", "field: azure | bend: or | bordure: gules",
      "Azure, a bend or, a bordure gules" },
    { "A fess gules", "fess: gules", NULL },
    { "Azure, a bend or, overall chequy gules and argent", "field: azure | bend: or | check: gules, argent",
      NULL },
    { "Azure, a bend argent, cotised or", "field: azure | bend: argent | cotise apart=0.3: or",
      "Azure, a bend argent cotised or" },
    { "Azure, a bend sinister [shift 0.1] cotised or",
      "field: azure | bend-sinister shift=0.1: or | cotise apart=0.3 shift=-0.1 mirrored: or",
      "Azure, a bend sinister [shift 0.1] or cotised or" },
    { "Azure, a fess [width 4 mm] or cotised gules",
      "field: azure | fess width=4mm: or | barrulet apart=6mm: gules", NULL },
    { "Azure, a pale endorsed or", "field: azure | pale: or | endorse apart=0.5: or",
      "Azure, a pale or cotised or" },
  };

  (void) state;
  check_phrases(phrases, G_N_ELEMENTS(phrases));
}

static void
charges(void **state) {
  static const Phrase phrases[] = {
    { "Quarterly gules and or, in the first quarter a mullet argent",
      "quarterly: gules, or | mullet place=first quarter: argent", NULL },
    { "Or, three mullets in chief azure", "field: or | mullet place=chief number=3: azure",
      "Or, in chief three mullets azure" },
    { "Or, three mullets azure in chief and a key gules",
      "field: or | mullet place=chief number=3: azure | key: gules",
      "Or, in chief three mullets azure, a key gules" },
    { "Or, three mullets azure in chief a key gules",
      "field: or | mullet number=3: azure | key place=chief: gules",
      "Or, three mullets azure, in chief a key gules" },
    { "Or, four keys in bend sinister gules", "field: or | key number=4 arrangement=bend sinister: gules",
      NULL },
    { "Or, an orle of eight mullets gules", "field: or | mullet number=8 arrangement=orle: gules",
      "Or, eight mullets in orle gules" },
    { "Or, six towers, three, two, one, gules",
      "field: or | tower number=6 arrangement=rows rows=<3, 2, 1>: gules",
      "Or, six towers three, two and one gules" },
    { "Or, six towers gules, 3, 2 and 1", "field: or | tower number=6 arrangement=rows rows=<3, 2, 1>: gules",
      "Or, six towers three, two and one gules" },
    { "Or, a sword fesswise gules", "field: or | sword turn=-90°: gules", NULL },
    { "Or, a sword bendwise sinister reversed gules", "field: or | sword turn=-135°: gules", NULL },
    { "Or, a crescent reversed gules", "field: or | crescent turn=180°: gules", NULL },
    { "Or, a mullet of six points pierced gules", "field: or | mullet points=6 pierced=pierced: gules",
      NULL },
    { "Or, a wheel of eight spokes gules", "field: or | wheel points=8: gules", NULL },
    { "Gules, three bezants", "field: gules | roundel number=3: or", "Gules, three roundels or" },
    { "Gules, an hourglass or", "field: gules | hourglass: or", NULL },
    { "Gules, seven teeth or", "field: gules | tooth number=7: or", NULL },
    { "Gules, the words \"VII\" or", "field: gules | lettering text=<VII>: or", NULL },
    { "Gules, lettering \"deep sea\"", "field: gules | lettering: \"deep sea\"", NULL },
    { "Gules, a shape [path \"M 0 1 L 2 2 L 0 3 Z\"] or",
      "field: gules | free-path path=<M 0 1 L 2 2 L 0 3 Z>: or", NULL },
    { "Gules, a wing mirrored or", "field: gules | wing mirrored: or", NULL },
    { "Gules, a wing [mirrored, size 3 mm] or", "field: gules | wing size=3mm mirrored: or",
      "Gules, a wing mirrored [size 3 mm] or" },
    { "Azure, a bend or, a key of the first, a sword of the field, a bell of the last",
      "field: azure | bend: or | key: azure | sword: azure | bell: or",
      "Azure, a bend or, a key azure, a sword azure, a bell or" },
  };

  (void) state;
  check_phrases(phrases, G_N_ELEMENTS(phrases));
}

static void
charges_on_and_about_others(void **state) {
  static const Phrase phrases[] = {
    { "Per bend indented azure and or, on a chief sable three mullets argent",
      "per-bend line=indented: azure, or | chief: sable | mullet number=3: argent on 1", NULL },
    /* A bend that bears charges is one of the wider ones. */
    { "Or, a bend gules charged with three keys or",
      "field: or | bend charged=charged: gules | key number=3: or on 1",
      "Or, on a bend gules three keys or" },
    { "Or, on a bend [charged plain] gules three keys or", "field: or | bend: gules | key number=3: or on 1",
      NULL },
    { "Or, on a bend gules cotised sable three keys or",
      "field: or | bend charged=charged: gules | cotise apart=0.5: sable | key number=3: or on 1", NULL },
    { "Or, on a fess gules a key or and a sword sable",
      "field: or | fess: gules | key: or on 1 | sword: sable on 1",
      "Or, on a fess gules a key or, on the fess a sword sable" },
    { "Or, on a fess gules a key or and a chief sable",
      "field: or | fess: gules | key: or on 1 | chief: sable",
      "Or, on a fess gules a key or, a chief sable" },
    { "Or, a fess gules, a fess sable, on the first fess a key or",
      "field: or | fess: gules | fess: sable | key: or on 1", NULL },
    { "Or, on three mullets gules a roundel or", "field: or | mullet number=3: gules | roundel: or on 1",
      NULL },
    { "Or, on a fess gules a mullet or charged with a roundel sable",
      "field: or | fess: gules | mullet: or on 1 | roundel: sable on 2", NULL },
    { "Or, a fess gules fretty argent", "field: or | fess: gules | fretty: argent on 1", NULL },
    { "Or, a fess gules, overall fretty argent", "field: or | fess: gules | fretty: argent", NULL },
    { "Or, on a fess gules in chief two keys or",
      "field: or | fess: gules | key place=chief number=2: or on 1",
      "Or, on a fess gules two keys in chief or" },
    { "Or, a fess between three mullets gules",
      "field: or | fess: gules | mullet place=chief number=2: gules | mullet place=base: gules",
      "Or, a fess gules between three mullets gules" },
    { "Or, a bend gules between six keys sable",
      "field: or | bend: gules | key place=second quarter number=3: sable | key place=third quarter "
      "number=3: sable",
      NULL },
    { "Or, a cross gules between four keys sable",
      "field: or | cross: gules | key size=0.28 place=first quarter: sable | key size=0.28 place=second "
      "quarter: sable"
      " | key size=0.28 place=third quarter: sable | key size=0.28 place=fourth quarter: sable",
      NULL },
    { "Or, a pale gules between a key and a sword sable",
      "field: or | pale: gules | key place=dexter: sable | sword place=sinister: sable",
      "Or, a pale gules, in dexter a key sable, in sinister a sword sable" },
    { "Or, a sword gules between two keys sable",
      "field: or | sword: gules | key place=dexter: sable | key place=sinister: sable", NULL },
    { "Or, on a fess between two roundels sable a key of the field",
      "field: or | fess: sable | roundel place=chief: sable | roundel place=base: sable | key: or on 1",
      "Or, a fess sable between two roundels sable, on the fess a key or" },
  };

  (void) state;
  check_phrases(phrases, G_N_ELEMENTS(phrases));
}

static void
counterchanged(void **state) {
  static const Phrase phrases[] = {
    { "Per fess gules and argent, six mullets, three, two, one, counterchanged",
      "per-fess: gules, argent | mullet number=6 arrangement=rows rows=<3, 2, 1> across 0",
      "Per fess gules and argent, six mullets three, two and one counterchanged" },
    { "Per pale or and azure, a fess between three mullets counterchanged",
      "per-pale: or, azure | fess across 0 | mullet place=chief number=2 across 0 | mullet place=base across "
      "0",
      "Per pale or and azure, a fess counterchanged, in chief two mullets counterchanged, in base a mullet "
      "counterchanged" },
    { "Per pale or and azure, overall paly of six gules and vert, a fess counterchanged across the per pale",
      "per-pale: or, azure | paly: gules, vert | fess across 0", NULL },
    { "Per pale or and azure, overall per pale counterchanged across the per pale, a key counterchanged",
      "per-pale: or, azure | per-pale across 0 | key across 1",
      "Per pale or and azure, overall per pale counterchanged, a key counterchanged" },
  };

  (void) state;
  check_phrases(phrases, G_N_ELEMENTS(phrases));
}

/* Every kind by its own noun, in the singular and, where it has a number, the plural. */
static void
every_kind_has_a_word(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_PATTERNS; i++) {
    g_autoptr(GPtrArray) items = g_ptr_array_new_with_free_func((GDestroyNotify) spv_blazon_item_free);
    SpvBlazonItem *item = spv_blazon_item_new((SpvPatternKind) i);
    int number = spv_pattern_measure_index(item->pattern.kind, "number");
    for (guint slot = 0; slot < spv_pattern_info(item->pattern.kind)->n_slots; slot++)
      item->tinctures[slot] = g_strdup("azure");
    g_ptr_array_add(items, item);
    for (int n = 1; n <= (number < 0 ? 1 : 3); n++) {
      if (number >= 0)
        item->pattern.measures[number] = (SpvMeasure){ SPV_UNIT_PLAIN, n };
      g_autofree char *text = spv_blazon_write(items);
      g_autoptr(GPtrArray) again = spv_blazon_parse(text, NULL, NULL);
      if (!again || again->len != 1 || !spv_blazon_item_equal(item, g_ptr_array_index(again, 0)))
        fail_msg("“%s” reads otherwise", text);
      if (g_strrstr(text, "["))
        fail_msg("“%s” needs no brackets", text);
    }
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(fields),         cmocka_unit_test(ordinaries),
    cmocka_unit_test(charges),        cmocka_unit_test(charges_on_and_about_others),
    cmocka_unit_test(counterchanged), cmocka_unit_test(every_kind_has_a_word),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
