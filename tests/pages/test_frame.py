"""The frame of every page: the menu by touch and by keyboard, the lamp, the dock, and what a page weighs."""

from __future__ import annotations

import gzip
import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from keytool.pages.bundles import BUNDLES, bundled
from keytool.pages.frame import frame
from keytool.pages.moved import MovedNowhere, moved_pages
from keytool.pages.page import Asset
from tests.pages.conftest import PHONE, Seen

ROOT = Path(__file__).parents[2]
SITE = ROOT / "site"
Visit = Callable[..., Seen]
WIDTHS = {360: 740, 820: 1180, 1100: 800, 1440: 900}
BUDGETS = {
    "index.html": 110_000,
    "entries/dorylaim.html": 160_000,
    "look-alikes/hypha-and-its-doubles.html": 120_000,
    "live-field.html": 180_000,
}
"""What a first visit may weigh as it is sent by a server that packs text, in bytes."""
MOST_REQUESTS = 15


def test_a_word_is_left_out_where_its_page_is_missing():
    made = frame(SITE, ["index.html", "keys/index.html", "entries/index.html", "about.html"], "1", "2026")
    assert [way.to for way in made.head] == ["keys/index.html", "entries/index.html"]
    assert {way.to for ways in made.menu.values() for way in ways} == {"keys/index.html", "entries/index.html", "about.html"}
    assert [way.name for way in made.head if way.is_at("keys/first-look.html")] == ["What do you see?"]
    assert made.link(made.head[0], "entries/plectus.html") == "../keys/index.html"


def test_a_bundle_holds_its_sources_in_order_without_comments():
    given = {name: b"/* why */\n  // and how\n  x();\n" for sources in BUNDLES.values() for name in sources if name.endswith(".js")}
    given |= {name: b"/* why */\na  { b: c; }\n" for sources in BUNDLES.values() for name in sources if name.endswith(".css")}
    given |= {"alone.js": b"/* stays */ y()"}
    made = {each.path: each.content for each in bundled(Asset(f"assets/{name}", text, name) for name, text in given.items())}
    assert set(made) == {f"assets/{name}" for name in BUNDLES} | {"assets/alone.js"}
    assert made["assets/frame.js"] == b"x();\n" * len(BUNDLES["frame.js"])
    assert made["assets/wetmount.css"] == b"a{b:c}\n" * len(BUNDLES["wetmount.css"])
    assert made["assets/alone.js"] == b"/* stays */ y()"


def test_an_old_address_leads_on_and_one_that_leads_nowhere_is_named(tmp_path: Path):
    (tmp_path / "moved.yaml").write_text("moved: {entries/old.html: keys/new.html}", "utf-8")
    [(path, html)] = moved_pages(tmp_path, {"keys/new.html"}).items()
    assert path == "entries/old.html" and 'href="../keys/new.html"' in html and 'src="../assets/moved.js"' in html
    with pytest.raises(MovedNowhere, match=r"'entries/old.html' leads to 'keys/new.html', and there is no such page"):
        moved_pages(tmp_path, {"index.html"})
    with pytest.raises(MovedNowhere, match=r"there is a page 'entries/old.html' again"):
        moved_pages(tmp_path, {"keys/new.html", "entries/old.html"})


@pytest.mark.browser
def test_an_old_address_takes_along_what_stands_behind_its_hash(visit: Visit, tmp_path: Path):
    (tmp_path / "moved.yaml").write_text("moved: {entries/old.html: new.html}", "utf-8")
    (tmp_path / "entries").mkdir()
    (tmp_path / "assets").mkdir()
    (tmp_path / "assets/moved.js").write_bytes((SITE / "assets/moved.js").read_bytes())
    (tmp_path / "new.html").write_text("<title>New</title><p>here")
    (tmp_path / "entries/old.html").write_text(moved_pages(tmp_path, {"new.html"})["entries/old.html"])
    page = visit((tmp_path / "entries/old.html").as_uri() + "#see").page
    page.wait_for_url("**/new.html#see")
    assert page.title() == "New"


@pytest.mark.browser
@pytest.mark.parametrize("width", WIDTHS)
def test_the_menu_opens_on_every_kind_of_page(visit: Visit, site: Path, kinds: list[str], width: int):
    """By a tap where there is touch, and by the keyboard alone: reached by Tab, opened by Enter, closed by Escape."""
    touch = {"has_touch": True, "is_mobile": True} if width < 960 else {}
    page = visit((site / kinds[0]).as_uri(), viewport={"width": width, "height": WIDTHS[width]}, **touch).page
    menu, nav = page.locator(".menu > summary"), page.locator(".menu > nav")
    for path in kinds:
        page.goto((site / path).as_uri())
        assert nav.is_hidden(), path
        for _ in range(16):
            page.keyboard.press("Tab")
            if menu.evaluate("each => each === document.activeElement"):
                break
        else:
            raise AssertionError(f"the menu is not reached by Tab: {path}")
        page.keyboard.press("Enter")
        assert nav.is_visible(), path
        page.keyboard.press("Escape")
        assert nav.is_hidden(), path
        (menu.tap if touch else menu.click)()
        assert nav.is_visible() and nav.locator("a").count() > 10, path
        box = nav.bounding_box()
        assert box["x"] >= 0 and box["x"] + box["width"] <= width and box["height"] > 200, path


@pytest.mark.browser
def test_the_lamp_goes_round_and_is_remembered_and_follows_the_device_where_it_agrees(visit: Visit, site: Path):
    page = visit((site / "about.html").as_uri(), color_scheme="dark").page
    ground = "getComputedStyle(document.body).backgroundColor"
    seen = [page.evaluate(ground)]
    for _ in range(3):
        page.locator(".lamp").click()
        seen.append(page.evaluate(ground))
    assert len(set(seen)) == 3 and seen[0] == seen[3]
    assert page.evaluate("document.documentElement.dataset.scheme") is None, "an evening on a dark device is the device's own"
    page.locator(".lamp").click()
    page.reload()
    assert page.evaluate(ground) == seen[1] and "dim" in page.locator(".lamp").get_attribute("aria-label")


@pytest.mark.browser
def test_without_a_script_the_menu_opens_and_no_dead_button_stands_there(visit: Visit, site: Path):
    page = visit((site / "entries/index.html").as_uri(), java_script_enabled=False, **PHONE).page
    assert page.locator(".lamp").is_hidden()
    page.locator(".menu > summary").tap()
    assert page.locator(".menu > nav a").first.is_visible()
    assert page.locator(".drawer a").first.is_visible()


@pytest.mark.browser
def test_entries_are_filtered_by_word_letter_and_theme(visit: Visit, site: Path):
    page = visit((site / "entries/index.html").as_uri(), **PHONE).page
    shown = ".drawer > li:not([hidden])"
    whole = page.locator(shown).count()
    page.get_by_role("searchbox").fill("plectus")
    assert 0 < page.locator(shown).count() < 10 and "Plectus" in page.locator(shown).all_inner_texts()
    page.get_by_role("searchbox").fill("")
    page.get_by_role("button", name="Letter P").click()
    assert all(text.strip().upper().startswith("P") for text in page.locator(f"{shown} .t").all_inner_texts())
    page.get_by_role("button", name="Letter P").click()
    page.locator(".themes a").nth(1).click()
    assert 0 < page.locator(shown).count() < whole and page.locator("[role=status]").inner_text().endswith("entries")


class Packing(ThreadingHTTPServer):
    """Counts what it sends."""

    sent: dict[str, int]


class Packed(BaseHTTPRequestHandler):
    """Sends text as a host does: packed by gzip."""

    def __init__(self, *given: Any, folder: Path) -> None:
        self.folder = folder
        super().__init__(*given)

    def do_GET(self) -> None:
        path = self.path.split("?")[0].lstrip("/")
        file = self.folder / path
        if not file.is_file():
            self.send_error(404)
            return
        kind = {".html": "text/html", ".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml", ".json": "application/json"}
        content = gzip.compress(file.read_bytes(), 6)
        self.server.sent[path] = len(content)  # type: ignore[attr-defined]
        self.send_response(200)
        self.send_header("Content-Type", kind.get(file.suffix, "application/octet-stream"))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *_: Any) -> None:
        pass


@pytest.fixture
def packing(site: Path) -> Iterator[Packing]:
    server = Packing(("127.0.0.1", 0), partial(Packed, folder=site))
    server.sent = {}
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield server
    server.shutdown()
    server.server_close()


@pytest.mark.browser
@pytest.mark.parametrize("path", BUDGETS)
def test_a_first_visit_is_light(browser: Any, packing: Packing, path: str):
    """Everything a browser fetches for the page on a phone, before anything is scrolled or kept for later."""
    context = browser.new_context(service_workers="block", **PHONE)
    page = context.new_page()
    page.goto(f"http://127.0.0.1:{packing.server_port}/{path}", wait_until="networkidle")
    assert sum(packing.sent.values()) < BUDGETS[path], packing.sent
    assert len(packing.sent) <= MOST_REQUESTS, sorted(packing.sent)
    context.close()
