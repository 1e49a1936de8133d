"""From the lines of an SVG, drawn at a stated scale, to a drawing that is data."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from keytool.contribute.draft import file_text
from keytool.contribute.dry_run import tried, write
from keytool.contribute.svg_lines import SvgLine, SvgRefused
from keytool.figures import geometry
from keytool.figures.findings import findings
from keytool.figures.shapes import Point
from keytool.library import Finding, Loaded

OUTLINE = "outline"
STRAY = 0.0015
"""In body lengths: how far a line may stray where points are taken out."""
MOST_UM = 50000.0
"""µm; the longest body there is a drawing of, as the schema has it."""
SPAN = 3.0
"""The body of an entry may be so many times shorter or longer than the one drawn, where nobody says more."""


def raw_drawing(
    lines: Sequence[SvgLine],
    *,
    id: str,
    theme: str,
    name: str,
    about: str,
    front: str,
    um_per_unit: float | None,
    length: float | None,
    after: str,
) -> dict[str, Any]:
    """The data of the drawing's file, in units of the body's length. Either `um_per_unit` or the body's `length` (µm) is given.

    Raises:
        SvgRefused: there is no closed line to be the outline.
    """
    closed = [each for each in lines if each.closed]
    named = [each for each in closed if each.part == OUTLINE]
    if not closed:
        raise SvgRefused("No line of the SVG is closed, so none can be the edge of the body. Close it, and name it 'outline'.")
    edge = max(named or closed, key=lambda each: abs(geometry.twice_area(each.points)))
    box = geometry.around(edge.points)
    units = box.height if front == "top" else box.width
    if not units:
        raise SvgRefused("The outline has no length. Draw it closed round the body, and name it 'outline'.")
    um = length if length is not None else units * (um_per_unit or 1.0)
    x0, y0 = (box.x + box.width / 2, box.y) if front == "top" else (box.x, box.y)

    def put(points: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(((x - x0) / units, (y - y0) / units) for x, y in points)

    ring = put(edge.points)
    parts = [_piece(each, put(each.points), ring) for each in lines if each is not edge]
    return {
        "id": id,
        "theme": theme,
        "name": name,
        "about": about,
        "front": front,
        "length": {
            "about": "length of the body",
            "default": _neat(um),
            "low": _neat(max(0.3, um / SPAN)),
            "high": _neat(min(MOST_UM, um * SPAN)),
        },
        OUTLINE: {"straight": _text(_lean(ring, shut=True))},
        **({"parts": parts} if parts else {}),
        "basis": {"kind": "memory", "note": after},
    }


def add_drawing(root: Path, loaded: Loaded, raw: dict[str, Any]) -> tuple[str, list[Finding]]:
    """Tries the drawing on a copy of the library, and writes its file where nothing is wrong; its name, and what is wrong."""
    name = f"keydata/drawings/{raw['theme']}/{raw['id']}.yaml"
    changes = {name: file_text(loaded, "drawing", name, raw)}
    would_be = tried(root, changes)
    wrong = [each for each in (*would_be.problems, *findings(would_be.loaded)) if each.place.file == name]
    if not wrong:
        write(root, changes)
    return name, wrong


def _piece(line: SvgLine, points: tuple[Point, ...], ring: tuple[Point, ...]) -> dict[str, Any]:
    part = line.part if line.part != OUTLINE else "edges"
    piece: dict[str, Any] = {"part": part, "closed" if line.closed else "line": {"straight": _text(_lean(points, shut=line.closed))}}
    if line.fill:
        piece["fill"] = line.fill
    if not all(geometry.inside(ring, p) for p in points):
        piece["outside"] = True
    return piece


def _lean(points: tuple[Point, ...], *, shut: bool) -> tuple[Point, ...]:
    return geometry.simplified((*points, points[0]), STRAY)[:-1] if shut else geometry.simplified(points, STRAY)


def _text(points: Sequence[Point]) -> str:
    return ", ".join(f"{x:.4f} {y:.4f}" for x, y in points).replace("-0.0000", "0.0000")


def _neat(um: float) -> float:
    return float(f"{um:.4g}")
