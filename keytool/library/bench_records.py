"""Records of counting: constants, lines of the tally, rules, limits, chambers, densities. Built from files of the right shape."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from keytool.library.basis import Basis, bases

At = Literal["drop", "field"]
"""Where something is counted: in a whole drop at low power, or in a field at high power."""


@dataclass(frozen=True, slots=True)
class Constant:
    """A figure that sums use, and the range it may truly have."""

    id: str
    name: str
    value: float
    low: float
    high: float
    unit: str
    about: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class TallyLine:
    """One thing to count: what its button says and shows, and which entries of the library it holds."""

    id: str
    label: str
    one: str
    many: str
    shows: str
    within: tuple[str, ...]
    feeding: tuple[str, ...]
    part_of: str
    at: tuple[At, ...]
    at_once: bool
    tells: str
    basis: tuple[Basis, ...]

    def feeds_so(self, feeding: tuple[str, ...]) -> bool:
        """Whether what feeds in these ways belongs here: always, unless the line is of some feeding groups only.

        Stages that do not feed at all are those of their kind, and change nothing.
        """
        ways = {*feeding} - {"not-feeding"}
        return not self.feeding or (bool(ways) and ways <= {*self.feeding})


@dataclass(frozen=True, slots=True)
class BenchRule:
    """A rule of the bench for counts: at least, or at most, `value` of some lines per drop or field; or only whether any were seen."""

    id: str
    asks: str
    counts: tuple[str, ...]
    may_count: tuple[str, ...]
    per: At
    wants: Literal["at-least", "at-most", "watch"]
    value: float
    taken_for: str
    against: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class CannotSay:
    """Something counts of a drop do not tell, and who does."""

    id: str
    text: str
    caution: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Chamber:
    """A counting chamber: depth in mm, and the sides of its ruled squares in mm."""

    id: str
    name: str
    depth_mm: float
    squares_mm: Mapping[str, float]
    about: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Density:
    """How many of something are met in a gram or mL of one kind of sample."""

    middle: float
    low: float
    high: float
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Abundance:
    """One kind of sample, and how many of each line of the tally it holds per g or mL."""

    id: str
    per: str
    things: Mapping[str, Density]


@dataclass(frozen=True, slots=True)
class Bench:
    """All records of counting, by id, in the order of their files."""

    constants: Mapping[str, Constant] = field(default_factory=dict)
    tally: Mapping[str, TallyLine] = field(default_factory=dict)
    rules: Mapping[str, BenchRule] = field(default_factory=dict)
    cannot_say: Mapping[str, CannotSay] = field(default_factory=dict)
    chambers: Mapping[str, Chamber] = field(default_factory=dict)
    abundances: Mapping[str, Abundance] = field(default_factory=dict)
    demo: Mapping[str, Any] = field(default_factory=dict)
    """The demonstration sheet, as the count sheet saves one."""


def bench(files: Mapping[str, Mapping[str, Any]]) -> Bench:
    """The records, from the data of each kind of file; a kind without a file is empty."""

    def each(kind: str) -> list[tuple[str, Mapping[str, Any]]]:
        return list(files.get(kind, {}).items())

    return Bench(
        {
            id: Constant(id, raw["name"], raw["value"], raw["low"], raw["high"], raw["unit"], raw["about"], bases(raw["basis"]))
            for id, raw in each("constants")
        },
        {id: _tally_line(id, raw) for id, raw in each("tally")},
        {id: _rule(id, raw) for id, raw in each("bench-rules")},
        {id: CannotSay(id, raw["text"], raw.get("caution", ""), bases(raw["basis"])) for id, raw in each("cannot-say")},
        {
            id: Chamber(id, raw["name"], raw["depth"], dict(raw["squares"]), raw["about"], bases(raw["basis"]))
            for id, raw in each("chambers")
        },
        {
            id: Abundance(
                id,
                raw["per"],
                {line: Density(what["middle"], what["low"], what["high"], bases(what["basis"])) for line, what in raw["things"].items()},
            )
            for id, raw in each("densities")
        },
        files.get("demo-sheet", {}),
    )


def _tally_line(id: str, raw: Mapping[str, Any]) -> TallyLine:
    return TallyLine(
        id,
        raw["label"],
        raw["one"],
        raw["many"],
        raw["shows"],
        tuple(raw["within"]),
        tuple(raw.get("feeding", ())),
        raw.get("part-of", ""),
        tuple(raw["at"]),
        raw["at-once"],
        raw["tells"],
        bases(raw["basis"]),
    )


def _rule(id: str, raw: Mapping[str, Any]) -> BenchRule:
    return BenchRule(
        id,
        raw["asks"],
        tuple(raw["counts"]),
        tuple(raw.get("may-count", ())),
        raw["per"],
        raw["wants"],
        raw.get("value", 0),
        raw["taken-for"],
        raw["against"],
        bases(raw["basis"]),
    )
