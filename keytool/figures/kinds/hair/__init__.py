"""Hairs and bristles, and pieces of limbs."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch, pen_for
from ...shapes import Shape
from ..kind import Kind, Values, accent, choice, given, long_enough, num, um, word
from .of_animals import barbule, jointed, pithed, s_bent, scaled, socketed
from .of_plants import lost, of_fruit_body, of_plant, plain_nodes


def build(v: Values) -> Sketch:
    """The hair, its base or its cut end at the top."""
    draw, widths = _FORMS[word(v, "form")]
    w = num(v, "width")
    n = given(v, "length", widths * w)
    pen_um = pen_for(max(0.36 * n, 2.2 * w), n)
    return Sketch(tuple(draw(w, n, pen_um)), pen_um)


_FORMS: dict[str, tuple[Callable[[float, float, float], list[Shape]], float]] = {
    "scaled": (scaled, 9),
    "pithed": (pithed, 7),
    "barbule": (barbule, 24),
    "bamboo": (plain_nodes, 11),
    "socketed": (socketed, 17),
    "s-bent": (s_bent, 12),
    "plant": (of_plant, 9),
    "fruit-body": (of_fruit_body, 24),
    "fruit-body-wavy": (lambda w, n, p: of_fruit_body(w, n, p, wavy=True), 42),
    "broken": (lost, 20),
    "jointed": (jointed, 8),
}


KIND = Kind(
    "hair",
    "a hair, a bristle or a piece of a limb",
    (
        choice(
            "form",
            tuple(_FORMS),
            "scaled animal hair; coarse hair with a pith; feather barbule; fibre with bamboo-like nodes; insect "
            "bristle with its socket; worm bristle bent like an S; plant hair on its foot; "
            "dark bristle of a fruit body, straight or wavy; hair broken off; jointed limb",
        ),
        um("width", 12, 0.5, 300, "width at the thickest place"),
        um("length", None, 5, 5000, "length shown; worked out from the width if left out"),
        accent("body", "scales", "pith", "prongs", "nodes", "base", "cross-walls", "claw", "hairs"),
    ),
    build,
    long_enough(5),
)
