"""Single bodies by shape, wall, contents, marks on the wall and what they are joined to: cysts, spores, eggs."""

from __future__ import annotations

from .. import geometry
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from .kind import Kind, Values, accent, choice, colour, flag, given, num, um, word
from .round_contents import STYLES, contents
from .round_joins import JOINS, join
from .round_lots import LOTS
from .round_marks import MARKS, mark
from .round_shapes import WIDTHS, outline
from .round_walls import ROOMS, wall


def build(v: Values) -> Sketch:
    """The body, its middle at (0, 0)."""
    if v["lot"] != "none":
        return LOTS[word(v, "lot")](num(v, "diameter"))
    length, shape = num(v, "diameter"), word(v, "shape")
    width = given(v, "width", length * WIDTHS[shape])
    pen_um, style = pen_for(1.15 * width, 1.15 * length), word(v, "wall")
    edge = outline(shape, length, width)
    shapes: list[Shape] = []
    joined = "stalk" if v["stalk"] else word(v, "joined")
    shapes += join(joined, edge, length, width, pen_um)
    shapes += wall(style, edge, pen_um)
    spot = word(v, "mark")
    shapes += [] if spot == "none" else mark(spot, edge, pen_um)
    room = _room(edge, ROOMS[style])
    filling = word(v, "contents")
    return Sketch((*shapes, *contents(filling, room, pen_um)), pen_um, tonal=filling == "dark")


def _room(edge: Points, share: float) -> Points:
    box = geometry.around(edge)
    return geometry.offset(edge, [(1 - share) * min(box.width, box.height) / 2] * len(edge), closed=True)


KIND = Kind(
    "round-body",
    "a cyst, spore or egg: a single body by its shape, its wall and what is in it",
    (
        um("diameter", 20, 2, 1000, "outer diameter, or length of one that is not round; ornament left out"),
        um("width", None, 1, 1000, "width of one that is not round; the shape's own if left out"),
        choice("shape", tuple(WIDTHS), "outline; lopsided: one side flat; triangle: a rounded one"),
        choice("wall", tuple(ROOMS), "the wall; layered: several layers; wrinkled: an outer skin in folds; netted: a mesh of ridges"),
        choice(
            "contents",
            STYLES,
            "what is inside; star: a second, star-shaped wall; ball: a thick-walled ball with one drop; worm: coiled; "
            "animal: folded, with jaws; legged: folded, with legs, claws and two bent needles; "
            "coloured-drops: oil with a colour; "
            "green: a green body with an edge; plastids: several small green discs; "
            "tinted-cells: four without a nucleus, each in its own jelly; "
            "even-tint: colour from wall to wall; dark: no light comes through; "
            "yolk: packed globules; resting: a nucleus and a few grains; "
            "swarmer: grains about a bubble; pole-drops: one at each end; packed-drops: of every size; plain: nothing that tells",
        ),
        choice("mark", MARKS, "openings and scars: one pore with a ring, a scar line, a Y, a plugged pore, pores at the middle"),
        choice(
            "joined",
            JOINS,
            "what it is joined to: a stalk, a stalk swollen to a bulb, two stumps, a bud, a "
            "side peg, a thread in line, a cap of grains, a germ thread, a fine short stalk",
        ),
        choice("lot", ("none", *LOTS), "several side by side instead of one: round bodies of every kind; spores of every shape"),
        flag("stalk", "a stub of the thread it grew on; the same as joined: stalk"),
        accent("body", "wall", "contents", "stalk", "mark", "joined"),
        colour(),
    ),
    build,
)
