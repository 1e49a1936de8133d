"""Single keys answer a key's questions, and can be switched off (WCAG 2.2, success criterion 2.1.4)."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from keytool.pages.build import build_site


@pytest.fixture(scope="module")
def buttons(mini_root: Path, tmp_path_factory: pytest.TempPathFactory) -> str:
    """The address of the key of the mini library in a built site."""
    out = tmp_path_factory.mktemp("keys") / "site"
    build_site(mini_root, out)
    return (out / "keys/buttons.html").as_uri()


@pytest.mark.browser
def test_single_keys_can_be_switched_off_for_good(buttons: str, visit: Any) -> None:
    seen = visit(buttons)
    page = seen.page
    first = page.inner_text(".wm-asked h3")
    switch = page.get_by_role("button", name="Answer with keys 1, 2, 3, u, b: on")
    switch.focus()
    page.keyboard.press("Enter")
    for key in ("1", "2", "u", "0", "b", "Backspace"):
        page.keyboard.press(key)
        assert page.inner_text(".wm-asked h3") == first and "#" not in page.url, key
    assert page.locator(".wm-asked .wm-press").first.evaluate("each => getComputedStyle(each).visibility") == "hidden"
    page.reload()
    page.keyboard.press("1")
    assert page.inner_text(".wm-asked h3") == first, "it holds on this device"
    page.get_by_role("button", name="Answer with keys: off").click()
    page.keyboard.press("1")
    assert "#" in page.url
    page.reload()
    assert page.get_by_role("button", name="Answer with keys 1, 2, 3, u, b: on").is_visible()
    assert seen.said == []


@pytest.mark.browser
def test_leads_still_answer_by_click_and_enter_when_keys_are_off(buttons: str, visit: Any) -> None:
    page = visit(buttons).page
    page.get_by_role("button", name="Answer with keys 1, 2, 3, u, b: on").click()
    page.locator(".wm-asked a.wm-lead").first.focus()
    page.keyboard.press("Enter")
    assert "#" in page.url
