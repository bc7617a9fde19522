/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/finding-item.h"

#include <glib/gi18n-lib.h>

#include "window/measure-text.h"
#include "window/screen-text.h"

struct _SpvFindingItem {
  GObject parent_instance;
  SpvFinding finding;
  char *message, *remedy, *use, *panel;
  gboolean locked;
};

G_DEFINE_FINAL_TYPE(SpvFindingItem, spv_finding_item, G_TYPE_OBJECT)

/* A painter's counts in words, as the remedy itself says them. */
static const char *const numbers[] = {
  N_("one"),   N_("two"),   N_("three"), N_("four"), N_("five"),   N_("six"),
  N_("seven"), N_("eight"), N_("nine"),  N_("ten"),  N_("eleven"), N_("twelve"),
};

const SpvFinding *
spv_finding_item_finding(SpvFindingItem *item) {
  return &item->finding;
}

const char *
spv_finding_item_message(SpvFindingItem *item) {
  return item->message;
}

const char *
spv_finding_item_remedy(SpvFindingItem *item) {
  return item->remedy;
}

const char *
spv_finding_item_use(SpvFindingItem *item) {
  return item->use;
}

const char *
spv_finding_item_panel(SpvFindingItem *item) {
  return item->panel;
}

gboolean
spv_finding_item_is_locked(SpvFindingItem *item) {
  return item->locked;
}

static char *
use_label(const SpvRemedy *remedy) {
  g_autofree char *value = NULL;

  if (remedy->value.unit == SPV_UNIT_PLAIN && remedy->value.value >= 1 &&
      remedy->value.value <= G_N_ELEMENTS(numbers))
    value = g_strdup(_(numbers[(guint) remedy->value.value - 1]));
  else
    value = spv_measure_text_with_unit(remedy->value);
  /* Translators: on a button; %s is a number in words or a length: "Use four", "Use 0.85 mm". */
  return g_strdup_printf(_("Use %s"), value);
}

static SpvFindingItem *
item_new(const SpvFinding *finding, const SpvScheme *scheme, guint chosen) {
  SpvFindingItem *item = g_object_new(SPV_TYPE_FINDING_ITEM, NULL);
  g_autofree char *message = spv_finding_message(finding, scheme);
  g_autofree char *remedy = spv_finding_remedy(finding, scheme);

  item->finding = *finding;
  item->message = spv_screen_text_unbroken(message);
  item->remedy = remedy ? spv_screen_text_unbroken(remedy) : NULL;
  item->use = finding->has_remedy ? use_label(&finding->remedy) : NULL;
  item->locked = finding->has_remedy && scheme->panels[finding->panel]->layers[finding->remedy.layer]->locked;
  if (finding->panel != chosen)
    item->panel = g_strdup(scheme->panels[finding->panel]->name);
  return item;
}

/* Whether both say and do the same; where exactly on the panel does not show. */
static gboolean
item_equal(SpvFindingItem *a, SpvFindingItem *b) {
  return a->finding.panel == b->finding.panel && a->finding.layer == b->finding.layer &&
         a->finding.severity == b->finding.severity && g_strcmp0(a->message, b->message) == 0 &&
         g_strcmp0(a->remedy, b->remedy) == 0 && g_strcmp0(a->use, b->use) == 0 &&
         g_strcmp0(a->panel, b->panel) == 0 && a->locked == b->locked;
}

static void
add_items(GPtrArray *items, SpvSession *session, gboolean of_chosen) {
  const SpvScheme *scheme = spv_session_scheme(session);
  GPtrArray *findings = spv_session_findings(session);
  guint chosen = (guint) spv_session_panel(session);

  for (guint i = 0; findings && i < findings->len; i++) {
    const SpvFinding *finding = g_ptr_array_index(findings, i);
    if (finding->panel < scheme->n_panels && (finding->panel == chosen) == of_chosen)
      g_ptr_array_add(items, item_new(finding, scheme, chosen));
  }
}

/* Whether the item at POSITION may stand for FRESH; if so it takes over the finding. */
static gboolean
keep(GListModel *items, guint position, SpvFindingItem *fresh) {
  g_autoptr(SpvFindingItem) item = g_list_model_get_item(items, position);

  if (!item_equal(item, fresh))
    return FALSE;
  item->finding = fresh->finding;
  return TRUE;
}

void
spv_finding_items_sync(GListStore *store, SpvSession *session) {
  g_autoptr(GPtrArray) fresh = g_ptr_array_new_with_free_func(g_object_unref);
  GListModel *items = G_LIST_MODEL(store);
  guint n_old = g_list_model_get_n_items(items), start = 0, end = 0;

  add_items(fresh, session, TRUE);
  add_items(fresh, session, FALSE);
  while (start < n_old && start < fresh->len && keep(items, start, g_ptr_array_index(fresh, start)))
    start++;
  while (start + end < n_old && start + end < fresh->len &&
         keep(items, n_old - 1 - end, g_ptr_array_index(fresh, fresh->len - 1 - end)))
    end++;
  if (start + end < n_old || start + end < fresh->len)
    g_list_store_splice(store, start, n_old - start - end, fresh->pdata + start, fresh->len - start - end);
}

static void
spv_finding_item_finalize(GObject *object) {
  SpvFindingItem *item = SPV_FINDING_ITEM(object);

  g_free(item->message);
  g_free(item->remedy);
  g_free(item->use);
  g_free(item->panel);
  G_OBJECT_CLASS(spv_finding_item_parent_class)->finalize(object);
}

static void
spv_finding_item_class_init(SpvFindingItemClass *klass) {
  G_OBJECT_CLASS(klass)->finalize = spv_finding_item_finalize;
}

static void
spv_finding_item_init(SpvFindingItem *item) {
  (void) item;
}
