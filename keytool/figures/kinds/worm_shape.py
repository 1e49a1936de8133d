"""The shape of a nematode: posture as turning along the axis, half width along the body, tails by type."""

from __future__ import annotations

from collections.abc import Callable
from math import pi, pow, sin, sqrt

BELLY = -1
"""On which side of the axis the belly lies (+1: right as one travels from head to tail). A resting worm
curves toward its belly, so it is the inner side of every posture here; vulva and anus open on it."""

TAILS = {  # length in anal body widths
    "conoid-sharp": 2.9,
    "conoid-blunt": 2.2,
    "rounded": 1.1,
    "filiform": 10.0,
    "clavate": 5.0,
    "hooked": 4.2,
    "with-spinneret": 4.5,
    "clear-tip": 2.6,
}


def heading(posture: str, hooked: bool, tail: float, slender: float) -> Callable[[float], float]:
    """Direction along the worm for each posture (radians from straight down)."""

    def bend(t: float) -> float:
        match posture:
            case "wave":
                return 0.95 * sin(2 * pi * (t / 0.62 + 0.12))
            case "straight":
                return 0.05 * sin(2 * pi * t)
            case "arcuate":
                return -0.25 + 1.25 * pow(t, 2.2)
            case "C":
                return -2.1 + 4.2 * t
            case "spiral":  # turns ever tighter toward the tail
                return -1.6 + 2.6 * pi * (0.55 * t + 0.45 * t**2)
            case "six":  # the front coiled into a loop, the rear nearly straight
                return 0.25 - 5.4 * pow(max(0.0, 1 - t / 0.62), 1.25)
            case _:  # coiled: a watch spring whose turns lie a third of a width apart and never cross
                pitch, eye = 1.35, 0.9  # in widths
                outer = sqrt(eye**2 + pitch * slender / pi)
                return 2 * pi / pitch * (outer - sqrt(outer**2 - pitch * slender * t / pi))

    return lambda t: bend(t) + (2.9 * max(0.0, (t - 1 + max(0.14, 1.5 * tail)) / max(0.14, 1.5 * tail)) if hooked else 0.0)


def tail_heading(tail: float, *, hooked: bool) -> Callable[[float], float]:
    """Direction along a rear end of which the last share is tail: a gentle bend toward the belly, or a hook."""
    hook = 2.6 if hooked else 0.0
    return lambda t: 0.30 * t * t + hook * max(0.0, (t - 1 + tail) / tail)


def profile(length: float, width: float, tail: str, share: float) -> Callable[[float], float]:
    """Half width along the worm: blunt narrow head, even trunk, tail by type."""
    anus = 1 - share
    slope = min(0.72, anus - 0.15)

    def half(t: float) -> float:
        front = 0.34 + 0.66 * (1 - pow(1 - min(1.0, t / 0.22), 2.2))
        rear = 1 - 0.38 * pow(max(0.0, (t - slope) / (anus - slope)), 1.6) if t < anus else 0.62
        snout = min(1.0, t * length / (0.22 * width))
        full = width / 2 * front * rear * sqrt(1 - (1 - snout) ** 2)
        return full * _tail_shape(tail, min(1.0, (t - anus) / share)) if t > anus else full

    return half


def _tail_shape(tail: str, u: float) -> float:
    """Width at share u of the tail, 1 at the anus."""
    round_tip = sqrt(max(0.0, 1 - max(0.0, (u - 0.86) / 0.14) ** 2))
    match tail:
        case "conoid-sharp" | "hooked":
            return 1 - u
        case "clear-tip":
            return (1 - 0.70 * u) * round_tip
        case "conoid-blunt":
            return (1 - 0.62 * u) * round_tip
        case "rounded":
            return sqrt(max(0.0, 1 - u * u))
        case "filiform":
            return 0.90 * pow(1 - u, 2.6) + 0.10 * sqrt(1 - u)
        case "clavate":
            swell = 0.16 * max(0.0, 1 - ((u - 0.90) / 0.13) ** 2)
            return max(0.0, pow(1 - u, 1.3) * 0.82 + 0.18 * (1 - u**20) + swell * (1 - u**20))
        case _:  # with-spinneret: a little tube at the very tip
            return (1 - 0.78 * u) * (1.0 if u < 0.93 else 0.62) * (1.0 if u < 0.995 else 0.0)
