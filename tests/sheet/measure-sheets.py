#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measures exported sheets with programs that share no code with Spolvero: Pillow, pngcheck and pdfinfo.

measure-sheets.py EXPORT-SHEETS: the 100 mm bar, the outline of an ID-1 card (85.60 x 53.98 mm, ISO/IEC 7810)
and a disc of 20 mm, in pixels of the PNG; the pages of the PDF in points.
"""
import csv
import os
import re
import subprocess
import sys
import tempfile
from statistics import median

from PIL import Image

Image.MAX_IMAGE_PIXELS = None
DPI = 600
BAR = 2362  # 100 mm at 600 dpi is 2362.2 px (tests/reference/README.md)
CORNER = 3.18  # mm: the middle of 2.88-3.48, ISO/IEC 7810
REFERENCE = os.path.join(os.environ["SPV_TEST_SOURCE_DIR"], "tests", "reference", "paper.csv")
NAMES = {"a4": "A4", "a5": "A5", "letter": "Letter (A)"}


def px(mm):
    return mm * DPI / 25.4


def reference(name):
    with open(REFERENCE, newline="", encoding="utf-8") as file:
        return next(row for row in csv.DictReader(file) if row["name"] == name)


def export(program, scheme, paper, form, folder):
    done = subprocess.run([program, scheme, paper, form, str(DPI), folder], check=True, capture_output=True, text=True)
    return done.stdout.split()


def runs(image, least, most):
    """(row, start, length) of every run of dark pixels whose length is within LEAST..MOST px."""
    width, height = image.size
    data = image.point(lambda v: 0 if v < 128 else 255).tobytes()
    pattern = re.compile(rb"\x00{%d,}" % int(least))
    for y in range(height):
        for match in pattern.finditer(data[y * width:(y + 1) * width]):
            if match.end() - match.start() <= most:
                yield y, match.start(), match.end() - match.start()


def lines(found):
    """The middles of groups of neighbouring rows."""
    groups = []
    for y in sorted({row for row, _, _ in found}):
        if groups and y == groups[-1][-1] + 1:
            groups[-1].append(y)
        else:
            groups.append([y])
    return [(group[0] + group[-1]) / 2 for group in groups]


def expect(what, measured, expected, tolerance):
    if abs(measured - expected) > tolerance:
        sys.exit(f"{what} is {measured}, expected {expected} within {tolerance}")
    print(f"{what}: {measured} (expected {expected})")


def measure_bar(grey, paper):
    """The bar is the only line of about its length that is 0.5 mm thick. Returns the row it lies on."""
    found = list(runs(grey, BAR - 60, BAR + 60))
    by_start = {}
    for run in found:
        by_start.setdefault((run[1] // 4, run[2] // 4), []).append(run)
    bar = max(by_start.values(), key=len)
    if len(bar) < px(0.4):
        sys.exit(f"{paper}: no bar found")
    expect(f"{paper} bar, px", median(run[2] for run in bar), BAR, 1)
    return max(run[0] for run in bar)


def measure_card(grey, paper, bar):
    """The card lies above or below the bar (the row BAR), at the foot of the sheet, and left of the title block."""
    card = reference("ID-1")
    width, height = float(card["width_mm"]), float(card["height_mm"])
    foot = grey.crop((0, bar - int(px(height + 8)), int(px(104)), grey.size[1]))
    straight_across, straight_down = px(width - 2 * CORNER), px(height - 2 * CORNER)
    across = lines(runs(foot, straight_across - 40, straight_across + 90))
    down = lines(runs(foot.transpose(Image.Transpose.TRANSPOSE), straight_down - 40, straight_down + 90))
    if len(across) != 2 or len(down) != 2:
        sys.exit(f"{paper}: the card has {len(across)} level and {len(down)} upright sides")
    expect(f"{paper} card height, px", across[1] - across[0], int(card["px_h_600dpi"]), 1)
    expect(f"{paper} card width, px", down[1] - down[0], int(card["px_w_600dpi"]), 1)


def measure_page(program, paper, folder):
    row = reference(NAMES[paper])
    paths = export(program, "wardens", paper, "png", folder)
    for path in paths:
        subprocess.run(["pngcheck", "-q", path], check=True)
    with Image.open(paths[0]) as image:
        expect(f"{paper} width, px", image.size[0], int(row["px_w_600dpi"]), 0)
        expect(f"{paper} height, px", image.size[1], int(row["px_h_600dpi"]), 0)
        expect(f"{paper} dpi", image.info["dpi"][0], DPI, 0.01)
        grey = image.convert("L")
    measure_card(grey, paper, measure_bar(grey, paper))


def measure_disc(program, folder):
    """The disc is filled, with a cutting line of 0.1 mm on its edge."""
    (path,) = export(program, "20", "a4", "png", folder)
    with Image.open(path) as image:
        top = image.convert("L").crop((0, 0, image.size[0], image.size[1] // 2))
    across = max(run[2] for run in runs(top, px(18), px(24)))
    down = max(run[2] for run in runs(top.transpose(Image.Transpose.TRANSPOSE), px(18), px(24)))
    expect("disc across, px", across, px(20.1), 1.5)
    expect("disc down, px", down, px(20.1), 1.5)


def measure_pdf(program, paper, folder):
    row = reference(NAMES[paper])
    (path,) = export(program, "wardens", paper, "pdf", folder)
    info = subprocess.run(["pdfinfo", path], check=True, capture_output=True, text=True).stdout
    width, height = re.search(r"Page size: +([\d.]+) x ([\d.]+) pts", info).groups()
    expect(f"{paper} width, pt", float(width), float(row["width_pt"]), 0.001)
    expect(f"{paper} height, pt", float(height), float(row["height_pt"]), 0.001)
    if "CreationDate" in info:
        sys.exit("the PDF holds a date that nobody asked for")
    images = subprocess.run(["pdfimages", "-list", path], check=True, capture_output=True, text=True).stdout
    if len(images.splitlines()) > 2:
        sys.exit("the PDF holds pictures made of pixels:\n" + images)


def main():
    program = sys.argv[1]
    with tempfile.TemporaryDirectory() as folder:
        for paper in NAMES:
            measure_page(program, paper, folder)
            measure_pdf(program, paper, folder)
        measure_disc(program, folder)


main()
