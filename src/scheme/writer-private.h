/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a scheme to JSON values. */
#pragma once

#include "scheme/scheme.h"

/* What is unknown of each part is laid back where it came from. Free with json_decref(). */
json_t *spv_write_scheme(const SpvScheme *scheme);
