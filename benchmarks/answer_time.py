"""How long a page takes to answer, on a processor slowed six times: from the tap to the next paint, for every answer of some walks.

It is what browsers report as the duration of the event (Event Timing, W3C), steps of 8 ms. Prints; asserts nothing.

Run: python benchmarks/answer_time.py [FOLDER OF THE BUILT SITE]
"""

from __future__ import annotations

import statistics
import sys
from pathlib import Path
from typing import Any

from playwright.sync_api import sync_playwright

PROJECT = Path(__file__).parents[1]
SLOWER = 6
WALKS = {"first-look": 8, "nematode-mouthparts": 8, "threads": 6}
"""Keys, and how many answers are given in each."""
WATCH = """() => { window.took = []; new PerformanceObserver(list => list.getEntries().forEach(each => {
    if (each.interactionId) window.took.push([each.interactionId, each.duration, each.processingEnd - each.processingStart, each.name]) }))
    .observe({type: 'event', durationThreshold: 16, buffered: true}) }"""


def answers(page: Any, address: str, count: int) -> list[float]:
    """What each of so many answers took, ms."""
    page.add_init_script(f"({WATCH})()")
    page.goto(address)
    page.wait_for_timeout(1500)
    took = []
    for step in range(count):
        leads = page.locator(".wm-key > .wm-couplet [data-lead]")
        if not leads.count():
            break
        page.evaluate("window.took.length = 0")
        here = page.url.partition("#")[0]
        leads.nth(step % 2 if leads.count() > 1 else 0).tap()
        page.wait_for_timeout(1200)
        if page.url.partition("#")[0] != here:
            break  # the answer led to another key's page
        told = page.evaluate("window.took")
        took.append(max((each[1] for each in told), default=0.0))
        if "-v" in sys.argv:
            print("   ", told)
    return took


def main() -> None:
    """One line a key: the median and the slowest answer."""
    named = [each for each in sys.argv[1:] if each != "-v"]
    site = Path(named[0]) if named else PROJECT / "build" / "site"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox", "--disable-gpu"])
        for key, count in WALKS.items():
            context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
            page = context.new_page()
            context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            took = answers(page, (site / "keys" / f"{key}.html").resolve().as_uri(), count)
            middle, most = statistics.median(took), max(took)
            print(f"{key}: {len(took)} answers, median {middle:.0f} ms, slowest {most:.0f} ms (wanted: under 100)", flush=True)
            context.close()
        browser.close()


if __name__ == "__main__":
    main()
