"""The script cost of one frame of the live field with 60 organisms, against the bound of 4 ms.

Run: make bench. Prints a ratio for low and high power; asserts nothing.
"""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import sync_playwright

from keytool.figures import motion
from keytool.library import load, root

SCRIPT = Path(__file__).parents[1] / "site" / "assets" / "live-field.js"
BOUND_MS = 4.0
FRAMES = """async (arg) => {
      const W = WetmountField;
      const field = W.createField({ diameter_um: arg.diameter, movers: arg.movers, drift: { speed: 10, direction: 0 } });
      if (field.bodies.length !== 60) { throw new Error("not 60"); }
      W.step(field, 4);
      const canvas = document.querySelector("canvas");
      canvas.width = canvas.height = 1152;
      const ctx = canvas.getContext("2d");
      ctx.setTransform(2, 0, 0, 2, 0, 0);
      const costs = [];
      for (let i = 0; i < 420; i++) {
        await new Promise(requestAnimationFrame);
        const start = performance.now();
        W.step(field, 1 / 60);
        W.draw(ctx, field, { pixels: 576, ink: "#1d1b18", paper: "#fffdf8", aperture: arg.aperture, trails: true });
        costs.push(performance.now() - start);
      }
      return costs.slice(120);
    }"""


def main() -> None:
    """One line for each power."""
    moving = [each for each in motion.whole_field(load(root()).library, [])["movers"] if each["motion"] != "still"]
    movers = [{**each, "count": 60 // len(moving) + (i < 60 % len(moving))} for i, each in enumerate(moving)]
    with sync_playwright() as play:
        page = play.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox"]).new_page()
        page.set_content("<canvas></canvas>")
        page.add_script_tag(path=str(SCRIPT))
        for power, diameter, aperture in (("40x", 4500, 0.10), ("400x", 450, 0.65)):
            costs = sorted(page.evaluate(FRAMES, {"movers": movers, "diameter": diameter, "aperture": aperture}))
            median, late = costs[len(costs) // 2], costs[int(0.95 * len(costs))]
            print(f"Live field at {power}, 60 organisms: {median:.2f} ms a frame (95 % under {late:.2f}) against {BOUND_MS:.0f} ms, "
                  f"ratio {median / BOUND_MS:.2f} ({late / BOUND_MS:.2f})")


if __name__ == "__main__":
    main()
