"""Build the frozen library from files that have the right shape.

What a file names but nothing defines is left out here without a word: the checks report it,
and nothing is made from a library with problems.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from keytool import __version__
from keytool.library.basis import bases
from keytool.library.bench_records import bench
from keytool.library.drawing_records import Form, form
from keytool.library.eyepiece_records import eyepiece
from keytool.library.graph import raw_goes, reading_order
from keytool.library.lay_words import lay_words
from keytool.library.model import (
    Applies,
    Caution,
    Character,
    Claim,
    Couplet,
    Derivative,
    Entry,
    Failure,
    Figure,
    Guide,
    Key,
    Lead,
    Library,
    LookAlikes,
    Manner,
    Met,
    Mistake,
    Photo,
    Picture,
    Quantity,
    Rule,
    SampleStep,
    SampleSteps,
    ShortCard,
    Shortcut,
    Source,
    State,
    Statement,
    Step,
    Term,
    Vocabulary,
    Voices,
    Word,
)
from keytool.library.records import BY_KIND, ONE_FILE
from keytool.library.sentences import by_language
from keytool.library.value import Interval, Showing, States
from keytool.library.yaml_file import YamlFile

Raw = Mapping[str, Any]
Drawings = Mapping[str, Form]
FIRST_GUIDE = "making-the-slide"
"""The guide that every library has: how to make a slide that can be compared with the last one."""


def library(files: Mapping[tuple[str, str], YamlFile]) -> Library:
    """The library made from usable files. What has no file is empty."""
    alone = {kind: file.data for (kind, _), file in files.items() if BY_KIND[kind] in ONE_FILE}
    words = vocabulary(next(_of(files, "vocabulary"), {}))
    quantities = {id: _quantity(id, raw) for part in _of(files, "quantities") for id, raw in part.items()}
    drawings = {raw["id"]: form(raw) for raw in _of(files, "drawing")}
    characters = {raw["id"]: _character(raw, words, drawings) for raw in _of(files, "character")}
    reader = Reader(words, characters, quantities, drawings)
    entries = reader.entries({raw["id"]: raw for raw in _of(files, "entry")})
    return Library(
        version=__version__,
        vocabulary=words,
        characters=characters,
        entries=entries,
        keys={raw["id"]: reader.key(raw) for raw in _of(files, "key")},
        sources={
            id: Source(id, raw["cite"], raw["read"], raw.get("note", ""))
            for part in _of(files, "sources")
            for id, raw in sorted(part.items())
        },
        terms={
            id: Term(id, raw["term"], tuple(raw.get("also", ())), raw["means"], raw.get("everyday", False))
            for part in _of(files, "terms")
            for id, raw in sorted(part.items())
        },
        cautions={
            id: Caution(id, raw["title"], raw["brief"], raw["text"], raw["defer"], raw.get("when-likely", False), bases(raw["basis"]))
            for part in _of(files, "cautions")
            for id, raw in part.items()
        },
        quantities=quantities,
        shortcuts={id: reader.shortcut(id, raw) for part in _of(files, "shortcuts") for id, raw in part.items()},
        manners={id: _manner(id, raw, drawings) for part in _of(files, "manners") for id, raw in part.items()},
        guides={raw["id"]: _guide(raw) for raw in _of(files, "guide")},
        look_alikes={raw["id"]: _look_alikes(raw) for raw in _of(files, "look-alike")},
        voices={id: _voices(id, raw) for part in _of(files, "voices") for id, raw in part.items()},
        photos={raw["id"]: _photo(raw) for raw in _of(files, "photo")},
        samples={
            id: SampleSteps(
                id,
                tuple(raw["of"]),
                {kind: SampleStep(each["step"], each["strength"], each.get("note", "")) for kind, each in raw["steps"].items()},
            )
            for part in _of(files, "samples")
            for id, raw in part.items()
        },
        pictures={
            id: Picture(id, raw["name"], raw["power"], tuple(raw["like"]), raw["entry"])
            for part in _of(files, "pictures")
            for id, raw in part.items()
        },
        short_card=_short_card(_of(files, "short-card")),
        lay=lay_words(lambda kind: _of(files, kind)),
        files={key: file.name for key, file in files.items()},
        sentences=by_language((name.partition("/")[0], file.data) for (kind, name), file in files.items() if kind == "sentences"),
        bench=bench(alone),
        eyepiece=eyepiece(alone),
        drawings=drawings,
    )


def _short_card(files: Iterable[Raw]) -> ShortCard:
    for raw in files:
        met = (
            Met(each["entry"], each.get("draw", each["entry"]), each["power"], each["tells"], each.get("key", ""), bases(each["basis"]))
            for each in raw["met"]
        )
        return ShortCard(tuple(met), tuple(raw["remember"]), tuple(raw.get("cautions", ())))
    return ShortCard((), (), ())


def vocabulary(raw: Raw) -> Vocabulary:
    """The closed lists as words."""
    return {name: {id: Word(id, word["label"], word) for id, word in words.items()} for name, words in raw.items()}


def _of(files: Mapping[tuple[str, str], YamlFile], kind: str) -> Iterator[Any]:
    return (file.data for (each, _), file in files.items() if each == kind)


def _said(raw: Raw) -> Claim:
    return Claim(raw["text"], bases(raw["basis"]))


def _all_said(raws: Iterable[Raw]) -> tuple[Claim, ...]:
    return tuple(_said(raw) for raw in raws)


def _figure(raw: Raw | None, drawings: Drawings) -> Figure | None:
    return _drawn(raw, drawings) if raw else None


def _drawn(raw: Raw, drawings: Drawings) -> Figure:
    return Figure(raw["kind"], {name: value for name, value in raw.items() if name != "kind"}, drawings.get(raw["kind"]))


def _factor(words: Vocabulary, unit: str) -> float:
    return float(words["unit"][unit].get("factor", 1))


def _quantity(id: str, raw: Raw) -> Quantity:
    low, high = (raw["value"], raw["value"]) if "value" in raw else (raw["low"], raw["high"])
    return Quantity(id, raw.get("name", id), low, high, raw["unit"], raw.get("about", ""), bases(raw["basis"]))


def _manner(id: str, raw: Raw, drawings: Drawings) -> Manner:
    return Manner(
        id,
        raw["label"],
        raw["about"],
        bases(raw["basis"]),
        raw["motion"],
        raw["example"],
        tuple(raw["shows"]),
        raw["holds"],
        {entry: each if isinstance(each, str) else _drawn(each, drawings) for entry, each in raw["seen-in"].items()},
        (raw["together"]["low"], raw["together"]["high"]),
        {name: _quantity(name, figure) for name, figure in raw["parameters"].items()},
    )


def _character(raw: Raw, words: Vocabulary, drawings: Drawings) -> Character:
    error = raw.get("error")
    return Character(
        id=raw["id"],
        name=raw["name"],
        asks=raw["asks"],
        kind=raw["kind"],
        magnification=raw["magnification"],
        applies=_applies(raw["applies"]),
        settled_by=tuple(raw.get("settled-by", ())),
        effort=raw.get("effort", "look"),
        look=raw["look"],
        misread=raw["misread"]["rate"],
        misread_basis=bases(raw["misread"]["basis"]),
        mix_ups={(pair["is"], pair["seen"]): pair["rate"] for pair in raw["misread"].get("pairs", ())},
        states={
            id: State(id, state["name"], state["about"], _figure(state.get("figure"), drawings), state.get("eyepiece", ""))
            for id, state in raw.get("states", {}).items()
        },
        unit=raw.get("unit", ""),
        plus_minus=error["plus-minus"] * _factor(words, raw["unit"]) if error else 0.0,
        plus_minus_basis=bases(error["basis"]) if error else (),
    )


def _applies(raw: Any) -> Applies:
    if raw == "everything":
        return Applies()
    where = {character: tuple(states) for character, states in raw.get("where", {}).items()}
    return Applies(tuple(raw["to"]), where, raw.get("else", ""))


def _guide(raw: Raw) -> Guide:
    return Guide(
        raw["id"],
        raw["title"],
        raw["about"],
        tuple(Step(step["id"], step["do"], step["why"], step.get("caution", ""), bases(step["basis"])) for step in raw["steps"]),
        _all_said(raw.get("notes", ())),
        tuple(raw.get("cautions", ())),
    )


def _look_alikes(raw: Raw) -> LookAlikes:
    return LookAlikes(
        raw["id"],
        raw["title"],
        raw["about"],
        tuple(raw["entries"]),
        _said(raw["decisive"]),
        tuple(raw["characters"]),
        _all_said(raw.get("notes", ())),
    )


def _photo(raw: Raw) -> Photo:
    return Photo(
        raw["id"],
        raw["entry"],
        raw["author"],
        raw["licence"],
        raw["shows"],
        bases(raw["scale"]["basis"]),
        _derivative(raw["page"]),
        _derivative(raw["card"]),
    )


def _derivative(raw: Raw) -> Derivative:
    return Derivative(raw["file"], raw["width"], raw["height"], raw["um-per-pixel"], raw["bar"])


def _voices(id: str, raw: Raw) -> Voices:
    return Voices(
        id,
        raw["title"],
        _all_said(raw["practice"]),
        _all_said(raw["published"]),
        raw["so"],
        tuple(raw["entries"]),
        tuple(raw.get("keys", ())),
    )


class Reader:
    """Builds what needs the characters and quantities to be read."""

    def __init__(
        self, words: Vocabulary, characters: Mapping[str, Character], quantities: Mapping[str, Quantity], drawings: Drawings
    ) -> None:
        self.words, self.characters, self.quantities, self.drawings = words, characters, quantities, drawings

    def entries(self, raws: Mapping[str, Raw]) -> dict[str, Entry]:
        """Entries with what they inherit; a loop in `within` is cut where it closes."""
        done: dict[str, Entry] = {}

        def build(id: str, above: frozenset[str]) -> Entry:
            if id not in done:
                parents = [build(each, above | {id}) for each in raws[id].get("within", ()) if each in raws and each not in above | {id}]
                done[id] = self._entry(raws[id], parents)
            return done[id]

        for id in raws:
            build(id, frozenset())
        return {id: done[id] for id in raws}

    def _entry(self, raw: Raw, parents: list[Entry]) -> Entry:
        own = {id: statement for id, each in raw.get("characters", {}).items() if (statement := self._statement(raw["id"], id, each))}
        inherited = {id: statement for parent in parents for id, statement in parent.statements.items()}
        names, commonness, feeding = raw["names"], raw.get("commonness"), raw.get("feeding")
        return Entry(
            id=raw["id"],
            kind=raw["kind"],
            theme=raw["theme"],
            common=names["common"],
            scientific=names.get("scientific", ""),
            also=tuple(names.get("also", ())),
            within=tuple(raw.get("within", ())),
            summary=raw["summary"],
            commonness=commonness["class"] if commonness else "",
            commonness_basis=bases(commonness["basis"]) if commonness else (),
            feeding=tuple(feeding["groups"]) if feeding else (),
            feeding_basis=bases(feeding["basis"]) if feeding else (),
            statements={**inherited, **own},
            tells=_all_said(raw.get("tells", ())),
            mistaken_for=tuple(
                Mistake(each["entry"], each["by"], each.get("character", ""), bases(each["basis"])) for each in raw.get("mistaken-for", ())
            ),
            would_tell=raw.get("would-tell", ""),
            notes=_all_said(raw.get("notes", ())),
            cautions=tuple(dict.fromkeys([*raw.get("cautions", ()), *(each for parent in parents for each in parent.cautions)])),
            figure=_figure(raw.get("figure"), self.drawings),
            contributors=tuple(raw["contributors"]),
            reviewed=raw["reviewed"],
        )

    def _statement(self, entry: str, id: str, raw: Raw) -> Statement | None:
        character = self.characters.get(id)
        if character is None:
            return None
        return Statement(id, self.stated(character, raw), raw.get("unit", character.unit), bases(raw["basis"]), entry)

    def stated(self, character: Character, raw: Raw) -> Showing:
        """What is stated of a character in an entry, in base units."""
        if character.is_number:
            factor = _factor(self.words, raw.get("unit", character.unit))
            everything = Interval()
            low, high = raw.get("low"), raw.get("high")
            return Interval.closed(everything.low if low is None else low * factor, everything.high if high is None else high * factor)
        return States(frozenset(raw.get("states", character.states)) & frozenset(character.states))

    def seen(self, when: Raw) -> dict[str, Showing]:
        """What a lead or a rule asks to be seen, by character."""
        result: dict[str, Showing] = {}
        for id, wanted in when.items():
            character = self.characters.get(id)
            if character is None or character.is_number is isinstance(wanted, list):
                continue
            if isinstance(wanted, list):
                result[id] = States(frozenset(wanted))
            else:
                ends = {"low": wanted.get("from"), "high": wanted.get("below")}
                result[id] = Interval(**{end: self._threshold(name) for end, name in ends.items() if name in self.quantities})
        return result

    def _threshold(self, id: str) -> float:
        quantity = self.quantities[id]
        return quantity.low * _factor(self.words, quantity.unit)

    def key(self, raw: Raw) -> Key:
        """A key with its couplets numbered in reading order."""
        couplets = {}
        for number, id in enumerate(reading_order(raw["first"], raw_goes(raw["couplets"])), 1):
            each = raw["couplets"][id]
            leads = {
                lead: Lead(
                    lead,
                    what["text"],
                    self.seen(what.get("when", {})),
                    what.get("otherwise", False),
                    what.get("couplet", ""),
                    what.get("key", ""),
                    what.get("end", ""),
                    _figure(what.get("figure"), self.drawings),
                )
                for lead, what in each["leads"].items()
            }
            characters = tuple(dict.fromkeys(name for lead in leads.values() for name in lead.when))
            look = each.get("look") or " ".join(self.characters[name].look for name in characters)
            note = _said(each["note"]) if "note" in each else None
            couplets[id] = Couplet(id, number, each["asks"], look, note, characters, leads)
        return Key(
            raw["id"],
            raw["title"],
            raw["about"],
            tuple(raw["scope"]),
            raw["magnification"],
            tuple(raw.get("before", ())),
            tuple(raw.get("cautions", ())),
            raw["first"],
            couplets,
        )

    def shortcut(self, id: str, raw: Raw) -> Shortcut:
        """A shortcut with its rules and where they fail."""
        return Shortcut(
            id,
            raw["title"],
            raw["about"],
            raw["key"],
            bases(raw["basis"]),
            {rule: Rule(rule, self.seen(each["when"]), tuple(each["says"]), each["text"]) for rule, each in raw["rules"].items()},
            tuple(Failure(each["rule"], each["entry"], _said(each)) for each in raw["fails"]),
        )
