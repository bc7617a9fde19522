#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds each language in po/LINGUAS to the words of today. Usage: translations.py SOURCE

- msgfmt finds no fault: printf's formats, plural forms, accelerators;
- every message of the files in po/POTFILES.in is translated, and none is fuzzy;
- each translation keeps its message's thin spaces (U+2009), which stand before units;
- xgettext warns of nothing, such as a message cut short by a macro, and no singular has two plurals;
- each program that the plurals reach names its default domain, which ngettext() asks;
- what says whether nouns keep their capital is one of the two words that the program knows.
"""
import collections
import os
import re
import subprocess
import sys
import tempfile

top = sys.argv[1]
po = os.path.join(top, "po")
THIN = "\u2009"
NOUNS = "nouns:small", "nouns:capital"
# What meson's preset "glib" gives to xgettext, as far as these words need it.
KEYWORDS = ["_", "N_", "C_:1c,2", "NC_:1c,2", "g_dcgettext:2", "g_dngettext:2,3", "g_dpgettext2:2c,3", "ngettext:1,2"]
FLAGS = ["g_strdup_printf:1:c-format", "g_string_printf:2:c-format", "g_string_append_printf:2:c-format",
         "g_error_new:3:c-format", "g_set_error:4:c-format"]
faults = []

Entry = collections.namedtuple("Entry", "place flags context singular plural translations")


def run(*command):
    return subprocess.run(command, capture_output=True, text=True, cwd=top)


def unquoted(text):
    escapes = {"n": "\n", "t": "\t", '"': '"', "\\": "\\"}
    return re.sub(r"\\(.)", lambda match: escapes.get(match.group(1), match.group(0)), text)


def entries(path):
    """The entries of a PO file, but for the first, its header, and those out of use."""
    plain = run("msgcat", "--no-wrap", path)
    if plain.returncode:
        sys.exit(plain.stderr)
    for block in plain.stdout.split("\n\n"):
        fields, key = collections.defaultdict(str), None
        for line in block.split("\n"):
            match = re.match(r'(msg\w+(?:\[\d\])?)? ?"(.*)"$', line)
            if match:
                key = match.group(1) or key
                fields[key] += unquoted(match.group(2))
        if not fields["msgid"]:
            continue
        place = re.search(r"^#: (\S+)", block, re.M)
        yield Entry(place.group(1) if place else "?", " ".join(re.findall(r"^#, (.*)$", block, re.M)),
                    fields.get("msgctxt"), fields["msgid"], fields.get("msgid_plural"),
                    [text for name, text in sorted(fields.items()) if name.startswith("msgstr")])


def check_sources():
    """One singular has one plural: a catalogue knows a message by its singular alone."""
    seen = {}
    for name in open(os.path.join(po, "POTFILES.in"), encoding="utf-8").read().split("\n"):
        if not name.endswith(".c"):
            continue
        with open(os.path.join(top, name), encoding="utf-8") as file:
            text = file.read()
        for match in re.finditer(r'\bngettext\(\s*("(?:[^"\\]|\\.)*")\s*,\s*("(?:[^"\\]|\\.)*")', text):
            singular, plural = match.groups()
            if seen.setdefault(singular, (plural, name))[0] != plural:
                faults.append(f"{name}: {singular} has the plural {plural}, and {seen[singular][0]} in {seen[singular][1]}")


def check_programs():
    for name in ("src/command/main.c", "src/window/main.c"):
        with open(os.path.join(top, name), encoding="utf-8") as file:
            text = file.read()
        for call in ("bindtextdomain(GETTEXT_PACKAGE, ", "textdomain(GETTEXT_PACKAGE)"):
            if not re.search(r"(?<!\w)" + re.escape(call), text):
                faults.append(f"{name}: does not call {call.rstrip('(, ')}…")


def check_language(language, template, scratch):
    path = os.path.join(po, f"{language}.po")
    formal = run("msgfmt", "--check", "--check-accelerators=_", "-o", os.devnull, path)
    if formal.returncode:
        faults.append(f"po/{language}.po: msgfmt: {formal.stderr.strip()}")
        return
    merged = os.path.join(scratch, f"{language}.po")
    merge = run("msgmerge", "--quiet", "--no-fuzzy-matching", "-o", merged, path, template)
    if merge.returncode:
        faults.append(f"po/{language}.po: msgmerge: {merge.stderr.strip()}")
        return
    for entry in entries(merged):
        shown = f"po/{language}.po: {entry.place}: “{entry.singular}”"
        if "fuzzy" in entry.flags:
            faults.append(f"{shown} is fuzzy")
        if not all(entry.translations):
            faults.append(f"{shown} is not translated")
            continue
        for text in entry.translations:
            if text.count(THIN) != entry.singular.count(THIN):
                faults.append(f"{shown} has {entry.singular.count(THIN)} thin spaces, “{text}” has {text.count(THIN)}")
        if entry.singular in NOUNS and entry.translations[0] not in NOUNS:
            faults.append(f"{shown} must be one of {', '.join(NOUNS)}")


with tempfile.TemporaryDirectory() as scratch:
    template = os.path.join(scratch, "fresh.pot")
    made = run("xgettext", "--files-from=po/POTFILES.in", "--directory=" + top, "--from-code=UTF-8", "--no-wrap",
               *("--keyword=" + keyword for keyword in KEYWORDS), *("--flag=" + flag for flag in FLAGS), "-o", template)
    if made.returncode:
        sys.exit(made.stderr)
    check_sources()
    check_programs()
    for warning in made.stderr.splitlines():
        faults.append(warning.strip())
    with open(os.path.join(po, "LINGUAS"), encoding="utf-8") as file:
        languages = [word for line in file for word in line.split("#")[0].split()]
    if not languages:
        faults.append("po/LINGUAS names no language")
    for language in languages:
        check_language(language, template, scratch)

for fault in faults:
    print(fault)
sys.exit(1 if faults else 0)
