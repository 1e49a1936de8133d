"""Words and marks that the page, the card and the command line all show in the same way."""

from __future__ import annotations

import math
from collections.abc import Iterable

from keytool.library.basis import Basis, weakest
from keytool.library.model import Claim, Entry, Library, Quantity, Statement
from keytool.library.records import record_of
from keytool.library.text import Link, QuantityRef, parts
from keytool.library.value import Interval, States


def mark(library: Library, bases: Iterable[Basis]) -> str:
    """The one mark shown beside a statement: that of its weakest basis, such as "●" or "◌"."""
    basis = weakest(bases)
    word = library.vocabulary["value"][basis.value] if basis.value else library.vocabulary["basis"][basis.kind]
    return str(word.get("mark"))


def basis_label(library: Library, basis: Basis) -> str:
    """What the mark of a basis stands for: "published, value seen", "from memory"."""
    words = library.vocabulary["basis"][basis.kind].label
    return f"{words}, {library.vocabulary['value'][basis.value].label}" if basis.value else words


def basis_words(library: Library, basis: Basis) -> str:
    """A basis in words: "published, value seen (Thorne & Malek 1968)"; sources by id."""
    words = basis_label(library, basis)
    if basis.sources:
        words += f" ({'; '.join(basis.sources)})"
    if basis.how:
        words += f": {basis.how}"
    return f"{words}. {basis.note}" if basis.note else words


def stated(library: Library, entry: Entry) -> list[tuple[str, list[Statement]]]:
    """What an entry states: its own statements first, then those it shares with each group that holds it, the nearest first."""
    order = list(library.characters)
    by_group: dict[str, list[Statement]] = {}
    for statement in sorted(entry.statements.values(), key=lambda each: order.index(each.character)):
        by_group.setdefault(statement.stated_by, []).append(statement)
    return sorted(by_group.items(), key=lambda each: -len(library.ancestry(each[0])))


def meaning(library: Library, entry: Entry) -> tuple[tuple[Entry, Claim], ...]:
    """What an entry tells about the soil, in brief: the first it says itself, and the first that the nearest group holding it says.

    Each comes with the entry that says it. Empty where neither says anything.
    """
    return tuple((each, each.tells[0]) for each in (entry, telling_group(library, entry)) if each and each.tells)


def telling_group(library: Library, entry: Entry) -> Entry | None:
    """The nearest group that holds the entry and tells something about the soil."""
    waiting = list(entry.within)
    while waiting:
        group = library.entries[waiting.pop(0)]
        if group.tells:
            return group
        waiting.extend(group.within)
    return None


def number(value: float) -> str:
    """A number as it is read aloud: no exponent, no trailing zeros, at most four figures after the point."""
    return f"{value:.4f}".rstrip("0").rstrip(".") if value != int(value) else str(int(value))


def quantity_words(quantity: Quantity) -> str:
    """A quantity with its unit, such as "14 µm" or "50 to 65 °C"."""
    numbers = number(quantity.low) if quantity.low == quantity.high else f"{number(quantity.low)} to {number(quantity.high)}"
    return numbers if quantity.unit == "1" else f"{numbers} {quantity.unit}"


def showing_words(library: Library, statement: Statement) -> str:
    """What an entry shows of a character, such as "distinct knobs or tiny knobs" or "14 to 19 µm"."""
    character = library.characters[statement.character]
    if isinstance(statement.showing, States):
        if len(character.states) > 2 and statement.showing.ids == frozenset(character.states):
            return "any, or not known"
        return " or ".join(state.name for id, state in character.states.items() if id in statement.showing.ids)
    assert isinstance(statement.showing, Interval)
    factor = float(library.vocabulary["unit"][statement.unit].get("factor", 1))
    low, high = statement.showing.low / factor, statement.showing.high / factor
    unit = "" if statement.unit == "1" else f" {statement.unit}"
    if math.isinf(low) and math.isinf(high):
        return "any, or not known"
    if math.isinf(low):
        return f"up to {number(round(high, 6))}{unit}"
    if math.isinf(high):
        return f"{number(round(low, 6))}{unit} or more"
    ends = [number(round(each, 6)) for each in (low, high)]
    return f"{ends[0]}{unit}" if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}{unit}"


def name_of(library: Library, id: str) -> str:
    """The name of whatever an id belongs to: entry, key, character, term, caution or source."""
    record = record_of(library, id)
    return str(getattr(record.of(library)[id], record.title)) if record else id


def plain(library: Library, text: str) -> str:
    """A text as plain words: quantities put in, links as the names they lead to."""
    words = []
    for part in parts(text):
        if isinstance(part, QuantityRef):
            words.append(quantity_words(library.quantities[part.id]))
        elif isinstance(part, Link):
            words.append(part.words or name_of(library, part.id))
        else:
            words.append(part)
    return "".join(words)


def feeding_words(library: Library, groups: Iterable[str]) -> str:
    """Feeding groups in words, joined."""
    return ", ".join(library.vocabulary["feeding"][each].label for each in groups)


LIKELY = 0.6
"""From this chance on an end is called likely; under it, it is named with a "perhaps"."""


def sureness_words(sure: float) -> str:
    """How sure, in words and a rounded figure; it rests on estimates, so it is never given finer than 5 %."""
    sure = round(sure, 9)  # or the noise of adding up would decide which way a half is rounded
    rounded = min(95, max(5, 5 * round(20 * sure)))
    words = "fairly sure" if sure >= 0.85 else "likely" if sure >= LIKELY else "possible" if sure >= 0.3 else "doubtful"
    return f"{words}, about {rounded} %"
