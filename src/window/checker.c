/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/checker.h"

#include "window/tinctures-equal.h"

struct _SpvChecker {
  void (*changed)(gpointer data);
  gpointer data;
  SpvScheme *wanted;         /* asked for last, or NULL */
  SpvScheme *known;          /* the scheme of the findings of now, or NULL */
  GPtrArray *known_panels;   /* GPtrArray of SpvFinding, one a panel of KNOWN */
  GPtrArray *findings;       /* the same, all in one */
  GCancellable *cancellable; /* of the job that runs, or NULL */
  guint timeout;
};

/* What a worker gets: values and counted references only, so it shares nothing that anybody writes. */
typedef struct {
  SpvChecker *checker; /* touched on the checker's own thread alone, and only while the job is its latest */
  SpvScheme *scheme;
  GPtrArray *panels; /* findings of each panel, NULL where they are to be worked out */
} Job;

static void
release_findings(gpointer findings) {
  if (findings)
    g_ptr_array_unref(findings);
}

static void
job_free(gpointer data) {
  Job *job = data;
  spv_scheme_unref(job->scheme);
  g_ptr_array_unref(job->panels);
  g_free(job);
}

SpvChecker *
spv_checker_new(void (*changed)(gpointer data), gpointer data) {
  SpvChecker *checker = g_new0(SpvChecker, 1);
  checker->changed = changed;
  checker->data = data;
  checker->findings = g_ptr_array_new_with_free_func(g_free);
  return checker;
}

static void
stop(SpvChecker *checker) {
  g_clear_handle_id(&checker->timeout, g_source_remove);
  if (checker->cancellable)
    g_cancellable_cancel(checker->cancellable);
  g_clear_object(&checker->cancellable);
}

void
spv_checker_free(SpvChecker *checker) {
  stop(checker);
  g_clear_pointer(&checker->wanted, spv_scheme_unref);
  g_clear_pointer(&checker->known, spv_scheme_unref);
  g_clear_pointer(&checker->known_panels, g_ptr_array_unref);
  g_ptr_array_unref(checker->findings);
  g_free(checker);
}

/* Runs on the worker's thread. */
static void
work(GTask *task, gpointer source, gpointer data, GCancellable *cancellable) {
  (void) source;
  Job *job = data;
  for (guint i = 0; i < job->scheme->n_panels; i++) {
    if (g_ptr_array_index(job->panels, i))
      continue;
    g_autoptr(GError) error = NULL;
    GPtrArray *findings = spv_check_panel(job->scheme, i, cancellable, &error);
    if (!findings) {
      g_task_return_error(task, g_steal_pointer(&error));
      return;
    }
    g_ptr_array_index(job->panels, i) = findings;
  }
  g_task_return_boolean(task, TRUE);
}

static void
collect(SpvChecker *checker) {
  g_ptr_array_set_size(checker->findings, 0);
  for (guint i = 0; i < checker->known_panels->len; i++) {
    GPtrArray *panel = g_ptr_array_index(checker->known_panels, i);
    for (guint k = 0; k < panel->len; k++)
      g_ptr_array_add(checker->findings, g_memdup2(g_ptr_array_index(panel, k), sizeof(SpvFinding)));
  }
}

static void
done(GObject *source, GAsyncResult *result, gpointer data) {
  (void) source;
  (void) data;
  GTask *task = G_TASK(result);
  Job *job = g_task_get_task_data(task);
  /* A cancelled job may outlive its checker: look at nothing of it. */
  if (g_cancellable_is_cancelled(g_task_get_cancellable(task)) || !g_task_propagate_boolean(task, NULL))
    return;

  SpvChecker *checker = job->checker;
  g_clear_object(&checker->cancellable);
  g_clear_pointer(&checker->known, spv_scheme_unref);
  g_clear_pointer(&checker->known_panels, g_ptr_array_unref);
  checker->known = spv_scheme_ref(job->scheme);
  checker->known_panels = g_ptr_array_ref(job->panels);
  collect(checker);
  checker->changed(checker->data);
}

/* Findings depend on the panel, the painter's line and the tinctures. */
static GPtrArray *
known_findings(SpvChecker *checker, const SpvScheme *scheme, guint panel) {
  const SpvScheme *known = checker->known;
  if (!known || panel >= known->n_panels || known->panels[panel] != scheme->panels[panel] ||
      known->finest_line != scheme->finest_line || !spv_tinctures_equal(known, scheme))
    return NULL;
  return g_ptr_array_ref(g_ptr_array_index(checker->known_panels, panel));
}

static gboolean
start(gpointer data) {
  SpvChecker *checker = data;
  checker->timeout = 0;

  Job *job = g_new0(Job, 1);
  job->checker = checker;
  job->scheme = spv_scheme_ref(checker->wanted);
  job->panels = g_ptr_array_new_with_free_func(release_findings);
  for (guint i = 0; i < job->scheme->n_panels; i++)
    g_ptr_array_add(job->panels, known_findings(checker, job->scheme, i));

  checker->cancellable = g_cancellable_new();
  g_autoptr(GTask) task = g_task_new(NULL, checker->cancellable, done, NULL);
  g_task_set_check_cancellable(task, FALSE);
  g_task_set_task_data(task, job, job_free);
  g_task_run_in_thread(task, work);
  return G_SOURCE_REMOVE;
}

void
spv_checker_request(SpvChecker *checker, const SpvScheme *scheme, guint delay) {
  stop(checker);
  SpvScheme *wanted = spv_scheme_ref(scheme);
  g_clear_pointer(&checker->wanted, spv_scheme_unref);
  checker->wanted = wanted;
  if (delay == 0)
    start(checker);
  else
    checker->timeout = g_timeout_add(delay, start, checker);
}

GPtrArray *
spv_checker_findings(SpvChecker *checker) {
  return checker->findings;
}

gboolean
spv_checker_is_current(SpvChecker *checker) {
  return checker->wanted == checker->known;
}
