"""Living filaments that are no hyphae."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch, pen_for
from ...shapes import Shape
from ..kind import Kind, Values, accent, choice, colour, given, long_enough, num, um, word
from .bacterial import braid, budding, bundle, empty_sheath, plain_threads, row, spore_threads, straw
from .green import green, h_pieces, protonema, rhizoid, tube_alga


def build(v: Values) -> Sketch:
    """The filament, running down the page."""
    draw, widths = _FORMS[word(v, "form")]
    w = num(v, "width")
    n = given(v, "length", widths * w)
    wide = {"spore-threads": 0.55, "plain-threads": 0.55, "sheathed-bundle": 0.4}.get(word(v, "form"), 0.34)
    pen_um = pen_for(max(wide * n, 2.5 * w), n)
    return Sketch(tuple(draw(w, n, pen_um)), pen_um)


_FORMS: dict[str, tuple[Callable[[float, float, float], list[Shape]], float]] = {
    "cyanobacterium": (row, 14),
    "sheathed-bundle": (bundle, 18),
    "empty-sheath": (empty_sheath, 9),
    "green-band": (lambda w, n, p: green(w, n, p, "band"), 9),
    "green-star": (lambda w, n, p: green(w, n, p, "star"), 9),
    "h-pieces": (h_pieces, 9),
    "protonema": (protonema, 11),
    "moss-rhizoid": (rhizoid, 13),
    "tube-alga": (tube_alga, 7),
    "budding-chain": (budding, 14),
    "spore-threads": (spore_threads, 45),
    "plain-threads": (plain_threads, 45),
    "iron-straw": (straw, 22),
    "iron-braid": (braid, 16),
}
"""How each is drawn, and how many widths of it are shown unless a length is given."""


KIND = Kind(
    "filament",
    "a living filament that is no hypha",
    (
        choice(
            "form",
            tuple(_FORMS),
            "row of short blue-green cells; several in one sheath; empty layered sheath; green cells with a band, or "
            "with a star; cells whose walls part into H-pieces; moss thread; brown moss rhizoid; "
            "green tube without cross-walls; yeast cells that stay joined; fine bacterial thread with rows of spores, or with plain tips; "
            "rusty straw; rusty braid",
        ),
        um("width", 6, 0.3, 200, "width of the filament; of a sheath or braid its own"),
        um("length", None, 5, 3000, "length shown; worked out from the width if left out"),
        accent("body", "cross-walls", "contents", "sheath", "plastid", "spores", "buds", "h-pieces", "crust", "branch", "tips"),
        colour(),
    ),
    build,
    long_enough(5),
)
