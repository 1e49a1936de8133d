"""A whole text understood at once: the thing it is called, where it is from, and what was seen of it.

The same words mean different things of different things: teeth in a mouth, round the mouth of a shell, along a rod of glass. So what was
heard is weighed with what it may be after all the rest: a reading counts more where the character has a meaning, and where it is not
strange, for what is likely. This is done a few times over, since each reading told changes what is likely. What is weakly heard, or
said with half a voice, counts as a first impression. `site/assets/words/understood.js` gives the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from keytool.identify.model import Model
from keytool.identify.observation import Observation, Trail
from keytool.identify.posterior import posterior, value
from keytool.identify.questions import applying
from keytool.words.fold import WORD, Token, begins, by_first, fold, plain, tokens
from keytool.words.hear import Heard, hear
from keytool.words.likeness import Called, likeness, together

LEAST = 0.35
"""Below this, as heard or as weighed, nothing is taken."""
FIRM, PLAIN = 0.5, 0.8
"""Below the one, as heard or as weighed, it is a first impression; said in several words from the other on, it is none."""
ROUNDS = 3
NO_MEANING = 0.5
"""What a reading counts whose character has no meaning for anything likely."""
STRANGE, FITTING, BENT = 0.4, 1.3, 0.2
"""The least and the most that fitting in counts, and the power to which likelihood over chance is raised."""
RIVAL, AT_ONE_PLACE, LONGER = 0.8, 2, 0.7
"""How near a reading of the same words must come; how many may be taken; from where on the longer match of one character goes first."""
SAMPLE_REACH = 3


@dataclass(frozen=True, slots=True)
class Place:
    """One thing understood, and where in the text it was said. One of `observation`, `picture` and `sample` is set."""

    start: int
    end: int
    observation: Observation | None = None
    picture: str = ""
    sample: str = ""


@dataclass(frozen=True)
class Understood:
    """What a text says: its `places` in the order of the text, and all that was `heard` of it, the surest first.

    `called` is what it is like as a whole.
    """

    places: tuple[Place, ...]
    heard: tuple[Heard, ...]
    called: Called = ()

    def added_to(self, trail: Trail) -> Trail:
        """A trail with all of it. Of one character only what was told last is kept; a sample that is known already stays."""
        if self.called:
            trail = replace(trail, called=together(trail.called, self.called))
        for each in self.places:
            if each.observation:
                trail = _put(trail, [each.observation])
            elif each.picture and each.picture not in trail.pictures:
                trail = replace(trail, pictures=(*trail.pictures, each.picture))
            elif each.sample and not trail.sample:
                trail = replace(trail, sample=each.sample)
        return trail


def understand(model: Model, data: Mapping[str, Any], trail: Trail, text: str, *, typing: bool = False) -> Understood:
    """What a text says of the thing a trail tells of. `data` is what `compile_words` made."""
    heard = hear(data, text, typing=typing)
    pointed, drawn_from = first_look(data, text), sample(data, text)
    is_new = not (trail.pictures or trail.saw or any(leg.answers for leg in trail.legs))
    first = [each for each in (pointed if is_new else None, drawn_from) if each]
    called = likeness(data, text)
    before = Understood(tuple(first), (), called).added_to(trail)
    chosen = [(0.0, each) for _, each in _chosen([(each.score, each) for each in heard])]
    for _ in range(ROUNDS):
        chance = posterior(model, _put(before, (_observed(*each) for each in chosen))).chance
        chosen = _with_meaning(model, _chosen([(weighed(model, chance, each), each) for each in heard]))
    named = {(each.start, each.end) for each in first if each.picture}
    seen = [Place(each.start, each.end, _observed(rate, each)) for rate, each in chosen if (each.start, each.end) not in named]
    return Understood(tuple(sorted([*first, *seen], key=lambda each: (each.start, each.end))), heard, called)


def first_look(data: Mapping[str, Any], text: str) -> Place | None:
    """The picture pointed at by what the thing is called at first, where it is called something."""
    pointed, behind, ends = data["first-looks"], set(data["spelling"]["not-first"]), set(data["spelling"]["breaks"])
    said = {each.start: each for each in tokens(text, data["spelling"])}
    words = list(WORD.finditer(text))
    bare = [plain(found[0]).replace("'", "") for found in words]
    phrases, skip, passing = by_first(data["spelling"]["passing"]), -1, False
    for at, (found, word) in enumerate(zip(words, bare, strict=True)):
        skip = max(skip, at + begins(phrases, bare, at))  # "heaps of spores" are spores
        if at < skip:
            continue
        if word in behind:
            passing = True
        elif not word[0].isalnum() or word in ends:
            passing = False
        token = said.get(found.start())
        if token is None or passing or token.aside or token.denied or token.word not in pointed:
            continue
        if bare[at + 1 : at + 2] == ["inside"]:
            continue
        while (behind_it := _next_word(text, token.end, said)) and behind_it.word in pointed and not behind_it.denied:
            token = behind_it  # a spider web is a web, a thread worm a worm
        picture = pointed[token.word]
        return Place(token.start, token.end, picture=picture) if picture else None
    return None


def _next_word(text: str, end: int, said: Mapping[int, Token]) -> Token | None:
    """The word that follows at once, without a stop between."""
    start = next((at for at in range(end, len(text)) if text[at] not in " -"), len(text))
    return said.get(start) if start > end else None


def sample(data: Mapping[str, Any], text: str) -> Place | None:
    """The kind of sample the drop is from, where that is said: "from my worm bin", "in potting soil"."""
    words = [(plain(found[0]).replace("'", ""), found.start(), found.end()) for found in WORD.finditer(text)]
    forms = data["spelling"]["forms"]
    folded = [fold(word, forms) for word, _, _ in words]
    best: tuple[int, int, str] | None = None
    for phrase, id in data["samples"]:
        size = len(phrase)
        for at in range(len(words) - size + 1):
            if folded[at : at + size] != phrase or (best and size <= best[0]):
                continue
            lead = " ".join(word for word, _, _ in words[max(0, at - SAMPLE_REACH) : at])
            if any(f" {before} " in f" {lead} " for before in data["spelling"]["sample-before"]):
                best = (size, at, id)
    return Place(words[best[1]][1], words[best[1] + best[0] - 1][2], sample=best[2]) if best else None


def weighed(model: Model, chance: Sequence[float], heard: Heard) -> float:
    """The score of a reading, weighed with what is likely: whether the character has a meaning there, and whether it would be strange."""
    table = model.tables[heard.character]
    factor = NO_MEANING + (1 - NO_MEANING) * applying(model, chance, heard.character)
    if heard.says != "unsure":
        seen = value(model, _observed(1.0, heard))
        column = table.chances(seen)
        likely = sum(each * column[row] for each, row in zip(chance, table.row, strict=True))
        factor *= min(FITTING, max(STRANGE, (likely / table.blind(seen)) ** BENT))
    return math.floor(heard.score * factor * 1e6 + 0.5) / 1e6


def _chosen(rated: list[tuple[float, Heard]]) -> list[tuple[float, Heard]]:
    """Of each character one reading, the best; of the same words no more than two, and none that is much weaker than another."""
    rated = sorted(rated, key=lambda each: (-each[0], each[1].says != "is", each[1].character, each[1].state))
    done: dict[str, tuple[float, Heard]] = {}
    for rate, each in rated:
        if rate < LEAST or each.score < LEAST or each.character in done:
            continue
        around = [(other, one) for other, one in rated if one.start <= each.start and each.end <= one.end]
        if any(rate < RIVAL * other for other, _ in around):
            continue
        if any(
            one.character == each.character and one.end - one.start > each.end - each.start and other >= LONGER * rate
            for other, one in around
        ):
            continue
        if sum((one.start, one.end) == (each.start, each.end) for _, one in done.values()) < AT_ONE_PLACE:
            done[each.character] = (rate, each)
    return list(done.values())


def _with_meaning(model: Model, chosen: list[tuple[float, Heard]]) -> list[tuple[float, Heard]]:
    """Readings of which none makes another meaningless: a mouth that is shut has no straight spear. Of two the surer stays."""
    told = {each.character: (rate, each.state) for rate, each in chosen if each.says == "is" and each.state}
    left = set()
    for rate, each in chosen:
        for name, states in model.library.characters[each.character].applies.where.items():
            if name in told and told[name][1] not in states:
                left.add(each.character if told[name][0] >= rate or each.says != "is" else name)
    return [(rate, each) for rate, each in chosen if each.character not in left]


def _put(trail: Trail, found: Iterable[Observation]) -> Trail:
    for each in found:
        trail = replace(trail, saw=(*(other for other in trail.saw if other.character != each.character), each))
    return trail


def _observed(rate: float, heard: Heard) -> Observation:
    """What was heard, as an observation; one number is taken as a guess by eye."""
    if heard.says == "unsure":
        return Observation(heard.character)
    is_plain = heard.score >= PLAIN and heard.words > 1
    weak = heard.doubted or (min(rate, heard.score) < FIRM and not is_plain)
    if heard.state:
        return Observation(heard.character, (heard.state,), heard.says == "not", pointed=weak)
    low = -math.inf if heard.low is None else heard.low
    high = math.inf if heard.high is None else heard.high
    return Observation(heard.character, low=low, high=high, about=low == high)


__all__ = ["Place", "Understood", "first_look", "sample", "understand", "weighed"]
