"""The address of a trail: one line of text that page, terminal and records share, and that restores everything told.

Parts are joined by `/`: `from:compost` (kind of sample), `at:worm` (picture pointed at), `called:air-bubble=52,soil-mite=20` (what
the user's own words are like, in tenths of a bit), `key:threads` (a key begins),
`couplet=lead` and `couplet=cannot-tell` (answers in it), `saw:tail=blunt,pointed`, `saw:tail=!blunt`, `saw:body-length=600`,
`~600` (about), `500..700`, `500..`, `..700` (base units), `saw:tail=cannot-tell`, and `saw:~tail=blunt` for a first impression.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from urllib.parse import unquote

from keytool.identify.model import Model
from keytool.identify.observation import CANNOT_TELL, Answer, Answers, Leg, Observation, Trail

CALLED = re.compile(r"[1-9][0-9]{0,2}")
NUMBER = re.compile(r"(~)?(\d+(?:\.\d+)?)?(?:(\.\.)(\d+(?:\.\d+)?)?)?")


@dataclass(frozen=True, slots=True)
class Parsed:
    """The trail of an address, and in plain sentences what of it was left out."""

    trail: Trail
    left: tuple[str, ...] = ()


def written(trail: Trail) -> str:
    """The address of a trail."""
    return "/".join(_parts(trail))


def address(answers: Answers) -> str:
    """The address of a walk of one key, without the key: `couplet=lead/couplet=lead`."""
    return "/".join(f"{each.couplet}={each.lead}" for each in answers)


def _parts(trail: Trail) -> Iterator[str]:
    if trail.sample:
        yield f"from:{trail.sample}"
    yield from (f"at:{picture}" for picture in trail.pictures)
    if trail.called:
        yield "called:" + ",".join(f"{id}={tenths}" for id, tenths in trail.called)
    for leg in trail.legs:
        yield f"key:{leg.key}"
        yield from (f"{answer.couplet}={answer.lead}" for answer in leg.answers)
    for each in trail.saw:
        yield f"saw:{'~' if each.pointed else ''}{each.character}={observed(each)}"


def observed(observation: Observation) -> str:
    """What an observation says, as it stands in an address."""
    if observation.is_unsure:
        return CANNOT_TELL
    if observation.states:
        return ("!" if observation.negated else "") + ",".join(observation.states)
    assert observation.low is not None
    assert observation.high is not None
    low, high = (figure(end) for end in (observation.low, observation.high))
    return ("~" if observation.about else "") + (low if low == high else f"{low}..{high}")


def figure(value: float) -> str:
    """A number as it stands in an address: no exponent, at most six decimals; nothing where it is open."""
    return "" if math.isinf(value) else f"{value:.6f}".rstrip("0").rstrip(".")


def parsed(model: Model, address: str, key: str = "") -> Parsed:
    """The trail of an address; with `key`, of one that begins in that key. Never raises: what cannot be read is left out and named."""
    reading = _Reading(model, key)
    for part in re.split(r"[/#]", address):
        if part:
            reading.take(_decoded(part))
    return Parsed(reading.trail, tuple(reading.left))


def _decoded(part: str) -> str:
    """A part without its percent signs; as it is where they are broken."""
    try:
        return (part if re.search("%(?![0-9A-Fa-f]{2})", part) else unquote(part, errors="strict")).strip()
    except UnicodeDecodeError:
        return part.strip()


class _Reading:
    """One address being read."""

    def __init__(self, model: Model, key: str) -> None:
        self.model = model
        self.trail = Trail(legs=(Leg(key),) if key else ())
        self.left: list[str] = []

    def take(self, part: str) -> None:
        name, colon, rest = part.partition(":")
        if colon and name in ("from", "at", "called", "key", "saw"):
            getattr(self, f"_{name}")(rest)
        elif not colon and "=" in part:
            self._answer(*part.split("=", 1))
        elif part in self.model.keys:  # an older way to write it
            self._key(part)
        else:
            self.left.append(f"'{_short(part)}' says nothing that this library knows.")

    def _from(self, sample: str) -> None:
        if sample in self.model.samples:
            self.trail = replace(self.trail, sample=sample)
        else:
            self._unknown("kind of sample", sample)

    def _at(self, picture: str) -> None:
        if picture not in self.model.pictures:
            self._unknown("picture", picture)
        elif picture not in self.trail.pictures:
            self.trail = replace(self.trail, pictures=(*self.trail.pictures, picture))

    def _called(self, text: str) -> None:
        found: list[tuple[str, int]] = []
        for each in text.split(","):
            id, _, tenths = each.partition("=")
            if id not in self.model.groups and id not in self.model.index:
                self._unknown("entry", id)
            elif not CALLED.fullmatch(tenths):
                self.left.append(f"'{_short(tenths)}' does not say how much the words are like '{id}'.")
            elif id not in (one for one, _ in found):
                found.append((id, int(min(int(tenths), 10 * self.model.figure("like-most")))))
        self.trail = replace(self.trail, called=tuple(found))

    def _key(self, key: str) -> None:
        if key not in self.model.keys:
            self._unknown("key", key)
        elif not self.trail.legs or self.trail.legs[-1].key != key:
            self.trail = replace(self.trail, legs=(*self.trail.legs, Leg(key)))

    def _answer(self, couplet: str, lead: str) -> None:
        if not self.trail.legs:
            self.left.append(f"'{_short(couplet)}' was answered before any key was opened.")
            return
        *before, leg = self.trail.legs
        key = self.model.keys[leg.key].key
        if couplet not in key.couplets:
            self._unknown(f"question of {key.id}", couplet)
        elif lead != CANNOT_TELL and lead not in key.couplets[couplet].leads:
            self._unknown(f"answer to '{couplet}'", lead)
        else:
            answers = [each for each in leg.answers if each.couplet != couplet]
            if len(answers) < len(leg.answers):
                self.left.append(f"'{couplet}' was answered twice; the later answer counts.")
            self.trail = replace(self.trail, legs=(*before, Leg(leg.key, (*answers, Answer(couplet, lead)))))

    def _saw(self, text: str) -> None:
        name, equals, said = text.partition("=")
        pointed, name = name.startswith("~"), name.removeprefix("~")
        if name not in self.model.tables:
            self._unknown("character", name)
            return
        found = observation_of(self.model, name, said if equals else CANNOT_TELL)
        if isinstance(found, str):
            self.left.append(found)
        else:
            others = [each for each in self.trail.saw if each.character != name]
            self.trail = replace(self.trail, saw=(*others, replace(found, pointed=pointed)))

    def _unknown(self, what: str, name: str) -> None:
        self.left.append(f"There is no {what} '{_short(name)}'.")


def observation_of(model: Model, character: str, said: str) -> Observation | str:
    """What an address says of one character, or in a plain sentence why it says nothing."""
    table = model.tables[character]
    if said == CANNOT_TELL:
        return Observation(character)
    if table.is_number:
        return _number(character, said)
    negated, states = said.startswith("!"), said.removeprefix("!").split(",")
    for state in states:
        if state not in table.states:
            return f"'{_short(state)}' is not a state of '{character}': {', '.join(table.states)}."
    chosen = tuple(state for state in table.states if state in states)
    if negated and len(chosen) == len(table.states):
        return f"Not one state of '{character}' is left."
    return Observation(character, chosen, negated)


def _number(character: str, said: str) -> Observation | str:
    match = NUMBER.fullmatch(said)
    if not match or not (match[2] or match[4]):
        return f"'{_short(said)}' is no number for '{character}'."
    low = float(match[2]) if match[2] else -math.inf
    high = float(match[4]) if match[4] else math.inf if match[3] else low
    if low > high:
        return f"'{_short(said)}' for '{character}' runs backwards."
    if low == high == 0:
        return f"Nothing is 0 of '{character}'."
    return Observation(character, low=low, high=high, about=bool(match[1]))


def _short(text: str) -> str:
    clean = "".join(letter if letter.isprintable() else "?" for letter in text)
    return clean if len(clean) <= 40 else clean[:39] + "…"
