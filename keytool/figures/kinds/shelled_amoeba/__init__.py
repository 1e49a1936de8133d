"""Shelled amoebae by shell: wall, shape, the mouth and where it lies, spines, and what reaches out."""

from __future__ import annotations

from collections.abc import Sequence

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Points, Shape
from ..kind import Kind, Values, accent, choice, colour, flag, num, um, word
from ..points import pts
from .mouths import arms, arms_round, mouth_from_below, mouth_ring, rim
from .section import cut_open
from .walls import shell_wall

_SIDES: dict[str, Sequence[Point]] = {  # right half, closed end up, length 1, mouth at the foot
    "flask": pts("0 0, .16 .03, .29 .17, .325 .4, .275 .66, .175 .88, .145 1"),
    "pear": pts("0 0, .2 .03, .34 .18, .37 .4, .31 .64, .2 .83, .165 .93, .185 1"),
    "egg": pts("0 0, .2 .03, .36 .2, .4 .46, .34 .72, .19 .92, .105 1"),
    "lens": pts("0 0, .24 .02, .43 .17, .49 .42, .43 .67, .25 .88, .12 .95, .105 1"),
    "dome": pts("0 0, .34 .04, .66 .24, .82 .55, .84 .82, .78 .97, .7 1, .5 1, .3 1"),
    "barrel": pts("0 0, .13 0, .2 .03, .31 .2, .345 .5, .31 .8, .2 .97, .13 1"),
    "cap": pts("0 0, .34 .04, .74 .26, .98 .62, 1.06 .86, 1.02 .98, .92 1, .6 .97, .34 .97"),
}


def build(v: Values) -> Sketch:
    """The shell: from the side with its mouth at the foot, or seen from below."""
    match word(v, "view"):
        case "below":
            return _from_below(v)
        case "section":
            return cut_open(num(v, "length"), word(v, "wall"), turned=word(v, "rim") == "turned-in")
        case _:
            return _from_the_side(v)


def _from_the_side(v: Values) -> Sketch:
    n, form, wall = num(v, "length"), word(v, "form"), word(v, "wall")
    side = geometry.curve(geometry.scaled(_SIDES[_side_form(form)], n), per=10)
    if form in ("dome", "cap"):  # here the length is the breadth, as it is seen from below
        side = geometry.scaled(side, 0.5 * n / max(x for x, _ in side))
    edge = (*reversed(geometry.mirrored(side)), *side[1:])
    box = geometry.around(edge)
    pen_um = pen_for(1.05 * box.width, 1.3 * box.height)
    lip, foot = side[-1]
    shapes: list[Shape] = [pen.contour(edge, 1.3, 2.4, "outline", closed=False), *shell_wall(edge, wall, n, pen_um)]
    shapes += rim(word(v, "rim"), lip, foot, n)
    if form == "barrel":
        shapes.append(pen.stroke(((-lip, 0.0), (lip, 0.0)), 1.1, "opening"))
    shapes += _cell(edge, lip, foot, n, pen_um) if wall in ("smooth", "tinted") else []
    if v["spines"]:
        shapes += _spines(edge, n)
    return Sketch((*arms(word(v, "pseudopods"), lip, foot, n), *shapes), pen_um)


def _side_form(form: str) -> str:
    return form if form in _SIDES else "egg"


def _from_below(v: Values) -> Sketch:
    n, form, wall = num(v, "length"), word(v, "form"), word(v, "wall")
    slanted = form in ("slanted-round", "slanted-oval")
    if slanted:
        half = pts("0 0, .13 .02, .21 .1, .26 .28, .33 .52, .345 .7, .27 .89, .13 .985")
        ring = geometry.curve([*half, (0, 1.0), *reversed(geometry.mirrored(half[1:]))], closed=True, per=8)
    else:
        ring = geometry.ellipse(0, 0.5, 0.5, 0.5 if form != "hidden-slit" else 0.46, count=96)
    edge = geometry.clockwise(geometry.tall(ring, n))
    pen_um = pen_for(1.05 * n, 1.05 * n)
    mouth = mouth_ring(form, n)
    shapes: list[Shape] = [pen.contour(edge, 1.3, 2.5, "outline"), *shell_wall(edge, wall, n, pen_um, mouth)]
    shapes += mouth_from_below(form, mouth, n, turned=word(v, "rim") == "turned-in")
    if v["spines"]:
        shapes += _spines(edge, n)
    return Sketch((*arms_round(word(v, "pseudopods"), edge, n), *shapes), pen_um)


def _cell(edge: Points, lip: float, foot: float, n: float, pen_um: float) -> list[Shape]:
    """The cell within a shell clear enough to see it."""
    box = geometry.around(edge)
    r = 0.30 * min(box.width, box.height)
    body = geometry.ellipse(0, box.y + 0.52 * box.height, 1.15 * r, r)
    threads = [((s * 0.86 * box.width / 2, box.y + 0.62 * box.height), (s * 0.9 * r, box.y + 0.55 * box.height)) for s in (-1, 1)]
    return [
        pen.stroke(body, 0.8, "contents", closed=True),
        pen.strokes([t for t in threads if abs(t[0][0]) > abs(t[1][0])], 0.5, "contents"),
        *pen.grain(body, 3.4 * pen_um, "contents", lambda p: 0.7),
    ]


def _spines(edge: Points, n: float) -> list[Shape]:
    """A few long tapering spines from the closed end."""
    out: list[Shape] = []
    box = geometry.around(edge)
    closed = [p for p in edge if p[1] < box.y + 0.55 * box.height]
    for x, y in (geometry.walked(closed, k / 6) for k in range(7)):
        dx, dy = x, y - (box.y + 0.5 * box.height)
        size = (dx * dx + dy * dy) ** 0.5
        tip = (x + 0.17 * n * dx / size, y + 0.17 * n * dy / size)
        out.append(pen.line(((x, y), tip), (2.4, 0.5), "spines"))
    return out


BELOW = ("central", "cornered", "off-centre", "slanted-round", "slanted-oval", "hidden-slit")


def _wrong_view(view: str, form: str) -> str:
    """What is wrong with asking for this form in this view; empty if nothing is."""
    if view == "section" and form != "dome":
        return "view section shows a dome: form must be dome"
    if (form in BELOW) != (view == "below"):
        return f"form {form} is for the view from {'below' if form in BELOW else 'the side'}"
    return ""


KIND = Kind(
    "shelled-amoeba",
    "a shelled amoeba by its shell: from the side, mouth at the foot, or from below, looking at the mouth",
    (
        choice("view", ("side", "below", "section"), "from the side, onto the mouth, or a dome cut open through the mouth"),
        choice(
            "form",
            (*_SIDES, *BELOW),
            "side: flask, pear or urn, egg, lens, high dome, barrel with two mouths, low cap; below: mouth in the middle, three-cornered, "
            "off the middle, "
            "slanted near the narrow end (round or oval), hidden under a lip",
        ),
        um("length", 50, 5, 500, "length of the shell; of a dome or cap its breadth"),
        choice(
            "wall",
            ("plates", "brown-plates", "mixed", "sand-behind", "grains", "smooth", "tinted"),
            "own plates, clear or brown, plates of many sizes, those with sand on the blunt end, sand grains, smooth and clear, "
            "or brown skin",
        ),
        choice("rim", ("plain", "toothed", "turned-in"), "rim of the mouth"),
        choice("pseudopods", ("none", "threads", "fingers"), "what reaches out"),
        flag("spines", "spines at the closed end"),
        accent("body", "opening", "scales", "spines", "pseudopods", "contents"),
        colour(),
    ),
    build,
    lambda v: [wrong] if (wrong := _wrong_view(word(v, "view"), word(v, "form"))) else [],
)
