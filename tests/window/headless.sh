#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Runs a command on a display of its own, with a home and a runtime directory of its own, and passes its exit
# status on. With -w a window manager runs there too, which keyboard focus needs.
#   headless.sh [-w WINDOW-MANAGER] COMMAND [ARGUMENT]...
wm=
if [ "$1" = -w ]; then wm=$2; shift 2; fi
T=$(mktemp -d) || exit 1
mkdir -m700 "$T/run" "$T/home"
Xvfb -displayfd 8 -screen 0 "${SPV_TEST_SCREEN:-1280x800x24}" -nolisten tcp -noreset 8>"$T/d" 2>/dev/null &
X=$!
trap 'kill $W $X 2>/dev/null; wait $X 2>/dev/null; rm -rf "$T"' EXIT
for _ in $(seq 400); do [ -s "$T/d" ] && break; sleep .05; done
[ -s "$T/d" ] || { echo "headless.sh: no virtual display came up; is xvfb installed?" >&2; exit 1; }
export DISPLAY=":$(cat "$T/d")" HOME=$T/home XDG_RUNTIME_DIR=$T/run GDK_BACKEND=x11 GSK_RENDERER=cairo
export XDG_DATA_HOME=$T/home/.local/share XDG_STATE_HOME=$T/home/.local/state XDG_CONFIG_HOME=$T/home/.config XDG_CACHE_HOME=$T/home/.cache
unset WAYLAND_DISPLAY
if [ -n "$wm" ]; then
  $wm >/dev/null 2>&1 &
  W=$!
  for _ in $(seq 400); do xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q 0x && break; sleep .05; done
fi
"$@"
