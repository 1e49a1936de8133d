"""Pictures as data: say what to draw and how big, get a plate drawn to scale in micrometres.

    drawing = draw("nematode-head", {"width": 24, "spear": "stylet", "spear-length": 16}, title="Stylet with knobs")
    to_svg(drawing, 4.0, id_prefix="lead-1")

A drawing that is data (`library.drawings`) is drawn by `draw(library.drawings["water-bear"], {...})` in the same way.
A plate always carries a scale bar; `to_svg` and `to_pdf` draw the same marks.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache

from keytool.library.drawing_records import Form

from .contrast import Contrast, contrast
from .drawn import kind_of
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
    "known_kind",
    "labelled",
    "matched",
    "problems",
    "to_pdf",
    "to_svg",
]


class FigureError(ValueError):
    """A drawing was asked for that cannot be drawn; the message lists every reason, one a line."""


def kinds(drawings: Iterable[Form] = ()) -> Mapping[str, Kind]:
    """Every kind of drawing by name, each with its description and parameters: those in Python, then the `drawings` that are data."""
    return {**KINDS, **{form.id: kind_of(form) for form in drawings}}


def known_kind(what: str | Form) -> Kind | None:
    """The kind of a name or of a drawing that is data; None where no kind has the name."""
    return KINDS.get(what) if isinstance(what, str) else kind_of(what)


def problems(what: str | Form, params: Mapping[str, object], drawings: Iterable[Form] = ()) -> list[str]:
    """Why this drawing cannot be made (unknown kind, parameter or value), in plain words; empty if it can.

    A name that is not known is answered with all that are, the `drawings` of the library among them.
    """
    known = known_kind(what)
    if known is None:
        return [not_known(f"no kind of drawing is called {what!r}", str(what), kinds(drawings).keys())]
    return known.problems(params)


def draw(what: str | Form, params: Mapping[str, object], *, title: str, description: str = "") -> Drawing:
    """The plate for a kind or a drawing that is data, with `params` (lengths in µm, words as listed by `kinds()`).

    Raises FigureError with every problem `problems` finds.
    """
    wrong = problems(what, params)
    if wrong:
        raise FigureError("\n".join(wrong))
    return replace(_drawn(what, tuple(sorted(params.items()))), title=title, description=description)


@lru_cache(maxsize=4096)
def _drawn(what: str | Form, params: tuple[tuple[str, object], ...]) -> Drawing:
    """The plate without its words. Many places show the same picture; it is drawn once."""
    asked = dict(params)
    part, wash = str(asked.pop("accent", "none")), str(asked.pop("colour", "none"))
    sketch = _sketch(what, tuple(asked.items()))
    return plate(accented(sketch, part) if wash == "none" else washed(sketch, part, wash), "", "")


@lru_cache(maxsize=256)
def _sketch(what: str | Form, params: tuple[tuple[str, object], ...]) -> Sketch:
    """The same before it is asked about: one sketch for every part in the accent colour and every true colour."""
    known = known_kind(what)
    assert known is not None
    return known.build(known.filled(dict(params)))
