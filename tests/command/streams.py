#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Streams and the process: standard input, output that can't be written, locales, odd names, signals."""

import json
import os
import pty
import re
import signal
import struct
import subprocess
import unittest

import support
from support import CLI, DONE, FAILED, SMALL, USAGE, run

HARNESS = support.first_harness()


class Input(support.Case):
    def setUp(self):
        super().setUp()
        with open(SMALL, "rb") as file:
            self.bytes = file.read()

    def test_a_dash_is_standard_input(self):
        for verb, *options in (["guide"], ["guide", "--json"], ["check"], ["check", "--json"]):
            piped, named = run(verb, "-", *options, stdin=self.bytes), run(verb, SMALL, *options)
            self.assertEqual((piped.returncode, piped.stdout), (named.returncode, named.stdout))
            self.assertEqual(piped.stderr, b"")

    def test_standard_input_may_come_in_pieces(self):
        process = subprocess.Popen([CLI, "guide", "-"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        for at in range(0, len(self.bytes), 100):
            process.stdin.write(self.bytes[at : at + 100])
            process.stdin.flush()
        out, _ = process.communicate(timeout=60)
        self.assertEqual(out, run("guide", SMALL).stdout)

    def test_what_is_wrong_in_standard_input_has_a_place(self):
        broken = self.bytes.replace(b'"finest-line": 0.25', b'"finest-line": 99')
        self.assert_failed(run("guide", "-", stdin=broken), FAILED, r"^spolvero-cli: standard input:4:\d+: ")

    def test_too_much_is_refused(self):
        flood = b" " * (16 * 1024 * 1024 + 100)
        self.assert_failed(run("check", "-", stdin=flood), FAILED, "standard input")

    def test_nothing_is_refused(self):
        self.assert_failed(run("check", "-", stdin=b""), FAILED, "^spolvero-cli: standard input:1:1: ")


class Errors(support.Case):
    def test_a_broken_scheme_says_file_line_column(self):
        path = self.path("broken.scheme.json")
        with open(path, "w", encoding="utf-8") as file:
            file.write('{"spolvero": 1,\n "title": }\n')
        where = "^spolvero-cli: " + re.escape(path) + r":2:\d+: "
        for verb, *options in (["guide"], ["check"], ["sheet", "-o", self.path("sheets")]):
            self.assert_failed(run(verb, path, *options), FAILED, where)
        self.assertFalse(os.path.exists(self.path("sheets")))

    def test_a_missing_file_is_named(self):
        path = self.path("not-there.scheme.json")
        for verb, *options in (["guide"], ["check"], ["sheet", "-o", self.path("sheets")]):
            self.assert_failed(run(verb, path, *options), FAILED, re.escape(path))

    def test_a_folder_is_no_scheme(self):
        self.assert_failed(run("guide", self.folder), FAILED, re.escape(self.folder))

    def test_odd_names_stay_on_one_line(self):
        for name in ("two\nlines", "  blanks ", "-dash", "–", b"\xff\xfe"):
            path = os.path.join(os.fsencode(self.folder), os.fsencode(name))
            self.assert_failed(run("guide", path), FAILED, re.escape(self.folder))
            with open(path, "wb") as to, open(SMALL, "rb") as source:
                to.write(source.read())
            self.assertEqual(run("guide", path).stdout, run("guide", SMALL).stdout)

    def test_two_dashes_end_the_options(self):
        with open(self.path("-dash"), "wb") as to, open(SMALL, "rb") as source:
            to.write(source.read())
        self.assertEqual(run("guide", "--", "-dash", cwd=self.folder).stdout, run("guide", SMALL).stdout)
        self.assert_failed(run("guide", "-dash", cwd=self.folder), USAGE, "-d")


class Output(support.Case):
    CALLS = (
        ["--help"],
        ["--version"],
        ["guide", "--help"],
        ["guide", SMALL],
        ["check", SMALL, "--json"],
        ["new", "--list"],
        ["new", "--harness", HARNESS, "-o", "-"],
    )

    def run_into(self, words, stdout, **more):
        process = subprocess.run([CLI, *words], stdout=stdout, stderr=subprocess.PIPE, timeout=60, **more)
        return process.returncode, process.stderr.decode("utf-8")

    def test_a_full_disk_is_said(self):
        for words in self.CALLS:
            with open("/dev/full", "wb") as full:
                status, err = self.run_into(words, full)
            self.assertEqual(status, FAILED, words)
            self.assertRegex(err, r"\Aspolvero-cli: standard output: .*\n\Z")

    def test_a_closed_output_is_said(self):
        for words in self.CALLS:
            command = ["/bin/sh", "-c", 'exec "$0" "$@" >&-', CLI, *words]
            closed = subprocess.run(command, stderr=subprocess.PIPE, timeout=60)
            self.assertEqual(closed.returncode, FAILED, words)
            self.assertRegex(closed.stderr.decode("utf-8"), r"\Aspolvero-cli: standard output: .*\n\Z")

    def test_a_reader_that_leaves_ends_it_quietly(self):
        for restore in (True, False):  # False: started with SIGPIPE ignored, as Python itself is
            reader, writer = os.pipe()
            os.close(reader)
            status, err = self.run_into(["guide", SMALL], writer, restore_signals=restore)
            os.close(writer)
            self.assertEqual((status, err), (-signal.SIGPIPE, ""))

    def test_nothing_is_printed_before_a_failure(self):
        result = run("guide", SMALL, "--panel", "plate", "--panel", "nowhere")
        self.assert_failed(result, FAILED, "nowhere")


class Locale(support.Case):
    def comma_locale(self):
        """The environment of a locale whose point is a comma.

        Debian installs none, so one is made: C.UTF-8 with another LC_NUMERIC. That file's form is glibc's own
        (locale/loadlocale.c): a magic number, the number of fields, their offsets, then the fields, the first
        of them the point, and the fourth the point as a wide character.
        """
        source = os.path.join("/usr/lib/locale", "C.utf8")
        folder = self.path("locales", "xx_XX.UTF-8")
        os.makedirs(folder)
        for name in os.listdir(source):
            if name != "LC_NUMERIC":
                os.symlink(os.path.join(source, name), os.path.join(folder, name))
        with open(os.path.join(source, "LC_NUMERIC"), "rb") as file:
            data = bytearray(file.read())
        n_fields = struct.unpack_from("=I", data, 4)[0]
        offsets = struct.unpack_from(f"={n_fields}I", data, 8)
        self.assertEqual(data[offsets[0] : offsets[0] + 2], b".\0")
        data[offsets[0]] = ord(",")
        struct.pack_into("=I", data, offsets[3], ord(","))
        with open(os.path.join(folder, "LC_NUMERIC"), "wb") as file:
            file.write(data)
        return {"LOCPATH": self.path("locales"), "LC_ALL": "xx_XX.UTF-8"}

    def test_numbers_keep_their_point(self):
        env = self.comma_locale()
        # The locale does what it is there for.
        shown = subprocess.run(["/usr/bin/printf", "%.1f", "1,5"], capture_output=True, env={**os.environ, **env})
        self.assertEqual(shown.stdout, b"1,5")
        for words in (["guide", SMALL], ["guide", SMALL, "--json"], ["check", SMALL], ["check", SMALL, "--json"]):
            self.assertEqual(run(*words, env=env).stdout, run(*words).stdout)
        new = ["new", "--harness", HARNESS, "-o", "-"]
        self.assertEqual(run(*new, env=env).stdout, run(*new).stdout)

    def test_words_are_taken_as_they_come_in_any_locale(self):
        words = ["new", "--harness", HARNESS, "--title", "Grève – 盾", "-o", "-"]
        for locale in ("C", "C.UTF-8"):
            scheme = json.loads(self.assert_done(run(*words, env={"LC_ALL": locale})))
            self.assertEqual(scheme["title"], "Grève – 盾")


class Signals(support.Case):
    def test_an_interrupt_ends_a_wait_for_input(self):
        for number in (signal.SIGINT, signal.SIGTERM):
            process = subprocess.Popen([CLI, "guide", "-"], stdin=subprocess.PIPE, stderr=subprocess.PIPE)
            process.stdin.write(b"{")
            process.stdin.flush()
            self.wait_until_asleep(process.pid)
            process.send_signal(number)
            self.assertEqual(process.wait(timeout=20), FAILED)
            self.assertRegex(process.stderr.read().decode("utf-8"), r"\Aspolvero-cli: standard input: .*\n\Z")
            process.stdin.close()
            process.stderr.close()

    def wait_until_asleep(self, pid):
        """Returns once every thread of PID waits: it has set up its signals, and has read what there was."""
        asleep = 0
        while asleep < 20:
            states = set()
            for task in os.listdir(f"/proc/{pid}/task"):
                with open(f"/proc/{pid}/task/{task}/stat", encoding="utf-8") as file:
                    states.add(file.read().rsplit(")", 1)[1].split()[0])
            with open(f"/proc/{pid}/status", encoding="utf-8") as file:
                blocked = re.search(r"SigBlk:\s*([0-9a-f]+)", file.read()).group(1)
            ready = states == {"S"} and int(blocked, 16) & (1 << (signal.SIGINT - 1))
            asleep = asleep + 1 if ready else 0


class Progress(support.Case):
    def test_it_shows_on_a_terminal_only_and_goes_away(self):
        words = [CLI, "sheet", SMALL, "-o", self.path("sheets"), "--dpi", "150"]
        leader, follower = pty.openpty()
        process = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=follower)
        os.close(follower)
        seen = b""
        try:
            while True:
                seen += os.read(leader, 4096)
        except OSError:  # the terminal's other end is closed
            pass
        out, _ = process.communicate(timeout=60)
        os.close(leader)
        self.assertEqual(process.returncode, DONE)
        percents = [int(n) for n in re.findall(r"(\d+)\u2009%", seen.decode("utf-8"))]
        self.assertTrue(percents)
        self.assertEqual(percents, sorted(percents))
        self.assertTrue(seen.endswith(b"\r     \r"))
        self.assertEqual(run(*words[1:]).stderr, b"")
        self.assertEqual(run(*words[1:]).stdout, out)


if __name__ == "__main__":
    unittest.main()
