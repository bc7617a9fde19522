#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds the tree to its own rules. Usage: hygiene.py SOURCE [COMPILER]

- rooms include only what the table of arrows lets them, and only the window knows GTK;
- every header compiles alone;
- every source file says its licence, and none grows past 700 lines;
- po/POTFILES.in names every file with words to translate, and no other;
- every icon, interface file and schema named in a resource list exists, and every one that exists is named;
- packages are named in one file; README's commands are those that work;
- the top level holds what it should and nothing else.
"""
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

top = sys.argv[1]
compiler = sys.argv[2:]
faults = []

BELOW = {
    "geometry": [],
    "colour": [],
    "surface": ["geometry"],
    "heraldry": ["geometry"],
    "scheme": ["heraldry", "colour", "surface", "geometry"],
    "compose": ["scheme", "heraldry", "geometry", "surface"],
    "guide": ["compose", "surface", "geometry", "scheme", "colour"],
    "check": ["compose", "guide", "colour", "surface", "geometry", "scheme"],
}
for face in ("draw", "sheet", "command", "window"):
    BELOW[face] = [room for room in BELOW if room != "command"]


def tracked():
    names = subprocess.run(["git", "-C", top, "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
                           capture_output=True, check=True).stdout.decode().split("\0")
    return sorted(name for name in names if name and os.path.exists(os.path.join(top, name)))


def text(name):
    with open(os.path.join(top, name), encoding="utf-8") as file:
        return file.read()


files = tracked()
sources = [name for name in files if re.match(r"(src|tests)/.*\.[ch]$", name)]

for name in sources:
    words = text(name)
    if "SPDX-License-Identifier: GPL-3.0-or-later" not in words.split("\n", 1)[0]:
        faults.append(f"{name}: the first line does not say the licence")
    if words.count("\n") > 700:
        faults.append(f"{name}: {words.count(chr(10))} lines: it is two things")
    room = name.split("/")[1]
    if not name.startswith("src/"):
        continue
    for number, line in enumerate(words.split("\n"), 1):
        include = re.match(r'\s*#\s*include\s+(["<])([^">]+)', line)
        if not include:
            continue
        other = include.group(2).split("/")[0]
        if include.group(1) == '"' and other in BELOW and other != room and other not in BELOW[room]:
            faults.append(f"{name}:{number}: {room} may not see {other}")
        if include.group(1) == "<" and other in ("gtk", "gdk", "gsk") and room != "window":
            faults.append(f"{name}:{number}: only the window knows GTK")



def compile_alone(name):
    run = subprocess.run(compiler + ["-fsyntax-only", "-x", "c", "-"], input=f'#include "{name[len("src/"):]}"\n',
                         capture_output=True, text=True)
    return f"{name}: does not compile alone: {run.stderr.strip().splitlines()[0]}" if run.returncode else None


if compiler:
    # Without the window there is no GTK to compile its headers with.
    windowless = not any("gtk" in flag for flag in compiler)
    headers = [name for name in sources if name.startswith("src/") and name.endswith(".h")
               and not (windowless and name.startswith("src/window/"))]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        faults += filter(None, pool.map(compile_alone, headers))

translated = set()
for name in files:
    if name.startswith("src/") and name.endswith((".c", ".h")):
        words = re.sub(r"/\*.*?\*/", "", text(name), flags=re.S)
        if re.search(r'(?<![A-Za-z0-9_])N?_\("', words) or re.search(r'\b(ngettext|C_|g_dngettext)\s*\(', words):
            translated.add(name)
    elif re.match(r"ui/.*\.ui$", name) and 'translatable="yes"' in text(name):
        translated.add(name)
    elif name.endswith((".desktop.in", ".metainfo.xml.in")):
        translated.add(name)
listed = {line for line in text("po/POTFILES.in").split("\n") if line and not line.startswith("#")}
for name in sorted(translated - listed):
    faults.append(f"po/POTFILES.in: {name} has words to translate and is not named")
for name in sorted(listed - translated):
    faults.append(f"po/POTFILES.in: {name} has no words to translate, or is gone")

for resource, folders in (("resources/data.gresource.xml", ["resources"]),
                          ("resources/charges.gresource.xml", ["resources"]),
                          ("ui/spolvero.gresource.xml", ["ui", "resources/icons"])):
    named = set(re.findall(r"<file[^>]*>([^<]+)</file>", text(resource)))
    for entry in sorted(named):
        if not any(os.path.exists(os.path.join(top, folder, entry)) for folder in folders):
            faults.append(f"{resource}: {entry} does not exist")
    if resource.startswith("ui/"):
        there = {os.path.basename(name) for name in files
                 if re.match(r"ui/.*\.(ui|css)$", name) or re.match(r"resources/icons/.*\.svg$", name)}
    elif resource.endswith("charges.gresource.xml"):
        there = {name[len("resources/"):] for name in files if name.startswith("resources/charges/")}
    else:
        there = {name[len("resources/"):] for name in files if re.match(r"resources/(harnesses|examples)/", name)}
        there.add("index.json")
    for entry in sorted(there - named):
        faults.append(f"{resource}: {entry} is not named")

packages = re.findall(r"^([a-z0-9][a-z0-9+.-]+)$", text("resources/debian-packages.txt"), flags=re.M)
if packages != list(dict.fromkeys(packages)):
    faults.append("resources/debian-packages.txt: a package is named twice")
for name in ("README.md", "DEVELOPERS.md", "resources/set-up", ".ci/run"):
    for package in packages:
        if re.search(rf"apt(-get)? install[^\n]*\b{re.escape(package)}\b", text(name)):
            faults.append(f"{name}: installs {package} by name; resources/debian-packages.txt is the place")

readme = text("README.md")
for verb in ("example", "test"):
    if f"resources/set-up {verb}" not in readme:
        faults.append(f"README.md: does not give the command resources/set-up {verb}")
for link in re.findall(r"\]\(([^)#:]+)\)", readme) + re.findall(r"\]\(([^)#:]+)\)", text("DEVELOPERS.md")):
    if not os.path.exists(os.path.join(top, link)):
        faults.append(f"a link to {link} leads nowhere")

allowed = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "meson_options.txt", "src", "ui", "tests", "resources", "po"}
for entry in sorted({name.split("/")[0] for name in files}):
    if entry not in allowed and not entry.startswith("."):
        faults.append(f"{entry}: does not belong at the top level")

for fault in faults:
    print(fault)
sys.exit(1 if faults else 0)
