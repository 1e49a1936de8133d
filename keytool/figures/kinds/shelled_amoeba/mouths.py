"""The mouth of a shell, from the side and from below, and what reaches out of it."""

from __future__ import annotations

from math import cos, sin

from ... import geometry, pen
from ...shapes import Points, Shape
from ..points import pts


def mouth_ring(form: str, n: float) -> Points:
    """The edge of the mouth seen from below."""
    match form:
        case "cornered":
            corners = pts("0 .29, .07 .4, .19 .6, .17 .66, .05 .62, -.06 .63, -.17 .66, -.19 .6, -.07 .41")
            return geometry.clockwise(geometry.curve(geometry.scaled(corners, n), closed=True, per=4))
        case "off-centre":
            return geometry.ellipse(0, 0.27 * n, 0.19 * n, 0.155 * n)
        case "slanted-round":
            return geometry.ellipse(0, 0.18 * n, 0.085 * n, 0.085 * n)
        case "slanted-oval":
            return geometry.ellipse(0, 0.18 * n, 0.115 * n, 0.062 * n)
        case "hidden-slit":
            top = geometry.curve(geometry.scaled(pts("-.26 .4, -.14 .31, 0 .285, .14 .31, .26 .4"), n), per=8)
            under = geometry.curve(geometry.scaled(pts(".26 .4, .13 .345, 0 .325, -.13 .345, -.26 .4"), n), per=8)
            return (*top, *under)
        case _:
            return geometry.ellipse(0, 0.5 * n, 0.185 * n, 0.185 * n)


def mouth_from_below(form: str, ring: Points, n: float, *, turned: bool) -> list[Shape]:
    """The mouth as its shapes; a turned-in rim shows as a second ring."""
    if form == "hidden-slit":
        lip = geometry.curve(geometry.scaled(pts("-.33 .45, -.18 .35, 0 .325, .18 .35, .33 .45"), n), per=8)
        return [pen.filled(ring, "opening", role="faint"), pen.line(lip, (0.8, 2.2, 0.8), "opening")]
    out: list[Shape] = [pen.contour(ring, 1.4, 2.0, "opening")]
    if turned:
        box = geometry.around(ring)
        wide = geometry.ellipse(box.x + box.width / 2, box.y + box.height / 2, 0.66 * box.width, 0.66 * box.height)
        out.append(pen.stroke(wide, 0.8, "opening", closed=True))
    return out


def rim(rim: str, lip: float, foot: float, n: float) -> list[Shape]:
    """The rim of a mouth seen from the side."""
    out: list[Shape] = [pen.stroke(((-lip, foot), (lip, foot)), 1.1, "opening")]
    if rim == "toothed":
        count = max(6, 2 * round(lip / (0.022 * n)))
        step = 2 * lip / count
        teeth = [
            ((-lip + k * step, foot), (-lip + (k + 0.5) * step, foot + 0.028 * n), (-lip + (k + 1) * step, foot)) for k in range(count)
        ]
        out.append(pen.strokes(teeth, 1.0, "opening"))
    if rim == "turned-in":
        funnel = geometry.curve([(lip, foot), (0.86 * lip, foot - 0.06 * n), (0.62 * lip, foot - 0.13 * n)], per=6)
        out += [pen.line(s, (1.8, 1.0), "opening") for s in (funnel, geometry.mirrored(funnel))]
    return out


def arms(style: str, lip: float, foot: float, n: float) -> list[Shape]:
    """What reaches out of a mouth at the foot: threads or fingers."""
    if style == "threads":
        lines = [
            geometry.curve(
                [
                    (s * lip, foot),
                    (s * (lip + 0.05 * n), foot + 0.10 * n),
                    (s * (lip + 0.13 * n) + 0.02 * n, foot + (0.30 - 0.09 * abs(s)) * n),
                ],
                per=6,
            )
            for s in (-0.85, -0.4, 0.05, 0.45, 0.9)
        ]
        return [pen.line(one, (1.0, 0.5), "pseudopods") for one in lines]
    if style == "fingers":
        out: list[Shape] = []
        for s, size in ((-0.55, 0.20), (0.05, 0.28), (0.62, 0.17)):
            w = max(0.036 * n, 0.16 * lip)
            x = s * lip * 0.9
            lean = s * 0.10 * n
            finger = geometry.curve(
                [
                    (x - w, foot),
                    (x - 0.9 * w + 0.6 * lean, foot + 0.6 * size * n),
                    (x - 0.4 * w + lean, foot + 0.96 * size * n),
                    (x + lean, foot + size * n),
                    (x + 0.5 * w + lean, foot + 0.95 * size * n),
                    (x + 0.9 * w + 0.6 * lean, foot + 0.55 * size * n),
                    (x + w, foot),
                ],
                per=6,
            )
            out.append(pen.line(finger, (1.2, 1.6, 1.4), "pseudopods"))
        return out
    return []


def arms_round(style: str, edge: Points, n: float) -> list[Shape]:
    """What reaches out from under a shell seen from below."""
    if style == "none":
        return []
    out: list[Shape] = []
    for a, size in pts(".3 .17, 1.2 .12, 2.3 .2, 3.6 .14, 5 .18"):
        x, y = 0.48 * n * cos(a), 0.5 * n + 0.48 * n * sin(a)
        c, s = cos(a), sin(a)
        if style == "threads":
            out.append(pen.line(((x, y), (x + c * 1.4 * size * n, y + s * 1.4 * size * n)), (1.0, 0.5), "pseudopods"))
            continue
        w = 0.035 * n
        path = [
            (x - s * w, y + c * w),
            (x - s * w + 0.7 * c * size * n, y + c * w + 0.7 * s * size * n),
            (x + c * size * n, y + s * size * n),
            (x + s * w + 0.7 * c * size * n, y - c * w + 0.7 * s * size * n),
            (x + s * w, y - c * w),
        ]
        for run in geometry.runs(geometry.curve(path, per=6), lambda p: not geometry.inside(edge, p)):
            out.append(pen.line(run, (1.2, 1.5), "pseudopods"))
    return out
