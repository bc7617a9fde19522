/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Random edits, each of which an editor could make. */
#pragma once

#include "scheme/scheme.h"

/* SCHEME after one edit; at times SCHEME itself, where the edit changes nothing. It must have panels and
 * tinctures. */
SpvScheme *test_random_edit(const SpvScheme *scheme, GRand *random);
