#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`new`: what a scheme can start from, and the file that it makes."""

import json
import os
import re
import unittest

import support
from support import FAILED, SMALL, run

HARNESS = support.first_harness()


class New(support.Case):
    def entries(self):
        return [re.split(r"\s\s+", line, 2) for line in self.assert_done(run("new", "--list")).splitlines()]

    def read(self, path):
        with open(path, "rb") as file:
            return file.read()

    def test_the_list_holds_harnesses_and_examples(self):
        kinds = [kind for _, kind, _ in self.entries()]
        self.assertGreaterEqual(kinds.count("harness"), 4)
        self.assertGreaterEqual(kinds.count("example"), 3)
        self.assertEqual(kinds.count("template"), 0)

    def test_each_that_is_listed_makes_a_scheme(self):
        for key, kind, title in self.entries():
            path = self.path(key)
            self.assertEqual(self.assert_done(run("new", "--harness", key, "-o", path)), "")
            scheme = json.loads(self.read(path))
            self.assertEqual(scheme["spolvero"], 1)
            self.assertTrue(scheme["harness"]["panels"], key)
            if kind == "example":
                self.assertEqual(scheme["title"], title)
                self.assertTrue(scheme["designs"])
            self.assertIn(run("check", path).returncode, (support.DONE, support.FINDINGS))
            self.assertEqual(run("guide", path).returncode, support.DONE)

    def test_a_template_is_listed_and_made(self):
        folder = self.path("data", "spolvero", "templates")
        os.makedirs(folder)
        with open(os.path.join(folder, "pikes.scheme.json"), "wb") as file:
            file.write(self.read(SMALL))
        (template,) = [entry for entry in self.entries() if entry[1] == "template"]
        self.assertEqual(template[2], "Quarry Row Pikes")
        made = json.loads(self.assert_done(run("new", "--harness", template[0], "-o", "-")))
        self.assertEqual(made["title"], "Quarry Row Pikes")

    def test_a_dash_is_standard_output(self):
        self.assert_done(run("new", "--harness", HARNESS, "-o", self.path("a")))
        self.assertEqual(run("new", "--harness", HARNESS, "-o", "-").stdout, self.read(self.path("a")))

    def test_the_title_is_the_one_given(self):
        for title in ("Lantern Company", 'of "quotes"', "–"):
            out = self.assert_done(run("new", "--harness", HARNESS, "--title", title, "-o", "-"))
            self.assertEqual(json.loads(out)["title"], title)

    def test_a_file_that_is_there_is_left_alone(self):
        path = self.path("a")
        with open(path, "wb") as file:
            file.write(b"mine")
        result = run("new", "--harness", HARNESS, "-o", path)
        self.assert_failed(result, FAILED, "^spolvero-cli: " + re.escape(path) + ": .*--force")
        self.assertEqual(self.read(path), b"mine")
        os.symlink("nowhere", self.path("link"))
        self.assert_failed(run("new", "--harness", HARNESS, "-o", self.path("link")), FAILED, "--force")
        self.assertEqual(sorted(os.listdir(self.folder)), ["a", "link"])

    def test_force_replaces_it(self):
        path = self.path("a")
        with open(path, "wb") as file:
            file.write(b"mine")
        self.assert_done(run("new", "--harness", HARNESS, "-o", path, "--force"))
        self.assertEqual(json.loads(self.read(path))["spolvero"], 1)

    def test_an_unknown_harness_names_the_known_ones(self):
        result = run("new", "--harness", "hovercraft", "-o", self.path("a"))
        self.assert_failed(result, FAILED, "hovercraft.*" + HARNESS)
        self.assertFalse(os.path.exists(self.path("a")))

    def test_a_file_that_can_not_be_written_is_said(self):
        for path in (self.path("no", "such", "folder"), "/proc/nowhere"):
            self.assert_failed(run("new", "--harness", HARNESS, "-o", path), FAILED, re.escape(path))


if __name__ == "__main__":
    unittest.main()
