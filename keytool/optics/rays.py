"""Bubbles, drops and sand by rays: from each point of the picture back through the body, and whether they end in the lamp.

What a point shows is the share of the objective's cone that comes from the condenser's. Waves through slices know no total
reflection; rays do. A share of 0 is the black rim of a bubble.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from scipy.spatial import ConvexHull

from .transfer import WATER, Bools, Floats
from .waves import spiral


def deviation(b: float, index: float) -> float:
    """By how much a ball turns a ray that meets it at share `b` of its radius (radians); nan where it is thrown back."""
    m = index / WATER
    return float(2 * abs(np.arcsin(b) - np.arcsin(b / m))) if b <= m else float("nan")


def bright_to(index: float, aperture: float, lamp: float = 0.0) -> float:
    """Out to which share of a ball's radius upright light still enters the objective; `lamp` is the condenser's aperture."""
    b = np.linspace(0, min(1.0, index / WATER), 200_001)
    turned = 2 * np.abs(np.arcsin(np.clip(b, 0, 1)) - np.arcsin(np.clip(b * WATER / index, 0, 1)))
    lost = turned > np.arcsin(min(1.0, (aperture + lamp) / WATER))
    return float(b[np.argmax(lost)]) if lost.any() else 1.0


def ball_focus(index: float) -> float:
    """Where a ball gathers upright light, in radii from its middle; below it (negative) where it is thinner than water."""
    m = index / WATER
    return m / (2 * (m - 1))


def refracted(ray: Floats, normal: Floats, ratio: float) -> tuple[Floats, Bools]:
    """A ray into a face (`normal` outward, `ratio` of the indices before and behind it); where it cannot pass, thrown back and False."""
    c = -(ray * normal).sum(-1, keepdims=True)
    k = 1 - ratio * ratio * (1 - c * c)
    passed = np.where(k >= 0, ratio * ray + (ratio * c - np.sqrt(np.maximum(k, 0))) * normal, ray + 2 * c * normal)
    return passed, k[..., 0] >= 0


def _cone(aperture: float, count: int) -> Floats:
    p = spiral(count) * aperture / WATER
    return -np.c_[p, np.sqrt(1 - (p**2).sum(1))]


def _from_lamp(ray: Floats, lamp: float, soft: float = 0.015) -> Floats:
    return 1 / (1 + np.exp(np.clip((np.hypot(ray[..., 0], ray[..., 1]) * WATER - lamp) / soft, -40, 40)))


class Ball:
    """A bubble or a drop of radius `r` at x, y, z."""

    def __init__(self, x: float, y: float, z: float, r: float, index: float) -> None:
        self.x, self.y, self.z, self.r, self.m = x, y, z, r, index / WATER
        self.reach = 2.2 * r

    def light(self, gx: Floats, gy: Floats, focus: float, aperture: float, lamp: float, *, rays: int = 900) -> Floats:
        """Light relative to the ground at points of the plane `focus` (µm above the slide)."""
        rho = np.linspace(0, self.reach * 1.42, 360)
        d = _cone(aperture, rays)
        o = np.zeros((len(rho), 1, 3))
        o[:, 0, 0], o[:, 0, 2] = rho, focus - self.z
        b = (o * d).sum(-1)
        root = b * b - (o * o).sum(-1) + self.r**2
        hits = root > 0
        p = o + (-b - np.sqrt(np.maximum(root, 0)))[..., None] * d
        inner, enters = refracted(d + 0 * p, p / self.r, 1 / self.m)
        p2 = p - 2 * (p * inner).sum(-1, keepdims=True) * inner
        outer, leaves = refracted(inner, -p2 / self.r, self.m)
        end = np.where(hits[..., None], np.where(enters[..., None], outer, inner), d)
        share = np.where(hits & enters & ~leaves, 0, _from_lamp(end, lamp))
        return np.interp(np.hypot(gx - self.x, gy - self.y), rho, share.sum(1) / _from_lamp(d, lamp).sum(), right=1.0)


class Grain:
    """A broken grain: its own outline as steep faces, chips above and below, and a shell-like unrest on every face."""

    def __init__(self, outline: Sequence[tuple[float, float]], z: float, index: float, seed: int) -> None:
        g = np.random.default_rng(seed)
        points = np.array(outline)
        self.x, self.y = (points.max(0) + points.min(0)) / 2
        points = points - (self.x, self.y)
        hull = points[ConvexHull(points).vertices]
        self.r = float(np.hypot(*hull.T).max())
        self.z, self.m, self.reach = z, index / WATER, 1.5 * self.r
        faces, away = [], []
        for a, b in zip(hull, np.roll(hull, -1, 0), strict=True):
            along = b - a
            if np.hypot(*along) < 0.12 * self.r:
                continue
            out = np.array([along[1], -along[0]]) / np.hypot(*along)
            lean = g.uniform(-0.35, 0.35)
            faces.append((*out, lean))
            away.append(abs(out @ a))
        for _ in range(14):
            turn, slope = g.uniform(0, 6.3), g.uniform(0.15, 1.5)
            for up in (1.0, -1.0):
                faces.append((slope * np.cos(turn) * up, slope * np.sin(turn) * up, up))
                away.append(self.r * (0.5 + 0.42 * slope) * g.uniform(0.9, 1.1))
        norm = np.linalg.norm(np.array(faces), axis=1)
        self.v, self.c = np.array(faces) / norm[:, None], np.array(away) / norm
        self.w, self.phase, self.dir = g.normal(size=(10, 3)) * 6 / self.r, g.uniform(0, 6.3, 10), g.normal(size=(10, 3)) * 0.035

    def _rough(self, normal: Floats, p: Floats) -> Floats:
        out = normal + np.sin(p @ self.w.T + self.phase) @ self.dir
        return out / np.linalg.norm(out, axis=-1, keepdims=True)

    def light(self, gx: Floats, gy: Floats, focus: float, aperture: float, lamp: float, *, rays: int = 140) -> Floats:
        """Light relative to the ground at points of the plane `focus` (µm above the slide)."""
        o = np.stack([gx - self.x, gy - self.y, 0 * gx + focus - self.z], -1).reshape(-1, 1, 3)
        d = _cone(aperture, rays)
        whole, out = _from_lamp(d, lamp).sum(), []
        for part in np.array_split(o, max(1, len(o) // 400)):
            across, gap = d @ self.v.T, self.c - part @ self.v.T
            t = gap / np.where(np.abs(across) > 1e-9, across, 1e-9)[None]
            near, far = np.where(across < 0, t, -1e9), np.where(across > 0, t, 1e9)
            face, first = near.argmax(-1), near.max(-1)
            hits = first < far.min(-1)
            p = part + first[..., None] * d
            inner, enters = refracted(d + 0 * part, self._rough(self.v[face], p), 1 / self.m)
            across2 = inner @ self.v.T
            t2 = np.where(across2 > 1e-6, (self.c - p @ self.v.T) / np.where(across2 > 1e-6, across2, 1), 1e9)
            p2 = p + t2.min(-1)[..., None] * inner
            outer, leaves = refracted(inner, -self._rough(self.v[t2.argmin(-1)], p2), self.m)
            end = np.where((hits & enters)[..., None], outer, d)
            out.append(np.where(hits & ~(enters & leaves), 0, _from_lamp(end, lamp)).sum(1) / whole)
        return np.concatenate(out).reshape(gx.shape)
