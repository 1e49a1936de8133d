"""Spores that are told by their build."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch
from ..kind import Kind, Values, accent, choice, given, num, um, word
from .borne import brush, chain, chlamydospore, head, many_ways, sac_of_eight, sporangium, swarm_sac
from .walled import brickwork, canoe, flat_sided, scarred, spindle, two_on_stalk


def build(v: Values) -> Sketch:
    """The spore, or the body that bears the spores."""
    form = word(v, "form")
    draw, share = _FORMS[form]
    n = num(v, "length")
    return draw(n, given(v, "width", share * n))


_FORMS: dict[str, tuple[Callable[[float, float], Sketch], float]] = {
    "canoe": (canoe, 0.125),
    "brickwork": (brickwork, 0.30),
    "two-on-stalk": (two_on_stalk, 0.46),
    "flat-sided": (flat_sided, 0.62),
    "spindle": (spindle, 0.36),
    "sac-of-eight": (sac_of_eight, 0.20),
    "chain": (chain, 1.0),
    "brush": (brush, 1.0),
    "head": (head, 1.0),
    "scarred": (scarred, 0.42),
    "chlamydospore": (chlamydospore, 1.0),
    "sporangium": (sporangium, 1.0),
    "swarm-sac": (swarm_sac, 0.70),
    "many-ways": (many_ways, 1.0),
}
"""How each is drawn, and its width over its length where no width is given."""


KIND = Kind(
    "spore",
    "a spore, or the body that bears spores, told by its build",
    (
        choice(
            "form",
            tuple(_FORMS),
            "clear canoe with cross-walls; club with walls both ways; two brown cells on a stalk; drop with one flat "
            "side and a side peg; two-celled spindle; eight in a sac; "
            "dry chain; brush; round head; cylinder with end scars; swollen part of a thread; ball full of spores on a "
            "stalk; lemon that lets out swimming spores; spores of moulds borne in several ways",
        ),
        um(
            "length",
            20,
            1,
            500,
            "length of the spore; of a sac, a sporangium or a swollen cell its own; of a chain, brush or head that of one small spore",
        ),
        um("width", None, 0.5, 400, "its width; the form's own if left out"),
        accent("body", "spores", "cross-walls", "stalk", "peg", "scars", "contents", "flasks", "thread", "dome", "foot"),
    ),
    build,
)
