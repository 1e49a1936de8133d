"""Several small animals side by side, each in its own size, for names that stand for many kinds."""

from __future__ import annotations

from collections.abc import Callable

from ..frame import Sketch, pen_for
from . import arthropods, gliders, larva, rotifer, segmented_worm, shelled_rotifer
from .kind import Kind, Values, accent, choice, num, um, word
from .together import beside


def _soft(n: float) -> Sketch:
    """A rotifer, a gastrotrich and a flatworm."""
    drawn = (
        rotifer.KIND.build(rotifer.KIND.filled({"length": 0.7 * n})),
        gliders.KIND.build(gliders.KIND.filled({"form": "gastrotrich", "length": 0.5 * n})),
        gliders.KIND.build(gliders.KIND.filled({"form": "flatworm", "length": n})),
    )
    return Sketch(beside([one.shapes for one in drawn], 0.10 * n), 0.6 * pen_for(1.4 * n, n))


def _segmented(n: float) -> Sketch:
    """A worm with bundles of bristles, and an insect larva with a dark head."""
    worm = segmented_worm.KIND.build(
        segmented_worm.KIND.filled({"length": n, "width": 0.06 * n, "segments": 26, "bristle-length": 0.016 * n})
    )
    grub = larva.KIND.build(larva.KIND.filled({"length": 0.62 * n, "width": 0.085 * n}))
    return Sketch(beside([worm.shapes, grub.shapes], 0.12 * n), 0.5 * pen_for(0.9 * n, n))


def _rotifers(n: float) -> Sketch:
    """A rotifer that telescopes, with two wheels, and one in a stiff shell with a crown."""
    long = rotifer.KIND.build(rotifer.KIND.filled({"length": n}))
    shelled = shelled_rotifer.KIND.build(shelled_rotifer.KIND.filled({"length": 0.5 * n}))
    return Sketch(beside([long.shapes, shelled.shapes], 0.14 * n), 0.8 * pen_for(0.9 * n, n))


def _legged(n: float) -> Sketch:
    """Eight legs and one body: a mite; six legs and feelers: a springtail."""
    mite, tail = (
        arthropods.KIND.build(arthropods.KIND.filled({"form": form, "length": long}))
        for form, long in (("mite", 0.6 * n), ("springtail", n))
    )
    return Sketch(beside([mite.shapes, tail.shapes], 0.12 * n), 0.7 * pen_for(2.0 * n, n))


_FORMS: dict[str, Callable[[float], Sketch]] = {"soft": _soft, "segmented": _segmented, "rotifers": _rotifers, "legged": _legged}


def build(v: Values) -> Sketch:
    """The animals in a row."""
    return _FORMS[word(v, "form")](num(v, "length"))


KIND = Kind(
    "animal-lot",
    "several small animals side by side, for a name that stands for many kinds",
    (
        choice(
            "form", tuple(_FORMS), "rotifer, gastrotrich and flatworm; segmented worm and insect larva; two rotifers; mite and springtail"
        ),
        um("length", 500, 100, 20000, "length of the longest"),
        accent("body", "segments", "cilia", "mastax", "legs"),
    ),
    build,
)
