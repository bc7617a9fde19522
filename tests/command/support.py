# SPDX-License-Identifier: GPL-3.0-or-later
"""What the black-box tests share: running the program, and schemes to run it on."""

import copy
import json
import os
import shutil
import subprocess
import tempfile
import unittest

CLI = os.environ["SPV_CLI"]
HERE = os.path.dirname(os.path.abspath(__file__))
SMALL = os.path.join(HERE, "small.scheme.json")

DONE, FAILED, USAGE, FINDINGS = 0, 1, 2, 3


def small_scheme():
    with open(SMALL, encoding="utf-8") as file:
        return json.load(file)


def run(*words, stdin=None, env=None, **more):
    """Runs the program on WORDS; the result has bytes in stdout and stderr."""
    return subprocess.run(
        [CLI, *words],
        input=stdin,
        stdin=subprocess.DEVNULL if stdin is None else None,
        capture_output=True,
        env={**os.environ, **(env or {})},
        timeout=120,
        **more,
    )


def first_harness():
    """The name of a harness that the program has: the first that it lists."""
    return run("new", "--list").stdout.decode("utf-8").split()[0]


class Case(unittest.TestCase):
    """A test with a folder of its own, and a user's data directory with nothing in it."""

    def setUp(self):
        self.folder = tempfile.mkdtemp(prefix="spolvero-")
        self.addCleanup(shutil.rmtree, self.folder)
        os.environ["XDG_DATA_HOME"] = self.path("data")

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def write_scheme(self, name, **changes):
        """Writes the small scheme with CHANGES to its top-level members; gives the path."""
        scheme = small_scheme()
        scheme.update(copy.deepcopy(changes))
        path = self.path(name)
        with open(path, "w", encoding="utf-8") as file:
            json.dump(scheme, file)
        return path

    def assert_failed(self, result, status, pattern):
        """RESULT has STATUS, nothing on standard output, and one line on standard error that holds PATTERN."""
        text = result.stderr.decode("utf-8")
        self.assertEqual(result.returncode, status, text)
        self.assertEqual(result.stdout, b"")
        lines = text.splitlines()
        self.assertEqual(len(lines), 1 if status == FAILED else 2, text)
        self.assertTrue(lines[0].startswith("spolvero-cli: "), text)
        self.assertRegex(lines[0], pattern)

    def assert_done(self, result, status=DONE):
        self.assertEqual(result.stderr.decode("utf-8"), "")
        self.assertEqual(result.returncode, status)
        return result.stdout.decode("utf-8")
