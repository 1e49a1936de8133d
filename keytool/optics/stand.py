"""Lamp, glare and eye: from light relative to the ground to a picture on a screen, and to a file."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.ndimage import gaussian_filter

TINT = (1.0, 0.945, 0.86)
"""A warm lamp (memory)."""
WHITE = 0.70
"""The empty ground in linear light, so that bright lines have room above it."""
BANDS = np.array([[0.72, 0.16, 0.04], [0.22, 0.66, 0.22], [0.06, 0.18, 0.74]])
"""How the bands of eye or camera overlap."""


def shown(light: NDArray[np.float32], seed: int, *, fall: float = 0.10, grain: float = 0.003) -> NDArray[np.uint8]:
    """8-bit sRGB of `light` (1 is the ground): uneven lamp, 3 % glare, one tone curve."""
    h, w = light.shape[:2]
    g = np.random.default_rng(seed)
    y, x = np.mgrid[-1 : 1 : h * 1j, -1 : 1 : w * 1j]
    lamp = 1 - fall * (x * x + y * y) / 2 - 0.03 * x + 0.02 * y
    out = (0.97 * light * lamp[..., None] + 0.03) @ BANDS
    out = out + grain * gaussian_filter(g.normal(size=(h, w, 1)), (0.8, 0.8, 0)) * np.sqrt(np.clip(out, 0, 4))
    v = np.clip(out, 0, None) * WHITE * np.array(TINT)
    v = np.where(v < 0.75, v, 0.75 + 0.25 * np.tanh((v - 0.75) / 0.25))
    s = np.where(v < 0.0031308, 12.92 * v, 1.055 * np.maximum(v, 1e-6) ** (1 / 2.4) - 0.055)
    return (255 * np.clip(s, 0, 1) + 0.5).astype(np.uint8)


def webp(picture: NDArray[np.uint8], most: int) -> bytes:
    """The picture as WebP, at the best quality that stays within `most` bytes."""
    out = b""
    for quality in (86, 80, 74, 68, 60, 50, 40):
        file = io.BytesIO()
        Image.fromarray(picture).save(file, "WEBP", quality=quality, method=6)
        out = file.getvalue()
        if len(out) <= most:
            break
    return out
