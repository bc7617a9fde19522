/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/rgb.h"
