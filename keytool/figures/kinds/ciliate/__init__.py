"""Ciliates by their shape and their hairs."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch
from ..ciliates import bell, swimming_bell
from ..kind import Kind, Values, accent, choice, num, um, word
from .beans import colpoda, fed, fungus_eater, l_shape, pear, slipper
from .hunters import ear, flask, flat_leaf, long_neck
from .kin import big_mouth, edge_unseen, slender_walker, smooth_bean
from .movers import hypotrich, in_tube, jumper, leaper
from .odd_shapes import helmet, stiff_stalk, twist


def build(v: Values) -> Sketch:
    """The ciliate, front end at the top."""
    return _FORMS[word(v, "form")](num(v, "length"))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "pear": pear,
    "slipper": slipper,
    "bean": colpoda,
    "fed-bean": fed,
    "l-bean": l_shape,
    "fungus-feeder": fungus_eater,
    "walker": lambda n: hypotrich(n, False),
    "walker-with-tail": lambda n: hypotrich(n, True),
    "jumper-with-sail": lambda n: jumper(n, True),
    "jumper": lambda n: jumper(n, False),
    "leaper": leaper,
    "flask": flask,
    "long-neck": long_neck,
    "ear": ear,
    "flat-leaf": flat_leaf,
    "twist": twist,
    "helmet": helmet,
    "in-tube": in_tube,
    "bell": bell,
    "swimming-bell": swimming_bell,
    "stiff-bell": stiff_stalk,
    "smooth-bean": smooth_bean,
    "big-mouth": big_mouth,
    "slender-walker": slender_walker,
    "edge-unseen": edge_unseen,
}


KIND = Kind(
    "ciliate",
    "a ciliate by its shape and its hairs",
    (
        choice(
            "form",
            tuple(_FORMS),
            "pear with an even coat; slipper with two star bubbles; bean with a notch; bean full of food; L-shaped "
            "bean; bean feeding on a hypha; walker on bristles, without or "
            "with three tail bristles; jumper with a sail, or without; ball with stiff hairs; flask; long neck; ear; "
            "flat leaf; twist; helmet; in a tube of slime; bell on a coiling stalk, swimming without one, or on a "
            "stiff stalk; bean with a shallow notch; bean with a huge mouth; slender walker; small oval whose edge is not made out",
        ),
        um("length", 45, 5, 1000, "length of the body without hairs and stalk"),
        accent(
            "body",
            "cilia",
            "cirri",
            "wreath",
            "mouth",
            "nucleus",
            "vacuole",
            "food",
            "stalk",
            "sail",
            "tail-hair",
            "tail-hairs",
            "tail-bristles",
            "bristles",
            "twist",
            "tube",
            "feeding-tube",
            "beak",
        ),
    ),
    build,
)
