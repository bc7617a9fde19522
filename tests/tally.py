#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Adds up meson test logs: prints 'N passed, N failed' last, and fails on any test that failed or was skipped."""
import json
import sys

passed, failed = 0, []
for path in sys.argv[1:]:
    with open(path, encoding="utf-8") as log:
        for line in log:
            test = json.loads(line)
            if test["result"] in ("OK", "EXPECTEDFAIL"):
                passed += 1
            else:
                failed.append(f"{test['name']}: {test['result'].lower()}")
for name in failed:
    print(name, file=sys.stderr)
print(f"{passed} passed, {len(failed)} failed")
sys.exit(1 if failed or not passed else 0)
