"""What a text is like as a whole: its words against the names, the lay names and the summary of every entry.

A text says more than what can be heard of single characters: "a bell on a spring" names a thing. So each word that an entry's own words
share with it counts as much as it is rare; a whole name that is said counts more. What comes of it is one soft look, in tenths of a
bit, and never more than `like-most`: it tips what the looks leave open and does not outweigh them. Everything is counted in whole
numbers, so that `site/assets/words/likeness.js` comes to the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Any

from keytool.library.model import Library
from keytool.library.wording import plain
from keytool.words.fold import tokens

SCALE = 1_000_000
"""A word's rarity in hundredths, how surely it is said and how much it counts in tenths each, an entry's length in hundredths."""
SAID, DOUBTED = 10, 5
TAKEN = 24
"""So many of the likest are kept."""

Called = tuple[tuple[str, int], ...]
"""The ids of entries that a text is like, the likest first, each with tenths of a bit."""


def compile_likeness(library: Library) -> dict[str, Any]:
    """What `likeness` needs, as plain data.

    For each entry its id, its length, its names and the words of its summary; how much a word that stands in so many of them tells;
    and the figures.
    """
    figures = {name: library.quantities[f"like-{name}"].low for name in ("summary", "length", "name", "least", "bits", "most", "group")}
    docs = [(entry.id, *_own(library, entry.id)) for entry in library.entries.values()]
    sizes = [len({word for name in names for word in name} | told) for _, names, told in docs]
    mean = sum(sizes) / max(1, len(sizes))
    return {
        "docs": [
            [
                id,
                round(100 / (1 - figures["length"] + figures["length"] * size / mean)),
                ";".join(sorted({" ".join(sorted(name)) for name in names})),
                " ".join(sorted(told - {word for name in names for word in name})),
            ]
            for (id, names, told), size in zip(docs, sizes, strict=True)
        ],
        "rare": [0, *(round(100 * math.log(1 + len(docs) / held)) for held in range(1, len(docs) + 1))],
        "summary": round(10 * figures["summary"]),
        "name": round(10 * figures["name"]),
        "least": round(SCALE * figures["least"]),
        "bits": round(10 * figures["bits"]),
        "most": round(10 * figures["most"]),
        "group": round(10 * figures["group"]),
        "groups": sorted(id for id, _, _ in docs if library.is_group(id)),
    }


def _own(library: Library, id: str) -> tuple[set[frozenset[str]], set[str]]:
    """The names of an entry, each as its words, and the words of its summary."""
    entry = library.entries[id]
    names = {frozenset(_words(library, name)) for name in (entry.common, entry.scientific, *entry.also, *library.lay.names.get(id, ()))}
    return names - {frozenset()}, set(_words(library, plain(library, entry.summary)))


def _words(library: Library, text: str) -> Iterator[str]:
    yield from (each.word for each in tokens(text, library.lay.spelling) if not each.denied and not each.unclear)


def likeness(data: Mapping[str, Any], text: str) -> Called:
    """The entries and groups that a text is like. `data` is what `compile_words` made."""
    of = data["likeness"]
    said: dict[str, int] = {}
    for each in tokens(text, data["spelling"]):
        if not (each.denied or each.unclear or each.aside):
            said[each.word] = max(said.get(each.word, 0), DOUBTED if each.doubted else SAID)
    docs = [(id, size, [name.split(" ") for name in names.split(";") if name], told.split(" ")) for id, size, names, told in of["docs"]]
    held: dict[str, int] = {}
    for _, _, names, told in docs:
        for word in {*(word for name in names for word in name), *told} & said.keys():
            held[word] = held.get(word, 0) + 1
    tells = {word: said[word] * of["rare"][count] for word, count in held.items()}
    groups, found = set(of["groups"]), []
    for id, size, names, told in docs:
        own = {word for name in names for word in name}
        words = sum(10 * tells[word] for word in own & tells.keys()) + sum(of["summary"] * tells[word] for word in tells.keys() & set(told))
        whole = max((sum(tells[word] for word in name) for name in names if tells.keys() >= set(name)), default=0)
        score = words * size + 100 * of["name"] * whole
        if id in groups:
            score = score * of["group"] // 10
        bits = min(of["most"], (score - of["least"]) * of["bits"] // SCALE)
        if bits > 0:
            found.append((id, bits))
    return tuple(sorted(found, key=lambda each: (-each[1], each[0]))[:TAKEN])


def together(one: Called, other: Called) -> Called:
    """What two texts about one thing are like: of each entry the more."""
    most = dict(one)
    for id, bits in other:
        most[id] = max(bits, most.get(id, 0))
    return tuple(sorted(most.items(), key=lambda each: (-each[1], each[0]))[:TAKEN])
