"""Typed words read as observations: `mouth=spear`, `body-length="600 µm"`, `tail=!blunt`, or plain words such as "tail like a hair"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any

from keytool.identify import CANNOT_TELL, Model, Observation, Trail
from keytool.library.messages import did_you_mean
from keytool.library.model import Character

if TYPE_CHECKING:
    from keytool.words.understood import Understood

UNSURE = ("?", "u", "cannot tell", CANNOT_TELL, "not seen")
NUMBER = re.compile(
    r"(?P<about>about|around|roughly|ca\.?|~|some)?\s*"
    r"(?P<bound>over|above|more than|at least|from|>=?|under|below|less than|at most|up to|<=?)?\s*"
    r"(?P<low>\d+(?:[.,]\d+)?)\s*(?P<unit1>[a-zµμ°/]*)\s*(?:(?:-|–|to|\.\.)\s*(?P<high>\d+(?:[.,]\d+)?)?\s*(?P<unit2>[a-zµμ°/]*))?",
    re.IGNORECASE,
)
OVER = ("over", "above", "more than", "at least", "from", ">", ">=")
UNITS = {"um": "µm", "μm": "µm", "micron": "µm", "microns": "µm", "um/s": "µm/s", "μm/s": "µm/s"}


class Unreadable(Exception):
    """Raised for words that say nothing; the message says why, and what may have been meant."""


@dataclass(frozen=True)
class Words:
    """Reads typed words for one library."""

    model: Model

    @cached_property
    def lay(self) -> dict[str, Any]:
        """The lay words of the library, ready to hear with; made when first needed."""
        from keytool.words import compile_words

        return compile_words(self.model.library) if self.model.library.lay.spelling else {}

    def take(self, trail: Trail, typed: str) -> Trail:
        """The trail with what was typed added. Of one character only what was typed last is kept.

        Raises:
            Unreadable: nothing known was typed.
        """
        name, equals, said = (part.strip() for part in typed.partition("="))
        if not equals:
            trail, unheard = self.take_words(trail, [typed])
            if unheard and not trail.called:
                raise Unreadable(self._nothing_heard(typed))
            return trail
        if name in ("sample", "from"):
            return replace(trail, sample=_known(said, self.model.samples, "kind of sample"))
        if name in ("at", "like", "looks-like"):
            picture = _known(said, self.model.pictures, "picture")
            return replace(trail, pictures=(*(each for each in trail.pictures if each != picture), picture))
        return self._put(trail, [self.observation(self.character(name), said)])

    def _put(self, trail: Trail, found: Iterable[Observation]) -> Trail:
        for each in found:
            others = tuple(other for other in trail.saw if other.character != each.character)
            trail = replace(trail, saw=(*others, each))
        return trail

    def character(self, name: str) -> Character:
        """The character of an id or a name, however it is written."""
        characters = self.model.library.characters
        named = {_slug(each.name): each for each in characters.values()}
        if found := characters.get(_slug(name)) or named.get(_slug(name)):
            return found
        known = [*characters, *named]
        begun = sorted({each for each in known if each.startswith(_slug(name))})
        tip = did_you_mean(_slug(name), known) or (f"Did you mean {' or '.join(begun[:4])}?" if begun else "")
        raise Unreadable(f"There is no character '{name}'. {tip or 'wetmount list characters shows them all.'}")

    def observation(self, character: Character, said: str) -> Observation:
        """What was said of one character."""
        if said.casefold() in UNSURE:
            return Observation(character.id)
        if character.is_number:
            return self._number(character, said)
        negated = said.startswith("!") or said.casefold().startswith("not ")
        said = said.removeprefix("!") if said.startswith("!") else said[4:] if negated else said
        chosen = {state for each in re.split(r"[|,]| or ", said) for state in self._states(character, each.strip())}
        return Observation(character.id, tuple(state for state in character.states if state in chosen), negated)

    def _states(self, character: Character, said: str) -> list[str]:
        named = {_slug(state.name): id for id, state in character.states.items()}
        if _slug(said) in character.states:
            return [_slug(said)]
        if _slug(said) in named:
            return [named[_slug(said)]]
        from keytool.words import hear

        found = hear(self.lay, said, among={character.id}) if self.lay else ()
        heard = [each for each in found if each.says == "is" and each.state]
        if heard and heard[0].score >= 0.5:
            return [heard[0].state]
        tip = did_you_mean(_slug(said), [*character.states, *named])
        states = ", ".join(f"{id} ({state.name})" for id, state in character.states.items())
        raise Unreadable(f"'{said}' is no state of '{character.id}'. {tip + ' ' if tip else ''}There is: {states}.")

    def _number(self, character: Character, said: str) -> Observation:
        match = NUMBER.fullmatch(said.strip())
        if not match:
            raise Unreadable(f"'{said}' is no number for '{character.id}'. Write {character.unit} or another unit, such as \"600 µm\".")
        units = self.model.library.vocabulary["unit"]
        unit2 = match["unit2"] or match["unit1"] or character.unit
        factors = []
        for unit in (match["unit1"] or unit2, unit2):
            unit = UNITS.get(unit.casefold(), unit)
            if unit not in units or units[unit].get("dimension") != units[character.unit].get("dimension"):
                fitting = ", ".join(id for id, word in units.items() if word.get("dimension") == units[character.unit].get("dimension"))
                raise Unreadable(f"'{unit}' is no unit for '{character.id}'. Units: {fitting}.")
            factors.append(float(units[unit].get("factor", 1)))
        low = float(match["low"].replace(",", ".")) * factors[0]
        high = float(match["high"].replace(",", ".")) * factors[1] if match["high"] else low
        if match["bound"]:
            low, high = (low, float("inf")) if match["bound"].casefold() in OVER else (float("-inf"), low)
        if low > high or high <= 0:
            raise Unreadable(f"'{said}' for '{character.id}' cannot be: {'it runs backwards' if low > high else 'nothing is 0'}.")
        return Observation(character.id, low=low, high=high, about=bool(match["about"]))

    def take_words(self, trail: Trail, texts: Sequence[str]) -> tuple[Trail, tuple[str, ...]]:
        """The trail with all that texts in plain words say, and the texts in which nothing was heard.

        They are heard together, since one says what the others are about.
        """
        understood = self.understood(trail, "".join(f"{each}\n" for each in texts))
        return understood.added_to(trail), unheard(understood, texts)

    def understood(self, trail: Trail, text: str) -> Understood:
        """What a text in plain words says of the thing a trail tells of, each thing with its place in the text."""
        from keytool.words.understood import Understood, understand

        return understand(self.model, self.lay, trail, text) if self.lay else Understood((), ())

    def nearest(self, typed: str) -> list[str]:
        """What may have been meant by words in which nothing was heard surely enough, at most three."""
        from keytool.words.hear import hear

        return list(dict.fromkeys(f"{each.character}={each.state}" for each in hear(self.lay, typed) if each.state))[:3] if self.lay else []

    def _nothing_heard(self, typed: str) -> str:
        near = self.nearest(typed)
        tip = f"Did you mean {' or '.join(near)}?" if near else "Say it as character=state, such as mouth=spear, or in other words."
        return f"Nothing known was heard in “{typed}”. {tip}"


def unheard(understood: Understood, texts: Sequence[str]) -> tuple[str, ...]:
    """The texts, joined line by line, in which nothing was heard."""
    left, start = [], 0
    for each in texts:
        if not any(start <= place.start <= start + len(each) for place in understood.places):
            left.append(each)
        start += len(each) + 1
    return tuple(left)


def said_words(model: Model, observation: Observation) -> str:
    """An observation in words, such as "Tail: blunt" or "Body length: 600 µm"."""
    from keytool.library.wording import number

    character = model.library.characters[observation.character]
    say, name = model.library.say, character.name
    if observation.is_unsure:
        return say("seen-cannot-tell", character=name)
    if observation.states:
        names = say("or").join(character.states[state].name for state in observation.states)
        what = say("not", what=names) if observation.negated else names
        return say("seen", character=name, what=say("perhaps", what=what) if observation.pointed else what)
    assert observation.low is not None
    assert observation.high is not None
    unit = next(
        id
        for id, word in model.library.vocabulary["unit"].items()
        if word.get("dimension") == model.library.vocabulary["unit"][character.unit].get("dimension") and float(word.get("factor", 1)) == 1
    )
    if observation.high == float("inf"):
        return say("or-more", character=name, low=f"{number(observation.low)} {unit}")
    high = f"{number(observation.high)} {unit}"
    if observation.low == float("-inf"):
        return say("under", character=name, high=high)
    if observation.low == observation.high:
        return say("about-number" if observation.about else "a-number", character=name, high=high)
    return say("about-range" if observation.about else "a-range", character=name, low=number(observation.low), high=high)


def _known(name: str, known: Iterable[str], what: str) -> str:
    known = list(known)
    if _slug(name) in known:
        return _slug(name)
    raise Unreadable(
        f"There is no {what} '{name}'. {did_you_mean(_slug(name), known) or ''} There is: {', '.join(known)}.".replace("  ", " ")
    )


def _slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.casefold()).strip("-")
