"""What lies in a view of the round field: the thing at its places, dots where it is too small, specks where it is too fine."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, degrees, sin

from keytool.figures import Drawing
from keytool.figures.field import Optics, Power
from keytool.figures.in_field import Seen, seen_of, spot
from keytool.library.wording import number
from keytool.pages.html import Html, el

RADIUS = 100.0
"""Of the edge of the field, in the units of a view; everything else is scaled to it."""
LINE = 0.9
"""The least width of a line, in the units of a view."""
ALONE, FEW = 0.06, 0.02
"""What is longer than the first share of the field lies there once; what is longer than the second, a few times."""
MANY, SPECKS = 7, 37
"""How often what is shorter lies there, and what is too fine to be more than a speck."""
SHAPELESS = 3.0
"""What comes out shorter than this, in the units of a view, is a dot on the page whatever its shape."""
DOT = 1.4
"""The least width of a dot, in the units of a view."""


@dataclass(frozen=True, slots=True)
class Thing:
    """What is set into the views: the element it stands in, px to the µm there, two points of it in px, its pen and its sizes in µm.

    `middle` is put at its place in the field; `spot` instead where it is longer than the field. `reach` is the longer side
    of all that is drawn, `size` of the thing, or of one of several small bodies.
    """

    id: str
    scale: float
    middle: tuple[float, float]
    spot: tuple[float, float]
    pen: float
    reach: float
    size: Seen


def thing_of(drawing: Drawing, id: str, scale: float, field: float) -> Thing:
    """What a drawing gives to be set into a field of `field` µm; it stands in the page as the element `id`, `scale` px to the µm."""
    frame, box, (x, y) = drawing.frame, drawing.box, spot(drawing, field)
    middle = ((frame.x + frame.width / 2 - box.x) * scale, (frame.y + frame.height / 2 - box.y) * scale)
    at = ((x - box.x) * scale, (y - box.y) * scale)
    return Thing(id, scale, middle, at, drawing.pen_um, max(frame.width, frame.height), seen_of(drawing))


def content(thing: Thing, power: Power, seen: Optics) -> Iterator[Html]:
    """Specks as wide as the finest spacing where it is too fine, dots where it is too small for the page, else the thing itself."""
    unit = RADIUS / (seen.diameter / 2)
    if thing.size.finest < seen.resolution:
        return iter([_dots(SPECKS, seen.resolution, unit, "wm-dots wm-specks")])
    if thing.reach * unit < SHAPELESS:
        return iter([_dots(MANY, thing.size.longest, unit, "wm-dots")])
    return _copies(thing, power, unit)


def _dots(count: int, um: float, unit: float, looks: str) -> Html:
    dots = "".join(f"M{short(x)} {short(y)}h0" for x, y, _ in places(count))
    return el("path", d=dots, stroke_width=short(max(DOT, um * unit)), class_=looks, data_dot=f"{um:.3g}")


def _copies(thing: Thing, power: Power, unit: float) -> Iterator[Html]:
    """The thing at its places; `unit` is what one µm measures in the view."""
    size, share = unit / thing.scale, thing.reach * unit / (2 * RADIUS)
    x, y = thing.spot if share > 1 else thing.middle
    heavier = max(0.0, LINE / size - thing.pen * thing.scale)
    use = el(
        "use",
        href=f"#{thing.id}",
        transform=f"scale({size:.5g}) translate({-x:.2f} {-y:.2f})",
        stroke_width=f"{heavier:.3g}",
        data_thing=True,
    )
    first, *others = places(1 if share > ALONE else 3 if share > FEW else MANY)
    id = f"wm-thing-{power}"
    yield el("g", el("g", use, id=id), transform=_put(*first))
    yield from (el("use", href=f"#{id}", transform=_put(*each)) for each in others)


def _put(x: float, y: float, turn: float) -> str:
    return f"translate({short(x)} {short(y)}) rotate({short(turn)})"


def places(count: int) -> Iterator[tuple[float, float, float]]:
    """So many places in a field, strewn evenly by the golden angle, with a turn (degrees) for each; one alone is in the middle."""
    if count == 1:
        yield 0.0, 0.0, 0.0
        return
    for k in range(count):
        reach, angle = 0.86 * RADIUS * ((k + 0.4) / count) ** 0.5, 2.39996 * k + 0.5
        yield reach * cos(angle), reach * sin(angle), degrees(1.3 * k) % 360


def short(value: float) -> str:
    """A coordinate, to a tenth."""
    return number(round(value, 1))
