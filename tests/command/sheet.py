#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`sheet`: the files that it writes, and those that it must not leave."""

import json
import os
import re
import signal
import struct
import subprocess
import time
import unittest

import support
from support import CLI, DONE, FAILED, SMALL, run


def png_head(path):
    """Width and height in pixels, and pixels a metre, read from the file's own chunks."""
    with open(path, "rb") as file:
        data = file.read()
    size, density, at = None, None, 8
    while at < len(data):
        length, kind = struct.unpack_from(">I4s", data, at)
        if kind == b"IHDR":
            size = struct.unpack_from(">II", data, at + 8)
        if kind == b"pHYs":
            density = struct.unpack_from(">IIB", data, at + 8)
        at += length + 12
    return size, density


class Sheet(support.Case):
    def sheet(self, *options, folder="sheets"):
        # cairo 1.16 loses a snapshot when a group that an SVG surface has drawn is destroyed: not our leak.
        sanitizer = os.environ.get("ASAN_OPTIONS", "") + ":detect_leaks=0"
        env = {"ASAN_OPTIONS": sanitizer} if "svg" in options else {}
        result = run("sheet", SMALL, "-o", self.path(folder), "--dpi", "150", *options, env=env)
        paths = self.assert_done(result).splitlines()
        self.assertEqual(sorted(os.path.basename(p) for p in paths), sorted(os.listdir(self.path(folder))))
        for path in paths:
            self.assertEqual(os.path.dirname(path), self.path(folder))
        return paths

    def read(self, paths):
        contents = []
        for path in paths:
            with open(path, "rb") as file:
                contents.append(file.read())
        return contents

    def test_png_of_each_paper(self):
        # A4 210 × 297 and A5 148 × 210 mm: ISO 216; Letter 215.9 × 279.4 mm: ANSI/ASME Y14.1. 150 dots an inch
        # are 150 / 0.0254 = 5905.5 a metre.
        for paper, width, height in (("a4", 210, 297), ("a5", 148, 210), ("letter", 215.9, 279.4)):
            for path in self.sheet("--paper", paper, folder=paper):
                (columns, rows), density = png_head(path)
                self.assertAlmostEqual(columns, width / 25.4 * 150, delta=0.51)
                self.assertAlmostEqual(rows, height / 25.4 * 150, delta=0.51)
                self.assertIn(density, ((5905, 5905, 1), (5906, 5906, 1)))

    def test_each_format(self):
        for name, start in (("png", b"\x89PNG\r\n\x1a\n"), ("pdf", b"%PDF-"), ("svg", b"<?xml")):
            for path in self.sheet("--format", name, folder=name):
                self.assertTrue(path.endswith("." + name))
                self.assertTrue(self.read([path])[0].startswith(start))

    def test_the_same_scheme_gives_the_same_bytes(self):
        for name in ("png", "pdf", "svg"):
            first = self.read(self.sheet("--format", name, folder="first-" + name))
            second = self.read(self.sheet("--format", name, folder="second-" + name))
            self.assertEqual(first, second)

    def test_each_option_changes_what_is_printed(self):
        plain = self.read(self.sheet(folder="plain"))
        for i, options in enumerate(
            (
                ["--hatch"],
                ["--date", "the eve of the herring fair"],
                ["--date", "today"],
                ["--panel", "strap"],
                ["--content", "templates"],
                ["--content", "templates,offsets"],
                ["--dpi", "151"],
                ["--paper", "a5"],
            )
        ):
            self.assertNotEqual(self.read(self.sheet(*options, folder=f"other-{i}")), plain, options)

    def test_today_is_todays_date(self):
        before = time.strftime("%Y-%m-%d")
        today = self.read(self.sheet("--date", "today", folder="today"))
        after = time.strftime("%Y-%m-%d")
        self.assertIn(today, [self.read(self.sheet("--date", day, folder=day)) for day in {before, after}])

    def test_json_has_the_names_of_the_text(self):
        paths = self.sheet()
        result = run("sheet", SMALL, "-o", self.path("sheets"), "--dpi", "150", "--json")
        self.assertEqual(json.loads(self.assert_done(result)), {"sheets": paths})

    def test_panels_are_chosen_by_id(self):
        result = run("sheet", SMALL, "-o", self.path("sheets"), "--panel", "cloak")
        self.assert_failed(result, FAILED, "^spolvero-cli: " + re.escape(SMALL) + ": .*cloak")
        self.assertFalse(os.path.exists(self.path("sheets")))

    def test_a_scheme_without_designs_has_no_sheets(self):
        path = self.write_scheme("bare.scheme.json", designs={})
        self.assert_failed(run("sheet", path, "-o", self.path("sheets")), FAILED, re.escape(path))

    def test_standard_input_is_printed_too(self):
        paths = self.sheet()
        with open(SMALL, "rb") as file:
            result = run("sheet", "-", "-o", self.path("piped"), "--dpi", "150", stdin=file.read())
        piped = self.assert_done(result).splitlines()
        self.assertEqual(self.read(piped), self.read(paths))

    def test_a_folder_that_can_not_be_made_is_said(self):
        with open(self.path("file"), "w", encoding="utf-8"):
            pass
        for folder in (self.path("file"), self.path("file", "sheets"), "/proc/nowhere"):
            result = run("sheet", SMALL, "-o", folder, "--dpi", "150")
            self.assert_failed(result, FAILED, "^spolvero-cli: .*" + re.escape(folder))

    def test_output_that_can_not_be_written_is_said(self):
        with open("/dev/full", "wb") as full:
            result = subprocess.run(
                [CLI, "sheet", SMALL, "-o", self.path("sheets"), "--dpi", "150"],
                stdout=full,
                stderr=subprocess.PIPE,
                timeout=60,
            )
        self.assertEqual(result.returncode, FAILED)
        self.assertRegex(result.stderr.decode("utf-8"), r"\Aspolvero-cli: standard output: .*\n\Z")

    def test_an_interrupt_leaves_no_unfinished_file(self):
        folder = self.path("sheets")
        for number in (signal.SIGINT, signal.SIGTERM):
            process = subprocess.Popen(
                [CLI, "sheet", SMALL, "-o", folder, "--dpi", "2400"],
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
            )
            # The unfinished sheet is there, under a name of its own: now it is being written.
            deadline = time.monotonic() + 60
            while not (os.path.isdir(folder) and os.listdir(folder)):
                self.assertIsNone(process.poll(), "it was done before it could be interrupted")
                self.assertLess(time.monotonic(), deadline)
                time.sleep(0.001)
            process.send_signal(number)
            out, err = process.communicate(timeout=60)
            self.assertEqual((process.returncode, out), (FAILED, b""))
            self.assertRegex(err.decode("utf-8"), r"\Aspolvero-cli: stopped.*\n\Z")
            self.assertEqual(os.listdir(folder), [])

    def test_a_kept_sheet_is_the_old_one_after_an_interrupt(self):
        (path, *_) = self.sheet()
        old = self.read([path])
        process = subprocess.Popen(
            [CLI, "sheet", SMALL, "-o", self.path("sheets"), "--dpi", "2400"], stderr=subprocess.DEVNULL
        )
        count = len(os.listdir(self.path("sheets")))
        while len(os.listdir(self.path("sheets"))) == count:
            self.assertIsNone(process.poll(), "it was done before it could be interrupted")
        process.send_signal(signal.SIGINT)
        self.assertEqual(process.wait(timeout=60), FAILED)
        self.assertEqual(self.read([path]), old)
        self.assertEqual(len(os.listdir(self.path("sheets"))), count)


if __name__ == "__main__":
    unittest.main()
