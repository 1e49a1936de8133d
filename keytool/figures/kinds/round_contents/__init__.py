"""What a single body holds."""

from __future__ import annotations

from collections.abc import Callable

from ...shapes import Points, Shape
from .cells import animal, cell, four, tinted_cells, two
from .fillings import ball, clear, coloured_drops, dark, even, grains, green, oil, one_drop, plastids, spores, star
from .telling import dividing, folded_larva, packed, plain, pole_drops, resting, swarmer, yolk
from .young import legged


def contents(style: str, room: Points, pen_um: float) -> list[Shape]:
    """The contents named by `style`, within the closed edge `room`."""
    return _DRAW[style](room, pen_um)


_DRAW: dict[str, Callable[[Points, float], list[Shape]]] = {
    "grains": grains,
    "oil": oil,
    "star": star,
    "clear": clear,
    "cell": cell,
    "two-cells": two,
    "four-cells": four,
    "tinted-cells": tinted_cells,
    "many-cells": dividing,
    "worm": folded_larva,
    "animal": animal,
    "legged": legged,
    "spores": spores,
    "one-drop": one_drop,
    "ball": ball,
    "coloured-drops": coloured_drops,
    "green": green,
    "plastids": plastids,
    "even-tint": even,
    "dark": dark,
    "yolk": yolk,
    "resting": resting,
    "swarmer": swarmer,
    "pole-drops": pole_drops,
    "packed-drops": packed,
    "plain": plain,
}


STYLES = tuple(_DRAW)
