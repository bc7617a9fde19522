#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`chart`: the sampler as a shell sees it."""

import json
import os
import re
import subprocess
import unittest

from support import DONE, FAILED, USAGE, Case, run


class Chart(Case):
    def test_a_pdf_holds_all_pages(self):
        path = self.path("sampler.pdf")
        result = run("chart", "-o", path)
        self.assertEqual((result.returncode, result.stderr), (DONE, b""))
        self.assertEqual(result.stdout.decode("utf-8").split(), [path])
        info = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
        self.assertGreater(int(re.search(r"Pages: +(\d+)", info).group(1)), 1)
        # ISO 216's A4 in points of 1/72 in.
        self.assertIn("595.276 x 841.89", info)

    def test_pages_of_png_are_numbered_and_named_as_json(self):
        path = self.path("new", "sampler.png")
        result = run("chart", "-o", path, "--dpi", "150", "--paper", "a5", "--json")
        self.assertEqual(result.returncode, DONE, result.stderr)
        pages = json.loads(result.stdout)["pages"]
        self.assertEqual(pages, [self.path("new", f"sampler-{i + 1}.png") for i in range(len(pages))])
        for page in pages:
            with open(page, "rb") as file:
                self.assertEqual(file.read(8), b"\x89PNG\r\n\x1a\n")

    def test_the_same_call_gives_the_same_bytes(self):
        pages = []
        for name in ("one", "two"):
            path = self.path(f"{name}.svg")
            self.assertEqual(run("chart", "-o", path).returncode, DONE)
            with open(self.path(f"{name}-1.svg"), "rb") as file:
                pages.append(file.read())
        self.assertEqual(pages[0], pages[1])

    def test_wrong_calls_say_what_to_do(self):
        for words, status, message in [
            ([], USAGE, "name the new file with -o"),
            (["-o", "a.pdf", "b.pdf"], USAGE, "“b.pdf” is one word too many"),
            (["-o", "a.pdf", "--line", "0.01"], USAGE, "a finest line is from 0.05 to 5"),
            (["-o", "a.png", "--dpi", "20"], USAGE, "20 dots an inch is out of range"),
            (["-o", "a.pdf", "--paper", "b9"], USAGE, "no paper is called “b9”"),
            (["-o", "sampler"], FAILED, "let it end in .png, .pdf or .svg"),
            (["-o", "sampler.gif"], FAILED, "let it end in .png, .pdf or .svg"),
        ]:
            result = run("chart", *words, cwd=self.folder)
            self.assertEqual(result.returncode, status, words)
            self.assertIn(message, result.stderr.decode("utf-8"))
            self.assertEqual(os.listdir(self.folder), [])


if __name__ == "__main__":
    unittest.main()
