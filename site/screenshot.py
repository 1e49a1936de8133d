"""Make the README's picture: the mouthparts key on a phone, in daylight and in a dim room, one answer in.

Run: make screenshot. Needs the built site in build/site, Chromium and playwright.
"""

from __future__ import annotations

import io
import shutil
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

PROJECT = Path(__file__).parents[1]
PAGE = PROJECT / "build" / "site" / "keys" / "nematode-mouthparts.html"
PICTURE = PROJECT / "site" / "assets" / "readme" / "key-page.png"
WIDTH, HEIGHT, GAP = 360, 740, 24


def main() -> None:
    """Both phones side by side, in as few colours as do."""
    shots = []
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for scheme, address in (("light", "#outline=even"), ("dark", "#outline=even")):
            context = browser.new_context(viewport={"width": WIDTH, "height": HEIGHT}, color_scheme=scheme, device_scale_factor=2)
            page = context.new_page()
            page.goto(PAGE.as_uri() + address)
            page.wait_for_timeout(600)
            shots.append(Image.open(io.BytesIO(page.screenshot())).convert("RGB"))
        browser.close()
    both = Image.new("RGB", (sum(shot.width for shot in shots) + 2 * GAP, shots[0].height), "white")
    both.paste(shots[0], (0, 0))
    both.paste(shots[1], (shots[0].width + 2 * GAP, 0))
    PICTURE.parent.mkdir(parents=True, exist_ok=True)
    both.quantize(64).save(PICTURE, optimize=True)


if __name__ == "__main__":
    main()
