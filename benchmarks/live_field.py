"""The script cost of one frame of the live field with 60 organisms, against the bound of 4 ms.

Run: make bench. Counted is the time its thread works, as the browser's own trace gives it, so that a busy machine
does not count as slow script. Beside it stand the clock time, and the cost of drawing the same 60 as plain ellipses.
The 60 are shared out over all that a page puts into the field of that power.
Prints a line for low and for high power, each over all runs; asserts nothing.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, sync_playwright

from keytool.figures import motion
from keytool.library import load, root
from keytool.pages.bundles import LIVE_FIELD

SCRIPTS = Path(__file__).parents[1] / "site" / "assets" / "live-field"
BOUND_MS = 4.0
RUNS, WARM_UP, FRAMES = 3, 120, 300
PAGE = "<canvas width=1152 height=1152></canvas>"
FIELD = """(arg) => new Promise((done) => {
      const W = WetmountField, ctx = document.querySelector("canvas").getContext("2d"), clock = [];
      const field = W.createField({ diameter_um: arg.diameter, movers: arg.movers, drift: { speed: 10, direction: 0 } });
      if (field.bodies.length !== 60) { throw new Error("not 60"); }
      W.step(field, 4);
      const view = { pixels: 576, density: 2, ink: "#1d1b18", paper: "#fffdf8", aperture: arg.aperture, trails: arg.trails };
      const scale = 576 / field.diameter;
      function plain() {
        ctx.setTransform(2, 0, 0, 2, 576, 576);
        ctx.clearRect(-288, -288, 576, 576);
        field.bodies.forEach((b) => {
          ctx.beginPath();
          ctx.ellipse(b.x * scale, b.y * scale, b.p.length * scale / 2, b.p.width * scale / 2, b.facing, 0, 6.2832);
          ctx.fill();
          ctx.stroke();
        });
      }
      function frame() {
        const start = performance.now();
        W.step(field, 1 / 60);
        if (arg.plain) { plain(); } else { W.draw(ctx, field, view); }
        clock.push(performance.now() - start);
        if (clock.length < arg.frames) { requestAnimationFrame(frame); } else { done(clock); }
      }
      requestAnimationFrame(frame);
    })"""


def main() -> None:
    """One line for each power."""
    moving = [each for each in motion.whole_field(load(root()).library, [])["movers"] if each["motion"] != "still"]
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox"])
        for power, diameter, aperture in (("40x", 4500, 0.10), ("400x", 450, 0.65)):
            there = [each for each in moving if each["together"]["low" if power == "40x" else "high"]]  # what a page ever puts into it
            movers = [{**each, "count": 60 // len(there) + (i < 60 % len(there))} for i, each in enumerate(there)]
            view = {"movers": movers, "diameter": diameter, "aperture": aperture, "frames": WARM_UP + FRAMES}
            work, clock = _costs(browser, {**view, "plain": False, "trails": True})
            bare, _ = _costs(browser, {**view, "plain": True, "trails": False})
            print(
                f"Live field at {power}, 60 organisms with trails: median {_share(work, 0.5):.2f} ms of work a frame, 95 % under "
                f"{_share(work, 0.95):.2f} (clock {_share(clock, 0.5):.2f}, {_share(clock, 0.95):.2f}) against {BOUND_MS:.0f} ms, "
                f"ratio {_share(work, 0.5) / BOUND_MS:.2f} ({_share(work, 0.95) / BOUND_MS:.2f}); "
                f"60 plain ellipses {_share(bare, 0.5):.2f} ({_share(bare, 0.95):.2f})"
            )


def _costs(browser: Browser, view: dict[str, Any]) -> tuple[list[float], list[float]]:
    """Milliseconds of each frame over all runs: what the thread worked, and what the clock says."""
    work: list[float] = []
    clock: list[float] = []
    for _ in range(RUNS):
        page = browser.new_page()
        page.set_content(PAGE)
        for name in LIVE_FIELD:
            page.add_script_tag(path=str(SCRIPTS / f"{name}.js"))
        browser.start_tracing(page=page, categories=["devtools.timeline"])
        clock += page.evaluate(FIELD, view)[WARM_UP:]
        events = json.loads(browser.stop_tracing())["traceEvents"]
        frames = sorted((each for each in events if each["name"] == "FireAnimationFrame" and "tdur" in each), key=lambda each: each["ts"])
        work += [each["tdur"] / 1000 for each in frames[WARM_UP : WARM_UP + FRAMES]]
        page.close()
    return work, clock


def _share(costs: list[float], share: float) -> float:
    return sorted(costs)[int(share * (len(costs) - 1))]


if __name__ == "__main__":
    main()
