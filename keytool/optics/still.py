"""One picture, or a row of planes of focus and irises, of an entry as the 40x objective shows it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.ndimage import gaussian_filter, zoom

from .body import MARGIN, Scene
from .rays import Ball
from .stand import shown
from .waves import images

APERTURE = 0.65
"""Of the 40x objective."""


def light(scene: Scene, focus: Sequence[float], iris: float) -> NDArray[np.float32]:
    """Light relative to the ground, [plane, row, column, colour], of the part that is shown; `focus` is µm above the thing's middle."""
    planes = [scene.middle + each for each in focus]
    out = images(scene.drop.slices(), planes, iris, APERTURE)
    for a, plane in enumerate(planes):
        out[a] *= _traced(scene, plane, iris)[..., None]
    n = scene.drop.size
    edge = round(n * (1 - 1 / MARGIN) / 2)
    return out[:, edge : n - edge, edge : n - edge]


def _traced(scene: Scene, plane: float, iris: float) -> NDArray[np.float32]:
    """The share of the light that each bubble, drop or grain lets through, multiplied; softened by the disc of the objective."""
    drop = scene.drop
    out = np.ones((drop.size, drop.size), np.float32)
    for body in scene.traced:
        at, gx, gy = drop.window(body.x, body.y, body.reach)
        if gx.size:
            step = 1 if isinstance(body, Ball) else 3 if max(gx.shape) > 150 else 2
            part = body.light(gx[::step, ::step], gy[::step, ::step], plane, APERTURE, max(iris * APERTURE, 0.03))
            part = zoom(part, (gx.shape[0] / part.shape[0], gx.shape[1] / part.shape[1]), order=1, grid_mode=True, mode="nearest")
            out[at] *= gaussian_filter(part, 0.25 / drop.pixel)
    return out


def picture(scene: Scene, focus: float, iris: float, size: int, seed: int) -> NDArray[np.uint8]:
    """The shown square in sRGB, `size` pixels a side."""
    return sized(shown(light(scene, (focus,), iris)[0], seed), size)


def sized(square: NDArray[np.uint8], size: int) -> NDArray[np.uint8]:
    """A picture made smaller or larger, smoothly."""
    return np.asarray(Image.fromarray(square).resize((size, size), Image.Resampling.LANCZOS))


def sheet(scene: Scene, focus: Sequence[float], irises: Sequence[float], size: int, seed: int) -> NDArray[np.uint8]:
    """Planes of focus from left to right, irises from top to bottom, as one picture."""
    rows = [np.hstack([sized(shown(each, seed), size) for each in light(scene, focus, iris)]) for iris in irises]
    return np.vstack(rows)
