"""Sizes and speeds in typed text: "600 um long", "half a millimetre", "30 by 15 microns", "at least 0.1 mm wide"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from keytool.words.fold import fold, plain

_LEXEME = re.compile(r"[½¼¾]|^\.[0-9]+|\d+(?:[.,]\d+)?|[^\W\d_½¼¾]+|[^\s\w]|_")
_NUMBER = re.compile(r"(?:\.[0-9]+|[0-9]+(?:[.,][0-9]+)?)$")
_SIGNS = {"½": 0.5, "¼": 0.25, "¾": 0.75}
_JOINS = ("-", "–", "to", "and", "or")
_BETWEEN = ("by", "x", "×")
_STOPS = (",", ".", ";")
_BARE_POINT = re.compile(r"(^|[^\w.,])\.(?=[0-9])")
_BEFORE_A_PART = ("with", "on", "in", "at", "of", "from", "round", "around", "near", "through")
_LIKE, _LIKE_REACH = "like", 4
_POWER = re.compile(r"\b(100|200|400|1000) ?[x\u00d7]", re.IGNORECASE)
_FIELD, _FIELD_REACH = ("field", "view"), 4
TOO_LARGE = 1.5
"""Times the largest size of a part in the library: above that it is the whole that was measured."""
_PASSED = ("of", "a", "an", "the", "in", "each", "every", "per", "/", "1", "one")


@dataclass(frozen=True, slots=True)
class Size:
    """A size in a text: the character it belongs to, its lowest and highest value (None: open), how sure that is, and where.

    Values are in base units.
    """

    character: str
    low: float | None
    high: float | None
    score: float
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class _Lexeme:
    text: str
    start: int
    end: int


def sizes(text: str, data: Mapping[str, Any]) -> list[Size]:
    """The sizes of a text in the order they stand; those of a part that the library does not measure have an empty character."""
    spelling = data["spelling"]
    text = _BARE_POINT.sub(lambda each: "0." if each[1] else ".", text)
    lexemes = [_Lexeme(each[0] if each[0] in _SIGNS else plain(each[0]), each.start(), each.end()) for each in _LEXEME.finditer(text)]
    unit_of = {name: spelling["sizes"][unit] for unit, names in spelling["units"].items() for name in map(plain, names)}
    kind = next((each for each in (fold(lexeme.text, spelling["forms"]) for lexeme in lexemes) if each in data["kinds"]), "")
    power = _POWER.search(text)
    field = data["field-once"] / int(power[1]) if power else 0.0
    found: list[Size] = []
    at = 0
    while at < len(lexemes):
        part, behind = _share_of_field(lexemes, at, spelling) if field else (0.0, at)
        if part:
            found.append(Size("body-length", part * field, part * field, 0.55, lexemes[at].start, lexemes[behind].end))
            at = behind + 1
            continue
        read = _read(lexemes, at, spelling, unit_of)
        if read is None:
            at += 1
            continue
        values, by, after, is_speed = read
        if not is_speed and _is_distance(lexemes, at, after, spelling):
            at = after
            continue
        here = lexemes[at].start, lexemes[after - 1].end
        along, told = ("speed", -1) if is_speed or by else _along(lexemes, at, after, spelling)
        if told >= after:
            here = here[0], lexemes[told].end
        if not along and max(values) < spelling["measured-across"].get(kind, 0):
            along = "wide"
        ways = (("long", values[:1]), ("wide", values[1:])) if by and not is_speed else ((along, values),)
        for way, given in ways:
            low, high = _bounds(lexemes, at, given, spelling)
            character = _character(lexemes, at, way or "long", given, data)
            found.append(Size(character, low, high, 0.9 if way else 0.55, *here))
        at = after
    return found


def _share_of_field(lexemes: list[_Lexeme], at: int, spelling: Mapping[str, Any]) -> tuple[float, int]:
    """Which part of the field of view is named here, and where that ends: "a third of the field", "half my view". 0 for none."""
    if _text(lexemes, at) not in spelling["parts-of-one"]:
        return 0.0, at
    for behind in range(at + 1, at + 1 + _FIELD_REACH):
        if _text(lexemes, behind) in _FIELD:
            return float(spelling["parts-of-one"][_text(lexemes, at)]), behind
        if _text(lexemes, behind) not in ("of", "the", "my", "a", "whole"):
            break
    return 0.0, at


def _is_distance(lexemes: list[_Lexeme], at: int, after: int, spelling: Mapping[str, Any]) -> bool:
    """Whether it is said how far off or how far apart something is, which is no size."""
    before = [lexemes[each].text for each in (at - 1, at - 2) if each >= 0]
    first = next((word for word in before if word not in ("about", "some", "~")), "")
    behind = {_text(lexemes, each) for each in range(after, after + 3)}
    return first in spelling["distance-before"] or bool(behind & set(spelling["distance-behind"]))


def _read(
    lexemes: list[_Lexeme], at: int, spelling: Mapping[str, Any], unit_of: Mapping[str, float]
) -> tuple[list[float], bool, int, bool] | None:
    """The values that begin at a lexeme in base units, whether they are two sides, what follows, and whether they are a speed."""
    one = _value(lexemes, at, spelling)
    if one is None:
        return None
    value, after = one
    values, by, unit = [value], False, 0.0
    if _text(lexemes, after) in unit_of:
        unit, after = unit_of[_text(lexemes, after)], after + 1
    join = _text(lexemes, after)
    if join in _BETWEEN or (join in _JOINS and not unit):
        other = _value(lexemes, after + 1, spelling)
        if other and _text(lexemes, other[1]) in unit_of:
            second = unit_of[_text(lexemes, other[1])]
            values = [value * (unit or second), other[0] * second]
            by, after, unit = join in _BETWEEN, other[1] + 1, second
            return values, by, *_per_second(lexemes, after, spelling)
    if not unit:
        return None
    return [value * unit], by, *_per_second(lexemes, after, spelling)


def _value(lexemes: list[_Lexeme], at: int, spelling: Mapping[str, Any]) -> tuple[float, int] | None:
    """A number written in figures or words, and what follows it."""
    text = _text(lexemes, at)
    parts, counts = spelling["parts-of-one"], spelling["count-words"]
    if text in ("a", "an"):
        other = _text(lexemes, at + 1)
        is_unit = any(other in map(plain, names) for names in spelling["units"].values())
        return (1.0, at + 1) if is_unit else _value(lexemes, at + 1, spelling) if counts.get(other, 0) >= 100 else None
    if _NUMBER.match(text):
        value, after = _figures(text), at + 1
        if _text(lexemes, after) == "/" and _NUMBER.match(_text(lexemes, after + 1)):
            below = _figures(_text(lexemes, after + 1))
            return (value / below, after + 2) if below else None
        if _text(lexemes, after) in _SIGNS:
            return value + _SIGNS[_text(lexemes, after)], after + 1
        return value, after
    if text in _SIGNS:
        return _SIGNS[text], at + 1
    if text in counts:
        value, after = float(counts[text]), at + 1
        if counts.get(_text(lexemes, after), 0) >= 100 > value:
            value, after = value * counts[_text(lexemes, after)], after + 1
        if [_text(lexemes, after), _text(lexemes, after + 1)] == ["and", "a"] and _text(lexemes, after + 2) in parts:
            return value + parts[_text(lexemes, after + 2)], after + 3
        return value, after
    if text in parts:
        after = at + 1
        while _text(lexemes, after) in ("of", "a", "an"):
            after += 1
        return float(parts[text]), after
    return None


def _figures(text: str) -> float:
    """A number in figures: "5,2" is 5.2, "1,200" is 1200."""
    whole, comma, rest = text.partition(",")
    return float(whole + rest) if comma and len(rest) == 3 else float(text.replace(",", "."))


def _per_second(lexemes: list[_Lexeme], after: int, spelling: Mapping[str, Any]) -> tuple[int, bool]:
    """What follows a unit once "a second" is passed, and whether it was there."""
    here = after
    while _text(lexemes, here) in _PASSED:
        here += 1
    return (here + 1, True) if here > after and _text(lexemes, here) in spelling["per-second"] else (after, False)


def _along(lexemes: list[_Lexeme], at: int, after: int, spelling: Mapping[str, Any]) -> tuple[str, int]:
    """Which way a size was taken, and which word says so: the nearest behind, else before, within its clause. -1 where none does."""
    ways = {word: way for way, words in spelling["along"].items() for word in words}
    for places in (range(after, after + 3), range(at - 1, max(-1, at - 6), -1)):
        for place in places:
            word = _text(lexemes, place)
            if word in _STOPS:
                break
            if word in ways:
                return ways[word], place
    return "", -1


def _bounds(lexemes: list[_Lexeme], at: int, values: list[float], spelling: Mapping[str, Any]) -> tuple[float | None, float | None]:
    before = [_text(lexemes, each) for each in range(at - 1, at - 4, -1) if each >= 0]
    for word in before:
        if word in _STOPS:
            break
        if word in spelling["above"]:
            return max(values), None
        if word in spelling["below"]:
            return None, max(values)
    return min(values), max(values)


def _character(lexemes: list[_Lexeme], at: int, along: str, values: list[float], data: Mapping[str, Any]) -> str:
    """The number character a size belongs to, by the thing named nearest before it in its sentence, those it measures first.

    What is far too large for that part of anything is the size of the whole: no spear is 0.6 mm long. What it is like ("like a hair")
    is nothing that was measured, nor is a part of which only was said, before a comma, that something is on it or has it.
    """
    forms = data["spelling"]["forms"]
    known = {word for _, _, of, not_of, _ in data["sizes"] for word in (*of, *not_of)} | set(data["kinds"]) | {"bodi"}
    fitting = [each for each in data["sizes"] if each[1] == along]
    owners = {word for _, _, of, _, _ in fitting for word in of}
    subject, passed_stop = "", False
    for each in range(at - 1, -1, -1):
        word = _text(lexemes, each)
        if word == "." or (subject and word in _STOPS):
            break
        passed_stop = passed_stop or word in _STOPS
        if _is_likened(lexemes, each) or (passed_stop and _is_behind(lexemes, each)):
            continue
        folded = fold(word, forms)
        if folded in owners or (not subject and folded in known):
            subject = folded
        if subject in owners:
            break
    own = [id for id, _, of, _, most in fitting if subject in of and max(values) <= TOO_LARGE * most]
    is_part = any(subject in of for _, _, of, _, _ in fitting)
    rest = [id for id, _, of, not_of, _ in fitting if not of and (is_part or subject not in not_of)]
    return str((own or rest or [""])[0])


def _is_likened(lexemes: list[_Lexeme], at: int) -> bool:
    """Whether a word only says what something is like."""
    for back in range(1, _LIKE_REACH + 1):
        word = _text(lexemes, at - back) if at >= back else "."
        if word in _STOPS:
            return False
        if word == _LIKE:
            return True
    return False


def _is_behind(lexemes: list[_Lexeme], at: int) -> bool:
    """Whether a word stands behind "on its", "with a" or the like."""
    return any(at >= back and _text(lexemes, at - back) in _BEFORE_A_PART for back in (1, 2, 3))


def _text(lexemes: list[_Lexeme], at: int) -> str:
    return lexemes[at].text if at < len(lexemes) else ""
