"""Measure micrometres per pixel from a picture of a stage micrometer: the spacing of its lines by autocorrelation."""

from __future__ import annotations

import math
from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from operator import mul

from PIL import Image

BANDS = 8
WIDEST = 1400
"""Pixels that a picture is brought down to along the scale; enough for 1 in 1000, and quick."""
LEAST_REGULAR = 0.35
"""How like itself the picture must be, one line further on (1 is the same), to count as ruled."""
LEAST_LINES = 5
CLOSE = 0.15


class NoScale(Exception):
    """Raised when no regular lines are found; the message says what would help."""


@dataclass(frozen=True, slots=True)
class Scale:
    """What was measured: pixels from line to line, how like itself the picture is one line further on (0 to 1), and µm per pixel."""

    spacing_px: float
    regular: float
    um_per_pixel: float


def scale(image: Image.Image, division_um: float, divisions: int | None = None) -> Scale:
    """The scale of a picture of a stage micrometer whose lines stand `division_um` apart.

    The lines may run up and down or across, and lean a little. `divisions`, counted by eye from
    edge to edge of the picture, guards against taking every fifth, longer line for every line.
    Source: autocorrelation of a periodic signal peaks at its period (general knowledge).

    Raises:
        NoScale: no regular lines, too few, or another number than was counted.
    """
    grey = image.convert("L")
    ways = [_Ruled.of(grey), _Ruled.of(grey.transpose(Image.Transpose.ROTATE_90))]
    best = max(ways, key=lambda each: each.regular)
    if best.regular < LEAST_REGULAR:
        raise NoScale(
            "No regular lines were found. Fill the picture with the ruled part of the stage micrometer, in focus, its lines "
            "upright, with even light; or say --um-per-pixel."
        )
    if best.length / best.spacing < LEAST_LINES:
        raise NoScale(
            f"Only about {best.length / best.spacing:.0f} lines were found; at least {LEAST_LINES} are needed. "
            "Take a lower power, or a finer micrometer."
        )
    seen = best.length / best.spacing
    if divisions is not None and abs(seen - divisions) > max(1.0, CLOSE * divisions):
        raise NoScale(
            f"{divisions} divisions were counted, but the lines found would make {seen:.1f}. Count again from edge to edge, and "
            "see that the scale fills the picture."
        )
    return Scale(best.spacing, best.regular, division_um / best.spacing)


@dataclass(frozen=True, slots=True)
class _Ruled:
    """How regular a picture is along its rows: the spacing square to the lines and the length, in pixels of the original."""

    spacing: float
    regular: float
    length: float

    @classmethod
    def of(cls, grey: Image.Image) -> _Ruled:
        """What is found along the rows, cut into bands so that lines that lean are not blurred."""
        shrink = max(1.0, grey.width / WIDEST)
        columns = round(grey.width / shrink)
        small = grey.convert("F").resize((columns, BANDS), Image.Resampling.BOX)
        values = array("f", small.tobytes())
        bands = [_bare(values[n * columns : (n + 1) * columns]) for n in range(BANDS)]
        total = _alike(bands)
        lag = _first_peak(total)
        if lag is None:
            return cls(1.0, 0.0, grey.width)
        spacing = _refined(total, lag) * grey.width / columns
        lean = _lean(bands, lag) * grey.width / columns / (grey.height / BANDS)
        return cls(spacing * math.cos(math.atan(lean)), total[lag], grey.width * math.cos(math.atan(lean)))


def _bare(profile: Sequence[float]) -> list[float]:
    """A profile without its slow changes, such as a bright middle: each value less the mean of its neighbourhood."""
    reach = max(3, len(profile) // 8)
    sums = [0.0]
    for each in profile:
        sums.append(sums[-1] + each)
    ends = [(max(0, at - reach), min(len(profile), at + reach + 1)) for at in range(len(profile))]
    return [each - (sums[high] - sums[low]) / (high - low) for each, (low, high) in zip(profile, ends, strict=True)]


def _alike(bands: Sequence[Sequence[float]]) -> list[float]:
    """How like themselves the bands are at each shift, from 1 at none; up to half their length."""
    size = len(bands[0])
    power = sum(each * each for band in bands for each in band) / size or 1.0
    return [sum(sum(map(mul, band, band[lag:])) for band in bands) / (size - lag) / power for lag in range(size // 2)]


def _first_peak(alike: Sequence[float]) -> int | None:
    """The first shift at which it is about as like itself as ever again: one line further on, not five."""
    start = next((lag for lag in range(1, len(alike)) if alike[lag] < 0), len(alike))
    peaks = [lag for lag in range(start + 1, len(alike) - 1) if alike[lag - 1] < alike[lag] >= alike[lag + 1]]
    highest = max((alike[lag] for lag in peaks), default=0.0)
    return next(lag for lag in peaks if alike[lag] >= 0.6 * highest) if highest > 0 else None


def _refined(alike: Sequence[float], lag: int) -> float:
    """The spacing to a fraction of a pixel, from the furthest peak that can be followed, one after the other."""
    spacing, count = _top(alike, lag), 1
    while (next_at := round(spacing * (count + 1))) + 2 < len(alike):
        near = max(range(max(1, next_at - 2), next_at + 3), key=alike.__getitem__)
        if near + 1 >= len(alike) or alike[near] < LEAST_REGULAR * alike[lag]:
            break
        count += 1
        spacing = _top(alike, near) / count
    return spacing


def _top(alike: Sequence[float], lag: int) -> float:
    """Where a parabola through three points has its top."""
    before, here, after = alike[lag - 1], alike[lag], alike[lag + 1]
    bend = before - 2 * here + after
    return lag + (0.5 * (before - after) / bend if bend else 0.0)


def _lean(bands: Sequence[Sequence[float]], lag: int) -> float:
    """How far the lines have moved sideways from one band to the next, on average, in pixels."""
    half = max(1, lag // 2)
    size = len(bands[0])

    def together(shift: int) -> float:
        low, high = max(0, -shift), min(size, size - shift)
        return sum(sum(map(mul, one[low:high], other[low + shift : high + shift])) for one, other in pairwise(bands))

    scores = {shift: together(shift) for shift in range(-half, half + 1)}
    best = max(scores, key=lambda shift: (scores[shift], -abs(shift)))
    if abs(best) == half:
        return float(best)
    row = [scores[best - 1], scores[best], scores[best + 1]]
    return best - 1 + _top(row, 1)
