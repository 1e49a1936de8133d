"""The drawing model: what is on the plate, in micrometres, y pointing down.

Lengths that belong to the thing drawn are in µm. Lengths that belong to the pen (line weight, dot size) are in
*pens*: multiples of `Drawing.pen_um`. One number therefore decides how heavy a plate looks, and several plates can be
given the same pen when they are shown side by side at one scale. Lettering has a size of its own.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

Point = tuple[float, float]
Points = tuple[Point, ...]
Step = tuple[Literal["M", "L", "C", "Z"], tuple[float, ...]]
Role = Literal["ink", "accent", "faint", "paper", "green", "blue-green", "yellow", "orange", "brown", "rust", "red", "blue"]

WASHES: dict[Role, str] = {
    "green": "#8cc152",
    "blue-green": "#5fb3a3",
    "yellow": "#f2cf4e",
    "orange": "#ee9c3f",
    "brown": "#b98a57",
    "rust": "#c8672e",
    "red": "#d2645a",
    "blue": "#6d92d6",
}
"""The true colours of things: roles of their own, laid flat under the ink as on a plate coloured by hand."""


@dataclass(frozen=True, slots=True)
class Path:
    """Lines and beziers (`M L C Z` steps, µm), filled or stroked with one even weight.

    `weight` is the stroke in pens; 0 means the path is filled and not stroked.
    """

    steps: tuple[Step, ...]
    part: str
    role: Role = "ink"
    weight: float = 0.0
    fill: bool = False


@dataclass(frozen=True, slots=True)
class Swell:
    """A line whose weight changes along it, drawn as a filled outline.

    `weights` (pens) has one value per point. `inset` says where the ink lies: 0 centred on the points; 1 wholly on
    the right-hand side as one travels along them, so that the points themselves are the true outer edge.
    """

    points: Points
    weights: tuple[float, ...]
    part: str
    role: Role = "ink"
    inset: float = 0.0
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Dots:
    """Stipple: round dots of one diameter (pens) at the given points (µm)."""

    points: Points
    size: float
    part: str
    role: Role = "ink"


@dataclass(frozen=True, slots=True)
class Leader:
    """A hair line from the thing named to its label; the text stands at `end`, reading away from `start`."""

    start: Point
    end: Point
    text: str
    part: str = "leader"
    role: Role = "ink"


Shape = Path | Swell | Dots | Leader


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle in µm; (x, y) is its top left corner."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The x of the right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The y of the lower edge."""
        return self.y + self.height

    def grown(self, by: float) -> Box:
        """The same box with `by` µm more on every side."""
        return Box(self.x - by, self.y - by, self.width + 2 * by, self.height + 2 * by)


@dataclass(frozen=True, slots=True)
class ScaleBar:
    """A bar of a round length (µm), its left end (µm) and its label."""

    start: Point
    length: float
    label: str


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished plate.

    `frame` bounds the picture, `box` bounds picture and scale bar together (this is the size a face has to make room
    for), `pen_um` is one pen and `letter_um` the height of lettering, both in µm. `title` and `description` are what a screen reader says.
    `tonal` marks a plate whose light and dark are what is shown, so that it must not be seen as a negative.
    """

    shapes: tuple[Shape, ...]
    frame: Box
    box: Box
    bar: ScaleBar
    pen_um: float
    letter_um: float
    title: str
    description: str = ""
    tonal: bool = False


def recoloured(shape: Shape, role: Role) -> Shape:
    """The same shape in another ink."""
    return replace(shape, role=role)
