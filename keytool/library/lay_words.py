"""The words people use for what they see, ask and call things: read from `keydata/words/`."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

Raw = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Question:
    """Ways of asking one thing: the id or page that answers, the step of a guide where there is one, and the wordings."""

    goes_to: str
    at: str
    ask: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SizeWords:
    """What a typed size belongs to: the way it was taken, the things it may be of, and the parts it is not of."""

    along: str
    of: tuple[str, ...]
    not_of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LayWords:
    """Lay words: by character and state, by number character, by id, by question, and by word that means several things.

    `spelling` holds how typed words are read, as written in `words/spelling.yaml`.
    """

    states: Mapping[str, Mapping[str, tuple[str, ...]]] = field(default_factory=dict)
    sizes: Mapping[str, SizeWords] = field(default_factory=dict)
    names: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    questions: tuple[Question, ...] = ()
    several: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    spelling: Mapping[str, Any] = field(default_factory=dict)


def lay_words(files: Callable[[str], Iterable[Raw]]) -> LayWords:
    """The lay words of all files of each kind; what stands for one thing in several files is joined in the order of the files."""
    by_state: dict[str, dict[str, tuple[str, ...]]] = {}
    by_id: dict[str, tuple[str, ...]] = {}
    for file in files("state-words"):
        for character, each in file["characters"].items():
            here = by_state.setdefault(character, {})
            for state, phrases in each.items():
                here[state] = (*here.get(state, ()), *phrases)
    for file in files("name-words"):
        for id, phrases in file["names"].items():
            by_id[id] = (*by_id.get(id, ()), *phrases)
    sizes = (each for file in files("number-words") for each in file["numbers"].items())
    questions = (each for file in files("question-words") for each in file["questions"])
    return LayWords(
        by_state,
        {id: SizeWords(raw["along"], tuple(raw["of"]), tuple(raw["not-of"])) for id, raw in sizes},
        by_id,
        tuple(Question(raw["goes-to"], raw.get("at", ""), tuple(raw["ask"])) for raw in questions),
        {word: tuple(ids) for file in files("several-words") for word, ids in file["several"].items()},
        {name: value for file in files("spelling") for name, value in file.items() if name != "basis"},
    )
