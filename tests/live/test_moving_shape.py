"""The living thing is the same shape as its portrait: what the page is given, and what the script makes of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from math import dist
from typing import Any

import pytest

from keytool.figures import motion
from keytool.figures.findings import findings
from keytool.figures.in_field import points_of
from keytool.figures.moving_shape import Line as ShapeLine
from keytool.figures.moving_shape import middle_line
from keytool.figures.shapes import Drawing, Points, Swell
from keytool.figures.whole_body import whole_of
from keytool.library import Loaded
from keytool.library.model import Entry, Figure, Library

Script = Callable[..., Any]
SIDE_VIEWS = (
    *("tardigrade", "rodless-water-bear", "armoured-water-bear", "predatory-water-bear", "smooth-water-bear"),
    *("springtail", "surface-springtail", "deep-springtail", "globular-springtail"),
)
WHILE_IT_MOVES = 0.1
"""How far a body may stray from its area while it bends or rolls: a twisted outline that folds back on itself strays most."""
ALIKE = 0.01
"""How far portrait and mover may differ in area and in length."""


@pytest.fixture(scope="module")
def moving(library: Library) -> dict[str, dict[str, Any]]:
    """Every mover of every entry that is shown moving, by entry and manner."""
    found = {}
    for entry in library.entries.values():
        for manner in motion.manners_of(library, entry):
            found[f"{entry.id} {manner.id}"] = motion._mover(library, manner, entry)
    return found


def lines_of(shape: dict[str, Any], how: str) -> list[Points]:
    """The lines of one way of drawing, in shares of the body's length."""
    out = []
    for mark in shape["marks"]:
        if mark[0] == how:
            for text in mark[4].split(";"):
                numbers = [int(each) / shape["grain"] for each in text.split()]
                x = y = 0.0
                points = []
                for dx, dy in zip(numbers[::2], numbers[1::2], strict=True):
                    x, y = x + dx, y + dy
                    points.append((x, y))
                out.append(tuple(points))
    return out


def area(ring: Points) -> float:
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*ring, ring[0])))) / 2


def portrait(library: Library, entry: Entry) -> Drawing:
    """The drawing of the entry, as it lies on its page or, of a head, as the worm in its field."""
    drawing = whole_of(entry, 450)
    assert drawing is not None
    return drawing


def way(line: Points) -> float:
    return sum(dist(a, b) for a, b in pairwise(line))


def measured(drawing: Drawing, lined: bool) -> tuple[float, float] | None:
    """Of the largest outline as the plate has it: its area over the body's length squared, and the body's width over its length."""
    lines = [each for each in drawing.shapes if isinstance(each, Swell) and each.part == "outline"]
    rings = [each.points for each in lines if each.closed or dist(each.points[0], each.points[-1]) < 0.4 * way(each.points)]
    if not rings:
        return None
    largest = max(map(area, rings))
    if lined:
        middle = middle_line([ShapeLine("edge", "outline", "", 1.0, each) for each in rings])
        return largest / way(middle) ** 2, 0.0
    every = [p for each in drawing.shapes if each.part == "outline" for p in points_of(each)]
    xs, ys = zip(*every, strict=True)
    across, down = max(xs) - min(xs), max(ys) - min(ys)
    return largest / down**2, across / down


def test_portrait_and_mover_have_the_same_outline(library: Library, moving: dict[str, dict[str, Any]]) -> None:
    seen = 0
    for name, mover in moving.items():
        entry, shape = library.entries[name.split()[0]], mover.get("shape")
        from_the_side = entry.id in SIDE_VIEWS
        if not shape or from_the_side or library.manners[mover["id"]].seen_in[entry.id] != "own":
            continue
        told = measured(portrait(library, entry), bool(shape.get("lined")))
        if told is None:  # an edge that the lens does not show is dashed
            continue
        filled, wide = told
        assert max(map(area, lines_of(shape, "edge"))) == pytest.approx(filled, rel=ALIKE), name
        if wide:
            assert shape["wide"] == pytest.approx(wide, rel=ALIKE), name
        seen += 1
    assert seen > 180


def test_a_side_view_faces_the_way_it_goes_and_keeps_its_outline(library: Library) -> None:
    for id in SIDE_VIEWS:
        shape = motion.shape_of(library, library.entries[id], "own")
        rings = [
            each.points for each in portrait(library, library.entries[id]).shapes if isinstance(each, Swell) and each.part == "outline"
        ]
        xs, _ = zip(*(p for ring in rings for p in ring), strict=True)
        filled = max(map(area, rings)) / (max(xs) - min(xs)) ** 2
        assert max(map(area, lines_of(shape, "edge"))) == pytest.approx(filled, rel=ALIKE), id
        legs = [p[1] for mark in shape["marks"] if mark[1] == "step" for p in lines_of({**shape, "marks": [mark]}, mark[0])[0]]
        assert sum(legs) / len(legs) > 0, id  # they hang down


AREAS = """(W, movers) => movers.map(mover => {
  const field = W.createField({ diameter_um: 450, bounds: "open", movers: [{ ...mover, count: 1 }] });
  const b = field.bodies[0], areas = [];
  W.step(field, 0.5);
  for (let n = 0; n < 8; n++) {
    const put = W.deforms[mover.lies](b, b.look, n * Math.PI / 4);
    let area = 0;
    b.look.shape.marks.filter(m => m.how === "edge").forEach(mark => mark.lines.forEach(line => {
      const at = put(mark), points = [];
      for (let i = 0; i < line.length; i += 2) { const p = [0, 0]; at(p, line[i], line[i + 1], i ? null : line); points.push(p); }
      let twice = 0;
      points.forEach((p, i) => { const q = points[(i + 1) % points.length]; twice += p[0] * q[1] - q[0] * p[1]; });
      area += Math.abs(twice) / 2;
    }));
    areas.push(area / (b.p.length * b.p.length));
    W.step(field, 0.1);
  }
  return areas;
})"""


@pytest.mark.browser
def test_a_body_keeps_its_area_while_it_rolls_steps_bends_and_lies(
    script: Script, library: Library, moving: dict[str, dict[str, Any]]
) -> None:
    lies = {"roll": "roll", "bend": "bend", "step": "step", "keep": "keep"}
    movers = [{**each, "lies": lies[each["deforms"]]} for each in moving.values() if each.get("shape") and each["deforms"] in lies]
    for mover, areas in zip(movers, script(AREAS, movers), strict=True):
        still = sum(map(area, lines_of(mover["shape"], "edge")))
        assert all(each == pytest.approx(still, rel=WHILE_IT_MOVES if mover["deforms"] in ("bend", "roll") else ALIKE) for each in areas), (
            mover["name"]
        )


DARK = """(W, movers) => movers.map(mover => {
  const most = name => [].concat(mover.parameters[name]).slice(-1)[0], length = most("length");
  const parameters = { ...mover.parameters, length, width: most("width") };
  const field = W.createField({ diameter_um: Math.max(2.2 * length, 4), bounds: "open", movers: [{ ...mover, parameters, count: 1 }] });
  const b = field.bodies[0], canvas = document.querySelector("canvas");
  canvas.width = canvas.height = 160;
  if (b.path) { b.path.forEach(p => { p[0] -= b.x; p[1] -= b.y; }); }
  b.x = b.y = 0;
  const ctx = canvas.getContext("2d", { willReadFrequently: true });
  W.draw(ctx, field, { pixels: 160, ink: "#000", paper: "#fff", aperture: 0.65, trails: false });
  const data = ctx.getImageData(30, 30, 100, 100).data;
  let dark = 0;
  for (let i = 0; i < data.length; i += 4) { dark += data[i] < 235; }
  return W.seen(b.p.length, b.p.width, W.resolution(0.65)) ? dark : -1;
})"""


@pytest.mark.browser
def test_every_entry_that_moves_has_ink_in_the_field(script: Script, moving: dict[str, dict[str, Any]]) -> None:
    bare = [name for name, dark in zip(moving, script(DARK, list(moving.values())), strict=True) if 0 <= dark < 12]
    assert bare == []


def test_a_motion_that_finds_no_legs_or_no_middle_line_is_told_at_its_place(loaded: Loaded) -> None:
    library = loaded.library
    assert list(findings(loaded)) == []
    bear, thrash = library.manners["bear-walk"], library.manners["thrash"]
    wrong = {
        "bear-walk": replace(bear, seen_in={**bear.seen_in, "tardigrade": "tetrahymena"}),
        "thrash": replace(thrash, seen_in={**thrash.seen_in, "rhabditis": "mite", "nematode": Figure("many-legged", {"form": "unicorn"})}),
    }
    changed = replace(loaded, library=replace(library, manners={**library.manners, **wrong}))
    found = [each.message for each in findings(changed)]
    assert found[0].startswith("'unicorn'") or "unicorn" in "".join(found)
    assert "The drawing of 'tardigrade' has no legs, which the motion 'stride' moves." in found
    assert "The drawing of 'rhabditis' is not made round a middle line, along which the motion 'undulate' bends it." in found
