"""Tell two things apart: the characters that do it, and the couplet that asks for one of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from keytool.contribute.keyed_out import KeyPath, Outcome
from keytool.library.checks.length import LEAD, QUESTION
from keytool.library.model import Character, Entry, Key, Library, Quantity
from keytool.library.value import Interval, Showing, States


@dataclass(frozen=True, slots=True)
class Parting:
    """A character in which one entry differs from all of some others; `at` is the bench quantity that parts two numbers, if any."""

    character: Character
    own: Showing
    theirs: tuple[Showing, ...]
    at: Quantity | None


@dataclass(frozen=True, slots=True)
class CoupletDraft:
    """A couplet that would send an entry and those it collides with apart, and where it goes: behind which lead of which key."""

    key: str
    behind_couplet: str
    behind_lead: str
    slug: str
    raw: dict[str, Any]


def partings(library: Library, entry: Entry, others: Iterable[Entry], magnification: int) -> list[Parting]:
    """The characters that part an entry from all of the others at a magnification, the least often misread first.

    Numbers that differ but have no bench quantity between them come last.
    """
    rivals = list(others)
    found = []
    for name, statement in entry.statements.items():
        character = library.characters[name]
        stated = [each.statements[name].showing for each in rivals if name in each.statements]
        comparable = rivals and len(stated) == len(rivals) and character.magnification <= magnification
        if comparable and all(statement.showing.meet(each).is_empty for each in stated):
            found.append(Parting(character, statement.showing, tuple(stated), _between(library, statement.showing, stated)))
    return sorted(found, key=lambda each: (each.character.is_number and each.at is None, each.character.misread, each.character.id))


def not_stated(entry: Entry, others: Sequence[Entry]) -> list[str]:
    """Characters that every one of the others states and this entry does not: what to look at next."""
    return (
        [name for name in others[0].statements if name not in entry.statements and all(name in each.statements for each in others)]
        if others
        else []
    )


def _between(library: Library, own: Showing, theirs: Sequence[Showing]) -> Quantity | None:
    """A bench quantity that lies between two stretches of numbers, so that a lead can ask for it."""
    if not isinstance(own, Interval):
        return None
    stretches = [each for each in theirs if isinstance(each, Interval)]
    low, high = min(each.low for each in stretches), max(each.high for each in stretches)
    below, above = (own.high, low) if own.high <= low else (high, own.low) if high <= own.low else (1.0, 0.0)
    for each in library.quantities.values():
        limit = parting_limit(library, each)
        if limit is not None and below <= limit <= above:
            return each
    return None


def parting_limit(library: Library, quantity: Quantity) -> float | None:
    """A bench quantity as the limit that a lead may ask for, in base units; None where it is no single length or speed."""
    unit = library.vocabulary["unit"][quantity.unit]
    is_limit = quantity.low == quantity.high and unit.get("dimension") in ("length", "speed")
    return quantity.low * float(unit.get("factor", 1)) if is_limit else None


def couplet_draft(library: Library, outcome: Outcome, way: KeyPath, parting: Parting) -> CoupletDraft | None:
    """The couplet that parts an entry, at the lead where one of its ways comes out, from those that rightly come out there.

    None where the character is a number without a bench quantity to part it.
    """
    key, last = library.keys[way.key], way.steps[-1]
    own, rest = _whens(parting)
    if own is None:
        return None
    lead = key.couplets[last.couplet].leads[last.lead]
    entry = library.entries[outcome.entry]
    raw = {
        "asks": _question(library, parting.character, entry),
        "leads": {
            entry.id: {"text": _lead_text(library, parting, own), "when": {parting.character.id: own}, "end": entry.id},
            "the-rest": {
                "text": _rest_text(library, parting, rest),
                **_takes_rest(parting.character, own, rest),
                **_goes_on(lead.key, lead.end),
            },
        },
    }
    return CoupletDraft(key.id, last.couplet, last.lead, free_slug(key, f"{entry.id}-{parting.character.id}"), raw)


def free_slug(key: Key, wanted: str) -> str:
    """A slug that the key has not used yet."""
    slug = wanted[:44].strip("-")
    return slug if slug not in key.couplets else next(f"{slug}-{n}" for n in range(2, 99) if f"{slug}-{n}" not in key.couplets)


def _goes_on(key: str, end: str) -> dict[str, str]:
    return {"key": key} if key else {"end": end}


def _takes_rest(character: Character, own: Any, rest: Any) -> dict[str, Any]:
    """What the other lead asks to be seen; all the rest, where the two together are not all there is."""
    if isinstance(own, list) and set(own) | set(rest) != set(character.states):
        return {"otherwise": True}
    return {"when": {character.id: rest}}


def _whens(parting: Parting) -> tuple[Any, Any]:
    """What a lead asks to be seen of the entry, and of the rest; nothing where no quantity parts them."""
    own = parting.own
    if isinstance(own, States):
        order = list(parting.character.states)
        theirs = {id for each in parting.theirs if isinstance(each, States) for id in each.ids}
        return [id for id in order if id in own.ids], [id for id in order if id in theirs]
    if parting.at is None:
        return None, None
    first = parting.theirs[0]
    assert isinstance(own, Interval) and isinstance(first, Interval)
    smaller = own.high <= first.low
    return ({"below": parting.at.id}, {"from": parting.at.id}) if smaller else ({"from": parting.at.id}, {"below": parting.at.id})


def _question(library: Library, character: Character, entry: Entry) -> str:
    return character.asks if len(character.asks) <= library.limit(QUESTION) else f"Which is it: {entry.common.lower()}, or another?"


def _lead_text(library: Library, parting: Parting, wanted: Any) -> str:
    words = _capital(_words(parting, wanted))
    return words if len(words) <= library.limit(LEAD) else _capital(_words(parting, wanted[:1]))


def _rest_text(library: Library, parting: Parting, wanted: Any) -> str:
    words = _capital(_words(parting, wanted))
    return words if len(words) <= library.limit(LEAD) else "Anything else"


def _words(parting: Parting, wanted: Any) -> str:
    """What is seen, in the words of the states, or of the number and its limit."""
    character = parting.character
    if isinstance(wanted, list):
        return " or ".join(character.states[id].name for id in wanted)
    limit = next(iter(wanted.values()))
    return f"{character.name} {{{limit}}} or more" if "from" in wanted else f"{character.name} below {{{limit}}}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
