"""How easily the texts of the library read: a table for each kind of text, and the worst twentieth with its places.

Run: python benchmarks/reading_ease.py [how many of the worst to print; all of the worst twentieth if left out].
Needs textstat (`pip install 'wetmount[benchmark]'`). It is held at 0.7.4, the last release that counts syllables by itself;
later ones fetch a word list from the network when they run.

Grade: the school years a text asks for, by the formula of Flesch and Kincaid (1975), 0.39 x words a sentence + 11.8 x syllables
a word - 15.59, as textstat works it out. Ease: Flesch (1948), 100 is easy, 60 plain English. A text is what a reader meets at once:
a summary, a lead, a step. Quantities and links are put in as words. Latin names count as one short word: they are labels, and no
text can do without them. Texts of fewer than ten words are left out, since a formula says nothing about them. Asserts nothing.
"""

from __future__ import annotations

import re
import statistics
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

import textstat

from keytool.library import Library, load, root
from keytool.library.wording import plain
from keytool.library.yaml_file import read_yaml

FEWEST_WORDS = 10
LONG_SENTENCE = 25
WORST = 0.05
PROSE = frozenset(
    [
        "summary",
        "text",
        "by",
        "would-tell",
        "about",
        "asks",
        "look",
        "do",
        "why",
        "means",
        "so",
        "defer",
        "brief",
        "question",
        "answer",
        "gist",
        "says",
    ]
)
PROSE_LISTS = frozenset(["before"])
KINDS = {
    ("entries", "summary"): "entry: summary",
    ("entries", "tells"): "entry: what it means",
    ("entries", "mistaken-for"): "entry: told apart",
    ("entries", "would-tell"): "entry: what would tell",
    ("entries", "notes"): "entry: notes",
    ("keys", "leads"): "key: leads",
    ("keys", ""): "key: questions and looks",
    ("characters", ""): "characters",
    ("look-alikes", ""): "look-alikes",
    ("guides", ""): "guides",
    ("bench", ""): "bench rules and figures",
    ("words", ""): "words of the screens",
    ("cautions.yaml", ""): "cautions",
    ("terms.yaml", ""): "terms",
    ("vocabulary.yaml", ""): "closed lists",
}
LEFT_OUT = ("schema", "eyepiece", "records", "drawings")


@dataclass(frozen=True)
class Measured:
    """One text: where it stands, what it is, and its figures."""

    place: str
    kind: str
    text: str
    grade: float
    ease: float
    longest: int


def main() -> None:
    """The table, then the worst."""
    folder = root()
    library = load(folder).library
    names = latin(library)
    measured: list[Measured] = []
    for path in sorted((folder / "keydata").rglob("*.yaml")):
        inside = path.relative_to(folder / "keydata").parts
        if inside[0] in LEFT_OUT or inside[0].startswith("sources"):
            continue
        file = read_yaml(path, "/".join(inside))
        for where, text in prose(file.data):
            words = plain(library, text)
            if len(words.split()) >= FEWEST_WORDS:
                place = file.place(where)
                measured.append(figures(f"{place.file}:{place.line}", kind_of(inside, where), words, names))
    table(measured)
    worst = sorted(measured, key=lambda each: (-each.grade, each.place))[: round(WORST * len(measured))]
    print(f"\nThe worst {WORST:.0%}: {len(worst)} texts, from grade {worst[-1].grade:.1f} on")
    for each in worst[: int(sys.argv[1]) if len(sys.argv) > 1 else None]:
        print(f"{each.grade:5.1f} {each.longest:3} {each.place} [{each.kind}] {each.text}")


def prose(data: object, where: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Every text for readers in a file, with its path; notes of a basis, ids and names are none."""
    if isinstance(data, dict):
        for key, value in data.items():
            if key == "basis":
                continue
            if key in PROSE and isinstance(value, str):
                yield (*where, key), value
            elif key in PROSE_LISTS and isinstance(value, list):
                yield from (((*where, key, number), each) for number, each in enumerate(value) if isinstance(each, str))
            else:
                yield from prose(value, (*where, key))
    elif isinstance(data, list):
        for number, value in enumerate(data):
            yield from prose(value, (*where, number))


def kind_of(inside: tuple[str, ...], where: tuple[str | int, ...]) -> str:
    """Under which line of the table a text is counted."""
    for part in where:
        if (inside[0], str(part)) in KINDS:
            return KINDS[inside[0], str(part)]
    return KINDS.get((inside[0], ""), "the rest")


def latin(library: Library) -> re.Pattern[str]:
    """A pattern that finds the Latin names of the library's entries."""
    words = {word for entry in library.entries.values() for word in re.findall(r"\b[A-Z][a-z]{3,}\b", entry.scientific or "")}
    return re.compile(r"\b(?:" + "|".join(sorted(words, key=lambda word: (-len(word), word))) + r")s?\b")


def figures(place: str, kind: str, text: str, names: re.Pattern[str]) -> Measured:
    """The figures of one text."""
    counted = re.sub(r"(\d)\.(\d)", r"\1\2", names.sub("Name", text)).replace(" µm", " mu").replace("×", " x")
    sentences = re.split(r"(?<=[.?!])\s+", counted)
    return Measured(
        place,
        kind,
        text,
        textstat.flesch_kincaid_grade(counted),
        textstat.flesch_reading_ease(counted),
        max(len(each.split()) for each in sentences),
    )


def table(measured: list[Measured]) -> None:
    """A line for each kind of text."""
    kinds: dict[str, list[Measured]] = defaultdict(list)
    for each in measured:
        kinds[each.kind].append(each)
    print(f"{'kind of text':26} {'texts':>6} {'grade, middle':>14} {'worst 5 % from':>15} {'ease, middle':>13} {'over 25 words':>14}")
    for kind, group in [*sorted(kinds.items()), ("all", measured)]:
        grades = sorted(each.grade for each in group)
        at = grades[min(len(grades) - 1, int((1 - WORST) * len(grades)))]
        long = sum(each.longest > LONG_SENTENCE for each in group) / len(group)
        ease = statistics.median(each.ease for each in group)
        print(f"{kind:26} {len(group):>6} {statistics.median(grades):>14.1f} {at:>15.1f} {ease:>13.0f} {long:>14.1%}")


if __name__ == "__main__":
    main()
