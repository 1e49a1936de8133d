"""What is counted is known: lines hold entries, rules and densities speak of lines, ranges hold their value."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from keytool.library.checks.unknown_ids import missing, not_among, unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.yaml_file import YamlFile

NAME = "counting"
VALUE_OUTSIDE = Message(
    NAME, "The value {value} lies outside its range.", allowed="from {low} to {high}", tip="Mend the value or the range."
)
PART_OF_A_PART = Message(NAME, "'{whole}' is itself a part of '{above}'.", tip="A part stands directly under a whole.")
NOT_COUNTED_THERE = Message(
    NAME, "The rule speaks of a {per}, but '{line}' is not counted there.", allowed="{allowed}", tip="Change per:, or at: of the line."
)
MIDDLE_OUTSIDE = Message(
    NAME, "The middle {value} lies outside its range.", allowed="from {low} to {high}", tip="Mend the middle or the range."
)
NO_SUCH_LINE = missing(NAME, "There is no line '{line}' in the tally.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for every record of counting that names what is not there, or whose range is upside down."""
    for (kind, _), file in loaded.files.by_id.items():
        if kind in _OF_KIND:
            for id, raw in file.data.items():
                yield from _OF_KIND[kind](loaded, file, id, raw)


def _constant(loaded: Loaded, file: YamlFile, id: str, raw: Mapping[str, Any]) -> Iterator[Finding]:
    if not raw["low"] <= raw["value"] <= raw["high"]:
        yield VALUE_OUTSIDE.at(file.place((id, "value")), value=raw["value"], low=raw["low"], high=raw["high"])


def _tally_line(loaded: Loaded, file: YamlFile, id: str, raw: Mapping[str, Any]) -> Iterator[Finding]:
    yield from unknown(loaded, NAME, "entry", raw["shows"], file.place((id, "shows")))
    for n, entry in enumerate(raw["within"]):
        yield from unknown(loaded, NAME, "entry", entry, file.place((id, "within", n)))
    whole = raw.get("part-of", "")
    if whole:
        yield from _lines(loaded, file, (whole,), (id, "part-of"))
        above = loaded.library.bench.tally.get(whole)
        if above and above.part_of:
            yield PART_OF_A_PART.at(file.place((id, "part-of")), whole=whole, above=above.part_of)


def _rule(loaded: Loaded, file: YamlFile, id: str, raw: Mapping[str, Any]) -> Iterator[Finding]:
    for name in ("counts", "may-count"):
        yield from _lines(loaded, file, tuple(raw.get(name, ())), (id, name))
        for n, line in enumerate(raw.get(name, ())):
            known = loaded.library.bench.tally.get(line)
            if known and raw["per"] not in known.at:
                yield NOT_COUNTED_THERE.at(file.place((id, name, n)), per=raw["per"], line=line, allowed=" or ".join(known.at))


def _densities(loaded: Loaded, file: YamlFile, id: str, raw: Mapping[str, Any]) -> Iterator[Finding]:
    for line, what in raw["things"].items():
        yield from _lines(loaded, file, (line,), (id, "things"))
        if not what["low"] <= what["middle"] <= what["high"]:
            place = file.place((id, "things", line, "middle"))
            yield MIDDLE_OUTSIDE.at(place, value=what["middle"], low=what["low"], high=what["high"])


def _cannot_say(loaded: Loaded, file: YamlFile, id: str, raw: Mapping[str, Any]) -> Iterator[Finding]:
    if "caution" in raw:
        yield from unknown(loaded, NAME, "caution", raw["caution"], file.place((id, "caution")))


def _lines(loaded: Loaded, file: YamlFile, lines: tuple[str, ...], path: tuple[str, ...]) -> Iterator[Finding]:
    known = loaded.library.bench.tally
    for n, line in enumerate(lines):
        if line not in known and "tally" not in loaded.files.broken:
            place = file.place((*path, line), of_key=True) if path[-1] == "things" else file.place((*path, n))
            yield not_among(NO_SUCH_LINE, line, known, place, line=line)


_OF_KIND = {"constants": _constant, "tally": _tally_line, "bench-rules": _rule, "densities": _densities, "cannot-say": _cannot_say}
