"""Loose fibres: of plants, man-made, of glass, of silk."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch
from ..kind import Kind, Values, accent, choice, num, um, word
from .made import bead_end, glass, rod, synthetic, viscose
from .natural import cotton, paper, plant, silk


def fibre(v: Values) -> Sketch:
    """A length of fibre at its true width, one end in view."""
    return _FORMS[word(v, "form")](num(v, "width"))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "plant": plant,
    "cotton": cotton,
    "synthetic": synthetic,
    "paper": paper,
    "viscose": viscose,
    "glass": glass,
    "glass-bead": bead_end,
    "silk": silk,
    "silica-rod": lambda w: rod(w, sculpted=True),
    "plain-rod": lambda w: rod(w, sculpted=False),
}


KIND = Kind(
    "fibre",
    "a loose fibre",
    (
        choice(
            "form",
            tuple(_FORMS),
            "plant; cotton; man-made; paper; viscose; glass wool, or with a bead; silk with droplets; silica rod with "
            "a canal and a saw edge; plain clear rod",
        ),
        um("width", 18, 1, 200, "width; of cotton, of the flat ribbon"),
        accent("body", "pits", "wall", "folds", "fibrils", "lines", "droplets", "canal"),
    ),
    fibre,
)
