"""One form for the many spellings of a word, and the tokens of a text with what is denied and what was not made out.

`site/assets/words/fold.js` does the same, letter for letter; the search uses it too. The stemming follows step 1 of Porter 1980
(from memory), with British and American spellings and Latin plurals brought together.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*|[.;:!?\n]|,")
SENTENCE_ENDS = ".;:!?\n"
REMEMBERED = 16384
"""Words whose form is remembered: a library says the same ones again and again."""
NO = "no"
REACH = 5
"""How many words a "not" reaches."""
_VOWEL = re.compile(r"[aeiouy]")
_DOUBLE = re.compile(r"(.)\1+")
_SHORT = re.compile(r"^[^aeiouy]*[aeiouy][^aeiouywx]$")
_NEEDS_E = re.compile(r"(?:[bcdgkptz]l|nc|rv|lv|dg|lg|rg|ls|v|z|[aeiouy][^aeiouy]+at)$")
_DOUBLED = re.compile(r"([bdgkmnprt])\1$")
_LIKE_WOBBLY = re.compile(r"(?:bb|gg|dd|pp|zz|ck|nk)ly$")


@dataclass(frozen=True, slots=True)
class Token:
    """One word of a text that says something: its folded form, what is said of it, its sentence and clause, and where it stands.

    `doubted` is said with half a voice or asked; `aside` is said of what lies around, where the drop is from, how it smells.
    """

    word: str
    denied: bool
    unclear: bool
    sentence: int
    clause: int
    start: int
    end: int
    doubted: bool = False
    aside: bool = False


@lru_cache(maxsize=REMEMBERED)
def plain(word: str) -> str:
    """A word in small letters without accents."""
    bare = "".join(each for each in unicodedata.normalize("NFKD", word) if unicodedata.category(each) != "Mn")
    return bare.lower().replace("\u03bc", "u").replace("’", "'")


def fold(word: str, forms: Mapping[str, str]) -> str:
    """The form a word is compared by: "fibres", "fiber" and "fibre" are one. May begin with "not "."""
    here = plain(word)
    if here.endswith("'s"):
        here = here[:-2]
    here = here.replace("'", "")
    if here in forms:
        return _form(forms[here])
    bare = _singular(here)
    return _form(forms[bare]) if bare in forms else letters(_stem(bare))


def _form(form: str) -> str:
    denied, _, word = form.rpartition(" ")
    return f"not {letters(_stem(word))}" if denied else letters(_stem(word))


def _singular(word: str) -> str:
    if len(word) < 4 or not word.endswith("s"):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("sses", "shes", "ches", "xes", "zes")):
        return word[:-2]
    return word if word.endswith(("ss", "us", "is", "as")) else word[:-1]


def _stem(word: str) -> str:
    size = len(word)
    if size > 4 and word.endswith("ae"):
        return word[:-1]
    if size > 5 and word.endswith("um"):
        return word[:-2] + "a"
    if size > 4 and word.endswith("i"):
        return word[:-1] + "us"
    for ending in ("ing", "ed"):
        base = word[: -len(ending)]
        if word.endswith(ending) and not word.endswith("eed") and len(base) > 2 and _VOWEL.search(base):
            return _mended(base)
    if _LIKE_WOBBLY.search(word):
        return word[:-1] + "e"
    if size > 5 and word.endswith("ly"):
        return word[:-2]
    if size > 6 and word.endswith("ish"):
        return _mended(word[:-3])
    if size > 4 and word.endswith("y") and word[-2] not in "aeiou":
        return _mended(word[:-1])
    return word


def _mended(base: str) -> str:
    """A stem as it is written by itself: "swimm" is swim, "stripp" strip, "strip" stripe."""
    if _DOUBLED.search(base):
        return base[:-1]
    return base + "e" if _NEEDS_E.search(base) or _SHORT.search(base) else base


@lru_cache(maxsize=REMEMBERED)
def letters(word: str) -> str:
    """A word with one letter for each sound that is spelt in several ways."""
    here = word.replace("ae", "e")
    here = re.sub(r"oe(?=.)", "e", here)
    if len(here) > 4:
        here = re.sub(r"our$", "or", here)
        here = re.sub(r"([^aeiou])re$", r"\1er", here)
    here = re.sub(r"oul(?=[dt])", "ol", here)
    here = here.replace("ph", "f").replace("rrh", "r").replace("rh", "r").replace("ck", "k")
    here = re.sub(r"c(?=[eiy])", "s", here)
    here = re.sub(r"c(?!h)", "k", here)
    here = re.sub(r"^ps", "s", here).replace("z", "s").replace("y", "i")
    return _DOUBLE.sub(r"\1", here)


def tokens(text: str, spelling: Mapping[str, Any]) -> list[Token]:
    """The words of a text that say something, with what a "not", a "could not see", a "maybe" or a "nearby" does to them."""
    words = [(found[0], found.start(), found.end()) for found in WORD.finditer(text)]
    said = [plain(word).replace("'", "") for word, _, _ in words]
    stops, kept = set(spelling["stops"]) - set(spelling["kept"]), set(spelling["kept"])
    negating, back, breaks = set(spelling["negating"]), by_first(spelling["negating-back"]), set(spelling["breaks"])
    counts: Mapping[str, int] = spelling["count-words"]
    unsure, doubtful, passing = (by_first(spelling[each]) for each in ("unsure", "doubtful", "passing"))
    asides, asides_back = by_first(spelling["asides"]), by_first(spelling["asides-back"])
    done: list[Token] = []
    sentence = clause = reach = 0
    unclear = aside = False
    doubted: set[int] = set()
    around: set[int] = set()
    turned: set[int] = set()
    skip = -1
    for at, (_, start, end) in enumerate(words):
        here = said[at]
        if begins(doubtful, said, at):
            doubted.add(clause)
        if begins(asides_back, said, at):
            around.add(clause)
        if begins(asides, said, at):
            aside = True
        if at < skip:
            continue
        if here in SENTENCE_ENDS or here == "," or here in breaks:
            if here == "?":
                answer = next((each for each in said[at + 1 :] if each != "\n"), "")
                (turned if answer in negating else set() if answer in spelling["agreeing"] else doubted).update(_clauses(done, sentence))
            reach, unclear, aside, clause = 0, False, False, clause + 1
            sentence += here in SENTENCE_ENDS
            continue
        phrase = begins(unsure, said, at)
        if phrase:
            reach, unclear, skip = REACH, True, at + phrase
            continue
        if begins(passing, said, at):
            skip = at + begins(passing, said, at)
            continue
        if begins(back, said, at):
            done = [replace(each, denied=True) if each.clause == clause else each for each in done]
            skip = at + begins(back, said, at)
            continue
        if here in negating:
            reach = REACH
            continue
        if here in stops and here not in kept:
            continue
        less = len(here) > 6 and here.endswith("less") and here not in spelling["forms"]
        folded = (
            str(counts[_counted(here, counts)])
            if _counted(here, counts) in counts
            else fold(here[:-4] if less else here, spelling["forms"])
        )
        is_turned = less or folded.startswith("not ")
        denied = (reach > 0) is not is_turned
        done.append(Token(folded.removeprefix("not "), denied, unclear and reach > 0, sentence, clause, start, end, aside=aside))
        reach -= reach > 0
    held = {each.clause for each in done}  # "..., I think" speaks of what stands before
    doubted |= {max((other for other in held if other < each), default=each) for each in doubted if each not in held}
    return [
        replace(
            each,
            denied=each.denied or each.clause in turned,
            doubted=each.clause in doubted,
            aside=each.aside or each.clause in around,
        )
        for each in done
    ]


def by_first(phrases: Iterable[str]) -> dict[str, list[list[str]]]:
    """Phrases as lists of words, by their first word."""
    found: dict[str, list[list[str]]] = {}
    for each in map(str.split, phrases):
        found.setdefault(each[0], []).append(each)
    return found


def begins(phrases: Mapping[str, list[list[str]]], said: Sequence[str], at: int) -> int:
    """How many words the phrase has that begins at a word; 0 where none does."""
    return next((len(each) for each in phrases.get(said[at], ()) if said[at : at + len(each)] == each), 0)


def _clauses(done: Iterable[Token], sentence: int) -> set[int]:
    return {each.clause for each in done if each.sentence == sentence}


def _counted(word: str, counts: Mapping[str, int]) -> str:
    """A number word without the ending of its plural: "pairs", "twos"."""
    return word[:-1] if word.endswith("s") and word not in counts else word


def keywords(text: str, spelling: Mapping[str, Any]) -> list[str]:
    """The folded words of a text by which it is searched: those that say something, or all of them where none does.

    A "no" before what is denied is a word of its own, so that "hypha without walls" and "thread with no walls" meet.
    """
    said = [word for each in tokens(text, spelling) for word in ((NO, each.word) if each.denied and not each.unclear else (each.word,))]
    return said or [fold(found[0], spelling["forms"]).removeprefix("not ") for found in WORD.finditer(text) if found[0][0].isalnum()]
