"""Point at it: the round field at low and high power with what is met most in it at true size, each a thing to tap.

Where each thing lies is worked out here, so that no target and no label touches another in the smallest window.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import cos, hypot, sin
from random import Random

from keytool.figures.field import Optics, Power, optics
from keytool.figures.in_field import is_in_field
from keytool.figures.library_figures import of_entry
from keytool.figures.shapes import Drawing
from keytool.figures.whole_body import whole_of
from keytool.library.model import Library, Picture
from keytool.library.wording import number
from keytool.pages.field_views import NEEDED
from keytool.pages.figure_files import Bare, FigureFiles
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer

FIELD = 410.0
"""How wide the field is on a desk, px; drawings are inked for it."""
SMALLEST = 328.0
"""How wide it is in the narrowest window that is planned for (360 px), px: there nothing may touch."""
TARGET = 48.0
"""The least side of what is to be tapped, px."""
LETTER = 6.5
"""How wide a letter of a label is taken to be, px."""
LINE = 15.0
"""How high a line of a label is, px."""
LONGEST = 11
"""Letters to a line of a label."""
GIANT = 45.0
"""What is longer than this, in hundredths of the field, lies across its edge, so that it leaves room for the rest."""
SPOTS = 600
"""How many places in a field are tried."""
TRIES = 60
"""How many ways of laying things out are tried; of those that hold all, the one where they lie farthest apart is taken."""
POWERS: tuple[Power, Power] = ("low", "high")


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle round a middle, in hundredths of the field."""

    x: float
    y: float
    width: float
    height: float

    def touches(self, other: Box) -> bool:
        """Whether two overlap."""
        return abs(self.x - other.x) < (self.width + other.width) / 2 and abs(self.y - other.y) < (self.height + other.height) / 2

    @property
    def farthest(self) -> float:
        """How far the farthest corner lies from the middle of the field (50, 50)."""
        return hypot(abs(self.x - 50) + self.width / 2, abs(self.y - 50) + self.height / 2)


@dataclass(frozen=True, slots=True)
class Thing:
    """A picture to point at: its size in the field, in hundredths, and the lines of its label."""

    picture: Picture
    bare: Bare
    width: float
    height: float
    label: tuple[str, ...]

    @property
    def is_giant(self) -> bool:
        """Whether it lies across the edge of the field."""
        return max(self.width, self.height) > GIANT

    def target(self, x: float, y: float) -> Box:
        """All that is to be tapped, with its middle at a place: the thing, at least a thumb wide, and its label under it."""
        least = 100 * TARGET / SMALLEST
        words = 100 * LETTER * max(map(len, self.label)) / SMALLEST
        height = max(min(self.height, 40), 6) + 100 * LINE * len(self.label) / SMALLEST + 1
        return Box(x, y, max(least, words, min(self.width, 55)), max(least, height))


def has_optics(library: Library) -> bool:
    """Whether the library knows a microscope, so that there is a field to show."""
    return all(each in library.quantities for each in NEEDED)


def fields(writer: Writer, figures: FigureFiles) -> Html:
    """Both fields, side by side on a desk; on a phone one at a time, chosen beneath."""
    library = writer.library
    shown = {power: (seen, things(writer, figures, seen)) for power in POWERS for seen in [optics(library, power)]}
    return el(
        "div",
        *(_field(writer, power, seen, content) for power, (seen, content) in shown.items()),
        el(
            "div",
            *(
                el(
                    "label",
                    el("input", type="radio", name="power", value=power, checked=power == "low", class_="unseen"),
                    el("span", _times(seen)),
                )
                for power, (seen, _) in shown.items()
            ),
            class_="power",
            role="group",
            aria_label="Magnification",
        ),
        class_="fields",
    )


def things(writer: Writer, figures: FigureFiles, seen: Optics) -> list[Thing]:
    """What is pointed at at one power: giants first, then from large to small."""
    library = writer.library
    found = []
    for picture in library.pictures.values():
        if picture.power != round(seen.power):
            continue
        drawing = _drawing(library, picture, seen)
        if drawing is None:
            continue
        bare = figures.true_size(writer, drawing, FIELD / seen.diameter, now=True)
        share = 100 / seen.diameter
        found.append(Thing(picture, bare, bare.width * share, bare.height * share, tuple(_lines(picture.name))))
    return sorted(found, key=lambda each: (not each.is_giant, -each.width * each.height, each.picture.id))


def _drawing(library: Library, picture: Picture, seen: Optics) -> Drawing | None:
    entry = library.entries[picture.entry]
    if not is_in_field(entry):
        return of_entry(library, entry)
    return whole_of(entry, 0.62 * seen.diameter)


def placed(found: Sequence[Thing]) -> list[tuple[Thing, Box]]:
    """Each thing at a place where neither it nor its label touches another; always the same.

    They lie as far apart as still leaves room for all. What finds no place is left out: it is still found by its words.
    """
    wide = [[] if thing.is_giant else _within(thing) for thing in found]
    tries = [_placed(found, wide, Random(seed)) for seed in range(TRIES)]
    return max(tries, key=lambda laid: (len(laid), round(_closest(laid), 6)))


def _within(thing: Thing) -> list[Box]:
    """Every place of a thing that lies within the field."""
    return [box for box in (thing.target(x, y) for x, y in _spots()) if box.farthest <= 49.5]


def _placed(found: Sequence[Thing], wide: Sequence[Sequence[Box]], dice: Random) -> list[tuple[Thing, Box]]:
    done: list[tuple[Thing, Box]] = []
    for thing, boxes in zip(found, wide, strict=True):
        if thing.is_giant:
            done.append((thing, _at_the_edge(thing, sum(other.is_giant for other, _ in done))))
            continue
        taken = [other for _, other in done]
        free = [box for box in boxes if not any(map(box.touches, taken))]
        if free:
            done.append((thing, dice.choice(free)))
    return done


def _closest(laid: Sequence[tuple[Thing, Box]]) -> float:
    """How far apart the nearest two lie."""
    return min((hypot(one.x - other.x, one.y - other.y) for (_, one), (_, other) in combinations(laid, 2)), default=0.0)


def _at_the_edge(thing: Thing, before: int) -> Box:
    """The part of a giant that is seen: at the left edge of the field, or at the right one where another lies there already."""
    words = 100 * LETTER * max(map(len, thing.label)) / SMALLEST
    width = max(15.0, words + 2, min(22.0, 0.5 * thing.width))
    height = 46 if thing.width > width else 32
    return Box(5 + width / 2 if before % 2 == 0 else 95 - width / 2, 50, width, height)


def _spots() -> Iterator[tuple[float, float]]:
    """Places all over the field, by the golden angle."""
    for k in range(SPOTS):
        reach, angle = 48 * ((k + 0.5) / SPOTS) ** 0.5, 2.39996 * k
        yield 50 + reach * cos(angle), 50 + reach * sin(angle)


def _field(writer: Writer, power: Power, seen: Optics, found: Sequence[Thing]) -> Html:
    return el(
        "figure",
        el(
            "div",
            *(_point(writer, thing, box) for thing, box in placed(found)),
            class_="field",
            style=f"--f:{seen.diameter:.0f}",
        ),
        el("figcaption", el("b", _times(seen)), f" {_across(seen)} across, all at true size", class_="label"),
        id=f"field-{power}",
        class_=f"field-at field-{power}",
    )


def _point(writer: Writer, thing: Thing, box: Box) -> Html:
    lines = 100 * LINE * len(thing.label) / SMALLEST
    return el(
        "a",
        el("span", thing.bare.image, class_="it", style=f"--w:{thing.bare.width:.4g}"),
        el("span", *(el("span", line) for line in thing.label), class_="says"),
        href=writer.place(thing.picture.entry),
        class_=_classes(thing, box),
        style=f"left:{box.x:.2f}%;top:{box.y:.2f}%;width:{box.width:.2f}%;height:{box.height:.2f}%;--words:{lines:.2f}%",
        data_at=thing.picture.id,
    )


def _classes(thing: Thing, box: Box) -> str:
    return "point" if not thing.is_giant else "point giant" if box.x < 50 else "point giant from-right"


def _lines(words: str) -> Iterator[str]:
    line = ""
    for word in words.split():
        if line and len(line) + 1 + len(word) > LONGEST:
            yield line
            line = word
        else:
            line = f"{line} {word}".strip()
    yield line


def _times(seen: Optics) -> str:
    return f"{number(seen.power)}×"


def _across(seen: Optics) -> str:
    return f"{number(round(seen.diameter / 1000, 2))} mm" if seen.diameter >= 1000 else f"{number(round(seen.diameter))} µm"
