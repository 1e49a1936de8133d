"""An independent reader of the SVG the figures emit: path data to points, in micrometres."""

import re
from dataclasses import dataclass
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
VALUES = {"M": 2, "L": 2, "C": 6, "Z": 0}


@dataclass(frozen=True)
class Drawn:
    """Every path of one SVG: (part, points in px, stroke width in px)."""

    paths: tuple[tuple[str, tuple[tuple[float, float], ...], float], ...]
    width: float
    height: float
    px_per_um: float
    root: ElementTree.Element

    def points(self, *parts: str) -> list[tuple[float, float]]:
        return [(x / self.px_per_um, y / self.px_per_um) for part, pts, _ in self.paths if part in parts for x, y in pts]

    def span(self, *parts: str) -> tuple[float, float]:
        """Width and height of the parts in µm, from their points (line weights left out)."""
        pts = self.points(*parts)
        xs, ys = [x for x, _ in pts], [y for _, y in pts]
        return max(xs) - min(xs), max(ys) - min(ys)


def read(svg: str, px_per_um: float) -> Drawn:
    root = ElementTree.fromstring(svg)
    paths = tuple(
        (path.attrib["data-part"], tuple(walked(path.attrib["d"])), float(path.attrib.get("stroke-width", 0)))
        for path in root.iter(SVG + "path")
    )
    return Drawn(paths, float(root.attrib["width"]), float(root.attrib["height"]), px_per_um, root)


def walked(data: str) -> list[tuple[float, float]]:
    """Points on the path: ends of lines, and each bezier at sixteen steps."""
    out: list[tuple[float, float]] = []
    here = start = (0.0, 0.0)
    for letter, text in re.findall(r"([MLCZmlcz])([^MLCZmlcz]*)", data):
        numbers = [float(n) for n in NUMBER.findall(text)]
        assert len(numbers) == VALUES[letter.upper()], (letter, text)
        base = here if letter.islower() else (0.0, 0.0)
        at = [(base[0] + x, base[1] + y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        match letter.upper():
            case "M":
                here = start = at[0]
                out.append(here)
            case "L":
                here = at[0]
                out.append(here)
            case "C":
                out += [bezier(here, *at, t / 16) for t in range(1, 17)]
                here = at[2]
            case "Z":
                here = start
    return out


def bezier(a, b, c, d, t):
    s = 1 - t
    return tuple(s**3 * p + 3 * s * s * t * q + 3 * s * t * t * r + t**3 * u for p, q, r, u in zip(a, b, c, d, strict=True))
