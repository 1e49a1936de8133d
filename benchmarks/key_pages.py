"""The pages of the keys in a browser: what a first visit fetches, how far it jumps, and how long an answer takes on a slow phone.

python benchmarks/key_pages.py SITE      SITE is a built site (wetmount site -o SITE)

Sizes are as a server that packs would send them. Answers are timed in Chromium with its processor slowed six times, from the press to
the paint of the next question; the machine that runs this should have nothing else to do.
"""

from __future__ import annotations

import gzip
import shutil
import statistics
import sys
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

from playwright.sync_api import Error, sync_playwright

SLOWED = 6
ANSWERS = 6
PHONE = {"viewport": {"width": 390, "height": 664}, "has_touch": True, "is_mobile": True}
WATCH = """self.shifted = 0; new PerformanceObserver(list => list.getEntries().forEach(each => {
    if (!each.hadRecentInput) self.shifted += each.value; })).observe({type: 'layout-shift', buffered: true});"""
PRESS = """() => new Promise(done => {
    const lead = document.querySelector('.wm-couplet .wm-lead');
    const began = performance.now();
    lead.click();
    requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
})"""


def main(site: Path) -> None:
    """Prints one line for each key."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"])
        print(f"{'key':24} {'kB':>6} {'requests':>9} {'shift':>7} {'answer ms (median, worst)':>26}")
        for page in sorted((site / "keys").glob("*.html")):
            if page.stem not in ("index", "report"):
                print(line(browser, page))
        browser.close()


def line(browser: Any, path: Path) -> str:
    """The figures of one key."""
    context = browser.new_context(**PHONE)
    page = context.new_page()
    page.add_init_script(WATCH)
    asked: dict[str, None] = {}
    page.on("request", lambda request: asked.setdefault(request.url))
    page.goto(path.as_uri(), wait_until="networkidle")
    weight = sum(len(gzip.compress(Path(unquote(urlsplit(each).path)).read_bytes(), 6)) for each in asked if each.startswith("file:"))
    shift, requests = page.evaluate("self.shifted"), len(asked)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    times: list[float] = []
    for _ in range(ANSWERS):
        if not page.locator(".wm-couplet .wm-lead").count():
            break
        try:
            times.append(page.evaluate(PRESS))
            page.wait_for_timeout(1500)
        except Error:  # another key went on from here, and the page with it
            break
        if path.name not in page.url:
            break
    context.close()
    return (
        f"{path.stem:24} {weight / 1000:6.0f} {requests:9} {shift:7.3f} {statistics.median(times or [0]):14.0f} {max(times or [0]):11.0f}"
    )


if __name__ == "__main__":
    main(Path(sys.argv[1]))
