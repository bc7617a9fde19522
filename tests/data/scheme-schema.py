#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds every shipped scheme, every good sample and every broken one against resources/scheme.schema.json, with a
validator that is not ours: python3-jsonschema."""

import json
import os
import pathlib
import sys

import jsonschema

# JSON, and of the right shape; what is wrong with them is beyond a schema.
BEYOND_A_SCHEMA = {
    "design-without-panel",  # references
    "layer-tincture-unknown",
    "fur-of-a-fur",
    "fur-of-an-unknown-tincture",
    "fur-of-itself",
    "counterchange-a-layer-above",
    "counterchange-one-tincture",
    "counterchange-three-tinctures",
    "counterchange-unknown",
    "on-a-division",
    "on-a-layer-above",
    "on-a-layer-of-another-panel",
    "on-itself",
    "on-the-field",
    "on-unknown",
    "duplicate-layer-id",  # ids that are used twice
    "duplicate-panel-id",
    "duplicate-tincture-id",
    "disc-not-round",  # measures that do not fit together
    "outline-misfit",
    "surface-too-deep",
    "too-deep",  # brackets
    "lettering-empty",  # what a text may say
    "lettering-font-empty",
    "lettering-two-lines",
    "path-without-a-start",
    "path-words",
    "rows-empty",
    "rows-words",
}


class NotJson(ValueError):
    pass


def without_twins(pairs):
    members = dict(pairs)
    if len(members) != len(pairs):
        raise NotJson("a key stands twice")
    return members


def no_constant(name):
    raise NotJson(name + " is no number of JSON")


def finite(text):
    if float(text) in (float("inf"), float("-inf")):
        raise NotJson(text + " is too large")
    return float(text)


def whole(text):
    if not -(2**63) <= int(text) < 2**63:
        raise NotJson(text + " is too large")
    return int(text)


def texts(value):
    """Every key and text in VALUE."""
    if isinstance(value, dict):
        for key, member in value.items():
            yield key
            yield from texts(member)
    elif isinstance(value, list):
        for item in value:
            yield from texts(item)
    elif isinstance(value, str):
        yield value


def read(path):
    """The value, as strictly as RFC 8259 and our limits want it; NotJson otherwise."""
    try:
        text = path.read_bytes().decode("utf-8")
        if "\0" in text:
            raise NotJson("a zero byte")
        value = json.loads(text, object_pairs_hook=without_twins, parse_constant=no_constant, parse_float=finite,
                           parse_int=whole)
        for part in texts(value):
            part.encode("utf-8")  # lone surrogates pass json.loads(), but are no text
            if "\0" in part:
                raise NotJson("the character U+0000")
    except (UnicodeError, json.JSONDecodeError) as problem:
        raise NotJson(str(problem)) from problem
    return value


def main():
    source = pathlib.Path(os.environ["SPV_TEST_SOURCE_DIR"])
    schema = read(source / "resources" / "scheme.schema.json")
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    failures = []

    samples = sorted((source / "tests" / "data").glob("scheme-*.*.json"))
    shipped = sorted((source / "resources" / "harnesses").glob("*.harness.json"))
    shipped += sorted((source / "resources" / "examples").glob("*.scheme.json"))
    for path in samples + shipped:
        for error in validator.iter_errors(read(path)):
            failures.append(f"{path.name}: {error.json_path}: {error.message}")

    n_caught = 0
    beyond = set()
    for path in sorted((source / "tests" / "data" / "broken").glob("*.scheme.json")):
        fault = path.name.removesuffix(".scheme.json")
        try:
            value = read(path)
        except NotJson:
            continue
        if validator.is_valid(value):
            beyond.add(fault)
        else:
            n_caught += 1
    for fault in sorted(beyond - BEYOND_A_SCHEMA):
        failures.append(f"{fault}: the schema finds nothing wrong")
    for fault in sorted(BEYOND_A_SCHEMA - beyond):
        failures.append(f"{fault}: is not a broken scheme beyond the schema")

    print(f"{len(samples)} samples, {len(shipped)} shipped files, {n_caught} broken schemes caught")
    if len(samples) < 4 or n_caught < 60:
        failures.append("too few files were found to be worth the name of a test")
    if failures:
        sys.exit("\n".join(failures))


main()
