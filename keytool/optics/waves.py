"""Waves sent through slices of matter, one point of the lamp at a time, and summed: the picture of all that light gets through.

Each slice turns the phase and takes its share of the light; between slices the wave spreads by its exact angular spectrum.
All planes of focus come from one passage. Scalar light; nothing is thrown back.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import scipy.fft as fft
from numpy.typing import NDArray

from .transfer import WATER, Floats

COLOURS = (0.61, 0.55, 0.465)
"""µm: the middle of what the eye takes as red, green and blue."""
GREEN_FOCUS = 0.35
"""µm that green focuses apart from red and blue in an achromat (memory)."""
GOLDEN = 2.399963


@dataclass(frozen=True, slots=True)
class Slices:
    """Matter between slide and coverslip.

    `path[k]` is the integral of (n - water) through slice k, µm; `loss[c, k]` the
    loss of amplitude there in each colour. Slice k lies from k `depth` to (k + 1) `depth`; a pixel is `pixel` µm wide.
    """

    path: NDArray[np.float32]
    loss: NDArray[np.float32]
    pixel: float
    depth: float


def spiral(count: int) -> Floats:
    """`count` points spread evenly over the unit disc."""
    i = np.arange(count) + 0.5
    return np.sqrt(i / count)[:, None] * np.c_[np.cos(i * GOLDEN), np.sin(i * GOLDEN)]


def lamp_points(iris: float) -> int:
    """How many points of the lamp a picture needs, so that no ghost rows show beside what is out of focus."""
    return 1 if iris <= 0 else int(np.interp(iris, (0.1, 0.3, 0.7, 1.0), (6, 14, 36, 64)))


def images(
    matter: Slices,
    focus: Sequence[float],
    iris: float,
    aperture: float,
    *,
    points: int | None = None,
    colours: Sequence[float] = COLOURS,
    green_focus: float = GREEN_FOCUS,
) -> NDArray[np.float32]:
    """Light relative to the empty ground, [plane of focus, row, column, colour]; `focus` is µm above the slide."""
    count, n, _ = matter.path.shape
    px, dz = matter.pixel, matter.depth
    f = fft.fftfreq(n, px)
    f2 = f[:, None] ** 2 + f[None] ** 2
    x = np.arange(n) * px
    out = np.zeros((len(focus), n, n, len(colours)), np.float32)
    filled = [k for k in range(count) if matter.path[k].any() or matter.loss[:, k].any()]
    lamp = spiral(points or lamp_points(iris)) * iris
    for c, wave in enumerate(colours):
        rise = np.sqrt(np.maximum((WATER / wave) ** 2 - f2, 0)) - WATER / wave
        carries = f2 < (WATER / wave) ** 2 * 0.98
        shift = green_focus if wave == COLOURS[1] else 0.0

        def spread(z: float, rise: Floats = rise, carries: NDArray[np.bool_] = carries) -> NDArray[np.complex64]:
            return (np.exp(2j * np.pi * z * rise) * carries).astype(np.complex64)

        gates = [
            np.exp(-matter.loss[min(c, len(matter.loss) - 1), k] + 2j * np.pi / wave * matter.path[k]).astype(np.complex64) for k in filled
        ]
        steps = {gap: spread(gap * dz) for gap in {b - a for a, b in pairwise(filled)}}
        pupil = np.clip((aperture / wave - np.sqrt(f2)) * n * px / 2 + 0.5, 0, 1)
        last = filled[-1] if filled else 0
        lenses = [(pupil * spread(z + shift - (last + 0.5) * dz)).astype(np.complex64) for z in focus]
        seen = 0.0
        for q in lamp * aperture / wave:
            i, j = (int(each) for each in np.round(q * n * px))
            tilt = [np.exp(2j * np.pi * k / (n * px) * x).astype(np.complex64) for k in (i, j)]
            u = tilt[0][:, None] * tilt[1][None]
            for m, gate in enumerate(gates):
                u *= gate
                if m + 1 < len(gates):
                    u = fft.ifft2(fft.fft2(u, overwrite_x=True) * steps[filled[m + 1] - filled[m]], overwrite_x=True)
            u = fft.fft2(u, overwrite_x=True)
            for a, lens in enumerate(lenses):
                out[a, ..., c] += np.abs(fft.ifft2(u * lens, overwrite_x=True)) ** 2
            seen += float(pupil[i, j]) ** 2
        out[..., c] /= seen
    return out
