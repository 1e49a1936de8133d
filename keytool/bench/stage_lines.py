"""The scale of a picture of a stage micrometer, from the spacing of its lines.

The way of the ruling is the commonest direction in which light changes; the picture is turned so that it lies along the rows, cut into
bands, and the spacing is where the bands are like themselves again (autocorrelation). Both halves must agree. Where nothing regular
is found, it asks. The same steps stand in `site/assets/bench/stage-lines.js`.
"""

from __future__ import annotations

import math
from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from operator import mul
from typing import TYPE_CHECKING

from keytool.bench.field_edge import NoEdge, Point, find_edge, grey

if TYPE_CHECKING:
    from PIL import Image

BANDS = 16
WIDEST = 1400
"""Pixels along the ruling that are worked on; enough for 1 in 1000, and quick."""
TURNED = 480
"""Longest side, in pixels, at which the way of the ruling is found."""
INSIDE = 0.69
"""Half the side of the square looked at, in radii of the field: its corners lie just inside the edge."""
LEAST_REGULAR = 0.3
"""How like itself the picture must be, one line further on (1 is the same), to count as ruled."""
LEAST_LINES = 5
RISE = 0.15
"""How much more like itself it must be on a line than between two."""
LEAST_SPACING = 3.5
"""Pixels from line to line below which they run into each other."""
AGREE = 0.03
"""How far both halves may differ; a lens that bends the scale by more is of no use."""
CLOSE = 0.15


class NoScale(Exception):
    """No regular lines, or too few; the message says what would help."""


@dataclass(frozen=True, slots=True)
class Ruling:
    """What was measured on a picture of a stage micrometer.

    Pixels from line to line, µm to a pixel with its relative error, how many divisions cross the picture, the way of the ruling in
    radians, one point on a line, and how like itself the picture is one line further on (0 to 1).
    """

    spacing_px: float
    um_per_pixel: float
    relative_error: float
    divisions: float
    turn: float
    on_a_line: Point
    regular: float


def scale_of_lines(image: Image.Image, division_um: float, divisions: int | None = None) -> Ruling:
    """The scale of a picture of a stage micrometer whose lines stand `division_um` apart; they may lie any way.

    `divisions`, counted by eye from edge to edge of the picture, guards against taking every fifth, longer line for every line.

    Raises:
        NoScale: no regular lines, too few, or another number than was counted.
    """
    turn, (x, y), half, reach = _where(image)
    ruled, by, tall = _turned(image, turn, (x, y), half)
    bands = [_bare(each) for each in ruled]
    alike = _alike(bands)
    lag = _first_peak(alike)
    if lag is None or alike[lag] < LEAST_REGULAR:
        raise NoScale(
            "No regular lines were found. Fill the picture with the ruled part of the stage micrometer, in focus, with even light; "
            "or set two lines on it and say how many divisions lie between; or say --um-per-pixel."
        )
    spacing = _refined(alike, lag)
    lines = len(bands[0]) / spacing
    if lines < LEAST_LINES:
        raise NoScale(
            f"Only about {lines:.0f} lines were found; at least {LEAST_LINES} are needed. Take a lower power, or a finer micrometer."
        )
    if spacing < LEAST_SPACING:
        raise NoScale("The lines are too close to be told apart. Take a higher power, or set two lines far from each other.")
    apart = _halves(bands, spacing)
    if apart > AGREE:
        raise NoScale(
            f"The lines stand {100 * apart:.0f} % wider on one side than on the other. Lay the scale in the middle, hold the phone square "
            "to the eyepiece, or set two lines on it."
        )
    seen = reach / (spacing * by)
    if divisions is not None and abs(seen - divisions) > max(1.0, CLOSE * divisions):
        raise NoScale(
            f"{divisions} divisions were counted, but the lines found would make {seen:.1f}. Count again from edge to edge, and "
            "see that the scale fills the picture."
        )
    lean = _lean(bands, spacing, tall)
    spacing, turn = spacing * math.cos(lean), turn + lean
    along = (_dark(bands, spacing) - (len(bands[0]) - 1) / 2) * by
    error = max(apart / 2, 0.25 / len(bands[0]))
    point = (x + along * math.cos(turn), y + along * math.sin(turn))
    return Ruling(spacing * by, division_um / (spacing * by), error, seen, turn, point, alike[lag])


def scale_of_two_lines(one: Point, two: Point, divisions: float, division_um: float, end_px: float) -> Ruling:
    """The same from two lines set by hand with so many divisions between, each end good to `end_px`.

    Raises:
        NoScale: the two lie too near each other.
    """
    span = math.dist(one, two)
    if span < 20 * end_px:
        raise NoScale("The two lines are too near each other. Set two that are far apart.")
    error = math.sqrt(2) * end_px / span
    turn = math.atan2(two[1] - one[1], two[0] - one[0])
    return Ruling(span / divisions, division_um * divisions / span, error, divisions, turn, one, 1.0)


def _where(image: Image.Image) -> tuple[float, Point, float, float]:
    """The way of the ruling, the middle and half the side of the square to look at, and how far the picture reaches along it."""
    try:
        edge = find_edge(image)
        middle, half = (edge.x, edge.y), INSIDE * edge.radius
    except NoEdge:
        edge, middle, half = None, ((image.width - 1) / 2, (image.height - 1) / 2), 0.0
    of = grey(image, TURNED)
    way = [0.0] * 180
    for j in range(1, of.height - 1):
        for i in range(1, of.width - 1):
            if edge and math.hypot(i * of.factor - edge.x, j * of.factor - edge.y) > 0.9 * edge.radius:
                continue
            at = j * of.width + i
            gx, gy = of.light[at + 1] - of.light[at - 1], of.light[at + of.width] - of.light[at - of.width]
            strong = gx * gx + gy * gy
            if strong > 16:
                way[round(math.degrees(math.atan2(gy, gx))) % 180] += strong
    smooth = [math.fsum(way[(n + d) % 180] * (4 - abs(d)) for d in range(-3, 4)) for n in range(180)]
    best = max(range(180), key=smooth.__getitem__)
    near = [(d, way[(best + d) % 180]) for d in range(-4, 5)]
    total = math.fsum(weight for _, weight in near)
    turn = math.radians(best + (math.fsum(d * weight for d, weight in near) / total if total else 0.0))
    if turn > math.pi / 2:
        turn -= math.pi
    c, s = abs(math.cos(turn)), abs(math.sin(turn))
    across = min(image.width / c if c > 1e-9 else math.inf, image.height / s if s > 1e-9 else math.inf)
    return turn, middle, half or across / 2, 2 * edge.radius if edge else across


def _turned(image: Image.Image, turn: float, middle: Point, half: float) -> tuple[list[list[float]], float, float]:
    """The square about `middle`, turned so that the ruling lies along the rows, in bands.

    Also how many pixels of the picture are one of its own, and how many of its rows make a band. What lies outside the picture
    repeats its border.
    """
    from PIL import Image

    columns = min(WIDEST, max(64, round(2 * half)))
    by = 2 * half / columns
    rows = min(columns, max(BANDS, round(2 * min(half, min(image.size) / 2) / by) // BANDS * BANDS))
    if by > 1:  # brought down first, so that fine lines do not fold
        small = image.convert("L").resize((max(2, round(image.width / by)), max(2, round(image.height / by))), Image.Resampling.BOX)
    else:
        small = image.convert("L")
    k = small.width / image.width
    c, s = math.cos(turn) * by * k, math.sin(turn) * by * k
    x, y = (middle[0] + 0.5) * k, (middle[1] + 0.5) * k
    left, top = x - c * columns / 2 + s * rows / 2, y - s * columns / 2 - c * rows / 2
    border = max(2, round(half * k))
    wide = _bordered(small, border)
    square = wide.transform(
        (columns, rows), Image.Transform.AFFINE, (c, -s, left + border, s, c, top + border), resample=Image.Resampling.BILINEAR
    )
    values = array("f", square.convert("F").resize((columns, BANDS), Image.Resampling.BOX).tobytes())
    return [list(values[n * columns : (n + 1) * columns]) for n in range(BANDS)], by, rows / BANDS


def _bordered(image: Image.Image, border: int) -> Image.Image:
    """The picture with its outermost pixels repeated all round."""
    from PIL import Image

    w, h = image.size
    out = Image.new("L", (w + 2 * border, h + 2 * border))
    out.paste(image, (border, border))
    out.paste(image.crop((0, 0, 1, h)).resize((border, h)), (0, border))
    out.paste(image.crop((w - 1, 0, w, h)).resize((border, h)), (w + border, border))
    out.paste(out.crop((0, border, w + 2 * border, border + 1)).resize((w + 2 * border, border)), (0, 0))
    out.paste(out.crop((0, border + h - 1, w + 2 * border, border + h)).resize((w + 2 * border, border)), (0, h + border))
    return out


def _bare(profile: Sequence[float]) -> list[float]:
    """A profile without its slow changes, such as a bright middle: each value less the mean of its neighbourhood."""
    reach = max(3, len(profile) // 8)
    sums = [0.0]
    for each in profile:
        sums.append(sums[-1] + each)
    ends = [(max(0, at - reach), min(len(profile), at + reach + 1)) for at in range(len(profile))]
    bare = [each - (sums[high] - sums[low]) / (high - low) for each, (low, high) in zip(profile, ends, strict=True)]
    most = 4 * sorted(abs(each) for each in bare)[len(bare) // 2]  # a clod of dirt shall not outweigh the lines
    return [min(most, max(-most, each)) for each in bare]


def _alike(bands: Sequence[Sequence[float]]) -> list[float]:
    """How like themselves the bands are at each shift, from 1 at none; up to half their length."""
    size = len(bands[0])
    power = sum(each * each for band in bands for each in band) / size or 1.0
    return [sum(sum(map(mul, band, band[lag:])) for band in bands) / (size - lag) / power for lag in range(size // 2)]


def _first_peak(alike: Sequence[float]) -> int | None:
    """The first shift at which it is like itself again: one line further on, not five, though every fifth line is longer."""
    peaks, least = [], 1.0
    for lag in range(1, len(alike) - 1):
        least = min(least, alike[lag])
        if alike[lag - 1] < alike[lag] >= alike[lag + 1] and alike[lag] - least > RISE:
            peaks.append(lag)
    if not peaks:
        return None
    best = max(peaks, key=alike.__getitem__)
    for lag in peaks:
        times = best / lag
        if alike[lag] >= 0.6 * alike[best] or (alike[lag] >= LEAST_REGULAR and abs(times - round(times)) < 0.04 * round(times)):
            return lag
    return best


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


def _halves(bands: Sequence[Sequence[float]], spacing: float) -> float:
    """How far the spacing differs between both halves, as a share; 0 where a half holds too few lines to say."""
    size = len(bands[0])
    found = []
    for part in (slice(0, size // 2), slice(size // 2, size)):
        alike = _alike([band[part] for band in bands])
        low, high = math.floor(0.8 * spacing), min(len(alike) - 2, math.ceil(1.2 * spacing))
        if high - low < 2:
            return 0.0
        found.append(_refined(alike, max(range(max(1, low), high + 1), key=alike.__getitem__)))
    return abs(found[0] - found[1]) / spacing


def _wave(band: Sequence[float], spacing: float) -> complex:
    """How strong a wave of that spacing is in a band, and where it stands."""
    return complex(
        math.fsum(value * math.cos(2 * math.pi * n / spacing) for n, value in enumerate(band)),
        math.fsum(value * math.sin(2 * math.pi * n / spacing) for n, value in enumerate(band)),
    )


def _lean(bands: Sequence[Sequence[float]], spacing: float, tall: float) -> float:
    """How far the lines still lean, in radians: by how much they have moved from one band to the next, `tall` rows further down."""
    waves = [_wave(band, spacing) for band in bands]
    moved = sum((low * top.conjugate() for top, low in pairwise(waves)), 0j)
    return math.atan(math.atan2(moved.imag, moved.real) / (2 * math.pi) * spacing / tall)


def _dark(bands: Sequence[Sequence[float]], spacing: float) -> float:
    """Where, in the first spacing of the most regular band, its lines lie: they are darker than the ground."""
    wave = max((_wave(band, spacing) for band in bands), key=abs)
    return (math.atan2(wave.imag, wave.real) / (2 * math.pi) + 0.5) % 1 * spacing
