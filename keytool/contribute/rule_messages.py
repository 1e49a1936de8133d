"""Ask the checks themselves what they would say, so that the form on the site says it in the same words.

An entry is broken in one way, the rule is run on it, and what differs from case to case is
marked in the sentence: `{value}`, `{length}`, `{low}`, `{high}`, `{id}`.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from keytool.library import Finding, Loaded, build
from keytool.library.checks import commonness, feeding, figures, length, look_alikes, members, names, statements, unread_sources
from keytool.library.checks.feeding import THEME as FED_THEME
from keytool.library.load import Files, taken_ids
from keytool.library.yaml_file import YamlFile

PROBE = "probed-entry"
FILE = "keydata/entries/probe.yaml"
SMALL = ("vocabulary", "sources", "quantities", "character")
Message = dict[str, str]
"""`message`, `allowed` and `tip`, with what differs in braces."""


def with_entry(loaded: Loaded, raw: Mapping[str, Any]) -> Loaded:
    """The library with one more entry, in memory only."""
    return _with(loaded, ("entry", str(raw["id"])), raw)


def small(loaded: Loaded) -> Loaded:
    """The library with one entry and no key: enough to ask the rules about one entry, and quick."""
    first = next(each for each in loaded.files.by_id if each[0] == "entry")
    files = {each: file for each, file in loaded.files.by_id.items() if each[0] in SMALL or each == first}
    return Loaded(build.library(files), Files(files, frozenset()), loaded.schemas)


def _with(loaded: Loaded, at: tuple[str, str], raw: Mapping[str, Any]) -> Loaded:
    files = {**loaded.files.by_id, at: YamlFile(FILE, dict(raw))}
    return Loaded(build.library(files), Files(files, frozenset()), loaded.schemas)


def minimal_valid_entry(loaded: Loaded) -> dict[str, Any]:
    """An entry that no schema objects to."""
    words = loaded.library.vocabulary
    return {
        "id": PROBE,
        "kind": "cannot-be-told",
        "theme": next(iter(words["theme"])),
        "names": {"common": "Probe"},
        "summary": "Probe.",
        "would-tell": "Probe.",
        "contributors": ["Probe"],
        "reviewed": "2026-01-01",
    }


def shape_messages(
    loaded: Loaded, path: tuple[str, ...], kind: str = "entry", right: Mapping[str, Any] | None = None
) -> dict[str, Message]:
    """What the schema says of one field of a file: "missing", "short", "long" and "pattern", as far as it can say it.

    `right` is the content of a file of that kind that no schema objects to.
    """
    found = {}
    for rule, value, signs in (
        ("missing", None, {}),
        ("short", "Q", {}),
        ("long", "q" * 5000, {"5000": "{length}"}),
        ("pattern", "Qq<Qq", {"Qq<Qq": "{value}"}),
    ):
        raw = put(dict(right or minimal_valid_entry(loaded)), path, value)
        said = loaded.schemas.findings(kind, YamlFile(FILE, raw))
        if said:
            found[rule] = message_of(said[0], signs)
    return found


def mistake_messages(loaded: Loaded) -> dict[str, Message]:
    """What the schema and the rules say of something it is taken for: "missing", "long", "pattern", "itself", "twice", "unknown"."""
    loaded = small(loaded)
    other = next(iter(loaded.library.entries))
    found = {}
    for rule, by, signs in (("missing", None, {}), ("long", "q" * 5000, {"5000": "{length}"}), ("pattern", "Qq<Qq", {"Qq<Qq": "{value}"})):
        raw = {**minimal_valid_entry(loaded), "mistaken-for": [without_none({"entry": other, "by": by, "basis": {"kind": "memory"}})]}
        if said := loaded.schemas.findings("entry", YamlFile(FILE, raw)):
            found[rule] = message_of(said[0], signs)
    cases = (
        ("itself", look_alikes.check, [PROBE], {PROBE: "{entry}"}),
        ("twice", look_alikes.check, [other, other], {other: "{entry}"}),
        ("unknown", names.check, ["unheard-of-thing"], {"unheard-of-thing": "{entry}"}),
    )
    for name, check, entries, signs in cases:
        mistakes = [{"entry": each, "by": "By that.", "basis": {"kind": "memory"}} for each in entries]
        wanted = "twice" if name == "twice" else ""
        said = [
            each
            for each in check(with_entry(loaded, {**minimal_valid_entry(loaded), "mistaken-for": mistakes}))
            if each.place.file == FILE and wanted in each.message
        ]
        if said:
            found[name] = message_of(said[0], signs)
    return found


def without_none(raw: Mapping[str, Any]) -> dict[str, Any]:
    """The data without fields that are None."""
    return {name: each for name, each in raw.items() if each is not None}


def check_messages(loaded: Loaded) -> dict[str, Message]:
    """What the rules beyond the schema say of an entry, by a name for each."""
    return {name: message_of(finding, signs) for name, finding, signs in (*_checked(small(loaded)), *_no_number(loaded))}


def _no_number(loaded: Loaded) -> Iterator[tuple[str, Finding, Mapping[str, str]]]:
    number = next(each for each in loaded.library.characters.values() if each.is_number)
    for end in ("low", "high"):
        shows = {number.id: {end: "Qq", "unit": number.unit, "basis": {"kind": "memory"}}}
        for finding in loaded.schemas.findings("entry", YamlFile(FILE, {**minimal_valid_entry(loaded), "characters": shows})):
            yield f"{end} no number", finding, {"Qq": "{value}"}


def _checked(loaded: Loaded) -> Iterator[tuple[str, Finding, Mapping[str, str]]]:
    base = minimal_valid_entry(loaded)
    library = loaded.library
    number = next(each for each in library.characters.values() if each.is_number)
    upside_down = {number.id: {"low": 98765, "high": 12345, "unit": number.unit, "basis": {"kind": "memory"}}}
    cases: list[tuple[str, Any, dict[str, Any], Mapping[str, str]]] = [
        ("low-high", statements, {"characters": upside_down}, {"98765": "{low}", "12345": "{high}"}),
        ("commonness", commonness, {"kind": "genus"}, {PROBE: "{id}"}),
        ("feeding", feeding, {"theme": FED_THEME}, {PROBE: "{id}"}),
        ("members", members, {"kind": "group"}, {PROBE: "{id}"}),
    ]
    half = {number.id: {"low": 1, "unit": number.unit, "basis": {"kind": "memory"}}}
    cases.append(
        (
            "half-range",
            figures,
            {"characters": half, "figure": {"kind": "x", "y": {"of": number.id}}},
            {PROBE: "{id}", number.id: "{character}"},
        )
    )
    for name, rule, change, signs in cases:
        yield from _first(name, loaded, rule.check, {**base, **change}, signs)
    file = YamlFile(FILE, {**base})
    for finding in taken_ids("entry", file, {("page", PROBE): "keydata/other.yaml"}):
        yield "taken", finding, {PROBE: "{id}", "keydata/other.yaml": "{file}"}
    for value, read in sorted(unread_sources.CONTRADICTS):
        if source := next((each.id for each in library.sources.values() if each.read == read), ""):
            basis = {"kind": "published", "sources": [source], "value": value}
            raw = {**base, "commonness": {"class": next(iter(library.vocabulary["commonness"])), "basis": basis}}
            yield from _first(f"unread {value} {read}", loaded, unread_sources.check, raw, {source: "{source}"})


def length_messages(loaded: Loaded) -> dict[str, Message]:
    """What the rules say of a question and of a lead that is too long, with the most that each may have: "question" and "lead"."""
    (kind, id), file = next(each for each in loaded.files.by_id.items() if each[0][0] == "key")
    raw = copy.deepcopy(file.data)
    couplet = next(iter(raw["couplets"].values()))
    couplet["asks"] = next(iter(couplet["leads"].values()))["text"] = "q" * 5000
    probed = _with(small(loaded), (kind, id), raw)
    said = [each for each in length.check(probed) if each.place.file == FILE and "5000" in each.message]
    return {name: message_of(each, {"5000": "{length}"}) for name, each in zip(("question", "lead"), said, strict=True)}


def _first(
    name: str, loaded: Loaded, rule: Callable[[Loaded], Iterator[Finding]], raw: Mapping[str, Any], signs: Mapping[str, str]
) -> Iterator[tuple[str, Finding, Mapping[str, str]]]:
    said = [each for each in rule(with_entry(loaded, raw)) if each.place.file == FILE]
    if said:
        yield name, said[0], signs


def message_of(finding: Finding, signs: Mapping[str, str]) -> Message:
    """A finding in words, with what differs from case to case in braces."""
    parts = {"message": finding.message, "allowed": finding.allowed, "tip": finding.tip}
    for written, sign in signs.items():
        parts = {name: text.replace(written, sign) for name, text in parts.items()}
    return {name: text for name, text in parts.items() if text}


def put(raw: dict[str, Any], path: tuple[str, ...], value: Any) -> dict[str, Any]:
    """The data with one field at a path set, or taken out where the value is None; a list takes it as its only item."""
    if len(path) > 1:
        return {**raw, path[0]: put(dict(raw.get(path[0], {})), path[1:], value)}
    if value is None:
        return {name: each for name, each in raw.items() if name != path[0]}
    return {**raw, path[0]: [value] if isinstance(raw.get(path[0]), list) else value}
