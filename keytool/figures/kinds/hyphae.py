"""Hyphae and tubes as they lie, each build by itself: how they branch, where walls run across, what they carry, what they hold."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import atan2, cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import thread_parts, tube
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .points import pts
from .round_contents import contents as fill
from .together import shifted
from .tube import Strand


def _way(text: str, w: float) -> Points:
    """A line through points written in widths of the thread."""
    return geometry.spaced(geometry.curve(geometry.scaled(pts(text), w), per=14), 0.25 * w)


def _strand(
    text: str, w: float, share: float = 1.0, *, dome: bool = False, uneven: float = 0.0, part: str = "outline", thin: float = 0.0
) -> Strand:
    """A tube along that way: `share` of the full width, ending in a blunt dome, swollen and narrow by turns, or thinning out."""
    line = _way(text, w)
    length = 0.25 * w * (len(line) - 1)
    tip = 0.5 * share * w / length if dome else 0.0

    def half(t: float) -> float:
        lumpy = 1 + uneven * sin(19 * t * length / (12 * w) + len(text)) + 0.6 * uneven * sin(8.3 * t * length / (12 * w))
        return share * w / 2 * lumpy * (1 - thin * t) * tube.round_ends(t, 0.0, tip)

    return Strand(line, length, half, part)


def _tubes(strands: Sequence[Strand], pen_um: float, wall: str = "single") -> list[Shape]:
    """The walls of all, each cut away where another joins it."""
    rings = [one.ring() for one in strands]
    return [shape for k, one in enumerate(strands) for shape in thread_parts.walls(one, [*rings[:k], *rings[k + 1 :]], wall, pen_um)]


def _septa(strand: Strand, shares: Sequence[float], *, pore: bool = False) -> list[Shape]:
    """Walls right across at those shares of the way; with a pore, a gap in the middle and two dark grains beside it."""
    out: list[Shape] = []
    for t in shares:
        if not pore:
            out.append(pen.stroke(tube.across(strand.axis, strand.half, t, share=0.95), 1.5, "cross-walls"))
            continue
        for a, b in ((-0.95, -0.14), (0.14, 0.95)):
            out.append(pen.stroke([tube.beside(strand.axis, strand.half, t, u) for u in (a, b)], 1.5, "cross-walls"))
        for s in (-1, 1):
            x, y = tube.beside(strand.axis, strand.half, t, 0.42 * s, 0.34 * s * strand.half(t))
            out.append(pen.disc(x, y, 0.13 * strand.half(t), "grains"))
    return out


def _grain(strand: Strand, pen_um: float, share: float = 0.8) -> list[Shape]:
    edge = tube.ring(strand.axis, lambda t: max(0.0, strand.half(t) - 2.2 * pen_um))
    return list(pen.grain(edge, 3.2 * pen_um, "contents", lambda p: share, sizes=(0.8, 1.2)))


def _bubbles(strand: Strand, spots: Sequence[tuple[float, float]]) -> list[Shape]:
    """Long clear vacuoles: where along the way, and how long in widths."""
    out: list[Shape] = []
    for t, long in spots:
        x, y, nx, ny = tube.place(strand.axis, t)
        out.append(
            pen.stroke(
                geometry.ellipse(x, y, long * strand.half(t), 0.62 * strand.half(t), turn=atan2(-nx, ny), count=40),
                0.9,
                "vacuoles",
                closed=True,
            )
        )
    return out


def _jaws(strand: Strand, t: float, pen_um: float) -> list[Shape]:
    """The width between two jaws, as it is measured."""
    out: list[Shape] = []
    wide = strand.half(t)
    for s in (-1, 1):
        foot = tube.beside(strand.axis, strand.half, t, s * (1 + 1.2 * pen_um / wide))
        far = tube.beside(strand.axis, strand.half, t, s * (1 + 16 * pen_um / wide))
        left, right = (tube.beside(strand.axis, strand.half, t, s * (1 + 6 * pen_um / wide), d * 3 * pen_um) for d in (-1, 1))
        out.append(pen.strokes([(far, foot), (left, foot, right)], 1.8, "measure"))
    return out


def _hypha(w: float) -> Sketch:
    """One strand of even width, two branches that join it at one focus, cross-walls, a blunt dome at the end."""
    main = _strand("1 -12, .4 -7, -.3 -2, .2 3, 1.2 8, 1.6 12", w)
    arm = _strand("-.1 -3.4, 2.2 -1.6, 4.4 .6, 5.6 3.2", w, 0.92, dome=True, part="branch")
    low = _strand(".5 4.6, -1.6 6.6, -3.6 8.0, -5.6 9.0", w, 0.92, dome=True, part="branch")
    pen_um = pen_for(12 * w, 24 * w)
    return Sketch(
        (
            *_tubes((main, arm, low), pen_um),
            *_septa(main, (0.17, 0.47, 0.80)),
            *_septa(arm, (0.24,)),
            *_septa(low, (0.26,)),
            *_grain(main, pen_um, 0.55),
            *_grain(arm, pen_um),
            *_grain(low, pen_um),
        ),
        pen_um,
    )


def _sac_fungus(w: float) -> Sketch:
    """Cross-walls close together, each with a pore and dark grains beside it; a branch walled off at its foot; never a clamp."""
    main = _strand("-1.8 -12, -.2 -5, .2 0, -.2 5, -1.8 12", w)
    arm = _strand(".2 -1.2, 2.4 .8, 3.6 3.6, 4.0 7.4, 3.6 12", w, 0.9, part="branch")
    pen_um = pen_for(10 * w, 24 * w)
    return Sketch(
        (
            *_tubes((main, arm), pen_um),
            *_septa(main, (0.08, 0.24, 0.41, 0.57, 0.74, 0.91), pore=True),
            *_septa(arm, (0.14, 0.47, 0.80), pore=True),
            *_bubbles(main, ((0.16, 1.5), (0.49, 1.9), (0.66, 1.3), (0.83, 1.7))),
        ),
        pen_um,
    )


def _clear_walled(w: float) -> Sketch:
    """Long cells with thin clear walls and great vacuoles; two cross-walls, none with a clamp."""
    main = _strand("-2.4 -12, -.8 -7, .6 -2, .6 3, -.6 8, -2.6 12", w)
    pen_um = pen_for(10 * w, 24 * w)
    return Sketch(
        (
            *_tubes((main,), pen_um),
            *_septa(main, (0.22, 0.70)),
            *_bubbles(main, ((0.31, 2.6), (0.46, 4.0), (0.60, 2.2), (0.82, 3.0), (0.12, 1.8))),
        ),
        pen_um,
    )


def _cross_walled(w: float) -> Sketch:
    """Two strands that cross, each with thin straight lines right across it."""
    one, two = _strand("-5 -9, -2 -4, 1 1, 4.6 9", w), _strand("5 -8, 2.4 -3, -1.2 3.4, -4 9", w, 0.9)
    pen_um = pen_for(12 * w, 18 * w)
    over = _tubes((one,), pen_um)
    ring = one.ring()
    under = [
        pen.line(run, (1.2,), "outline")
        for side in tube.sides(two.axis, two.half)
        for run in geometry.runs(side, lambda p: not geometry.inside(ring, p))
    ]
    return Sketch((*under, *_septa(two, (0.20, 0.78)), *over, *_septa(one, (0.14, 0.36, 0.66, 0.90))), pen_um)


def _mucor(w: float) -> Sketch:
    """A wide tube of uneven width, no wall across, its grains drawn out in streaks; a stalk rises from it with a ball full of spores."""
    main = _strand("-13 8, -8 9, -2 8, 4 9.2, 12 8", w, 1.0, uneven=0.13)
    arm = _strand("-6 8.8, -8 12, -9 16", w, 0.8, uneven=0.10, dome=True, part="branch")
    stalk = _strand("3 8.8, 3.4 4, 2.2 -4, 2.6 -11.4", w, 0.72, part="stalk")
    pen_um = pen_for(26 * w, 34 * w)
    x, y, r = 2.6 * w, -15.0 * w, 4.0 * w
    ball = geometry.ellipse(x, y, r, r, count=80)
    chance = pen.seed
    spores = [
        pen.ring(x + d * r * cos(a), y + d * r * sin(a), 0.105 * r, 1.0, "ball")
        for d, a in ((0.86 * ((k + 0.5) / 60) ** 0.5, 2.39996 * k) for k in range(60))
    ]
    streaks: list[Points] = []
    for k in range(26):
        t, out = 0.04 + 0.92 * k / 26, 0.62 * (2 * chance("streak", k) - 1)
        streaks.append(tuple(tube.beside(main.axis, main.half, min(1.0, t + u), out) for u in (0.0, 0.012, 0.024)))
    shapes = _tubes((main, arm, stalk), pen_um)
    return Sketch(
        (*shapes, pen.strokes(streaks, 1.1, "contents"), *_grain(arm, pen_um), pen.contour(ball, 1.2, 2.2, "ball"), *spores), pen_um
    )


def _mortierella(w: float) -> Sketch:
    """A thin tube, swollen here and narrow there, with many side branches that thin out to fine ends."""
    main = _strand("-1 -14, 1.2 -9, -.8 -4, .8 1, -1 7, .6 14", w, 1.0, uneven=0.24)
    arms = [
        _strand(text, w, 0.72, uneven=0.16, part="branch", thin=0.78)
        for text in (
            ".9 -9.6, 3.2 -8.6, 5.2 -9.4, 8 -8.4", "-.6 -4.6, -3 -4.4, -4.8 -2.6, -7.4 -2.8", ".6 .4, 2.6 1.8, 4.2 1.4, 6.8 3.2",
            "-.7 5.6, -2.8 7.2, -4.2 9.8, -6.8 10.4", ".0 10.4, 2.2 11.4, 3.8 13.6, 6.0 13.8",
        )
    ]  # fmt: skip
    pen_um = pen_for(16 * w, 28 * w)
    return Sketch((*_tubes((main, *arms), pen_um),), pen_um)


def _water_mould(w: float) -> Sketch:
    """A clear tube without cross-walls; on a side stalk a ball in a ball, a small club laid against it."""
    main = _strand("-2 -11, -1.2 -5, -1.6 1, -.6 6, -1.4 11", w, 1.0, uneven=0.05)
    stalk = _strand("-1.3 -1.4, .4 -1.0, 1.8 -.2", w, 0.6, part="branch")
    club = _strand("-.8 5.0, 1.0 5.4, 2.6 4.6, 3.6 3.6", w, 0.55, dome=True, part="branch")
    pen_um = pen_for(11 * w, 22 * w)
    x, y, r = 4.2 * w, 0.6 * w, 2.7 * w
    outer, inner = geometry.ellipse(x, y, r, r, count=80), geometry.ellipse(x + 0.04 * r, y + 0.05 * r, 0.80 * r, 0.80 * r, count=80)
    room = geometry.ellipse(0, 0, 0.66 * r, 0.66 * r, count=60)
    return Sketch(
        (
            *_tubes((main, stalk, club), pen_um),
            pen.contour(outer, 1.2, 2.2, "ball"),
            pen.contour(inner, 1.4, 2.0, "ball"),
            pen.stroke(geometry.ellipse(x + 0.04 * r, y + 0.05 * r, 0.70 * r, 0.70 * r, count=60), 0.7, "ball", closed=True),
            *shifted(
                (*fill("one-drop", room, pen_um), *pen.grain(room, 3.2 * pen_um, "contents", lambda p: 0.4)), x + 0.04 * r, y + 0.05 * r
            ),
            *_grain(main, pen_um, 0.35),
        ),
        pen_um,
    )


def _broad_open(w: float) -> Sketch:
    """A broad tube and its branch, no line across; the width between two jaws."""
    main = _strand("-1.2 -7.5, .2 -3, .2 2, -1 7.5", w, 1.0, uneven=0.03)
    arm = _strand(".2 -2.2, 2.2 .4, 3.2 4, 3.4 7.5", w, 0.85, part="branch")
    pen_um = pen_for(8 * w, 15 * w)
    return Sketch((*_tubes((main, arm), pen_um), *_grain(main, pen_um, 0.5), *_grain(arm, pen_um, 0.4), *_jaws(main, 0.20, pen_um)), pen_um)


def _narrow_open(w: float) -> Sketch:
    """A narrow tube that forks, no line across; the width between two jaws."""
    main = _strand("0 -14, .4 -8, -.2 -3, 0 1", w)
    arms = [_strand(f"0 .4, {s * 1.4} 3.4, {s * 3.4} 7.4, {s * 4.2} 13", w, 0.9, part="branch") for s in (-1, 1)]
    pen_um = pen_for(12 * w, 28 * w)
    return Sketch((*_tubes((main, *arms), pen_um), *_jaws(main, 0.40, pen_um)), pen_um)


def _open(w: float) -> Sketch:
    """A tube seen over a long stretch with branch upon branch and not one line across it; its grains run on past every fork."""
    main = _strand("-4 -17, -1.8 -11, -.4 -4, -1 3, .6 10, .2 17", w)
    arms = [
        _strand("-.8 -7, 2.4 -4.4, 5.6 -3.6, 9 -.8", w, 0.9, part="branch"),
        _strand("4.4 -3.9, 6.2 -6.8, 9 -8.4", w, 0.8, dome=True, part="branch"),
        _strand("-.6 4.6, -3.4 7, -6 8, -8.4 11", w, 0.9, dome=True, part="branch"),
    ]
    pen_um = pen_for(18 * w, 34 * w)
    return Sketch((*_tubes((main, *arms), pen_um), *(g for one in (main, *arms) for g in _grain(one, pen_um, 0.5))), pen_um)


def _rhizoid(w: float) -> Sketch:
    """One long wide cell from a plate of green cells: no wall across, no branch, a few small pegs inside its wall."""
    main = _strand(".2 -5.2, .2 -4, .6 0, -.6 5, .4 10, .2 14", w, 1.0, dome=True)
    pen_um = pen_for(9 * w, 20 * w)
    cells: list[Shape] = []
    for k in range(4):
        left, right = (-3.6 + 1.8 * k) * w, (-1.8 + 1.8 * k) * w
        ring = geometry.curve(
            [
                (left + 0.1 * w, -7.0 * w),
                (right - 0.1 * w, -7.0 * w),
                (right, -6.0 * w),
                (right - 0.12 * w, -5.1 * w),
                (left + 0.12 * w, -5.1 * w),
                (left, -6.0 * w),
            ],
            closed=True,
            per=5,
        )
        cells += [pen.stroke(ring, 1.3, "plate", closed=True), *pen.grain(ring, 3.6 * pen_um, "plate", lambda p: 0.5)]
    pegs: list[Points] = []
    for k in range(11):
        t, s = 0.16 + 0.074 * k, 1 if k % 2 else -1
        pegs.append((tube.beside(main.axis, main.half, t, s * 0.93), tube.beside(main.axis, main.half, t, s * 0.70)))
    return Sketch((*cells, *_tubes((main,), pen_um), pen.strokes(pegs, 1.6, "pegs")), pen_um)


def _tube_piece(w: float) -> Sketch:
    """A thin-walled piece of tube: both ends torn off, one flattened and folded over; nothing in it, nothing on it."""
    main = _strand("-1.4 -7, .2 -4, .8 0, .2 3.4, -.4 5.2", w)
    pen_um = pen_for(5 * w, 14 * w)
    shapes = _tubes((main,), pen_um)
    torn = []
    for t, s in ((0.0, -1), (1.0, 1)):
        torn.append(
            tuple(
                tube.beside(main.axis, main.half, t, u, s * d * w)
                for u, d in ((-1, 0.0), (-0.6, 0.30), (-0.2, -0.05), (0.2, 0.34), (0.55, 0.02), (0.8, 0.22), (1, 0.0))
            )
        )
    fold = [
        tuple(tube.beside(main.axis, main.half, t, u) for t, u in one)
        for one in (((0.42, -0.95), (0.47, 0.1), (0.50, 0.95)), ((0.50, 0.9), (0.55, -0.2), (0.62, -0.95)))
    ]
    return Sketch(
        (
            *shapes,
            *(pen.stroke(one, 1.1, "outline") for one in torn),
            *(pen.line(geometry.curve(one, per=6), (0.5, 1.3, 0.5), "fold") for one in fold),
        ),
        pen_um,
    )


def _pollen_tube(w: float) -> Sketch:
    """A wavy thin-walled tube that comes out of a furrowed pollen grain; bright plugs lie in it, grains crowd in its tip."""
    main = _strand("0 -5.4, .2 -3, 1.6 0, .2 4, -1.4 8, .4 12, 1.2 15", w, 1.0, dome=True)
    pen_um = pen_for(8 * w, 24 * w)
    r, y = 1.9 * w, -7.0 * w
    ball = tuple(
        (r * (1 - 0.10 * max(0.0, cos(3 * a + pi)) ** 2) * cos(a), y + r * (1 - 0.10 * max(0.0, cos(3 * a + pi)) ** 2) * sin(a))
        for a in (2 * pi * k / 90 for k in range(90))
    )
    inner = geometry.offset(geometry.clockwise(ball), [0.20 * w] * len(ball), closed=True)
    ring = main.ring()
    plugs = []
    for t in (0.34, 0.62):
        edge = [
            tube.beside(main.axis, main.half, t, u, d * w)
            for u, d in ((-0.95, -0.32), (0.0, -0.16), (0.95, -0.32), (0.95, 0.32), (0.0, 0.16), (-0.95, 0.32))
        ]
        plugs.append(pen.stroke(geometry.curve(edge, closed=True, per=5), 1.4, "plugs", closed=True))
    inside = tube.ring(main.axis, lambda t: max(0.0, main.half(t) - 2.2 * pen_um))
    foot = main.axis[-1][1]
    grains = pen.grain(inside, 2.8 * pen_um, "contents", lambda p: 0.85 if p[1] > foot - 5 * w else 0.12)
    return Sketch(
        (
            *(pen.line(run, (1.6, 2.4, 1.6), "grain") for run in geometry.runs((*ball, ball[0]), lambda p: not geometry.inside(ring, p))),
            *(pen.stroke(run, 0.8, "grain") for run in geometry.runs((*inner, inner[0]), lambda p: not geometry.inside(ring, p))),
            *_tubes((main,), pen_um),
            *plugs,
            *grains,
        ),
        pen_um,
    )


def _strands(w: float) -> Sketch:
    """What a long strand may be: a branched hypha, a hair that tapers to a point, a flat fibre that twists, a bare fine line."""
    pen_um = pen_for(20 * w, 24 * w)
    main, arm = _strand("-8 -11, -7.2 -4, -7.8 4, -6.8 12", w), _strand("-7.4 -2.4, -5.4 .2, -4.4 3.2", w, 0.9, dome=True, part="branch")
    hair = geometry.spaced(geometry.curve(geometry.scaled(pts("-2.6 11, -2.2 4, -1 -4, 1.4 -11"), w), per=14), 0.3 * w)
    half = [0.9 * w * (1 - k / (len(hair) - 1)) + 0.02 * w for k in range(len(hair))]
    out: list[Shape] = [*_tubes((main, arm), pen_um), *_septa(main, (0.2, 0.55, 0.85))]
    out += [pen.line(geometry.offset(hair, [s * h for h in half]), (1.8 if s < 0 else 1.2, 0.5), "hair") for s in (-1, 1)]
    out.append(pen.stroke((geometry.offset(hair, half)[0], geometry.offset(hair, [-h for h in half])[0]), 1.2, "hair"))
    line = geometry.spaced(geometry.curve(geometry.scaled(pts("4.4 -11, 4.0 -4, 4.6 4, 4.2 12"), w), per=14), 0.2 * w)
    wide = [1.5 * w * cos(pi * 2.5 * k / (len(line) - 1)) for k in range(len(line))]
    edges = [geometry.offset(line, [s * h for h in wide]) for s in (-1, 1)]
    out += [pen.line(edge, (1.5,), "fibre") for edge in edges]
    fine = geometry.curve(geometry.scaled(pts("8.4 -11, 7.2 -5, 9.2 0, 8 6, 9.4 12"), w), per=14)
    out.append(pen.line(fine, (1.4,), "line"))
    return Sketch(tuple(out), pen_um)


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "hypha": _hypha,
    "sac-fungus": _sac_fungus,
    "clear-walled": _clear_walled,
    "cross-walled": _cross_walled,
    "mucor": _mucor,
    "mortierella": _mortierella,
    "water-mould": _water_mould,
    "broad-open": _broad_open,
    "narrow-open": _narrow_open,
    "open": _open,
    "rhizoid": _rhizoid,
    "tube-piece": _tube_piece,
    "pollen-tube": _pollen_tube,
    "strands": _strands,
}


def build(v: Values) -> Sketch:
    """The form at the width asked for."""
    sketch = _FORMS[word(v, "form")](num(v, "width"))
    return sketch if v["measure"] else replace(sketch, shapes=tuple(one for one in sketch.shapes if one.part != "measure"))


KIND = Kind(
    "hyphae",
    "hyphae and other tubes as they lie, with what each kind of them is told by",
    (
        choice(
            "form",
            tuple(_FORMS),
            "branched with cross-walls; walls with pores; clear with vacuoles; two that cross; broad with a ball of spores on a stalk; "
            "swollen and narrow with fine branches; with a ball in a ball; broad without walls; narrow and forked without walls; "
            "a long stretch without walls; rhizoid on its plate; piece of a tube; tube from a pollen grain; strands of every make",
        ),
        um("width", 4, 0.5, 100, "width of the main strand"),
        flag("measure", "the width between two jaws, where it is what tells (broad and narrow without walls)"),
        accent("body", "cross-walls", "branch", "contents", "vacuoles", "measure", "ball", "pegs", "plugs", "fold"),
    ),
    build,
)
