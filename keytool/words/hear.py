"""Typed lay words as ranked observations.

Each sentence is held against what people say of every state. A phrase counts by how much of it was said, how telling its words
are, and how much of the sentence it explains; a denied word matches only a phrase that denies it too, and else speaks against the
state. `site/assets/words/hear.js` gives the same answers.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Literal

from keytool.words.fold import REMEMBERED, Token, tokens
from keytool.words.sizes import sizes

SURE = 0.5
"""From this score on, an observation may be taken without asking."""
LEAST = 0.2
ALIKE, SLIP, BEGUN = 0.7, 0.85, 0.8
"""What a word of the same meaning, a word with a letter wrong and the beginning of a word count."""
HALF = 150
"""The weight of matched words, in hundredths, at which a match is half convincing."""
OTHER_PART, OTHER_KIND, OWN_WORD, DENIED = 0.55, 0.6, 1.1, 0.75
NEARLY, RIVAL, MOST_AT_ONE_PLACE = 0.95, 0.7, 2
TOPIC_ONLY, COMMON, MANY_STATES = 0.45, 0.65, 20
"""What counts where only the character was named; one word alone that people say of more states than this."""
CHATTER = 0.25
"""How much of a match is lost where nothing else in the sentence belongs to it."""
DENIES = 0.8
"""How much of a phrase must be said to deny it: who says "not moving" does not say that it does not glide."""
MOST = 2000
"""Letters that are heard at once."""
CLOSE, FAR, SCATTERED, STREWN = 1, 3, 0.65, 0.4
"""So many other words may stand between those of a phrase, and what it counts when there are more, or even more than `FAR`."""
"""A word that stands for more characters than this is offered, not taken."""
Says = Literal["is", "not", "unsure"]


@dataclass(frozen=True, slots=True)
class Heard:
    """One observation: what is said of a character, its state (empty for a size, and where it was not made out), and how surely.

    `low` and `high` are set for sizes, in base units; None is open. `start` and `end` are where in the text it was said,
    `doubted` whether with half a voice, in how many `words`.
    """

    says: Says
    character: str
    state: str
    low: float | None
    high: float | None
    score: float
    start: int
    end: int
    doubted: bool = False
    words: int = 1


@dataclass(frozen=True, slots=True)
class _Word:
    """A word of the text as it is held against phrases: the words it may stand for, each with how far it counts."""

    token: Token
    means: Mapping[str, float]
    begun: str
    weight: int


def hear(data: Mapping[str, Any], text: str, *, among: Collection[str] | None = None, typing: bool = False) -> tuple[Heard, ...]:
    """What a text says, the surest first; nothing below a score of 0.2.

    `data` is what `compile_words` made. `among` keeps to some characters. While somebody is `typing`, the last word may be unfinished.
    """
    text = text[:MOST]
    blanked = list(text)
    for token in tokens(text, data["spelling"]):
        if token.aside:
            blanked[token.start : token.end] = " " * (token.end - token.start)
    measured = sizes("".join(blanked), data)
    for size in measured:
        blanked[size.start : size.end] = " " * (size.end - size.start)
    bare = "".join(blanked)
    said = [each for each in tokens(bare, data["spelling"]) if not each.aside]
    words = [_word(data, token, typing and token.end == len(bare)) for token in said]
    topics = {theme for word in words if not word.token.denied for theme in data["kinds"].get(word.token.word, ())}
    best: dict[tuple[str, str, str], Heard] = {}
    for each in sorted(measured, key=lambda each: -each.score):
        if each.character and (among is None or each.character in among):
            heard = Heard("is", each.character, "", each.low, each.high, each.score, each.start, each.end)
            best.setdefault(("is", each.character, ""), heard)
    for span in _spans(words):
        meant = _meant(data, span)
        for number in sorted({number for word in meant for number in data["found"][word]}):
            character, state, phrases = data["states"][number]
            if among is not None and character not in among:
                continue
            for heard in _held(data, span, character, state, phrases, topics, meant):
                key = (heard.says, heard.character, heard.state)
                if key not in best or heard.score > best[key].score:
                    best[key] = heard
    return tuple(
        sorted((each for each in best.values() if each.score >= LEAST), key=lambda each: (-each.score, each.character, each.state))
    )


def _meant(data: Mapping[str, Any], span: list[_Word]) -> frozenset[str]:
    """The words of phrases that the words of a span may stand for."""
    found = data["found"]
    meant = {word for said in span for word in said.means if word in found}
    return frozenset(meant | {word for said in span if said.begun for word in found if word.startswith(said.begun)})


@lru_cache(maxsize=REMEMBERED)
def _bare(phrase: str) -> tuple[str, ...]:
    """The words of a phrase without what is said of them."""
    return tuple(each.lstrip("!?") for each in phrase.split())


def _spans(words: list[_Word]) -> Iterable[list[_Word]]:
    """Each clause, and each sentence of several clauses."""
    for level in ("clause", "sentence"):
        grouped: dict[int, list[_Word]] = {}
        for word in words:
            grouped.setdefault(getattr(word.token, level), []).append(word)
        for span in grouped.values():
            if level == "clause" or span[0].token.clause != span[-1].token.clause:
                yield span


def _word(data: Mapping[str, Any], token: Token, unfinished: bool) -> _Word:
    weights, groups = data["weights"], data["groups"]
    is_noise = len(token.word) == 1 and token.word.isalpha() and token.end - token.start > 2  # "zzz" folds to the letter of the S waves
    known = {token.word: 1.0} if not is_noise and (token.word in weights or token.word in groups) else {}
    begun = ""
    if not known and unfinished and len(token.word) > 1:
        begun = token.word
    elif not known:
        near = _nearest(token.word, weights)
        known = {near: SLIP} if near else {}
    means = dict(known)
    for word, factor in known.items():
        for other, numbers in groups.items():
            if other not in means and set(numbers) & set(groups.get(word, ())):
                means[other] = factor * ALIKE
    return _Word(token, means, begun, max((weights[each] for each in known if each in weights), default=400))


def _nearest(word: str, known: Iterable[str]) -> str:
    """The known word one slip away, two for long words: the nearest, then the first by the alphabet. Empty when there is none."""
    allowed = 0 if len(word) < 4 else 1 if len(word) < 8 else 2
    best = (allowed + 1, "")
    for other in known:
        if allowed and abs(len(other) - len(word)) <= allowed:
            best = min(best, (slips(word, other, allowed), other))
    return best[1]


def slips(one: str, other: str, allowed: int) -> int:
    """How many letters were left out, put in, changed or swapped with their neighbour; more than `allowed` may be said too low."""
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, a in enumerate(one, 1):
        above, row = row, [i]
        for j, b in enumerate(other, 1):
            least = min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (a != b))
            if i > 1 and j > 1 and a == other[j - 2] and one[i - 2] == b:
                least = min(least, before[j - 2] + 1)
            row.append(least)
        if min(row) > allowed:
            return allowed + 1
        before = above
    return row[-1]


def _held(
    data: Mapping[str, Any], span: list[_Word], character: str, state: str, phrases: list[Any], topics: set[str], meant: frozenset[str]
) -> Iterable[Heard]:
    """What one clause or sentence says of one state."""
    about = data["characters"][character]
    whole = sum(word.weight for word in span)
    best: dict[Says, tuple[float, list[_Word]]] = {}
    touched: dict[int, float] = {}
    for weight, phrase in phrases:
        if meant.isdisjoint(_bare(phrase)):
            continue
        says, share, matched = _matched(data, span, phrase)
        for at, factor in matched.items():
            if says == "is":
                touched[at] = max(touched.get(at, 0.0), factor)
        if not share or (says == "not" and share < DENIES):
            continue
        told = sum(span[at].weight * factor for at, factor in matched.items())
        explained = told / whole
        score = share * share * (told / (told + HALF)) * (1 - CHATTER + CHATTER * explained) * weight / 100
        apart = max(matched) - min(matched) + 1 - len(matched)
        score *= 1.0 if apart <= CLOSE else SCATTERED if apart <= FAR else STREWN
        score *= 1.0 if says == "unsure" else _telling(data, phrase, share, {span[at].token.word for at in matched}, about)
        if score > best.get(says, (0.0, []))[0]:
            best[says] = (score, [span[at] for at in sorted(matched)])
    for says, (score, words) in best.items():
        if says == "is":
            union = sum(span[at].weight * factor for at, factor in touched.items()) / whole
            score += 0.3 * (1 - score) * union * score
        score *= _fitting(data, span, words, about, topics) * (1 if says == "is" else DENIED)
        start, end = min(word.token.start for word in words), max(word.token.end for word in words)
        rounded = math.floor(min(score, 1) * 1000 + 0.5) / 1000
        doubted = any(word.token.doubted for word in words)
        yield Heard(says, character, "" if says == "unsure" else state, None, None, rounded, start, end, doubted, len(words))


def _telling(data: Mapping[str, Any], phrase: str, share: float, said: set[str], about: Mapping[str, Any]) -> float:
    """How far the words said tell this state from others: what only names the character, or is said of everything, tells little."""
    own = set(about["words"])
    if share < 1 and said <= own:
        return TOPIC_ONLY
    word = phrase.lstrip("!?")
    return COMMON if len(data["found"].get(word, ())) > MANY_STATES and not said & own else 1.0


def _matched(data: Mapping[str, Any], span: list[_Word], phrase: str) -> tuple[Says, float, dict[int, float]]:
    """What a span says by a phrase, how much of the phrase it holds (0 when that is too little), and the words that hold it."""
    says: Says = "is"
    wanted = phrase.split()
    total = met = 0.0
    denied = unclear = agreed = 0
    matched: dict[int, float] = {}
    for each in wanted:
        sign = each[0] if each[0] in "!?" else ""
        word = each[1:] if sign else each
        weight = data["weights"][word]
        total += weight
        here, factor = -1, 0.0
        for at, said in enumerate(span):
            means = said.means.get(word, BEGUN if said.begun and word.startswith(said.begun) else 0.0)
            if means > factor:
                here, factor = at, means
        if here < 0:
            continue
        token = span[here].token
        if sign and not token.denied:
            continue
        opposite = token.denied if not sign else sign == "!" and token.unclear
        met += weight * factor
        matched[here] = max(matched.get(here, 0.0), factor)
        if opposite:
            denied += 1
            unclear += token.unclear
        else:
            agreed += 1
    if not matched:
        return says, 0.0, {}
    if denied:
        if agreed and denied < len(matched):
            return says, 0.0, {}
        says = "unsure" if unclear else "not"
    return says, met / total, matched


def _fitting(data: Mapping[str, Any], span: list[_Word], words: list[_Word], about: Mapping[str, Any], topics: set[str]) -> float:
    """How well a character goes with the part spoken of and with the kind of thing."""
    parts, own = data["parts"], about["words"]
    spoken = [word for word in span if word.token.word in parts and not word.token.denied]
    factor = 1.0
    if spoken and not any(word.token.word in own or word in words for word in spoken):
        factor *= OTHER_PART
    if topics and about["themes"] and not topics & set(about["themes"]):
        factor *= OTHER_KIND
    return factor * (OWN_WORD if any(word.token.word in own for word in span) else about["wide"] / 100)


def taken(heard: Iterable[Heard]) -> list[Heard]:
    """The observations that may be taken unasked: sure, the best of each character, and said with words that stand for little else.

    Of two that rest on the same words the surer is taken, or both where they are equally sure; what is so goes before what is not.
    """
    sure = [each for each in heard if each.score >= SURE]
    done: dict[str, Heard] = {}
    for each in sorted(sure, key=lambda each: each.says != "is"):
        around = [other for other in sure if other.start <= each.start and each.end <= other.end and other.says == each.says]
        equals = {
            other.character for other in around if other.score >= RIVAL * each.score and (other.start, other.end) == (each.start, each.end)
        }
        is_best = all(each.score >= NEARLY * other.score for other in around)
        if is_best and len(equals) <= MOST_AT_ONE_PLACE:
            done.setdefault(each.character, each)
    return list(done.values())


__all__ = ["Heard", "hear", "taken"]
