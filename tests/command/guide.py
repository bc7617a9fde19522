#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""`guide`: the numbers of a scheme that was worked out by hand, as JSON and as text, which agree."""

import json
import os
import re
import unittest

import support
from support import SMALL, run

GOLDEN = os.path.join(support.HERE, "golden", "guide-small.txt")
PLACE_KEYS = {"x", "y", "edge", "along", "from-datum", "exact"}


def rectangle(width, height):
    """Gives a function from (edge, along) to the place that `guide` must say, on a sharp-cornered rectangle.

    By hand: the datum is the middle of the top edge, (0, 0). Along the outline it is WIDTH / 2 from the datum
    to either upper corner, HEIGHT more to the lower ones, and the base is left. Distances count towards the
    wearer's sinister, the viewer's right, as positive, and the shorter way round is taken.
    """

    def place(edge, along):
        x = along - width / 2
        return {
            "chief": (x, 0, x),
            "dexter": (-width / 2, along, -(width / 2 + along)),
            "sinister": (width / 2, along, width / 2 + along),
            "base": (x, height, (width / 2 + height + width / 2 - abs(x)) * (1 if x > 0 else -1)),
        }[edge]

    return place


class SmallScheme(support.Case):
    def setUp(self):
        super().setUp()
        self.text = self.assert_done(run("guide", SMALL))
        self.json = json.loads(self.assert_done(run("guide", SMALL, "--json")))
        self.plate, self.strap = self.json["panels"]

    def assert_place(self, place, edge, along, at, from_datum):
        self.assertEqual(place["edge"], edge)
        for key, value in (("x", at[0]), ("y", at[1]), ("along", along), ("from-datum", from_datum)):
            self.assertAlmostEqual(place["exact"][key], value, delta=1e-9)
            self.assertEqual(place[key], round(value * 20) / 20)

    def test_only_panels_with_a_visible_layer_are_there(self):
        self.assertEqual([panel["id"] for panel in self.json["panels"]], ["plate", "strap"])

    def test_what_a_panel_is(self):
        self.assertEqual(self.json["spolvero"], 1)
        self.assertEqual(self.json["scheme"], "Quarry Row Pikes")
        self.assertEqual((self.plate["width"], self.plate["height"]), (12, 8))
        self.assertEqual(self.plate["surface"], {"kind": "cylinder", "depth": 1.5})
        self.assertEqual((self.plate["name"], self.plate["measured"]), ("breastplate", True))
        self.assertEqual(self.strap["surface"], {"kind": "flat", "depth": 0})
        self.assertEqual((self.strap["name"], self.strap["measured"]), ("strap, dexter", False))

    def test_dots_of_the_jagged_border(self):
        # Four points on the dexter edge, which is 8 mm: 2 mm apart, so tips stand over 1, 3, 5, 7 mm from its
        # top, 0.6 + 1.2 = 1.8 mm in from x = -6; the five roots stand over 0, 2, … 8 mm, 0.6 mm in.
        dots = self.plate["dots"]
        expected = [("tip", along, -6 + 1.8) for along in (1, 3, 5, 7)]
        expected += [("root", along, -6 + 0.6) for along in (0, 2, 4, 6, 8)]
        self.assertEqual([dot["number"] for dot in dots], list(range(1, 10)))
        self.assertEqual([dot["kind"] for dot in dots], [kind for kind, _, _ in expected])
        self.assertEqual({dot["layer"] for dot in dots}, {"teeth"})
        place = rectangle(12, 8)
        for dot, (_, along, x) in zip(dots, expected):
            self.assert_place(dot, "dexter", along, (x, along), place("dexter", along)[2])
        self.assertEqual(
            self.plate["runs"],
            [
                {"layer": "teeth", "kind": "tip", "first": 1, "last": 4, "spacing": 2, "exact": {"spacing": 2}},
                {"layer": "teeth", "kind": "root", "first": 5, "last": 9, "spacing": 2, "exact": {"spacing": 2}},
            ],
        )

    def test_ruling_of_the_division(self):
        # Per pale, 1.5 mm from the centre line towards sinister: 6 + 1.5 = 7.5 mm from the dexter corners.
        (ruling,) = self.plate["rulings"]
        self.assertEqual((ruling["number"], ruling["kind"], ruling["index"]), (1, "division", 1))
        self.assertEqual((ruling["layer"], ruling["name"]), ("halves", "division 1"))
        for end, edge in zip(ruling["ends"], ("chief", "base")):
            x, y, from_datum = rectangle(12, 8)(edge, 7.5)
            self.assert_place(end, edge, 7.5, (x, y), from_datum)
        self.assertEqual(self.plate["checks"], [])

    def test_rulings_of_the_check(self):
        # Cells of 1.5 mm centred on a cell: lines at ±0.75, ±2.25, ±3.75 from the centre line of 9.6 mm, and
        # at half the height, 2 mm, ± 0.75. At the sides 4.8 - 3.75 = 1.05 mm are left of a cell, above and
        # below 1.25 mm: the narrowest is 1.05 mm wide.
        place = rectangle(9.6, 4)
        lines = [("column", i + 1, ("chief", "base"), 4.8 + x) for i, x in enumerate((-3.75, -2.25, -0.75, 0.75, 2.25, 3.75))]
        lines += [("row", i + 1, ("dexter", "sinister"), y) for i, y in enumerate((1.25, 2.75))]
        rulings = self.strap["rulings"]
        self.assertEqual([r["number"] for r in rulings], list(range(1, 9)))
        self.assertEqual([(r["kind"], r["index"]) for r in rulings], [(kind, index) for kind, index, _, _ in lines])
        for ruling, (kind, index, edges, along) in zip(rulings, lines):
            self.assertEqual((ruling["name"], ruling["layer"]), (f"{kind} {index}", "chequers"))
            for end, edge in zip(ruling["ends"], edges):
                x, y, from_datum = place(edge, along)
                self.assert_place(end, edge, along, (x, y), from_datum)
        (check,) = self.strap["checks"]
        self.assertEqual((check["layer"], check["smallest-partial"]), ("chequers", 1.05))
        self.assertAlmostEqual(check["exact"]["smallest-partial"], 1.05, delta=1e-9)
        self.assertEqual((self.strap["dots"], self.strap["runs"]), ([], []))

    def test_keys_are_those_of_the_manual(self):
        self.assertEqual(list(self.json), ["spolvero", "scheme", "panels"])
        for panel in self.json["panels"]:
            self.assertEqual(
                list(panel),
                ["id", "name", "width", "height", "measured", "surface", "dots", "runs", "rulings", "checks"],
            )
            for dot in panel["dots"]:
                self.assertEqual(set(dot), {"number", "kind", "layer"} | PLACE_KEYS)
                self.assertEqual(set(dot["exact"]), {"x", "y", "along", "from-datum"})
            for ruling in panel["rulings"]:
                self.assertEqual(set(ruling), {"number", "name", "layer", "kind", "index", "ends"})
                for end in ruling["ends"]:
                    self.assertEqual(set(end), PLACE_KEYS)

    def test_text_is_the_golden_one(self):
        # Every number in it is held against hand-worked ones by test_text_says_what_the_json_says and the
        # tests above. After a wanted change: SPV_REGENERATE=1, and read the difference.
        if os.environ.get("SPV_REGENERATE"):
            with open(GOLDEN, "w", encoding="utf-8") as file:
                file.write(self.text)
        with open(GOLDEN, encoding="utf-8") as file:
            self.assertEqual(self.text, file.read())

    def test_text_says_what_the_json_says(self):
        blocks = re.split(r"\n\n(?=\S)", self.text)[1:]
        self.assertEqual(len(blocks), 2)
        for block, panel in zip(blocks, self.json["panels"]):
            tables = [part.splitlines() for part in block.rstrip("\n").split("\n\n")]
            head = tables.pop(0)
            self.assertEqual(head[0], f"{panel['id']}: {panel['name']}")
            self.assertIn(f"{panel['width']:.2f} × {panel['height']:.2f}\u2009mm, {panel['surface']['kind']}", head[1])
            for check in panel["checks"]:
                self.assertIn(f"  {check['layer']}: the narrowest cell at the edge is {check['smallest-partial']:.2f}\u2009mm wide", head)
            rows = [[re.split(r"\s\s+", line.strip()) for line in table[1:]] for table in tables]
            expected = []
            if panel["dots"]:
                expected.append([[str(d["number"]), d["kind"], d["layer"], *self.words(d)] for d in panel["dots"]])
            if panel["runs"]:
                expected.append(
                    [[f"{r['first']}–{r['last']}", r["kind"], r["layer"], f"{r['spacing']:.2f}"] for r in panel["runs"]]
                )
            lines = []
            for ruling in panel["rulings"]:
                lines.append([str(ruling["number"]), ruling["name"], ruling["layer"], *self.words(ruling["ends"][0])])
                lines.append(self.words(ruling["ends"][1]))
            expected.append(lines)
            self.assertEqual(rows, expected)

    def words(self, place):
        number = "{:.2f}".format
        return [number(place["x"]), number(place["y"]), place["edge"], number(place["along"]), number(place["from-datum"])]

    def test_panels_can_be_chosen(self):
        chosen = json.loads(self.assert_done(run("guide", SMALL, "--json", "--panel", "strap", "--panel", "spare")))
        self.assertEqual([panel["id"] for panel in chosen["panels"]], ["spare", "strap"])
        self.assertEqual(chosen["panels"][0]["dots"], [])
        self.assertEqual(chosen["panels"][1], self.strap)
        self.assert_failed(
            run("guide", SMALL, "--panel", "cloak"),
            support.FAILED,
            re.escape(f"{SMALL}: no panel is called “cloak”; take one of: plate, spare, strap"),
        )

    def test_a_scheme_without_designs(self):
        path = self.write_scheme("bare.scheme.json", designs={})
        self.assertEqual(self.assert_done(run("guide", path)), "Quarry Row Pikes\nNo panel has a design yet.\n")
        self.assertEqual(json.loads(self.assert_done(run("guide", path, "--json")))["panels"], [])


if __name__ == "__main__":
    unittest.main()
