"""A whole field at 40×: what of a theme the low power shows among grit, crumbs and a bubble.

The 4x objective sees no fringes, so no waves are needed: each body bends light by the slope of its optical path, and what
is bent out of the objective's cone is lost. That is a thin prism at every point, good for slopes up to about its aperture;
beyond, all light is lost anyway. What is in the field comes from the library: entries of the theme that are met most.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.ndimage import gaussian_filter

from keytool.figures.bounds import bounds
from keytool.library.model import Library

from .laid import BODY, Laid
from .matter import Rng, noise
from .silhouette import Placing, Silhouette, named, silhouette
from .stand import shown
from .transfer import WATER, Floats, covered

APERTURE, IRIS = 0.10, 1.0
"""Of the 4x objective; a student condenser fills it, shut as far as it goes."""
ACROSS = 4500.0
"""The field of a 10x eyepiece with field number 18 at 4x, µm."""
SIZE, SHOWN = 2000, 480
PIXEL = ACROSS / SIZE


def passed(slope: Floats, iris: float = IRIS, aperture: float = APERTURE) -> Floats:
    """The share of light that still enters the objective where the optical path rises by `slope` (µm per µm): overlap of two discs."""
    return covered(slope / aperture, iris)


def field(library: Library, theme: str, laid: Sequence[Laid]) -> NDArray[np.uint8]:
    """The field of a theme in sRGB, `SHOWN` pixels a side; the page cuts it round."""
    rng = np.random.default_rng(zlib.crc32(theme.encode()))
    light = np.ones((SIZE, SIZE, 3), np.float32)
    _ground(light, rng, library)
    taken: list[tuple[float, float, float]] = []
    for each in laid:
        for _ in range(1 if each.long > 700 else 2 if each.long > 150 else 4):
            _lay(light, each, rng, taken)
    light = gaussian_filter(light, (0.21 * 0.55 / APERTURE / PIXEL, 0.21 * 0.55 / APERTURE / PIXEL, 0))
    small = np.asarray(
        Image.fromarray(shown(light, 1, fall=0.16, grain=0.0)).resize((SHOWN, SHOWN), Image.Resampling.LANCZOS), dtype=np.uint8
    )
    return small


def _lay(light: NDArray[np.float32], one: Laid, rng: Rng, taken: list[tuple[float, float, float]]) -> None:
    reach = one.long / 2
    for _ in range(60):
        r, turn = (0.92 * ACROSS / 2 - min(reach, 900.0)) * np.sqrt(rng.uniform()), rng.uniform(0, 2 * np.pi)
        x, y = float(r * np.cos(turn)), float(r * np.sin(turn))
        if all(np.hypot(x - a, y - b) > 0.8 * (reach + c) for a, b, c in taken):
            break
    taken.append((x, y, reach))
    box = bounds(tuple(each for each in one.drawing.shapes if each.part in BODY), 0.0, 0.0)
    placing = Placing((box.x + box.width / 2, box.y + box.height / 2), float(rng.uniform(0, 2 * np.pi)))
    size = int(1.5 * one.long / PIXEL) + 24
    shape = silhouette([placing.put(line) for line in named(one.drawing, *BODY)], size, PIXEL)
    _stamp(light, x, y, _through(shape, one, rng, size))


def _through(shape: Silhouette, one: Laid, rng: Rng, size: int) -> Floats:
    """What a body lets through, [row, column, colour]."""
    section, inside = one.section, one.inside
    round_body = section is None or section.body in ("round", "ball", "grain")
    high = shape.height * (section.flat if section else 1.0) * (np.sqrt(2) if round_body and section else 1.0)
    if section and section.body == "crumb":
        uneven = np.clip(1 + 0.8 * noise(rng, size, 5.0) + 0.6 * noise(rng, size, 1.5), 0, 3)
        high = np.minimum(high, 25.0) * uneven
    if section and section.body == "grain":
        high = high * (1 + 0.12 * noise(rng, size, 4.0))
    path = 2 * high * (inside.index - WATER)
    rise = np.hypot(*np.gradient(path, PIXEL))
    share = passed(rise)
    absorbed = np.exp(-np.stack([2 * high * each for each in inside.absorbs], -1))
    covers = np.clip(shape.inside / PIXEL + 0.5, 0, 1)[..., None]
    return np.asarray(1 - covers * (1 - share[..., None] * absorbed))


def _stamp(light: NDArray[np.float32], x: float, y: float, through: Floats) -> None:
    n = through.shape[0]
    left, top = round((x + ACROSS / 2) / PIXEL - n / 2), round((y + ACROSS / 2) / PIXEL - n / 2)
    a, b, c, d = max(0, left), max(0, top), min(SIZE, left + n), min(SIZE, top + n)
    if a < c and b < d:
        light[b:d, a:c] *= through[b - top : d - top, a - left : c - left].astype(np.float32)


def _ground(light: NDArray[np.float32], rng: Rng, library: Library) -> None:
    """Specks, crumbs of humus, grains and one bubble: what every drop of soil shows first."""
    materials = library.eyepiece.materials
    count = 900
    at, r = rng.integers(0, SIZE, (count, 2)), np.minimum(rng.lognormal(0.9, 0.6, count), 9.0)
    specks = np.zeros((SIZE, SIZE), np.float32)
    np.add.at(specks, (at[:, 0], at[:, 1]), (0.6 * np.pi * r**2 / PIXEL**2).astype(np.float32))
    specks = gaussian_filter(specks, 0.7)
    light *= np.exp(-specks)[..., None] ** np.array([0.85, 1.0, 1.2], np.float32)
    for _ in range(16):
        wide = float(rng.lognormal(5.1, 0.5))
        n = int(2.4 * wide / PIXEL)
        g = np.linspace(-1.2, 1.2, n)
        far = np.hypot(*np.meshgrid(g, g))
        bits = 0.35 * noise(rng, n, n / 12) + 0.35 * noise(rng, n, 6.0) + 0.25 * noise(rng, n, 2.0) + 0.7 * (0.55 - far)
        thick = 11 * np.clip(bits, 0, 1.5) * np.clip((1.15 - far) / 0.4, 0, 1)
        _stamp(
            light,
            *_anywhere(rng, 0.5),
            np.exp(-np.stack([thick * each for each in materials["humus"].absorbs], -1)) * passed(0.03 * np.minimum(thick, 4))[..., None],
        )
    for radius, of, rough in _balls(rng):
        n = int(2.3 * radius / PIXEL) + 6
        along = (np.arange(n) - n / 2 + 0.5) * PIXEL
        gx, gy = np.meshgrid(along, along)
        edge = radius * (1 + rough * np.cos(3 * np.arctan2(gy, gx) + rng.uniform(0, 6)) + 0.6 * rough * np.cos(5 * np.arctan2(gy, gx)))
        h = np.sqrt(np.clip(edge**2 - gx**2 - gy**2, 0, None)) * (1 + (0.12 if rough else 0) * noise(rng, n, 4.0))
        share = passed(np.hypot(*np.gradient(2 * h * (materials[of].index - WATER), PIXEL)))
        covers = np.clip((edge - np.hypot(gx, gy)) / PIXEL + 0.5, 0, 1)
        _stamp(light, *_anywhere(rng, 0.42), np.repeat((1 - covers * (1 - share))[..., None], 3, 2))


def _anywhere(rng: Rng, share: float) -> tuple[float, float]:
    x, y = rng.uniform(-share, share, 2) * ACROSS
    return float(x), float(y)


def _balls(rng: Rng) -> Iterator[tuple[float, str, float]]:
    """Radius (µm), material and unevenness: grains by a law of sizes, and one bubble."""
    for _ in range(26):
        yield float(np.clip(rng.lognormal(2.8, 0.5), 6, 60)), "quartz", 0.12
    yield float(rng.uniform(70, 120)), "air", 0.0
