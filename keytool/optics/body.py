"""A thing in its drop: the entry's drawing as matter by its section, placed in the picture, with ordinary dirt around it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import ConvexHull, cKDTree

from keytool.figures.bounds import bounds
from keytool.figures.shapes import Box, Dots, Drawing, Path
from keytool.library.eyepiece_records import Material, Part, Section

from .laid import BODY
from .matter import Drop, Rng
from .rays import Ball, Grain
from .silhouette import Line, Placing, Silhouette, filled, is_closed, lines_of, named, silhouette, stipple
from .transfer import WATER, Floats

MARGIN = 1.2
"""The computed square over the shown one: what passes its edge comes back at the other side."""
SIZES = (256, 320, 384, 480, 576, 640)
PIXEL = 0.32
"""µm; finer than half the finest period at S = 0.3 and 0.65."""
LEAST, MOST = 30.0, 160.0
"""Width of a picture, µm."""
FILM = 16.0
"""The least depth of water drawn, µm."""


class Traced(Protocol):
    """A body that rays are traced through."""

    x: float
    y: float
    reach: float

    def light(self, gx: Floats, gy: Floats, focus: float, aperture: float, lamp: float) -> Floats:
        """Light relative to the ground."""


@dataclass
class Scene:
    """A filled drop, the bodies that rays pass through, the height of the middle of the thing, and how wide the picture is (µm)."""

    drop: Drop
    middle: float
    across: float
    traced: list[Traced] = field(default_factory=list)


def across_of(drawing: Drawing, section: Section) -> float:
    """How wide a picture shows the thing, µm."""
    box = _box(drawing)
    longest = max(box.width, box.height)
    if section.across:
        return section.across
    if section.body == "tube" and section.kind not in ("nematode-head", "nematode-body"):
        return float(np.clip(4.0 * min(box.width, box.height), 40.0, MOST))
    if section.kind == "nematode-head":
        return float(np.clip(max(2.4 * box.width, 1.15 * box.height), 45, 130))
    return float(np.clip(1.5 * longest, LEAST, MOST))


def scene(drawing: Drawing, section: Section, materials: Mapping[str, Material], seed: int) -> Scene:
    """The thing as matter in water."""
    rng = np.random.default_rng(seed)
    across = across_of(drawing, section)
    size = next((n for n in SIZES if across * MARGIN / n <= PIXEL), SIZES[-1])
    pixel = across * MARGIN / size
    make = _Making(drawing, section, materials, rng, size, pixel, across)
    return make.scene()


def _box(drawing: Drawing) -> Box:
    shapes = tuple(shape for shape in drawing.shapes if shape.part in BODY) or drawing.shapes
    return bounds(shapes, 0.0, 0.0)


@dataclass
class _Making:
    drawing: Drawing
    section: Section
    materials: Mapping[str, Material]
    rng: Rng
    size: int
    pixel: float
    across: float

    def scene(self) -> Scene:
        self.placing = self._placing()
        body = self.section.body
        if body in ("ball", "grain"):
            return self._traced()
        shape = None if body == "each" else self._silhouette(self._outline())
        tall = 1.2 if shape is None else self._tall(shape)
        height = max(FILM, 2 * tall + 6.0)
        depth = 2.0 if height < 44 else 3.0
        self.drop = Drop(self.size, self.pixel, int(np.ceil(height / depth)), depth)
        self.middle = max(tall + 1.5, min(self.drop.height / 2, 8.0))
        if shape is None:
            keep = self._each()
        elif body == "crumb":
            keep = shape.inside
            self._crumb(shape)
        else:
            keep = shape.inside
            self._body(shape)
        self._dirt(keep)
        return Scene(self.drop, self.middle, self.across)

    # ------------------------------------------------------------- where it lies

    def _placing(self) -> Placing:
        box = _box(self.drawing)
        centre = (box.x + box.width / 2, box.y + box.height / 2)
        if self.section.kind == "nematode-head":
            room = max(box.height, 0.8 * self.across)
            return Placing((centre[0], box.y + room / 2), 0.22)
        return Placing(centre, 0.35 if self.section.body not in ("each", "ball", "grain") else 0.0)

    def _lines(self, *parts: str) -> list[Line]:
        lines = named(self.drawing, *parts)
        if self.section.kind == "nematode-head":
            lines = self._running_on(lines)
        return [self.placing.put(line) for line in lines]

    def _outline(self) -> list[Line]:
        return self._lines(*BODY)

    def _running_on(self, lines: list[Line]) -> list[Line]:
        """A head is never without its worm: what the plate cuts off runs on beyond the picture."""
        box = _box(self.drawing)
        cut = box.y + box.height - 0.14 * box.width
        down = 2 * self.across
        out = []
        for line in lines:
            first, last = line[0], line[-1]
            if not is_closed(line):
                line = [*((first[0], first[1] + down * k / 60) for k in range(60, 0, -1)), *line] if first[1] > cut else line
                line = [*line, *((last[0], last[1] + down * k / 60) for k in range(1, 61))] if last[1] > cut else line
            out.append(line)
        return out

    # ------------------------------------------------------------- how it is filled

    def _silhouette(self, lines: list[Line]) -> Silhouette:
        return silhouette(lines, self.size, self.pixel)

    def _high(self, shape: Silhouette) -> Floats:
        """Half the thickness of the body by its section, µm."""
        section = self.section
        if section.body == "flat":
            half = section.thick / 2
            return half * np.sqrt(np.clip(1 - (1 - np.clip(shape.inside / half, 0, 1)) ** 2, 0, 1)) * (shape.inside > 0)
        return shape.height * section.flat * (np.sqrt(2) if section.body == "round" else 1.0)

    def _tall(self, shape: Silhouette) -> float:
        return float(min(self._high(shape).max(), 7.0 if self.section.body == "crumb" else 32.0))

    def _fill(self, high: Floats, step: float, of: Material, *, z: float | None = None, less: Material | None = None) -> None:
        rows, columns = np.nonzero(high.any(1))[0], np.nonzero(high.any(0))[0]
        if not len(rows):
            return
        at = (slice(rows[0], rows[-1] + 1), slice(columns[0], columns[-1] + 1))
        z = self.middle if z is None else z
        high = high[at]
        absorbs = tuple(a - (b if less else 0.0) for a, b in zip(of.absorbs, less.absorbs if less else of.absorbs, strict=True))
        self.drop.fill(at, z - high, z + high, step, absorbs)

    def _body(self, shape: Silhouette) -> None:
        section, inside = self.section, self.materials[self.section.inside]
        high = np.minimum(self._high(shape), 32.0)
        room = high
        if section.wall:
            wall = self.materials[section.wall]
            self._fill(high, wall.index - WATER, wall)
            inner = shape.inset(section.wall_thick)
            share = np.sqrt(np.clip(inner.inside, 0, None) / np.maximum(shape.inside, 1e-9))
            room = np.clip(np.minimum(high * share, high - section.wall_thick), 0, None) * (inner.inside > 0)
            self._fill(room, inside.index - wall.index, inside, less=wall)
        else:
            self._fill(high, inside.index - WATER, inside)
        self.room, self.inside = room, inside
        holes = np.zeros_like(room, bool)
        for name, part in section.parts.items():
            holes |= self._part(name, part)
        if section.granules:
            g = section.granules
            law = (g.per_volume, g.median, g.spread, g.most)
            self._strew(room, np.where(holes, 0, room), self.materials[g.of], law, inside)

    def _part(self, name: str, part: Part) -> NDArray[np.bool_]:
        """One part as matter; where it is a room that granules keep out of."""
        of, around = self.materials[part.of], WATER if part.outside else self.inside.index
        none = np.zeros((self.size, self.size), bool)
        lines = self._lines(name)
        if part.shape == "grains":
            self._grains(name, of)
            return none
        closed = [line for line in lines if is_closed(line)]
        if part.shape == "tube" and lines:
            solid = [self.placing.put(each) for each in self._running_on(self._solid(name))]
            shape = self._silhouette(solid)
            high = np.minimum(shape.height, self.room)
            self._fill(high, of.index - around, of)
            self._line(solid, of.index + 0.02 - around, part.radius, of)
            return none
        if part.shape == "fill" and closed:
            shape = filled(closed, self.size, self.pixel)
            high = shape.height * np.sqrt(2) * part.flat
            if not part.outside:
                high = np.minimum(high, self.room)
            self._fill(high, of.index - around, of)
            open_lines = [line for line in lines if not is_closed(line)]
            self._line(open_lines, of.index - around, part.radius or 0.3, of)
            return shape.inside > 0
        self._line(lines, of.index - around, part.radius or 0.3, of, spread=1.5 if part.outside else 0.0)
        return none

    def _solid(self, name: str) -> list[Line]:
        """The lines of a part without those that are only shading."""
        return [
            line for s in self.drawing.shapes if s.part == name and s.role in ("ink", "accent") for line in lines_of(s) if len(line) > 1
        ]

    def _line(self, lines: list[Line], step: float, radius: float, of: Material, *, spread: float = 0.0) -> None:
        """Round threads along lines; one thinner than a pixel is drawn wider and as much weaker."""
        points, heights = [], []
        for line in lines:
            p = np.array(line)
            s = np.r_[0, np.cumsum(np.hypot(*np.diff(p, axis=0).T))]
            t = np.linspace(0, s[-1], int(s[-1] / (0.4 * self.pixel)) + 2)
            points.append(np.c_[np.interp(t, s, p[:, 0]), np.interp(t, s, p[:, 1])])
            heights.append(np.full(len(t), self.rng.normal() * spread))
        if not points:
            return
        all_points, lift = np.concatenate(points), np.concatenate(heights)
        r = max(radius, 0.6 * self.pixel)
        weaker = (radius / r) ** 2
        x = (np.arange(self.size) + 0.5) * self.pixel - self.size * self.pixel / 2
        gx, gy = np.meshgrid(x, x)
        d, i = cKDTree(all_points).query(np.c_[gx.ravel(), gy.ravel()], distance_upper_bound=r + self.pixel)
        d, i = d.reshape(gx.shape), np.minimum(i, len(all_points) - 1).reshape(gx.shape)
        high = np.sqrt(np.clip(r * r - np.where(np.isfinite(d), d, 2 * r) ** 2, 0, None))
        if not high.any():
            return
        z = np.clip(self.middle + lift[i], 0.5, self.drop.height - 0.5)
        absorbs = tuple(each * weaker for each in of.absorbs)
        self.drop.fill((slice(None), slice(None)), z - high, z + high, step * weaker, absorbs)

    def _strew(
        self, whole: Floats, room: Floats, of: Material, law: tuple[float, float, float, float], around: Material, most: int = 7000
    ) -> None:
        """Granules through a room given by half its height."""
        per, median, spread, largest = law
        volume = float((2 * whole).sum()) * self.pixel**2
        count = int(min(per * volume, most))
        weights = room.ravel() / max(room.sum(), 1e-9)
        if not count or not room.any():
            return
        spot = self.rng.choice(room.size, count, p=weights)
        at = np.empty((count, 3))
        at[:, 0] = (spot % self.size + self.rng.uniform(size=count)) * self.pixel - self.size * self.pixel / 2
        at[:, 1] = (spot // self.size + self.rng.uniform(size=count)) * self.pixel - self.size * self.pixel / 2
        at[:, 2] = self.middle + self.rng.uniform(-0.92, 0.92, count) * room.ravel()[spot]
        radius = np.minimum(self.rng.lognormal(np.log(median), spread, count), largest)
        radius = np.minimum(radius, np.maximum(room.ravel()[spot], 0.1))
        self.drop.grains(at, radius, self.rng.uniform(of.low, of.high, count) - around.index, of.absorbs)

    def _grains(self, name: str, of: Material) -> None:
        """Granules where the stipple of a part lies: the stipple says where, never how many or how large."""
        points = stipple(self.drawing, name)
        if len(points) < 4:
            return
        if self.section.kind == "nematode-head":
            points = [*points, *((x, y + 1.5 * self.across) for x, y in points)]
        from PIL import Image, ImageDraw

        p = np.array(self.placing.put(points))
        if self.section.kind == "nematode-head":
            ring = p[ConvexHull(p).vertices]
            image = Image.new("L", (self.size, self.size), 0)
            ImageDraw.Draw(image).polygon([tuple(each / self.pixel + self.size / 2) for each in ring], fill=1)
            where = np.asarray(image) > 0
        else:
            x = (np.arange(self.size) + 0.5) * self.pixel - self.size * self.pixel / 2
            near, _ = cKDTree(p).query(np.stack(np.meshgrid(x, x), -1).reshape(-1, 2))
            gap = np.median(cKDTree(p).query(p, k=2)[0][:, 1])
            where = (near < 3.0 * max(gap, self.pixel)).reshape(self.size, self.size)
        room = np.where(where, np.clip(self.room - 0.3, 0, None), 0)
        self._strew(room, room, of, (0.16, 0.32, 0.5, 1.2), self.inside)

    # ------------------------------------------------------------- other kinds of thing

    def _traced(self) -> Scene:
        section, of = self.section, self.materials[self.section.inside]
        rings = [line for line in self._lines("outline") if is_closed(line)]
        largest = max((max(np.ptp(np.array(ring), axis=0)) / 2 for ring in rings), default=5.0)
        self.drop = Drop(self.size, self.pixel, 10, 2.0)
        self.middle = float(min(max(largest, 4.0), 10.0))
        out = Scene(self.drop, self.middle, self.across)
        keep = np.full((self.size, self.size), -1e3)
        x = (np.arange(self.size) + 0.5) * self.pixel - self.size * self.pixel / 2
        gx, gy = np.meshgrid(x, x)
        seen: list[tuple[float, float]] = []
        for ring in rings:
            p = np.array(ring)
            centre, r = (p.max(0) + p.min(0)) / 2, float(np.ptp(p, axis=0).max() / 2)
            if any(np.hypot(*(centre - each)) < r for each in seen):
                continue
            seen.append((float(centre[0]), float(centre[1])))
            if section.body == "ball":
                out.traced.append(Ball(float(centre[0]), float(centre[1]), self.middle, r, of.index))
            else:
                out.traced.append(Grain([tuple(each) for each in p], self.middle, of.index, int(self.rng.integers(1 << 30))))
            keep = np.maximum(keep, r - np.hypot(gx - centre[0], gy - centre[1]))
        self._dirt(keep)
        return out

    def _each(self) -> Floats:
        """Many small bodies, each by itself and each at its own height."""
        of, section = self.materials[self.section.inside], self.section
        keep = np.full((self.size, self.size), -1e3)
        for shape in self.drawing.shapes:
            if isinstance(shape, Dots) or shape.part not in ("dots", *section.parts):
                continue
            lines = [self.placing.put(line) for line in lines_of(shape) if len(line) > 1]
            of_part = self.materials[section.parts[shape.part].of] if shape.part in section.parts else of
            middle = self.middle
            if shape.part == "dots":
                self.middle = middle + float(self.rng.normal() * 0.5)
            closed = [line for line in lines if is_closed(line)]
            if "specks" in section.id and closed:
                p = np.array(closed[0])
                r = float(np.ptp(p, axis=0).max() / 2)
                x, y = (p.max(0) + p.min(0)) / 2
                for _ in range(3):
                    self.drop.chip(
                        self.rng,
                        x + self.rng.normal() * 0.25 * r,
                        y + self.rng.normal() * 0.25 * r,
                        self.middle,
                        r,
                        of_part,
                        flat=self.rng.uniform(0.2, 0.45),
                    )
            elif closed:
                body = filled(closed, self.size, self.pixel)
                self._fill(body.height, of_part.index - (WATER if shape.part == "dots" else of.index), of_part)
                keep = np.maximum(keep, body.inside)
            elif lines:
                weight = shape.weight * self.drawing.pen_um / 2 if isinstance(shape, Path) else 0.35
                self._line(lines, of_part.index - WATER, max(0.2, weight), of_part)
            self.middle = middle
        return keep

    def _crumb(self, shape: Silhouette) -> None:
        """Chips of many sizes held by humus, a few black bits, loose at the edge."""
        from .matter import noise

        humus, clay, black = (self.materials[each] for each in ("humus", "clay", "charcoal"))
        high = np.minimum(shape.height, 6.0)
        uneven = 1 + 0.35 * noise(self.rng, self.size, 2.2 / self.pixel) + 0.3 * noise(self.rng, self.size, 0.7 / self.pixel)
        matrix = Material("", "", 0, 0, 0, (0.55 * humus.absorbs[0], 0.55 * humus.absorbs[1], 0.55 * humus.absorbs[2]), ())
        self._fill(0.6 * high * np.clip(uneven, 0.05, 2.2), 0.035, matrix)
        area = float((shape.inside > 0).sum()) * self.pixel**2
        count = int(min(1600, 0.5 * area))
        grow = float(np.sqrt(max(0.3 * area / max(count, 1), 1.0)))
        room = np.clip(shape.inside + 1.0, 0, 6.0)
        spot = self.rng.choice(room.size, count, p=room.ravel() / room.sum())
        for each in spot:
            x = (each % self.size + self.rng.uniform()) * self.pixel - self.size * self.pixel / 2
            y = (each // self.size + self.rng.uniform()) * self.pixel - self.size * self.pixel / 2
            z = self.middle + self.rng.uniform(-1, 1) * 0.7 * float(high.ravel()[each] + 0.5)
            pick = self.rng.uniform()
            of = black if pick < 0.05 else clay if pick < 0.3 else humus
            r = float(min(self.rng.lognormal(-0.3, 0.6), 3.5)) * grow * (0.5 if of is black else 0.7 if of is clay else 1)
            dark = self.rng.uniform(0.4, 2.4) if of is humus else self.rng.uniform(0.2, 1.5)
            self.drop.chip(self.rng, x, y, z, r, of, flat=self.rng.uniform(0.15, 0.6), dark=dark)

    def _dirt(self, keep: Floats) -> None:
        """What ordinary drops hold besides: specks, half of them on the slide, a few bacteria, and an unrest of colloid."""
        from .matter import noise

        rng, half = self.rng, self.size * self.pixel / 2
        area = (2 * half) ** 2
        scale = float(np.clip(self.across / 80, 0.35, 1.0))
        clay, bacterium = self.materials["clay"], self.materials["bacterium"]
        for _ in range(int(0.03 * area / scale**0.5)):
            x, y = rng.uniform(-half, half, 2)
            z = rng.uniform(0.4, 2.0) if rng.uniform() < 0.5 else rng.uniform(1, self.drop.height - 1)
            r = float(min(rng.lognormal(-1.35, 0.7), 2.2)) * scale
            if self._taken(keep, x, y, 1.0 + r):
                continue
            for _ in range(1 + int(3 * r)):
                dx, dy = rng.normal(size=2) * 0.5 * r
                piece = r * rng.uniform(0.4, 1)
                self.drop.chip(rng, x + dx, y + dy, z, piece, clay, flat=rng.uniform(0.12, 0.5), dark=rng.uniform(0, 2.5))
        if self.section.body != "each":
            for _ in range(int(0.0035 * area)):
                x, y = rng.uniform(-half, half, 2)
                turn, long = rng.uniform(0, 6.3), rng.choice([0.1, 0.5, 1.0, 1.6])
                steps = np.linspace(-long / 2, long / 2, 7)[:, None] * (np.cos(turn), np.sin(turn))
                if not self._taken(keep, x, y, 2.0):
                    at = np.c_[steps + np.array((x, y)), np.full(7, rng.uniform(1, self.drop.height - 1))]
                    share = max(0.2, 0.9 * (long + 0.5) / 7)
                    self.drop.grains(at, np.full(7, 0.36), np.full(7, (bacterium.index - WATER) * min(1.0, share)), ())
        for k in range(self.drop.count):
            self.drop.path[k] += 0.0006 * noise(rng, self.size, 1.4) + 0.0003 * noise(rng, self.size, 5)

    def _taken(self, keep: Floats, x: float, y: float, gap: float) -> bool:
        half = self.size * self.pixel / 2
        i, j = (int(np.clip((v + half) / self.pixel, 0, self.size - 1)) for v in (y, x))
        return bool(keep[i, j] > -gap)
