"""The library as frozen types: what a key, an entry and a character are.

Everything here was checked where it was read; inside there is nothing left to doubt, so
these types carry no checks. Lengths are in micrometres, speeds in micrometres a second,
whatever unit the file used.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from keytool.library.basis import Basis
from keytool.library.bench_records import Bench
from keytool.library.drawing_records import Form
from keytool.library.eyepiece_records import Eyepiece
from keytool.library.lay_words import LayWords
from keytool.library.sentences import BASE, Sentences
from keytool.library.value import Showing


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a closed list in `vocabulary.yaml`: its id, label and what else is said of it."""

    id: str
    label: str
    more: Mapping[str, Any] = field(default_factory=dict)

    def get(self, name: str, default: Any = "") -> Any:
        """Anything else the list says of this word, such as its `mark`, `short` or `weight`."""
        return self.more.get(name, default)


Vocabulary = Mapping[str, Mapping[str, Word]]


@dataclass(frozen=True, slots=True)
class Claim:
    """A statement in plain text with what it rests on."""

    text: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """What to draw: a kind of drawing and its parameters, as written in the file; `form` where the drawing is data."""

    kind: str
    params: Mapping[str, Any]
    form: Form | None = None

    @property
    def draws(self) -> str | Form:
        """What `keytool.figures.draw` draws."""
        return self.form or self.kind


@dataclass(frozen=True, slots=True)
class Quantity:
    """A threshold or constant with its unit, written once in `bench/` and used by id."""

    id: str
    name: str
    low: float
    high: float
    unit: str
    about: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class State:
    """One thing a character may show.

    `eyepiece` is the entry whose computed picture shows it, where contrast decides between the states; else empty.
    """

    id: str
    name: str
    about: str
    figure: Figure | None
    eyepiece: str = ""


@dataclass(frozen=True, slots=True)
class Applies:
    """What a character has a meaning for.

    The groups and entries of `to` (empty: everything), and of these only what shows one of the states of `where` of another
    character. `otherwise` is the state that everything else shows, such as none, or empty.
    """

    to: tuple[str, ...] = ()
    where: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    otherwise: str = ""


@dataclass(frozen=True, slots=True)
class Character:
    """Something one can look at. `states` is empty for a number; `unit` is empty for states.

    `misread` is how often a careful beginner gets it wrong (0 to 1), spread evenly over the
    wrong states; `mix_ups` gives the rate for a pair (what is there, what is seen) where it
    differs. `plus_minus` is the reading error of a number in base units. `effort` is a word of the
    closed list `effort`. `settled_by` are characters that look at the same thing: once one of them was looked at, this is not asked.
    """

    id: str
    name: str
    asks: str
    kind: str
    magnification: int
    applies: Applies
    settled_by: tuple[str, ...]
    effort: str
    look: str
    misread: float
    misread_basis: tuple[Basis, ...]
    mix_ups: Mapping[tuple[str, str], float]
    states: Mapping[str, State]
    unit: str
    plus_minus: float
    plus_minus_basis: tuple[Basis, ...]

    @property
    def is_number(self) -> bool:
        """Whether it is measured or counted, not chosen from states."""
        return self.kind == "number"


@dataclass(frozen=True, slots=True)
class Statement:
    """What an entry says of one character, with its basis. `unit` is the unit it was written in."""

    character: str
    showing: Showing
    unit: str
    basis: tuple[Basis, ...]
    stated_by: str
    """Id of the entry that says it: this one, or the group it was inherited from."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """What an entry is mistaken for, and how to tell the two apart."""

    entry: str
    by: str
    character: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """Something one can meet in a drop, or a group of such things.

    `statements` holds its own and what it inherits from the groups it stands within.
    """

    id: str
    kind: str
    theme: str
    common: str
    scientific: str
    also: tuple[str, ...]
    within: tuple[str, ...]
    summary: str
    commonness: str
    commonness_basis: tuple[Basis, ...]
    feeding: tuple[str, ...]
    feeding_basis: tuple[Basis, ...]
    statements: Mapping[str, Statement]
    tells: tuple[Claim, ...]
    mistaken_for: tuple[Mistake, ...]
    would_tell: str
    notes: tuple[Claim, ...]
    cautions: tuple[str, ...]
    figure: Figure | None
    contributors: tuple[str, ...]
    reviewed: str

    @property
    def name(self) -> str:
        """The name shown: the common name."""
        return self.common


@dataclass(frozen=True, slots=True)
class Lead:
    """One of the contrasting statements of a couplet, and where it goes.

    `when` maps character ids to what must be seen; an `otherwise` lead takes all the rest.
    Exactly one of `couplet`, `key` and `end` is not empty.
    """

    id: str
    text: str
    when: Mapping[str, Showing]
    otherwise: bool
    couplet: str
    key: str
    end: str
    figure: Figure | None

    @property
    def goes_to(self) -> str:
        """The id of the couplet, key or entry this lead goes to."""
        return self.couplet or self.key or self.end


@dataclass(frozen=True, slots=True)
class Couplet:
    """One question of a key with its leads, in the order shown. `number` is the printed one, from 1."""

    id: str
    number: int
    asks: str
    look: str
    note: Claim | None
    characters: tuple[str, ...]
    leads: Mapping[str, Lead]


@dataclass(frozen=True, slots=True)
class Key:
    """An identification key: couplets that lead from `first` to ends, for every entry in `scope`."""

    id: str
    title: str
    about: str
    scope: tuple[str, ...]
    magnification: int
    before: tuple[str, ...]
    cautions: tuple[str, ...]
    first: str
    couplets: Mapping[str, Couplet]


@dataclass(frozen=True, slots=True)
class Source:
    """A published source: how to cite it, and how much of it was read (`vocabulary.yaml`, `read`)."""

    id: str
    cite: str
    read: str
    note: str


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade and its meaning in one sentence.

    An `everyday` word is also used in its everyday sense, so that only a link to the term may explain it.
    """

    id: str
    term: str
    also: tuple[str, ...]
    means: str
    everyday: bool


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt, what to do, and whose rules come first; `brief` says it in one line.

    `when_likely`: given as soon as most of what is likely carries it, though no name is settled.
    """

    id: str
    title: str
    brief: str
    text: str
    defer: str
    when_likely: bool
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a guide."""

    id: str
    do: str
    why: str
    caution: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Guide:
    """Something done at the bench, step by step."""

    id: str
    title: str
    about: str
    steps: tuple[Step, ...]
    notes: tuple[Claim, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LookAlikes:
    """Entries that are taken for each other: the test to do first, and the characters to compare."""

    id: str
    title: str
    about: str
    entries: tuple[str, ...]
    decisive: Claim
    characters: tuple[str, ...]
    notes: tuple[Claim, ...]


@dataclass(frozen=True, slots=True)
class Voices:
    """Where the bench rule and what has been published differ; `so` is what to do with it at the bench."""

    id: str
    title: str
    practice: tuple[Claim, ...]
    published: tuple[Claim, ...]
    so: str
    entries: tuple[str, ...]
    keys: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of a shortcut: what is seen, and what the shortcut says it is."""

    id: str
    when: Mapping[str, Showing]
    says: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class Failure:
    """Where a rule of a shortcut goes wrong: the entry, and how."""

    rule: str
    entry: str
    said: Claim


@dataclass(frozen=True, slots=True)
class Shortcut:
    """A rule of thumb of the trade, shown as such beside the key that does better."""

    id: str
    title: str
    about: str
    key: str
    basis: tuple[Basis, ...]
    rules: Mapping[str, Rule]
    fails: tuple[Failure, ...]


@dataclass(frozen=True, slots=True)
class Manner:
    """A manner of moving, with the figures the live field moves it by.

    `motion` is the motion that draws it, `example` what moves so where no entry is named,
    `shows` the states of the character "manner" it shows. `seen_in` maps entries to what of each moves: a word of the
    vocabulary `body`, the id of the entry whose drawing it is, or a figure; `together` is how many are drawn at low and at high power.
    """

    id: str
    label: str
    about: str
    basis: tuple[Basis, ...]
    motion: str
    example: str
    shows: tuple[str, ...]
    holds: bool
    seen_in: Mapping[str, str | Figure]
    together: tuple[int, int]
    parameters: Mapping[str, Quantity]


@dataclass(frozen=True, slots=True)
class Derivative:
    """A smaller picture made of a photograph, with a scale bar `bar` µm long burnt in. `file` stands beside its record."""

    file: str
    width: int
    height: int
    um_per_pixel: float
    bar: float


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph of an entry: who took it, under which licence, what is seen, and what its scale rests on."""

    id: str
    entry: str
    author: str
    licence: str
    shows: str
    scale_basis: tuple[Basis, ...]
    page: Derivative
    card: Derivative


@dataclass(frozen=True, slots=True)
class SampleStep:
    """How many classes more common (above 0) or rarer something is in a kind of sample, and the word for how far that is believed."""

    step: int
    strength: str
    note: str


@dataclass(frozen=True, slots=True)
class SampleSteps:
    """What is met more or less often in kinds of sample: the entries and groups it is true of, and a step for each kind."""

    id: str
    of: tuple[str, ...]
    steps: Mapping[str, SampleStep]


@dataclass(frozen=True, slots=True)
class Picture:
    """Something to point at before anything was looked at closely: what looks like it, and the entry whose drawing is shown."""

    id: str
    name: str
    power: int
    like: tuple[str, ...]
    entry: str


@dataclass(frozen=True, slots=True)
class Met:
    """One thing of the short card: whose name is printed, whose drawing shown, at which power, and the one look that decides.

    `key` is the key that goes on from there, empty where none does.
    """

    entry: str
    draw: str
    power: int
    tells: str
    key: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class ShortCard:
    """What is met nine times in ten, what to do so that counts can be compared, and the cautions printed with them."""

    met: tuple[Met, ...]
    remember: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class Library:
    """Everything in `keydata/`, by id. Mappings keep the order of the files."""

    version: str
    vocabulary: Vocabulary
    characters: Mapping[str, Character]
    entries: Mapping[str, Entry]
    keys: Mapping[str, Key]
    sources: Mapping[str, Source]
    terms: Mapping[str, Term]
    cautions: Mapping[str, Caution]
    quantities: Mapping[str, Quantity]
    shortcuts: Mapping[str, Shortcut]
    manners: Mapping[str, Manner]
    guides: Mapping[str, Guide]
    look_alikes: Mapping[str, LookAlikes]
    voices: Mapping[str, Voices]
    photos: Mapping[str, Photo]
    samples: Mapping[str, SampleSteps]
    pictures: Mapping[str, Picture]
    short_card: ShortCard
    lay: LayWords
    files: Mapping[tuple[str, str], str]
    """(kind, id) to the file it was read from, such as ("entry", "plectus")."""
    bench: Bench = field(default_factory=Bench)
    """Constants, tally, rules and densities of counting."""
    eyepiece: Eyepiece = field(default_factory=Eyepiece)
    """Materials, sections and the computed views that are kept."""
    drawings: Mapping[str, Form] = field(default_factory=dict)
    """Drawings that are data, by id."""
    sentences: Mapping[str, Sentences] = field(default_factory=dict)
    """What pages, terminal, card and scripts say, by language."""
    language: str = BASE
    """The language that this library is told in."""

    @property
    def say(self) -> Sentences:
        """The sentences of its language: `library.say("so-far", name="Plectus", odds="80 in 100")`."""
        return self.sentences[self.language]

    def limit(self, id: str) -> float:
        """A line that is drawn by a quantity (its lower end, in its unit); infinite where the library draws none."""
        return self.quantities[id].low if id in self.quantities else math.inf

    def is_group(self, entry: str) -> bool:
        """Whether an entry holds others; only entries that hold none are met in a drop."""
        return entry in self._holders

    @cached_property
    def _holders(self) -> frozenset[str]:
        return frozenset(parent for entry in self.entries.values() for parent in entry.within)

    @cached_property
    def tally_lines(self) -> Mapping[str, str]:
        """Entries that are counted, each with the line of the tally that holds it: the narrowest, of two alike the first."""
        found: dict[str, str] = {}
        for entry in self.entries.values():
            above = self.ancestry(entry.id)
            holding = [line for line in self.bench.tally.values() if above & {*line.within} and line.feeds_so(entry.feeding)]
            if holding:
                found[entry.id] = max(holding, key=lambda line: bool(line.part_of)).id
        return found

    def ancestry(self, entry: str) -> frozenset[str]:
        """An entry and every group that contains it."""
        return self._above.get(entry, frozenset())

    @cached_property
    def _above(self) -> Mapping[str, frozenset[str]]:
        """Every entry with itself and every group that contains it."""
        found: dict[str, frozenset[str]] = {}
        for entry in self.entries:
            above: set[str] = set()
            waiting = [entry]
            while waiting:
                here = waiting.pop()
                if here not in above and here in self.entries:
                    above.add(here)
                    waiting.extend(self.entries[here].within)
            found[entry] = frozenset(above)
        return found

    def members(self, groups: tuple[str, ...]) -> Iterator[Entry]:
        """The entries met in a drop (those that hold no others) within any of the groups."""
        wanted = set(groups)
        for entry in self.entries.values():
            if not self.is_group(entry.id) and wanted & self.ancestry(entry.id):
                yield entry
