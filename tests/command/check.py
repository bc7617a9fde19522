#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`check`: its exit status, and that its text and its JSON agree."""

import json
import unittest

import support
from support import run

FIELD = {"id": "field", "kind": "field", "name": "Field", "tinctures": ["gules"]}
# Sixty columns on 9.6 mm: cells 0.16 mm wide, where the finest line is 0.25 mm.
FINE = {
    "id": "chequers",
    "kind": "check",
    "name": "Chequers",
    "tinctures": ["argent", "sable"],
    "measures": {"columns": 60, "rows": 4},
}
KEYS = [
    "kind",
    "severity",
    "panel",
    "layer",
    "tincture",
    "cause",
    "place",
    "width",
    "limit",
    "count",
    "message",
    "remedy",
    "fix",
]
ALWAYS = {"kind", "severity", "panel", "place", "width", "limit", "count", "message"}


class Check(support.Case):
    def clean(self):
        """A scheme on which there is nothing to say: each panel measured, and covered by its field."""
        harness = support.small_scheme()["harness"]
        for panel in harness["panels"]:
            panel["measured"] = True
        designs = {panel["id"]: {"layers": [FIELD]} for panel in harness["panels"]}
        return {"harness": harness, "designs": designs}

    def test_nothing_to_say(self):
        path = self.write_scheme("clean.scheme.json", **self.clean())
        self.assertEqual(self.assert_done(run("check", path)), "")
        self.assertEqual(json.loads(self.assert_done(run("check", path, "--json"))), {"findings": []})

    def test_notes_alone_give_0(self):
        changes = self.clean()
        changes["harness"]["panels"][2]["measured"] = False
        path = self.write_scheme("notes.scheme.json", **changes)
        lines = self.assert_done(run("check", path)).splitlines()
        self.assertTrue(lines)
        for line in lines:
            self.assertTrue(line.startswith("strap: note: "), line)
        kinds = [f["kind"] for f in json.loads(self.assert_done(run("check", path, "--json")))["findings"]]
        self.assertEqual(kinds, ["not-measured"])

    def test_a_warning_gives_3(self):
        changes = self.clean()
        changes["designs"]["strap"] = {"layers": [FIELD, FINE]}
        path = self.write_scheme("fine.scheme.json", **changes)
        text = self.assert_done(run("check", path), support.FINDINGS)
        self.assertRegex(text, r"(?m)^strap: warning: \S")
        findings = json.loads(self.assert_done(run("check", path, "--json"), support.FINDINGS))["findings"]
        worst = findings[0]
        self.assertEqual(
            (worst["kind"], worst["severity"], worst["panel"], worst["layer"]),
            ("narrow-stroke", "warning", "strap", "chequers"),
        )
        self.assertEqual(worst["cause"], "pattern")
        self.assertEqual(worst["limit"], 0.25)
        self.assertAlmostEqual(worst["width"], 0.16, delta=0.005)
        self.assertLess(abs(worst["place"]["x"]), 4.8)
        self.assertTrue(0 < worst["place"]["y"] < 4)

    def test_what_a_later_layer_covers_is_a_note(self):
        """A chief over all of the strap's 4 mm but 0.1: the field below is painted whole."""
        changes = self.clean()
        cover = {
            "id": "chief",
            "kind": "chief",
            "name": "Chief",
            "tinctures": ["sable"],
            "measures": {"depth": {"mm": 3.9}},
        }
        changes["designs"]["strap"] = {"layers": [FIELD, cover]}
        path = self.write_scheme("cover.scheme.json", **changes)
        findings = json.loads(self.assert_done(run("check", path, "--json")))["findings"]
        self.assertEqual([(f["layer"], f["severity"], f["cause"]) for f in findings], [("field", "note", "cover")])
        self.assertAlmostEqual(findings[0]["width"], 0.1, delta=0.005)

    def test_the_fix_clears_the_finding(self):
        changes = self.clean()
        changes["designs"]["strap"] = {"layers": [FIELD, FINE]}
        path = self.write_scheme("fine.scheme.json", **changes)
        findings = json.loads(run("check", path, "--json").stdout)["findings"]
        fix = next(f["fix"] for f in findings if "fix" in f)
        self.assertEqual(fix["layer"], "chequers")
        mended = dict(FINE, measures=dict(FINE["measures"]))
        mended["measures"].pop(fix["measure"], None)
        if "value" in fix:
            mended["measures"][fix["measure"]] = fix["value"]
        changes["designs"]["strap"] = {"layers": [FIELD, mended]}
        self.assert_done(run("check", self.write_scheme("mended.scheme.json", **changes)))

    def test_text_and_json_agree(self):
        changes = self.clean()
        changes["designs"]["strap"] = {"layers": [FINE]}
        changes["designs"]["plate"] = {"layers": []}
        changes["harness"]["panels"][0]["measured"] = False
        path = self.write_scheme("mixed.scheme.json", **changes)
        lines = run("check", path).stdout.decode("utf-8").splitlines()
        findings = json.loads(run("check", path, "--json").stdout)["findings"]
        said = []
        for finding in findings:
            self.assertEqual([key for key in KEYS if key in finding], list(finding))
            self.assertTrue(ALWAYS <= set(finding))
            self.assertEqual("cause" in finding, finding["kind"] == "narrow-stroke")
            sentences = [finding["message"]] + ([finding["remedy"]] if "remedy" in finding else [])
            said.append(": ".join([finding["panel"], finding["severity"], " ".join(sentences)]))
        self.assertEqual(lines, said)
        self.assertGreaterEqual(len(lines), 2)

    def test_panels_can_be_chosen(self):
        changes = self.clean()
        changes["designs"]["strap"] = {"layers": [FINE]}
        path = self.write_scheme("fine.scheme.json", **changes)
        everything = run("check", path).stdout.decode("utf-8")
        self.assertEqual(self.assert_done(run("check", path, "--panel", "plate")), "")
        self.assertEqual(self.assert_done(run("check", path, "--panel", "strap"), support.FINDINGS), everything)
        both = run("check", path, "--panel", "strap", "--panel", "plate", "--panel", "strap")
        self.assertEqual(self.assert_done(both, support.FINDINGS), everything)
        self.assert_failed(run("check", path, "--panel", ""), support.FAILED, "no panel is called “”")


if __name__ == "__main__":
    unittest.main()
