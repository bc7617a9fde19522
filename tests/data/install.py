#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Installs into a scratch folder and looks for what a desktop needs. Usage: install.py BUILD PREFIX APP-ID"""
import os
import subprocess
import sys
import tempfile

build, prefix, app = sys.argv[1:4]
with tempfile.TemporaryDirectory() as scratch:
    run = subprocess.run(["meson", "install", "-C", build, "--no-rebuild", "--quiet", "--destdir", scratch],
                         capture_output=True, text=True)
    if run.returncode:
        sys.exit(run.stdout + run.stderr)
    root = os.path.join(scratch, prefix.lstrip("/"))
    wanted = ["bin/spolvero", "bin/spolvero-cli", "share/man/man1/spolvero-cli.1",
              f"share/applications/{app}.desktop", f"share/metainfo/{app}.metainfo.xml",
              f"share/mime/packages/{app}.xml", f"share/glib-2.0/schemas/{app}.gschema.xml",
              f"share/icons/hicolor/scalable/apps/{app}.svg",
              f"share/icons/hicolor/symbolic/apps/{app}-symbolic.svg"]
    missing = [name for name in wanted if not os.path.exists(os.path.join(root, name))]
    for name in missing:
        print(f"{name} was not installed")
    sys.exit(1 if missing else 0)
