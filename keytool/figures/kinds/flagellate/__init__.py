"""Flagellates by their flagella and their build."""

from __future__ import annotations

from collections.abc import Callable

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ..kind import Kind, Values, accent, choice, colour, flag, num, um, word
from .euglenids import leaf, notched, spindle, stiff_ahead, sweeps
from .gliders import ball, bean, collar, drawn_out, roundish, sausage, snout
from .parts import Drawn
from .swimmers import equal, green_egg, hollow_side, two_ahead_unequal


def build(v: Values) -> Sketch:
    """The flagellate, front end at the top."""
    n = num(v, "length")
    shapes, wide, tall = _FORMS[word(v, "form")](n)
    if v["stalk"]:
        shapes = [*shapes, pen.line(geometry.curve(geometry.scaled([(0, 1.0), (0.03, 1.25), (-0.02, 1.5)], n), per=8), (0.9, 0.9), "stalk")]
    return Sketch(tuple(shapes), pen_for(wide * n, tall * n))


_FORMS: dict[str, Callable[[float], Drawn]] = {
    "bean": bean,
    "round": roundish,
    "sausage": sausage,
    "drawn-out": drawn_out,
    "ball": ball,
    "stiff-ahead": stiff_ahead,
    "leaf": leaf,
    "sweeps-and-drags": sweeps,
    "snout": snout,
    "green-egg": green_egg,
    "equal-pair": equal,
    "green-spindle": spindle,
    "notched": notched,
    "collar": collar,
    "swimming-spore": hollow_side,
    "swarm-cell": two_ahead_unequal,
}


KIND = Kind(
    "flagellate",
    "a flagellate by its flagella and its build",
    (
        choice(
            "form",
            tuple(_FORMS),
            "bean with a short curled and a long trailing flagellum; round, one flickering, one trailing; sausage with "
            "one trailing; soft, drawn out behind; "
            "ball with one long and a stub; one thick flagellum straight ahead; flat leaf; one sweeps, a thick one "
            "drags; waving snout; green egg with two equal; "
            "clear pear with two equal; green spindle; notched oval; collar; bean with flagella in the hollow side; swarm cell",
        ),
        um("length", 10, 2, 200, "length of the body without flagella"),
        flag("stalk", "sits on a thread"),
        accent(
            "body", "flagella", "plastid", "eyespot", "collar", "snout", "ridges", "nucleus", "vacuole", "contents", "stalk", "feeding-rod"
        ),
        colour(),
    ),
    build,
)
