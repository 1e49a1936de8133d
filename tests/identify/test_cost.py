"""The cost of a key against Huffman codes, the least that yes-or-no questions can do.

Sources: Huffman 1952 and Shannon 1948 (from memory). The code lengths come from the PyPI
package `huffman`, which knows nothing of keys; the letter frequencies 45, 13, 12, 16, 9, 5 are
those of a well-known algorithms textbook (Cormen, Leiserson, Rivest and Stein, Introduction to
Algorithms, chapter on greedy algorithms; from memory), with 224 bits for 100 letters.
"""

import json
import math
from pathlib import Path

import huffman
import pytest
import yaml

from keytool.identify import cost, prove
from keytool.library import Library, load
from keytool.library.pieces import cells, unstated

TEXTBOOK = {"a": 45, "b": 13, "c": 12, "d": 16, "e": 9, "f": 5}
PRIORS = [TEXTBOOK, {"a": 4, "b": 3, "c": 2, "d": 1}, dict(zip("abcdefgh", (30, 22, 16, 12, 8, 6, 4, 2), strict=True)), {"a": 1, "b": 1}]


def key_from_code(root: Path, weights: dict[str, int], code: dict[str, str]) -> Library:
    """A library of invented entries whose key asks exactly the bits of a prefix code."""
    keydata = root / "keydata"
    memory = {"kind": "memory"}
    prefixes = sorted({word[:length] for word in code.values() for length in range(len(word))})
    names = {prefix: "c" + prefix for prefix in prefixes}
    for folder in ("characters", "entries", "keys"):
        for path in (keydata / folder).rglob("*.yaml"):
            path.unlink()

    def put(file: str, data: object) -> None:
        (keydata / file).write_text(json.dumps(data), "utf-8")

    signed = {"contributors": ["wetmount founders"], "reviewed": "2026-11-25"}
    for name in names.values():
        put(
            f"characters/{name}.yaml",
            {
                "id": name,
                "name": f"bit {name}",
                "asks": "Which?",
                "kind": "states",
                "magnification": 40,
                "applies": "everything",
                "look": "Look.",
                "misread": {"rate": 0.1, "basis": memory},
                "states": {"left": {"name": "left", "about": "Left."}, "right": {"name": "right", "about": "Right."}},
            },
        )
    put(
        "entries/debris/letter.yaml",
        {"id": "letter", "kind": "group", "theme": "debris", "names": {"common": "Letter"}, "summary": "Invented.", **signed},
    )
    for letter, word in code.items():
        put(
            f"entries/debris/letter-{letter}.yaml",
            {
                "id": f"letter-{letter}",
                "kind": "object",
                "theme": "debris",
                "names": {"common": f"Letter {letter}"},
                "within": ["letter"],
                "summary": "Invented.",
                "commonness": {"class": f"w{weights[letter]}", "basis": memory},
                "characters": {
                    names[word[:i]]: {"states": ["left" if bit == "0" else "right"], "basis": memory} for i, bit in enumerate(word)
                },
                **signed,
            },
        )
    ends = {word: f"letter-{letter}" for letter, word in code.items()}

    def lead(prefix: str, bit: str) -> dict[str, object]:
        onward = {"end": ends[prefix + bit]} if prefix + bit in ends else {"couplet": names[prefix + bit]}
        return {"text": f"Bit {bit}", "when": {names[prefix]: ["left" if bit == "0" else "right"]}, **onward}

    put(
        "keys/letters.yaml",
        {
            "id": "letters",
            "title": "Letters",
            "about": "Invented.",
            "scope": ["letter"],
            "magnification": 40,
            "first": "c",
            "couplets": {
                names[prefix]: {"asks": "Which?", "leads": {"left": lead(prefix, "0"), "right": lead(prefix, "1")}} for prefix in prefixes
            },
        },
    )
    vocabulary = yaml.safe_load((keydata / "vocabulary.yaml").read_text("utf-8"))
    vocabulary["commonness"] = {f"w{weight}": {"label": f"weight {weight}", "weight": weight} for weight in weights.values()}
    put("vocabulary.yaml", vocabulary)
    put("bench/shortcuts.yaml", {})
    loaded = load(root)
    assert [each.message for each in loaded.findings] == []
    return loaded.library


@pytest.mark.parametrize("weights", PRIORS, ids=["textbook", "four", "eight", "two"])
def test_a_key_made_from_a_huffman_code_costs_its_mean_code_length(mini: Path, weights: dict[str, int]) -> None:
    code = huffman.codebook(weights.items())
    library = key_from_code(mini, weights, code)
    key = library.keys["letters"]
    assert prove(library, key).failures == ()
    total = sum(weights.values())
    length = sum(weights[letter] * len(word) for letter, word in code.items()) / total
    entropy = -sum(w / total * math.log2(w / total) for w in weights.values())
    what = cost(library, key)
    assert what.questions == pytest.approx(length)
    assert what.bits == pytest.approx(entropy)
    assert what.least <= what.questions < what.bits + 1  # Shannon's bounds on a Huffman code
    assert what.most == max(map(len, code.values()))


def test_the_textbook_letters_cost_224_bits_a_hundred(mini: Path) -> None:
    library = key_from_code(mini, TEXTBOOK, huffman.codebook(TEXTBOOK.items()))
    assert cost(library, library.keys["letters"]).questions == pytest.approx(2.24)


def test_one_thing_at_a_time_costs_more_than_huffman(mini: Path) -> None:
    weights = PRIORS[2]
    ladder = {letter: "1" * index + ("0" if index < 7 else "") for index, letter in enumerate("abcdefgh")}
    library = key_from_code(mini, weights, ladder)
    assert cost(library, library.keys["letters"]).questions == pytest.approx(2.88)


def test_no_key_of_the_library_beats_the_bound(library: Library) -> None:
    for key in library.keys.values():
        what = cost(library, key)
        assert what.least <= what.questions <= what.most


def test_the_ways_of_showing_something_add_up_to_the_whole(library: Library) -> None:
    """Also where a number may be anything and a couplet cuts it in three."""
    for key in library.keys.values():
        for couplet in key.couplets.values():
            for entry in library.members(key.scope):
                showings = {name: statement.showing for name, statement in entry.statements.items()}
                if not unstated(couplet, showings):
                    assert sum(cell.share for cell in cells(couplet, showings)) == pytest.approx(1)
