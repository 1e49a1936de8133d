"""Pictures of the built site, to look at: every kind of page at every width in every scheme; and the README's picture.

Run: python site/screenshot.py look OUT [KIND ...] [--width 360] [--scheme dim] [--whole]
     python site/screenshot.py readme          (make screenshot)
Needs the built site in build/site (or SITE=folder), Chromium and playwright.
"""

from __future__ import annotations

import argparse
import io
import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from PIL import Image
from playwright.sync_api import sync_playwright

PROJECT = Path(__file__).parents[1]
SITE = Path(os.environ.get("SITE", PROJECT / "build" / "site"))
PICTURE = PROJECT / "site" / "readme" / "key-page.png"
PHONE, GAP = (360, 740), 24
KINDS = {
    "home": "index.html",
    "look": "describe.html",
    "keys": "keys/index.html",
    "key": "keys/nematode-mouthparts.html",
    "whole": "keys/whole/nematode-mouthparts.html",
    "entries": "entries/index.html",
    "entry": "entries/dorylaim.html",
    "looks": "look-alikes/index.html",
    "look-alike": "look-alikes/hypha-and-its-doubles.html",
    "characters": "characters/index.html",
    "words": "terms.html",
    "figures": "quantities.html",
    "sources": "sources.html",
    "cautions": "cautions.html",
    "guides": "guides/index.html",
    "guide": "guides/making-the-slide.html",
    "voices": "voices.html",
    "live": "live-field.html",
    "drawings": "drawings/index.html",
    "sheet": "drawings/nematodes.html",
    "gallery": "gallery.html",
    "count": "count.html",
    "measure": "measure.html",
    "find": "find.html",
    "cards": "cards.html",
    "downloads": "downloads.html",
    "contribute": "contribute/index.html",
    "form": "contribute/form.html",
    "offline": "offline.html",
    "about": "about.html",
    "accessibility": "accessibility.html",
    "hosting": "hosting.html",
    "lost": "404.html",
}
"""One page of each kind."""
WIDTHS = {360: 740, 820: 1180, 1440: 900}
SCHEMES = ("light", "dark", "dim")


def main() -> None:
    """What the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("what", choices=["look", "readme"], nargs="?", default="readme")
    parser.add_argument("out", type=Path, nargs="?", default=Path("build/look"))
    parser.add_argument("kinds", nargs="*", help=f"of {', '.join(KINDS)}; all without")
    parser.add_argument("--width", type=int, action="append", help="px; 360, 820 and 1440 without")
    parser.add_argument("--scheme", action="append", choices=SCHEMES)
    parser.add_argument("--whole", action="store_true", help="the whole page, not its first screen")
    asked = parser.parse_args()
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        if asked.what == "readme":
            readme(browser)
        else:
            asked.out.mkdir(parents=True, exist_ok=True)
            for name, picture in look(
                browser, asked.kinds or list(KINDS), asked.width or list(WIDTHS), asked.scheme or SCHEMES, asked.whole
            ):
                (asked.out / f"{name}.png").write_bytes(picture)
        browser.close()


def look(browser: Any, kinds: list[str], widths: list[int], schemes: tuple[str, ...], whole: bool) -> Iterator[tuple[str, bytes]]:
    """The pictures with their names, such as `entry-360-dim`; kinds that this copy of the site lacks are left out."""
    for width in widths:
        for scheme in schemes:
            context = browser.new_context(
                viewport={"width": width, "height": WIDTHS.get(width, 900)},
                color_scheme="light" if scheme == "light" else "dark",
                has_touch=width < 960,
                is_mobile=width < 960,
            )
            if scheme == "dim":
                context.add_init_script("document.documentElement ? document.documentElement.dataset.scheme = 'dim' : 0")
            page = context.new_page()
            for kind in kinds:
                if (SITE / KINDS[kind]).is_file():
                    page.goto((SITE / KINDS[kind]).as_uri())
                    if scheme == "dim":
                        page.evaluate("document.documentElement.dataset.scheme = 'dim'")
                    page.wait_for_timeout(350)
                    yield f"{kind}-{width}-{scheme}", page.screenshot(full_page=whole)
            context.close()


def readme(browser: Any) -> None:
    """The mouthparts key on a phone, by day and in the evening, one answer in; in as few colours as do."""
    shots = []
    for scheme in ("light", "dark"):
        context = browser.new_context(viewport={"width": PHONE[0], "height": PHONE[1]}, color_scheme=scheme, device_scale_factor=2)
        page = context.new_page()
        page.goto((SITE / KINDS["key"]).as_uri() + "#outline=even")
        page.wait_for_timeout(600)
        shots.append(Image.open(io.BytesIO(page.screenshot())).convert("RGB"))
        context.close()
    both = Image.new("RGB", (sum(shot.width for shot in shots) + 2 * GAP, shots[0].height), "white")
    both.paste(shots[0], (0, 0))
    both.paste(shots[1], (shots[0].width + 2 * GAP, 0))
    PICTURE.parent.mkdir(parents=True, exist_ok=True)
    both.quantize(64).save(PICTURE, optimize=True)


if __name__ == "__main__":
    main()
