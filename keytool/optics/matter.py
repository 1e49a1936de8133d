"""A drop as slices that get filled: bodies between two surfaces, grains by the thousand, angular chips."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from keytool.library.eyepiece_records import Material

from .transfer import WATER, Floats
from .waves import Slices

Rng = np.random.Generator


class Drop:
    """Matter in a square `size` pixels wide (the middle at 0, 0) and `count` slices deep; x and y in µm, y down."""

    def __init__(self, size: int, pixel: float, count: int, depth: float) -> None:
        self.size, self.pixel, self.count, self.depth = size, pixel, count, depth
        self.half = size * pixel / 2
        self.path = np.zeros((count, size, size), np.float32)
        self.loss = np.zeros((3, count, size, size), np.float32)

    @property
    def height(self) -> float:
        """From slide to coverslip, µm."""
        return self.count * self.depth

    def slices(self) -> Slices:
        """What light has to pass."""
        return Slices(self.path, self.loss, self.pixel, self.depth)

    def fill(self, at: tuple[slice, slice], low: Floats, high: Floats, step: float | Floats, absorbs: tuple[float, ...] = ()) -> None:
        """Matter between two surfaces (one value a pixel of the window `at`): `step` is its index less that of what it lies in."""
        there = high > low
        if not there.any():
            return
        first, last = max(0, int(low[there].min() / self.depth)), min(self.count, int(high[there].max() / self.depth) + 1)
        for k in range(first, last):
            part = np.clip(np.minimum(high, (k + 1) * self.depth) - np.maximum(low, k * self.depth), 0, None)
            self.path[k][at] += (part * step).astype(np.float32)
            for c, each in enumerate(absorbs):
                self.loss[c, k][at] += (part * each / 2).astype(np.float32)

    def window(self, x: float, y: float, reach: float) -> tuple[tuple[slice, slice], Floats, Floats]:
        """The pixels within `reach` of a point, and where they are."""
        lo = np.clip(np.floor((np.array([x, y]) - reach + self.half) / self.pixel).astype(int), 0, self.size)
        hi = np.clip(np.ceil((np.array([x, y]) + reach + self.half) / self.pixel).astype(int), 0, self.size)
        gx, gy = ((np.arange(a, b) + 0.5) * self.pixel - self.half for a, b in zip(lo, hi, strict=True))
        return (slice(lo[1], hi[1]), slice(lo[0], hi[0])), *np.meshgrid(gx, gy)

    def grains(self, at: Floats, radius: Floats, step: Floats, absorbs: tuple[float, ...] = ()) -> None:
        """Many small balls at once (`at`: n rows of x, y, z), each wholly in the slice that holds its middle."""
        if not len(at):
            return
        px, sub = self.pixel, 3
        reach = int(np.ceil(radius.max() / px)) + 1
        ix, iy = (np.floor((at[:, i] + self.half) / px).astype(int) for i in (0, 1))
        k = np.clip((at[:, 2] / self.depth).astype(int), 0, self.count - 1)
        fine = (np.arange((2 * reach + 1) * sub) + 0.5) / sub * px - reach * px
        dx = fine[None] + (ix * px - self.half - at[:, 0])[:, None]
        dy = fine[None] + (iy * px - self.half - at[:, 1])[:, None]
        h = 2 * np.sqrt(np.clip(radius[:, None, None] ** 2 - dx[:, None, :] ** 2 - dy[:, :, None] ** 2, 0, None))
        w = 2 * reach + 1
        h = h.reshape(len(at), w, sub, w, sub).mean((2, 4))
        rows = iy[:, None, None] + np.arange(-reach, reach + 1)[None, :, None] + 0 * h.astype(int)
        columns = ix[:, None, None] + np.arange(-reach, reach + 1)[None, None, :] + 0 * h.astype(int)
        layer = k[:, None, None] + 0 * rows
        inside = (rows >= 0) & (rows < self.size) & (columns >= 0) & (columns < self.size) & (h > 0)
        where = (layer[inside], rows[inside], columns[inside])
        np.add.at(self.path, where, (h * step[:, None, None])[inside].astype(np.float32))
        for c, each in enumerate(absorbs):
            if each:
                np.add.at(self.loss[c], where, (h[inside] * each / 2).astype(np.float32))

    def chip(self, rng: Rng, x: float, y: float, z: float, r: float, of: Material, *, flat: float, dark: float = 1.0) -> None:
        """An angular chip: a lens cut by lines, its top tilted."""
        at, gx, gy = self.window(x, y, r + self.pixel)
        if not gx.size:
            return
        dx, dy = gx - x, gy - y
        h = np.clip(1 - (dx**2 + dy**2) / r**2, 0, None) ** 0.35
        for turn in rng.uniform(0, 6.3) + np.cumsum(rng.uniform(0.8, 2, 4)):
            h = h * np.clip((rng.uniform(0.35, 0.9) * r - dx * np.cos(turn) - dy * np.sin(turn)) / 0.25, 0, 1)
        tilt = 1 + rng.uniform(-0.5, 0.5) * dx / r + rng.uniform(-0.5, 0.5) * dy / r
        h = flat * r * h * np.clip(tilt, 0.2, 1.8)
        z = max(z, 0.2)
        step = rng.uniform(of.low, of.high) - WATER
        self.fill(at, z - h, z + h, step, tuple(dark * each for each in of.absorbs))


def noise(rng: Rng, size: int, width: float) -> NDArray[np.float32]:
    """A smooth unrest of about unit height and `width` pixels."""
    from scipy.ndimage import gaussian_filter

    flat = gaussian_filter(rng.normal(size=(size, size)), width, mode="wrap") * width * 3.5
    return flat.astype(np.float32)
