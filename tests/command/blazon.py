#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`blazon` and `describe`: a scheme from words, and the words of a scheme."""

import json
import os
import re
import unittest

import support
from support import FAILED, SMALL, USAGE, run

WORDS = "Per bend indented azure and or, on a chief sable three mullets argent"


class Blazon(support.Case):
    def lay(self, *words):
        return json.loads(self.assert_done(run("blazon", *words)))

    def say(self, path, *words):
        """The blazons that `describe` prints, by panel."""
        out = self.assert_done(run("describe", path, *words))
        return dict(line.split(": ", 1) for line in out.splitlines())

    def test_words_make_a_scheme_with_them_on_every_panel(self):
        scheme = self.lay(WORDS)
        self.assertEqual(set(scheme["designs"]), {panel["id"] for panel in scheme["harness"]["panels"]})
        for design in scheme["designs"].values():
            self.assertEqual([layer["kind"] for layer in design["layers"]], ["per-bend", "chief", "mullet"])
        ids = {tincture["id"] for tincture in scheme["tinctures"]}
        self.assertLessEqual({"azure", "or", "sable", "argent"}, ids)

    def test_the_words_need_no_quotes(self):
        self.assertEqual(self.lay(WORDS), self.lay(*WORDS.split()))

    def test_a_panel_and_a_harness_can_be_named(self):
        scheme = self.lay(WORDS, "--harness", support.first_harness())
        panel = scheme["harness"]["panels"][0]["id"]
        one = self.lay(WORDS, "--harness", support.first_harness(), "--panel", panel, "--title", "Lantern Company")
        self.assertEqual(list(one["designs"]), [panel])
        self.assertEqual(one["title"], "Lantern Company")

    def test_what_was_laid_is_said(self):
        path = self.path("a.scheme.json")
        self.assertEqual(self.assert_done(run("blazon", WORDS, "--panel", "shield", "-o", path)), "")
        self.assertEqual(self.say(path), {"shield": WORDS})
        out = json.loads(self.assert_done(run("describe", "--json", path)))
        self.assertEqual([panel["blazon"] for panel in out["panels"]], [WORDS])

    def test_one_panel_of_a_scheme_is_laid_anew_and_the_rest_stays(self):
        before = self.say(SMALL)
        panel = sorted(before)[0]
        path = self.path("b.scheme.json")
        self.assert_done(run("blazon", WORDS, "--scheme", SMALL, "--panel", panel, "-o", path))
        after = self.say(path)
        self.assertNotEqual(after.pop(panel), before.pop(panel))
        self.assertEqual(after, before)

    def test_every_example_says_itself_again(self):
        listed = self.assert_done(run("new", "--list")).splitlines()
        for key in (line.split()[0] for line in listed if re.search(r"\s\sexample\s", line)):
            path, again = self.path(key), self.path(key + "-again")
            self.assert_done(run("new", "--harness", key, "-o", path))
            for panel, words in self.say(path).items():
                self.assert_done(run("blazon", words, "--scheme", path, "--panel", panel, "-o", again, "--force"))
                with open(path, "rb") as before, open(again, "rb") as after:
                    self.assertEqual(before.read(), after.read(), words)

    def test_standard_input_is_a_scheme(self):
        scheme = run("blazon", WORDS, "--panel", "shield").stdout
        self.assertEqual(self.assert_done(run("describe", "-", stdin=scheme)), f"shield: {WORDS}\n")

    def test_a_word_that_is_none_is_named(self):
        path = self.path("c")
        result = run("blazon", "Azure, a bend or, three mullts gules", "-o", path)
        self.assert_failed(result, FAILED, r"Character 25, “mullts”: did you mean .*mullets")
        self.assertFalse(os.path.exists(path))

    def test_what_we_do_not_draw_is_named(self):
        result = run("blazon", "Azure, three martlets or")
        self.assert_failed(result, FAILED, "we draw no martlet")

    def test_a_tincture_of_nobody_is_named(self):
        result = run("blazon", 'Azure, a bend "moonlight"', "--scheme", SMALL)
        self.assert_failed(result, FAILED, "moonlight")

    def test_a_wrong_call_is_told(self):
        self.assert_failed(run("blazon"), USAGE, "in quotes")
        self.assert_failed(run("blazon", WORDS, "--scheme", SMALL, "--harness", "knight-54"), USAGE, "not both")
        self.assert_failed(run("blazon", b"azure\xff"), USAGE, "UTF-8")
        self.assert_failed(run("blazon", WORDS, "--panel", "tail"), FAILED, "tail")
        self.assert_failed(run("describe"), USAGE, "name a scheme file")
        self.assert_failed(run("describe", SMALL, "--panel", "tail"), FAILED, "tail")

    def test_a_file_that_is_there_is_left_alone(self):
        path = self.path("d")
        with open(path, "wb") as file:
            file.write(b"mine")
        self.assert_failed(run("blazon", WORDS, "-o", path), FAILED, "--force")
        with open(path, "rb") as file:
            self.assertEqual(file.read(), b"mine")


if __name__ == "__main__":
    unittest.main()
