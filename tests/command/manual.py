#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The manual page against the program: it is clean, and says of each verb just the options that the verb has."""

import os
import re
import subprocess
import tempfile
import unittest

CLI = os.environ["SPV_CLI"]
PAGE = os.path.join(os.environ["SPV_TEST_SOURCE_DIR"], "resources", "spolvero-cli.1")
VERBS = ["new", "blazon", "describe", "check", "guide", "sheet", "chart"]


def long_options(text):
    return set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", text))


def run(*words):
    return subprocess.run(words, capture_output=True, text=True, env={**os.environ, "MANWIDTH": "80"})


class Manual(unittest.TestCase):
    def setUp(self):
        with open(PAGE, encoding="utf-8") as file:
            self.source = file.read()
        self.text = self.source.replace("\\-", "-")

    def section(self, verb):
        """What the page says under the heading of VERB in VERBS, as plain text."""
        verbs = self.text.split(".SH VERBS\n")[1].split(".SH ")[0]
        return verbs.split(f".SS {verb}\n")[1].split(".SS ")[0]

    def test_formatters_have_nothing_to_say(self):
        for words in (["groff", "-ww", "-man", "-z", PAGE], ["man", "--warnings", "-l", PAGE]):
            result = run(*words)
            self.assertEqual(result.stderr, "", words)
            self.assertEqual(result.returncode, 0, words)

    def test_lines_of_the_source_are_ascii(self):
        self.assertTrue(self.source.isascii())

    def test_each_verb_has_its_options_in_the_page(self):
        common = {"--help"}
        for verb in VERBS:
            help_text = run(CLI, verb, "--help").stdout
            options = long_options("\n".join(l for l in help_text.splitlines() if l.startswith("  ")))
            self.assertIn("--help", options)
            described = set(re.findall(r"^\.(?:B|BI|BR)\s.*?(--[a-z][a-z-]*)", self.section(verb), re.M))
            self.assertEqual(options - common, described, verb)

    def test_synopsis_names_each_option(self):
        synopsis = self.text.split(".SH SYNOPSIS\n")[1].split(".SH ")[0]
        for verb in VERBS:
            for option in long_options(run(CLI, verb, "--help").stdout) - {"--help", "--output", "--list"}:
                self.assertIn(option, synopsis)

    def test_no_option_in_the_page_is_unknown(self):
        known = long_options(run(CLI, "--help").stdout)
        for verb in VERBS:
            known |= long_options(run(CLI, verb, "--help").stdout)
        self.assertEqual(long_options(self.text) - known, set())

    def test_every_verb_has_a_heading(self):
        verbs = self.text.split(".SH VERBS\n")[1].split(".SH ")[0]
        headings = re.findall(r"^\.SS (\w+)$", verbs, re.M)
        self.assertEqual(headings, VERBS)
        listed = re.findall(r"^  (\w+)", run(CLI, "--help").stdout, re.M)
        self.assertEqual(listed, VERBS)

    def test_the_examples_work(self):
        examples = self.text.split(".SH EXAMPLES\n")[1].split(".SH ")[0]
        blocks = re.findall(r"\.nf\n(.*?)\.fi\n", examples.replace("\\e\n", "\\\n"), re.S)
        self.assertEqual(len(blocks), 3)
        with tempfile.TemporaryDirectory() as folder:
            os.symlink(CLI, os.path.join(folder, "spolvero-cli"))
            env = {**os.environ, "PATH": folder + ":" + os.environ["PATH"]}
            for block in blocks:
                result = subprocess.run(["/bin/sh", "-c", block], capture_output=True, text=True, cwd=folder, env=env)
                self.assertEqual(result.stderr, "", block)
                self.assertIn(result.returncode, (0, 3), block)  # 3: the check may have something to say
                self.assertTrue(result.stdout, block)


if __name__ == "__main__":
    unittest.main()
