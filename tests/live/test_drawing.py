"""What the canvas shows: true sizes, what cannot be seen, and what a frame costs."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from keytool.figures import motion
from keytool.library.model import Library

pytestmark = pytest.mark.browser

Script = Callable[..., Any]

INK = """(W, arg) => {
  const field = W.createField({ diameter_um: arg.diameter, bounds: "open", movers: [arg.mover] });
  field.bodies.forEach(b => { b.x = b.y = b.heading = b.facing = 0; });
  const canvas = document.querySelector("canvas");
  canvas.width = canvas.height = arg.pixels;
  const ctx = canvas.getContext("2d", { willReadFrequently: true });
  W.draw(ctx, field, { pixels: arg.pixels, ink: "#000", paper: "#fff", aperture: arg.aperture, trails: false });
  const half = Math.round(arg.pixels * 0.33), from = Math.round(arg.pixels / 2) - half;
  const data = ctx.getImageData(from, from, 2 * half, 2 * half).data;
  let left = 1e9, right = -1, top = 1e9, low = -1, darkest = 255;
  for (let i = 0; i < data.length; i += 4) {
    darkest = Math.min(darkest, data[i]);
    if (data[i] < 128) {
      const x = i / 4 % (2 * half), y = Math.floor(i / 4 / (2 * half));
      left = Math.min(left, x); right = Math.max(right, x); top = Math.min(top, y); low = Math.max(low, y);
    }
  }
  return { wide: right - left + 1, high: low - top + 1, darkest };
}"""


def ink(script: Script, body: str, motion_: str, *, diameter: float = 450, aperture: float = 0.65, **parameters: float) -> dict[str, float]:
    mover = {"id": "it", "motion": motion_, "body": body, "holds": True, "count": 1, "parameters": parameters}
    return script(INK, {"mover": mover, "diameter": diameter, "pixels": 1000, "aperture": aperture})


def ink_of(script: Script, library: Library, entry: str, *, diameter: float = 450, aperture: float = 0.65, **parameters: float) -> Any:
    """What is seen of an entry's own drawing in the middle of the field."""
    manner = motion.manners_of(library, library.entries[entry])[0]
    mover = {**motion._mover(library, manner, library.entries[entry]), "holds": True, "count": 1}
    mover = {**mover, "parameters": {**mover["parameters"], **parameters}}
    return script(INK, {"mover": mover, "diameter": diameter, "pixels": 1000, "aperture": aperture})


@pytest.mark.parametrize(("entry", "length"), [("diatom", 100), ("arcella", 120), ("fan-amoeba", 60)])
def test_bodies_are_drawn_at_their_true_size(script: Script, library: Library, entry: str, length: float) -> None:
    scale, line = 1000 * 0.985 / 450, 6  # px: the outline stands half outside, and is heavier on the lower right
    wide = motion.shape_of(library, library.entries[entry], "own")["wide"]
    seen = ink_of(script, library, entry, length=length, speed=0)
    assert length * scale - 3 <= seen["wide"] <= length * scale + line
    assert wide * length * scale - 3 <= seen["high"] <= wide * length * scale + line


def test_bacteria_are_not_seen_at_40_and_are_dots_at_400(script: Script) -> None:
    rod = {"length": 2, "width": 0.8, "speed": 0, "run": 1, "tumble": 0.1, "turn": 0}
    assert ink(script, "rod", "run", diameter=4500, aperture=0.10, **rod)["darkest"] == 255
    close = ink(script, "rod", "run", **rod)
    assert close["darkest"] < 200
    assert close["wide"] <= 9 and close["high"] <= 6


def test_a_nematode_is_a_hair_at_40(script: Script, library: Library) -> None:
    still = {"length": 800, "speed": 0, "waves": 1, "wavelength": 1.5, "bend": 0, "wander": 0}
    seen = ink_of(script, library, "rhabditis", diameter=4500, aperture=0.10, **still)
    assert seen["wide"] == pytest.approx(800 * 1000 * 0.985 / 4500, abs=8)
    assert seen["high"] <= 14


def test_what_the_lens_resolves_is_the_bench_figure(script: Script) -> None:
    # bench quantity: 0.61 × 0.55 µm / 0.65 = 0.52 µm at 400×; 3.36 µm for a 4× objective of aperture 0.10
    assert script("(W) => W.resolution(0.65)") == pytest.approx(0.516, abs=5e-4)
    assert script("(W) => W.resolution(0.10)") == pytest.approx(3.355, abs=5e-3)


MADE = """(W, arg) => {
  const field = W.createField({ diameter_um: 450, movers: arg.movers });
  const canvas = document.querySelector("canvas");
  canvas.width = canvas.height = 600;
  const view = { pixels: 600, ink: "#000", paper: "#fff", aperture: 0.65, trails: false };
  const plain = document.createElement, counts = [];
  let made = 0;
  document.createElement = function (name) { made += 1; return plain.call(document, name); };
  for (let i = 0; i < arg.rounds; i++) {
    made = 0;
    for (let n = 0; n < 120; n++) { W.draw(canvas.getContext("2d"), field, view); W.step(field, 1 / 60); }
    counts.push(made);
  }
  document.createElement = plain;
  return counts;
}"""


def test_a_picture_of_each_pose_is_made_once_and_kept(script: Script, library: Library) -> None:
    mover = motion._mover(library, library.manners["spiral-swim"])
    still = {"length": 50, "speed": 0, "turns": 1, "spiral-width": 0.1, "wander": 0}
    first, *later = script(MADE, {"movers": [{**mover, "holds": True, "count": 5, "parameters": still}], "rounds": 4})
    assert first == 5 * 12 and later == [0, 0, 0]


CORNERS = """(W, arg) => {
  const field = W.createField({ diameter_um: 450, bounds: "open", movers: arg.movers });
  field.bodies.forEach(b => { b.x = 225; b.y = 0; });
  const canvas = document.querySelector("canvas");
  canvas.width = canvas.height = 600;
  const ctx = canvas.getContext("2d", { willReadFrequently: true });
  W.draw(ctx, field, { pixels: 600, ink: "#000", paper: "#fff", aperture: 0.65, trails: true });
  return [[1, 1], [598, 1], [1, 598], [599, 290], [599, 310]].map(([x, y]) => ctx.getImageData(x, y, 1, 1).data[3]);
}"""


def test_nothing_stands_outside_the_round_field(script: Script, library: Library) -> None:
    mover = {**motion._mover(library, library.manners["lie-still"]), "count": 1, "parameters": {"length": 120, "width": 120}}
    assert script(CORNERS, {"movers": [mover]}) == [0, 0, 0, 0, 0]


def test_every_body_is_drawn_at_both_powers(script: Script, library: Library) -> None:
    movers = [{**each, "count": 1} for each in motion.whole_field(library, [])["movers"]]
    told = script(
        """(W, arg) => {
      const canvas = document.querySelector("canvas"), seen = new Set();
      canvas.width = canvas.height = 400;
      [[4500, 0.10], [450, 0.65]].forEach(([diameter_um, aperture]) => {
        const field = W.createField({ diameter_um, movers: arg.movers });
        for (let i = 0; i < 10; i++) {
          W.draw(canvas.getContext("2d"), field, { pixels: 400, ink: "#000", paper: "#fff", aperture, trails: true });
          W.step(field, 0.3);
        }
        field.bodies.forEach(b => { if (Number.isFinite(b.x + b.y + b.facing)) { seen.add(b.mover.id); } });
      });
      return [...seen];
    }""",
        {"movers": movers},
    )
    assert set(told) == {mover["id"] for mover in movers}
