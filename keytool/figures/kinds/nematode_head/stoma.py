"""The mouth cavity, seen from the side: tubes, cups, barrels, and mouths that hardly are one."""

from __future__ import annotations

from itertools import pairwise

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from .head import Head


def stoma(head: Head) -> list[Shape]:
    """The walls of the cavity named by `head.mouth`; nothing where a spear fills the mouth."""
    if head.spear != "none":
        return []
    return _DRAW[head.mouth](head)


def wall(head: Head) -> Points:
    """The right wall from the front to the base."""
    w, n, y0 = head.mouth_width / 2, head.mouth_length, 0.1 * head.lip
    shape = _WALLS[head.mouth]
    sharp = head.mouth in ("open-tube", "funnel", "minute")
    points = [(x * w, y0 + y * n) for x, y in shape]
    return tuple(points) if sharp else geometry.curve(points, per=8)


_WALLS: dict[str, tuple[Point, ...]] = {  # shares of half width and of length
    "open-tube": ((1.0, 0.0), (1.0, 1.0)),
    "jointed-tube": ((1.0, 0.0), (1.0, 0.2), (0.5, 0.34), (0.42, 1.0)),
    "flared-tube": ((1.0, 0.0), (0.88, 0.22), (0.66, 0.50), (0.62, 1.0)),
    "unseen": ((1.0, 0.0), (0.6, 1.0)),
    "wide-cup": ((0.62, 0.0), (0.92, 0.16), (1.0, 0.40), (0.90, 0.66), (0.56, 0.88), (0.16, 1.0)),
    "funnel": ((1.0, 0.0), (0.1, 1.0)),
    "minute": ((1.0, 0.0), (0.2, 1.0)),
    "barrel": ((0.50, 0.0), (0.84, 0.08), (1.0, 0.26), (1.0, 0.56), (0.86, 0.80), (0.52, 0.94), (0.14, 1.0)),
    "closed": ((0.0, 0.0), (0.0, 1.0)),
    "slit": ((1.2, 0.0), (0.9, 0.5), (0.7, 1.0)),
}


def half_at(head: Head, y: float) -> float:
    """Half width of the cavity at depth y, 0 where there is none."""
    if head.spear != "none":
        return 0.0
    for (x1, y1), (x2, y2) in pairwise(wall(head)):
        if y1 <= y <= y2:
            return x1 + (x2 - x1) * (y - y1) / ((y2 - y1) or 1.0)
    return 0.0


def _pair(side: Points, weights: tuple[float, ...], part: str = "stoma") -> list[Shape]:
    return [pen.line(s, weights, part) for s in (side, geometry.mirrored(side))]


def _thin(head: Head, *weights: float) -> tuple[float, ...]:
    """Wall weights held back so that the hollow between two walls stays open."""
    fit = min(1.0, 0.42 * head.mouth_width / (max(weights) * head.pen))
    return tuple(w * max(fit, 0.35) for w in weights)


def _tube(head: Head) -> list[Shape]:
    """Two bright parallel lines, small swellings at the base."""
    side = wall(head)
    w, y = side[-1]
    foot = geometry.curve([(w, y), (0.75 * w, y + 0.7 * w), (0.1 * w, y + 1.3 * w)], per=5)
    return [*_pair(side, _thin(head, 2.0, 2.4)), *_pair(foot, _thin(head, 2.4, 0.8), "stoma-base")]


def _jointed(head: Head) -> list[Shape]:
    """A wider front chamber, then short segments stacked one on another, each a little narrower."""
    w, n, y0 = head.mouth_width / 2, head.mouth_length, 0.1 * head.lip
    chamber = geometry.curve([(0.75 * w, y0), (1.0 * w, y0 + 0.10 * n), (0.94 * w, y0 + 0.24 * n)], per=5)
    out = _pair(chamber, _thin(head, 1.6, 3.0, 2.2))
    y = y0 + 0.30 * n
    for k, share in enumerate((0.20, 0.18, 0.17, 0.15)):
        x1 = w * (0.72 - 0.11 * k)
        seg = ((x1, y), (x1 - 0.07 * w, y + (share - 0.035) * n))
        out += _pair(seg, _thin(head, 2.6, 1.5))
        y += share * n
    return out


def _cup(head: Head) -> list[Shape]:
    return _pair(wall(head), (1.0, 1.5, 1.1))


def _funnel(head: Head) -> list[Shape]:
    return _pair(wall(head), (1.5, 0.9))


def _barrel(head: Head) -> list[Shape]:
    """Thick, evenly curved walls; the ink lies outside the cavity, so the cavity keeps its true width."""
    side = wall(head)
    thick = (0.7, 3.0, 3.4, 3.2, 0.6)
    return [pen.line(side, thick, "stoma"), pen.line(geometry.mirrored(side), thick, "stoma")]


def _closed(head: Head) -> list[Shape]:
    """A plug across the mouth and the collapsed passage behind it."""
    r, n = head.lip, head.mouth_length
    plug = geometry.curve([(-0.3 * r, 0.14 * r), (0.0, 0.22 * r), (0.3 * r, 0.14 * r)], per=6)
    return [pen.line(plug, (0.8, 1.8, 0.8), "stoma"), pen.stroke(((0.0, 0.32 * r), (0.0, 0.32 * r + n)), 0.6, "stoma")]


def _slit(head: Head) -> list[Shape]:
    return _pair(wall(head), (1.3, 1.0))


def _unseen(head: Head) -> list[Shape]:
    """What the lens does not part: a soft grey place where the mouth must be, without an edge."""
    r = 0.75 * head.lip
    spot = geometry.ellipse(0.0, 0.75 * head.lip, 0.62 * r, r, count=48)
    return list(
        pen.grain(
            spot,
            1.5 * head.pen,
            "stoma",
            lambda p: 1.0 - ((p[0] / (0.62 * r)) ** 2 + ((p[1] - 0.75 * head.lip) / r) ** 2) ** 0.5,
            sizes=(1.0,),
        )
    )


_DRAW = {
    "flared-tube": _tube,
    "unseen": _unseen,
    "open-tube": _tube,
    "jointed-tube": _jointed,
    "wide-cup": _cup,
    "funnel": _funnel,
    "minute": _funnel,
    "barrel": _barrel,
    "closed": _closed,
    "slit": _slit,
}
