"""Single cells that move: ciliates, flagellates, naked and shelled amoebae."""

from __future__ import annotations

from collections.abc import Callable

from ..frame import Sketch
from .amoebae import amoeba, flagellate, testate
from .ciliates import bell, ciliate, stretched_bell
from .kind import Kind, Values, accent, choice, num, um, word


def build(v: Values) -> Sketch:
    """The cell, front end at the top."""
    return _FORMS[word(v, "form")](num(v, "length"))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "ciliate": ciliate,
    "stalked-ciliate": bell,
    "stretched-bell": stretched_bell,
    "flagellate": flagellate,
    "naked-amoeba": amoeba,
    "testate": testate,
}


KIND = Kind(
    "moving-cell",
    "a single-celled mover: ciliate, stalked ciliate, flagellate, naked amoeba, shelled amoeba",
    (
        choice("form", tuple(_FORMS), "which kind of cell"),
        um("length", 60, 2, 1000, "length of the body (shell, bell) without cilia, flagella, stalk and pseudopods"),
        accent("body", "cilia", "flagella", "nucleus", "vacuole", "mouth", "stalk", "scales", "opening", "pseudopods", "contents"),
    ),
    build,
)
