"""A browser, the script in a blank page, and a page with a live field in it."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from keytool.figures import motion
from keytool.pages.bundles import LIVE_FIELD, LIVE_FIELD_PAGE

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "site" / "assets" / "live-field"
CHROMIUM = Path("/usr/bin/chromium")


@pytest.fixture(scope="module")
def script(browser: Any) -> Iterator[Callable[..., Any]]:
    """Runs a function of the page on `WetmountField`: script("(W, arg) => ...", arg)."""
    page = browser.new_page()
    page.set_content("<canvas></canvas>")
    for name in LIVE_FIELD:
        page.add_script_tag(path=str(SCRIPTS / f"{name}.js"))
    yield lambda source, arg=None: page.evaluate(f"(arg) => ({source})(WetmountField, arg)", arg)
    page.close()


def _harmless(message: Any) -> bool:
    """No warning, or one that a test caused itself: axe re-reading style sheets of a file, or pixels read back."""
    ours = any(words in message.text for words in ("CORS", "ERR_FAILED", "preload assets", "willReadFrequently"))
    return ours or message.type not in ("error", "warning")


@pytest.fixture
def opened(browser: Any, tmp_path: Path) -> Iterator[Callable[..., Any]]:
    """Opens a page with one live field: opened(data, whole=False, **context options) gives the page; errors fail the test."""
    contexts, errors = [], []

    def open_page(data: motion.Json, *, whole: bool = False, **options: Any) -> Any:
        inside = json.dumps(data, ensure_ascii=False).replace("<", "\\u003c")
        scripts = "".join(f'<script defer src="{(SCRIPTS / f"{name}.js").as_uri()}"></script>' for name in (*LIVE_FIELD, *LIVE_FIELD_PAGE))
        (tmp_path / "page.html").write_text(
            f"""<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Live field</title>
            <meta name="viewport" content="width=device-width">
            <style>:root {{ --ink: var(--md-typeset-color); --paper: var(--md-default-bg-color); --sheet: var(--paper); --edge: #85775e; --sans: sans-serif; color-scheme: light dark; --md-default-bg-color: #fffdf8; --md-typeset-color: #1d1b18; }}
            @media (prefers-color-scheme: dark) {{ :root {{ --md-default-bg-color: #14161a; --md-typeset-color: #e6e1d6; }} }}
            body {{ font: 16px/1.5 sans-serif; background: var(--md-default-bg-color); color: var(--md-typeset-color); }}</style>
            <link rel="stylesheet" href="{(SCRIPTS / "live-field.css").as_uri()}"></head><body><main><h1>A page</h1>
            <div data-live-field{'="whole"' if whole else ""}><script type="application/json">{inside}</script><p>in words</p></div></main>
            {scripts}</body></html>""",
            encoding="utf-8",
        )
        context = browser.new_context(**{"viewport": {"width": 900, "height": 1000}, **options})
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: errors.append(str(error)))
        page.on("console", lambda message: errors.extend([] if _harmless(message) else [message.text]))
        page.goto((tmp_path / "page.html").as_uri())
        page.locator(".wm-live canvas").wait_for()
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert errors == []
