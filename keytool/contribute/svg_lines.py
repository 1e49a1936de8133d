"""The lines of an SVG file drawn at a stated scale: paths, polygons, ellipses and lines, with their transforms worked in.

Read with expat, which is told of every declaration and follows none: a file that declares a document type or an entity, or that
holds a script, an image, a link or text, is refused at its line, before anything of it is used.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from xml.parsers import expat

from fontTools.misc.transform import Identity, Transform
from fontTools.pens.basePen import BasePen
from fontTools.svgLib.path.parser import parse_path

from keytool.figures import geometry
from keytool.figures.shapes import Point

MOST_BYTES = 2_000_000
MOST_POINTS = 20_000
MOST_DEEP = 64
"""Groups within groups."""
FARTHEST = 1e7
"""A coordinate beyond this is a slip."""
PIECES = 12
"""Straight pieces that stand for one bezier."""

SVG = "http://www.w3.org/2000/svg"
DRAWN = ("path", "polygon", "polyline", "line", "ellipse", "circle", "rect")
GROUPS = ("svg", "g")
SILENT = ("defs", "metadata", "title", "desc")
"""Elements whose content is no part of the picture; what is refused is refused in them too."""
REFUSED = {
    "script": "a script",
    "style": "a style sheet",
    "image": "an image",
    "feImage": "an image",
    "a": "a link",
    "use": "a link",
    "text": "text",
    "tspan": "text",
    "textPath": "text",
    "foreignObject": "a foreign object",
    "animate": "an animation",
    "animateTransform": "an animation",
    "animateMotion": "an animation",
    "set": "an animation",
    "symbol": "a symbol",
    "pattern": "a pattern",
}
PAPER = ("none", "transparent", "white", "#fff", "#ffffff")
BLACK = ("black", "#000", "#000000", "currentcolor")
INSTEAD = "paths, polygons, polylines, lines, ellipses, circles, rectangles and groups of them"


class SvgRefused(ValueError):
    """An SVG that cannot be taken, with the place and what to do."""


@dataclass(frozen=True, slots=True)
class SvgLine:
    """One line, in the units of the file: the name of its part, whether it is closed, and its fill: ink, faint or none ("")."""

    part: str
    closed: bool
    fill: str
    points: tuple[Point, ...]


def lines_of_svg(path: Path) -> list[SvgLine]:
    """Every line of the file, in its order.

    Raises:
        SvgRefused: it cannot be read, is too large, or holds what is not taken.
    """
    try:
        size = path.stat().st_size
        if size > MOST_BYTES:
            raise SvgRefused(f"{path}: {size / 1e6:.1f} MB. Allowed: {MOST_BYTES / 1e6:g} MB. Leave out what is no line of the drawing.")
        data = path.read_bytes()
    except OSError as error:
        raise SvgRefused(f"{path}: cannot be read: {error.strerror}.") from None
    return _Reader(str(path)).read(data)


@dataclass(slots=True)
class _Reader:
    name: str
    lines: list[SvgLine] = field(default_factory=list)
    stack: list[tuple[Transform, str, Mapping[str, str]]] = field(default_factory=list)
    silent: int = 0
    points: int = 0
    parser: Any = None

    def read(self, data: bytes) -> list[SvgLine]:
        parser = self.parser = expat.ParserCreate(namespace_separator=" ")
        parser.SetParamEntityParsing(expat.XML_PARAM_ENTITY_PARSING_NEVER)
        parser.StartDoctypeDeclHandler = lambda *_: self.refuse("holds a document type declaration", "no <!DOCTYPE ...>")
        parser.EntityDeclHandler = lambda *_: self.refuse("declares an entity", "no <!ENTITY ...>")
        parser.ExternalEntityRefHandler = self.outside
        parser.ProcessingInstructionHandler = lambda *_: self.refuse("holds a processing instruction", "no <?...?> but the first line")
        parser.StartElementHandler, parser.EndElementHandler = self.start, self.end
        try:
            parser.Parse(data, True)
        except expat.ExpatError as error:
            raise SvgRefused(f"{self.name}:{error.lineno}:{error.offset + 1}: {expat.ErrorString(error.code)}.") from None
        except (ValueError, LookupError) as error:
            if isinstance(error, SvgRefused):
                raise
            raise SvgRefused(f"{self.name}: cannot be read as SVG: {error}.") from None
        if not self.lines:
            raise SvgRefused(f"{self.name}: holds no line. Allowed: {INSTEAD}.")
        return self.lines

    def outside(self, *_: object) -> int:
        self.refuse("names something outside the file", "a file that stands alone")
        return 0

    def refuse(self, what: str, allowed: str = INSTEAD) -> None:
        place = f"{self.name}:{self.parser.CurrentLineNumber}:{self.parser.CurrentColumnNumber + 1}"
        raise SvgRefused(f"{place}: {what}. Allowed: {allowed}.")

    def start(self, full: str, attributes: dict[str, str]) -> None:
        space, _, tag = full.rpartition(" ")
        if not self.stack and (tag != "svg" or space != SVG):
            self.refuse(f"begins with <{tag}>", f'<svg xmlns="{SVG}">')
        if tag in REFUSED:
            self.refuse(f"<{tag}> is {REFUSED[tag]}")
        for name, value in attributes.items():
            short = name.rpartition(" ")[2]
            if short.lower().startswith("on"):
                self.refuse(f"{short}= is a script")
            if short == "href":
                self.refuse("href= is a link")
            if "url(" in value.lower() and not re.fullmatch(r"\s*url\(#[\w-]+\)\s*", value):
                self.refuse(f"{short}= names something outside the file", "a colour")
        if len(self.stack) >= MOST_DEEP:
            self.refuse(f"groups stand {MOST_DEEP} deep", "fewer groups within groups")
        above = self.stack[-1] if self.stack else (Identity, "", {})
        drawn = tag in DRAWN or tag in GROUPS
        if self.silent or space != SVG or tag in SILENT:
            self.silent += 1
            self.stack.append(above)
            return
        if not drawn:
            self.refuse(f"<{tag}> is not taken")
        transform = self.transformed(above[0], attributes.get("transform", ""))
        part = _part(attributes) or above[1]
        style = {**above[2], **_style(attributes)}
        self.stack.append((transform, part, style))
        if tag in DRAWN and style.get("display") != "none" and style.get("visibility") != "hidden":
            self.draw(tag, attributes, transform, part, style)

    def end(self, _tag: str) -> None:
        self.stack.pop()
        self.silent = max(0, self.silent - 1)

    # ------------------------------------------------------------- shapes

    def draw(self, tag: str, given: Mapping[str, str], transform: Transform, part: str, style: Mapping[str, str]) -> None:
        pen = _Flat()
        try:
            if tag == "path":
                parse_path(given.get("d", ""), pen)
            else:
                parse_path(_as_path(tag, given), pen)
        except SvgRefused as error:
            self.refuse(str(error), "numbers")
        except Exception:  # the grammar of a path fails in many ways, none of them told in words
            self.refuse(f"the points of <{tag}> cannot be read", "the path data of SVG 1.1, such as M 0 0 L 10 0 Z")
        colour = style.get("fill", "black").strip().lower()
        fill = "" if colour in PAPER else "ink" if colour in BLACK else "faint"
        for closed, points in pen.runs:
            put = tuple(transform.transformPoint(p) for p in points)
            if not all(math.isfinite(v) and abs(v) < FARTHEST for p in put for v in p):
                self.refuse(f"a point of <{tag}> is not a number or lies {FARTHEST:g} units away", "points on the sheet")
            self.points += len(put)
            if self.points > MOST_POINTS:
                self.refuse(f"more than {MOST_POINTS} points", f"{MOST_POINTS} points; simplify the paths")
            if len(put) > 1:
                self.lines.append(SvgLine(part or "lines", closed, fill if closed else "", put))

    def transformed(self, above: Transform, text: str) -> Transform:
        made = above
        rest = text.strip()
        while rest:
            found = re.match(r"(\w+)\s*\(([^()]*)\)[\s,]*", rest)
            numbers = [float(each) for each in re.findall(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?", found[2])] if found else []
            change = _TRANSFORMS.get(found[1]) if found else None
            if found is None or change is None or len(numbers) not in change[0]:
                self.refuse(f"transform= '{text[:40]}' cannot be read", "matrix, translate, scale, rotate, skewX, skewY with their numbers")
                return above
            made = made.transform(change[1](*numbers))
            rest = rest[found.end() :]
        return made


_TRANSFORMS: Mapping[str, tuple[tuple[int, ...], Callable[..., Any]]] = {
    "matrix": ((6,), lambda *six: Transform(*six)),
    "translate": ((1, 2), lambda x, y=0.0: Transform(1, 0, 0, 1, x, y)),
    "scale": ((1, 2), lambda x, y=None: Transform(x, 0, 0, x if y is None else y, 0, 0)),
    "rotate": ((1, 3), lambda a, x=0.0, y=0.0: Identity.translate(x, y).rotate(math.radians(a)).translate(-x, -y)),
    "skewX": ((1,), lambda a: Transform(1, 0, math.tan(math.radians(a)), 1, 0, 0)),
    "skewY": ((1,), lambda a: Transform(1, math.tan(math.radians(a)), 0, 1, 0, 0)),
}


class _Flat(BasePen):  # type: ignore[misc]
    """Paths as runs of straight pieces."""

    def __init__(self) -> None:
        super().__init__(None)
        self.runs: list[tuple[bool, list[Point]]] = []

    def _moveTo(self, pt: Point) -> None:
        self.runs.append((False, [pt]))

    def _lineTo(self, pt: Point) -> None:
        self.runs[-1][1].append(pt)

    def _curveToOne(self, pt1: Point, pt2: Point, pt3: Point) -> None:
        run = self.runs[-1][1]
        first = run[-1]
        run += [geometry.bezier(first, pt1, pt2, pt3, k / PIECES) for k in range(1, PIECES + 1)]

    def _closePath(self) -> None:
        points = self.runs[-1][1]
        if len(points) > 2 and math.dist(points[0], points[-1]) < 1e-9:
            points.pop()
        self.runs[-1] = (True, points)

    def _endPath(self) -> None:
        return


def _number(given: Mapping[str, str], name: str) -> float:
    text = given.get(name, "0").strip()
    try:
        return float(text.removesuffix("px"))
    except ValueError:
        raise SvgRefused(f"{name}= '{text[:20]}' is no plain number") from None


def _as_path(tag: str, given: Mapping[str, str]) -> str:
    """A basic shape as path data."""

    def n(name: str) -> float:
        return _number(given, name)

    if tag in ("polygon", "polyline"):
        return f"M {given.get('points', '')} {'Z' if tag == 'polygon' else ''}"
    if tag == "line":
        return f"M {n('x1')} {n('y1')} L {n('x2')} {n('y2')}"
    if tag == "rect":
        return f"M {n('x')} {n('y')} h {n('width')} v {n('height')} h {-n('width')} Z"
    rx, ry = (n("r"), n("r")) if tag == "circle" else (n("rx"), n("ry"))
    if rx <= 0 or ry <= 0:
        raise SvgRefused(f"<{tag}> has no size")
    x, y = n("cx"), n("cy")
    return f"M {x - rx} {y} A {rx} {ry} 0 1 1 {x + rx} {y} A {rx} {ry} 0 1 1 {x - rx} {y} Z"


def _part(given: Mapping[str, str]) -> str:
    """The part that an element names: by its label, its id or its class; not by an id that a program gave."""
    for name, value in given.items():
        if name.rpartition(" ")[2] == "label" and (word := _word(value)):
            return word
    for name in ("id", "class"):
        word = _word(given.get(name, ""))
        if word and not re.fullmatch(r"(path|g|svg|layer|rect|circle|ellipse|polygon|polyline|line|group)-?\d*(-\d+)*", word):
            return word
    return ""


def _word(text: str) -> str:
    """Lower-case words joined by '-', as names of parts are; a number at the end parts two pieces of one part and is left out."""
    word = re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")
    word = re.sub(r"-?\d+$", "", word)
    return word if re.fullmatch(r"[a-z][a-z0-9-]{0,40}", word) else ""


def _style(given: Mapping[str, str]) -> dict[str, str]:
    pairs = dict(each.split(":", 1) for each in given.get("style", "").split(";") if ":" in each)
    found = {name.strip(): value.strip() for name, value in pairs.items()}
    return {**{name: given[name] for name in ("fill", "display", "visibility") if name in given}, **found}
