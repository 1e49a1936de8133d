"""Pictures as data: say what to draw and how big, get a plate drawn to scale in micrometres.

    drawing = draw("nematode-head", {"width": 24, "spear": "stylet", "spear-length": 16}, title="Stylet with knobs")
    to_svg(drawing, 4.0, id_prefix="lead-1")

A plate always carries a scale bar; `to_svg` and `to_pdf` draw the same marks.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from .contrast import Contrast, contrast
from .frame import Sketch, common_scale, matched, plate
from .kinds import KINDS, Kind, Param
from .kinds.accents import accented, washed
from .kinds.kind import not_known
from .labels import labelled
from .pdf import Inks, to_pdf
from .shapes import Box, Drawing
from .svg import to_svg

__all__ = [
    "Box",
    "Contrast",
    "Drawing",
    "FigureError",
    "Inks",
    "Kind",
    "Param",
    "common_scale",
    "contrast",
    "draw",
    "kinds",
    "labelled",
    "matched",
    "problems",
    "to_pdf",
    "to_svg",
]


class FigureError(ValueError):
    """A drawing was asked for that cannot be drawn; the message lists every reason, one a line."""


def kinds() -> Mapping[str, Kind]:
    """Every kind of drawing by name, each with its description and parameters."""
    return KINDS


def problems(kind: str, params: Mapping[str, object]) -> list[str]:
    """Why this drawing cannot be made (unknown kind, parameter or value), in plain words; empty if it can."""
    known = KINDS.get(kind)
    if known is None:
        return [not_known(f"no kind of drawing is called {kind!r}", kind, KINDS.keys())]
    return known.problems(params)


def draw(kind: str, params: Mapping[str, object], *, title: str, description: str = "") -> Drawing:
    """The plate for `kind` with `params` (lengths in µm, words as listed by `kinds()`).

    Raises FigureError with every problem `problems` finds.
    """
    wrong = problems(kind, params)
    if wrong:
        raise FigureError("\n".join(wrong))
    return replace(_drawn(kind, tuple(sorted(params.items()))), title=title, description=description)


@lru_cache(maxsize=4096)
def _drawn(kind: str, params: tuple[tuple[str, object], ...]) -> Drawing:
    """The plate without its words. Many places show the same picture; it is drawn once."""
    asked = dict(params)
    part, wash = str(asked.pop("accent", "none")), str(asked.pop("colour", "none"))
    sketch = _sketch(kind, tuple(asked.items()))
    return plate(accented(sketch, part) if wash == "none" else washed(sketch, part, wash), "", "")


@lru_cache(maxsize=256)
def _sketch(kind: str, params: tuple[tuple[str, object], ...]) -> Sketch:
    """The same before it is asked about: one sketch for every part in the accent colour and every true colour."""
    known = KINDS[kind]
    return known.build(known.filled(dict(params)))
