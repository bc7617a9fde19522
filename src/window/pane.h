/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every pane beside the canvas shares: it holds the session and refills itself when that changes. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_PANE (spv_pane_get_type())
G_DECLARE_DERIVABLE_TYPE(SpvPane, spv_pane, SPV, PANE, GtkBox)

/* Property: "session" (SpvSession). */

struct _SpvPaneClass {
  GtkBoxClass parent_class;

  /* Shows the session of now: called when it is set, and when its scheme or selection changes. Must leave a
   * field alone that already shows what it should. Never called without a session. */
  void (*refill)(SpvPane *pane);
  /* The findings have come back; may be NULL. */
  void (*findings_came)(SpvPane *pane);
};

/* NULL until set. */
SpvSession *spv_pane_session(SpvPane *pane);
void spv_pane_set_session(SpvPane *pane, SpvSession *session);

/* Refills at once, if there is a session. */
void spv_pane_refill(SpvPane *pane);
/* The run of joined edits is over; see spv_session_settle(). Refills, so that what was refused goes away. */
void spv_pane_settle(SpvPane *pane);

G_END_DECLS
