/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the window works on: one scheme with its history, its file, and what is chosen. Widgets read the
 * session, ask it for edits, and follow its signals; they never talk to each other. No widgets in here, so it
 * is tested without a display. */
#pragma once

#include <gio/gio.h>

#include "check/check.h"
#include "guide/guide.h"
#include "heraldry/blazon.h"
#include "scheme/history.h"

G_BEGIN_DECLS

#define SPV_TYPE_SESSION (spv_session_get_type())
G_DECLARE_FINAL_TYPE(SpvSession, spv_session, SPV, SESSION, GObject)

/* Properties (read by bindings): "title" (string), "modified", "can-undo", "can-redo" (boolean),
 * "undo-label", "redo-label" (string or NULL), "file" (GFile or NULL), "panel" (int, index), "layer" (int,
 * index, -1 for none).
 *
 * Signals: "scheme-changed": the scheme is another value (edit, undo, open): redraw, refill.
 * "selection-changed": another panel or layer is chosen.
 * "findings-changed": the checks of the scheme of now have come back. */

SpvSession *spv_session_new(const SpvScheme *scheme, GFile *file);

/* The scheme of now, owned by the session. Never NULL. */
const SpvScheme *spv_session_scheme(SpvSession *session);
/* Puts another document in place: history, selection and file start anew. */
void spv_session_replace(SpvSession *session, const SpvScheme *scheme, GFile *file);
/* No file holds the scheme of now, though nothing was edited: it is new, or was kept from a crash. */
void spv_session_mark_unsaved(SpvSession *session);

/* One edit; see spv_history_push(). Keeps the selection valid. */
void spv_session_push(SpvSession *session, const SpvScheme *scheme, const char *label, const char *merge);
/* The same, and chooses LAYER of the chosen panel; SPV_SESSION_SAME_LAYER keeps the one that is chosen. */
#define SPV_SESSION_SAME_LAYER (-2)
void spv_session_push_and_choose(SpvSession *session, const SpvScheme *scheme, const char *label,
                                 const char *merge, int layer);
/* Ends a run of joined edits; see spv_history_settle(). */
void spv_session_settle(SpvSession *session);
/* Undo and redo choose the layer that they change, on its panel. FALSE when there was nothing to do. */
gboolean spv_session_undo(SpvSession *session);
gboolean spv_session_redo(SpvSession *session);
/* Undo of an edit that the painter gave up half-way: it can't be redone. */
gboolean spv_session_drop(SpvSession *session);
gboolean spv_session_is_modified(SpvSession *session);
const char *spv_session_undo_label(SpvSession *session);
const char *spv_session_redo_label(SpvSession *session);

GFile *spv_session_file(SpvSession *session);
/* Saves to FILE (the session's own when NULL) and remembers it. */
gboolean spv_session_save(SpvSession *session, GFile *file, GError **error);

int spv_session_panel(SpvSession *session);
int spv_session_layer(SpvSession *session);
/* Chooses LAYER (-1: none) of PANEL; what is out of range is brought back. */
void spv_session_select(SpvSession *session, int panel, int layer);
/* Comes to PANEL, if that is not the chosen one: the topmost layer that is visible and not locked is chosen,
 * so that its handles are there to be dragged; none when there is no such layer. */
void spv_session_choose_panel(SpvSession *session, int panel);
const SpvPanel *spv_session_chosen_panel(SpvSession *session);
/* NULL when none is chosen. */
const SpvLayer *spv_session_chosen_layer(SpvSession *session);
/* The chosen panel composed, and its guide: made once for each change, owned by the session. */
const SpvComposition *spv_session_composition(SpvSession *session);
const SpvGuide *spv_session_guide(SpvSession *session);
/* Any panel composed, kept until that panel changes; owned by the session. */
const SpvComposition *spv_session_composition_of(SpvSession *session, guint panel);

/* Edits of what is chosen, each one step of history with its own label; where nothing can be done they do
 * nothing. Of a locked layer nothing changes but the lock. */
void spv_session_edit_panel(SpvSession *session, const SpvPanel *panel, const char *label, const char *merge);
void spv_session_edit_layer(SpvSession *session, guint index, const SpvLayer *layer, const char *label,
                            const char *merge);
/* Whether there is a layer INDEX that is not locked. */
gboolean spv_session_can_edit_layer(SpvSession *session, guint index);
void spv_session_rename_layer(SpvSession *session, guint index, const char *name);
void spv_session_set_layer_hidden(SpvSession *session, guint index, gboolean hidden);
void spv_session_set_layer_locked(SpvSession *session, guint index, gboolean locked);
/* Makes layer INDEX another kind in place; tinctures that the old kind had no slot for are chosen as for a
 * new layer. */
void spv_session_set_layer_kind(SpvSession *session, guint index, SpvPatternKind kind);
/* Turns the chosen layer into its mirror image. */
void spv_session_mirror_layer(SpvSession *session);
/* Adds a layer of KIND above the chosen one (on top when none), with tinctures that differ from what is
 * beneath, and chooses it. */
void spv_session_add_layer(SpvSession *session, SpvPatternKind kind);
/* Removes the chosen layer, and chooses the one beneath. */
void spv_session_remove_layer(SpvSession *session);
/* Puts a copy of the chosen layer above it, not locked, and chooses that. */
void spv_session_duplicate_layer(SpvSession *session);
/* Moves layer FROM to TO and follows it. */
void spv_session_move_layer(SpvSession *session, guint from, guint to);
/* Whether that would do anything. */
gboolean spv_session_can_move_layer(SpvSession *session, guint from, guint to);
/* Makes the chosen panel's layers what TEXT says (see spv_heraldic_lay()). FALSE, with ERROR and PLACE set,
 * where that is no blazon, and where a locked layer would change; then PLACE has no length. */
gboolean spv_session_lay_blazon(SpvSession *session, const char *text, SpvBlazonPlace *place, GError **error);
/* Carries out the remedy of FINDING, and shows the layer. */
void spv_session_apply_finding(SpvSession *session, const SpvFinding *finding);

/* SpvFinding in a GPtrArray, of the whole scheme; those of now, or of a moment ago while new ones are worked
 * out. Owned by the session. */
GPtrArray *spv_session_findings(SpvSession *session);
/* Whether the findings belong to the scheme of now. */
gboolean spv_session_findings_are_current(SpvSession *session);

G_END_DECLS
