"""A drawing names only materials, parts and proportions that there are."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Any

from keytool.library.drawing_records import CLOSED, OUTLINE, points
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import did_you_mean, listed
from keytool.library.yaml_file import DataPath, YamlFile

NAME = "drawings"
TAKEN = ("length", "accent", "colour", "kind")
"""What every drawing has, so that no proportion can be called so."""
UNKNOWN = Message(NAME, "No {what} is called '{name}'.", allowed="{allowed}", tip="{tip}")
NO_INSIDE = Message(NAME, "The body has no material within.", allowed="{allowed}", tip="Name it: inside: cytoplasm.")
NO_RADIUS = Message(NAME, "The dots have no radius.", allowed="0.001 to 0.3 body lengths", tip="Say how large: radius: 0.012.")
NAME_TAKEN = Message(NAME, "No proportion may be called '{name}'.", tip="Choose another word.")
NO_SPAN = Message(
    NAME,
    "'{name}' has a default outside its span, or a span that holds nothing.",
    allowed="low less than high, and the default between them",
)
CHANGES_NOTHING = Message(NAME, "'{name}' is a number that changes nothing.", allowed="widens, stretches or scales")
SHARES = Message(NAME, "The shares of 'half' do not run from 0 to 1.", allowed="0 0.02, 0.5 0.05, 1 0")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each name in a drawing that nothing bears, and for each span that holds nothing."""
    materials = loaded.library.eyepiece.materials
    for (kind, _), file in loaded.files.by_id.items():
        if kind == "drawing":
            yield from _matter(file, materials)
            yield from _parts(file)
            yield from _proportions(file)
            yield from _halves(file, (), file.data)


def _matter(file: YamlFile, materials: Iterable[str]) -> Iterator[Finding]:
    matter = file.data.get("matter", {})
    named: list[tuple[DataPath, str]] = [
        (("parts", k, "of"), each["of"]) for k, each in enumerate(file.data.get("parts", ())) if "of" in each
    ]
    named += [(("matter", "inside"), matter["inside"])] if "inside" in matter else []
    named += [(("matter", name, "of"), matter[name]["of"]) for name in ("wall", "granules") if name in matter]
    for path, id in named:
        yield from _unknown(file, path, "material", id, materials)
    if matter.get("body", "none") != "none" and "inside" not in matter:
        yield NO_INSIDE.at(file.place(("matter",)), allowed=listed(materials))


def _parts(file: YamlFile) -> Iterator[Finding]:
    """Parts that hide, bound, carry or are strewn must be closed, and drawn before."""
    closed = [OUTLINE]
    proportions = file.data.get("proportions", {})
    for k, piece in enumerate(file.data.get("parts", ())):
        path: DataPath = ("parts", k)
        names = [((*path, "behind", n), each) for n, each in enumerate(piece.get("behind", ()))]
        names += [((*path, "inside"), piece["inside"])] if "inside" in piece else []
        for of, key in (("row", "along"), ("stipple", "within")):
            line = piece.get(of, {}).get(key)
            if isinstance(line, str) and line[0].isalpha():
                names.append(((*path, of, key), line))
        for where, name in names:
            yield from _unknown(file, where, "closed part drawn before", name, dict.fromkeys(closed))
        for name, words in piece.get("only", {}).items():
            choices = {each: raw["choices"] for each, raw in proportions.items() if "choices" in raw}
            yield from _unknown(file, (*path, "only", name), "proportion with choices", name, choices)
            for n, word in enumerate(words if name in choices else ()):
                yield from _unknown(file, (*path, "only", name, n), f"choice of {name}", word, choices[name])
        if "dots" in piece and "radius" not in piece:
            yield NO_RADIUS.at(file.place(path))
        if any(name in piece for name in CLOSED):
            closed.append(piece["part"])
    parts = dict.fromkeys([OUTLINE, *(each["part"] for each in file.data.get("parts", ()))])
    for how, moved in file.data.get("moves", {}).items():
        for n, name in enumerate(moved):
            yield from _unknown(file, ("moves", how, n), "part", name, parts)
    for name, each in proportions.items():
        for n, part in enumerate(each.get("scales", ())):
            yield from _unknown(file, ("proportions", name, "scales", n), "part", part, parts)


def _proportions(file: YamlFile) -> Iterator[Finding]:
    for name, each in [("length", file.data["length"]), *file.data.get("proportions", {}).items()]:
        path: DataPath = ("length",) if name == "length" else ("proportions", name)
        if path[0] == "proportions" and name in TAKEN:
            yield NAME_TAKEN.at(file.place(path, of_key=True), name=name)
        if "choices" in each:
            continue
        if not each["low"] < each["high"] or not each["low"] <= each.get("default", each["low"]) <= each["high"]:
            yield NO_SPAN.at(file.place(path, of_key=True), name=name)
        if not any(key in each for key in ("widens", "stretches", "scales")) and name != "length":
            yield CHANGES_NOTHING.at(file.place(path, of_key=True), name=name)


def _halves(file: YamlFile, path: DataPath, value: Any) -> Iterator[Finding]:
    """Half widths run from 0 to 1, each share greater than the one before."""
    if isinstance(value, dict):
        if isinstance(value.get("half"), str):
            shares = [share for share, _ in points(value["half"])]
            if shares[0] != 0 or shares[-1] != 1 or any(b <= a for a, b in pairwise(shares)):
                yield SHARES.at(file.place((*path, "half")))
        for name, each in value.items():
            yield from _halves(file, (*path, name), each)
    elif isinstance(value, list):
        for k, each in enumerate(value):
            yield from _halves(file, (*path, k), each)


def _unknown(file: YamlFile, path: DataPath, what: str, name: str, allowed: Iterable[str]) -> Iterator[Finding]:
    known = list(allowed)
    if name not in known:
        yield UNKNOWN.at(file.place(path), what=what, name=name, allowed=listed(known), tip=did_you_mean(name, known))
