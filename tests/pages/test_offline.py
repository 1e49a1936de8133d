"""Without a network: what the worker lists is there, and the site opens when its server is gone."""

from __future__ import annotations

import json
import re
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from keytool.pages.offline import LISTS, MOST, put_in
from keytool.pages.offline_pages import packed
from keytool.pages.written_files import written_root

WORKER = written_root() / "site" / "worker.js"


def lists(site: Path) -> dict[str, Any]:
    found = re.search(r"^var BUILT = (\{.*\});$", (site / "sw.js").read_text("utf-8"), re.MULTILINE)
    assert found
    return json.loads(found[1])


@pytest.fixture
def built(tmp_path: Path) -> Path:
    """A folder that looks like a built site."""
    page = '<title>A · wetmount</title><body class="s-entry"><main id="main"><h1>A</h1></main><p class="cite">A</p>'
    written = {
        "index.html": "home",
        "keys/one.html": "one",
        "keys/whole/one.html": "paper",
        "entries/a.html": page,
        "entries/index.html": "all",
        "drawings/a.svg": "<svg>large</svg>",
        "drawings/small/a.svg": "<svg>small</svg>",
        "assets/a.js": "a",
        "assets/a.js.map": "map",
        "sitemap.xml": "map",
        "offline.html": '<span data-size="core">size not known yet</span>',
    }
    for name, text in written.items():
        (tmp_path / name).parent.mkdir(exist_ok=True, parents=True)
        (tmp_path / name).write_text(text)
    return tmp_path


def test_the_script_has_the_place_for_the_lists():
    assert WORKER.read_text("utf-8").count(LISTS) == 1


def test_what_is_kept_at_once_and_what_on_request(built: Path):
    put_in(built, WORKER.read_text("utf-8"))
    found = lists(built)
    told = ["offline/drawings-a.json", "offline/entries-a.json", "offline/frame.json"]
    assert sorted(found["core"]) == sorted(["assets/a.js", "entries/index.html", "index.html", "keys/one.html", "offline.html"])
    assert found["told"] == told
    assert found["rest"] == ["drawings/a.svg", "drawings/small/a.svg", "entries/a.html", "keys/whole/one.html"]
    assert (built / "offline.html").read_text("utf-8") == '<span data-size="core">0.1 MB</span>'


def test_a_page_is_told_in_a_frame_that_holds_nothing_of_another(built: Path):
    put_in(built, WORKER.read_text("utf-8"))
    frame = json.loads((built / "offline/frame.json").read_text("utf-8"))["entries"]
    assert frame == '<title><!--title--></title><body class="<!--kind-->"><main id="main"><!--main--></main>'
    assert json.loads((built / "offline/entries-a.json").read_text("utf-8")) == {"a": ["A · wetmount", "s-entry", "<h1>A</h1>"]}


def test_the_version_changes_with_any_byte_and_with_nothing_else(built: Path):
    worker = WORKER.read_text("utf-8")
    put_in(built, worker)
    first = lists(built)["version"]
    put_in(built, worker)
    assert lists(built)["version"] == first and re.fullmatch("[0-9a-f]{12}", first)
    (built / "drawings/a.svg").write_text("changed")
    put_in(built, worker)
    assert lists(built)["version"] != first


def test_a_site_being_edited_keeps_nothing(built: Path):
    put_in(built, WORKER.read_text("utf-8"), keeps=False)
    assert lists(built)["core"] == lists(built)["rest"] == []


def test_each_listed_file_exists_every_page_is_listed_and_the_core_is_light(site: Path):
    found = lists(site)
    names = [*found["core"], *found["told"], *found["rest"]]
    assert [name for name in names if not (site / name).is_file()] == []
    assert len(set(names)) == len(names)
    pages = {path.relative_to(site).as_posix() for path in site.rglob("*.html")} - {"404.html"}
    assert pages <= set(names)
    assert not [name for name in names if name.endswith((".map", ".gz"))]
    weights = dict(packed({name: (site / name).read_bytes() for name in found["core"]}))
    heaviest = sorted(weights.items(), key=lambda each: -each[1])[:5]
    assert sum(weights.values()) < MOST, heaviest
    said = re.findall(r'data-size="(\w+)">([\d.]+) MB<', (site / "offline.html").read_text("utf-8"))
    assert {part for part, _ in said} == {"core", "told", "rest", "folder"}
    assert abs(float(dict(said)["core"]) - sum(weights.values()) / 1e6) < 0.1


class Server(ThreadingHTTPServer):
    gone = False

    def stop(self) -> None:
        """No more answers, also on connections that the browser holds open."""
        self.gone = True
        self.shutdown()
        self.server_close()


class Quiet(SimpleHTTPRequestHandler):
    def do_GET(self) -> None:
        if not self.server.gone:  # type: ignore[attr-defined]
            super().do_GET()

    def log_message(self, *_: Any) -> None:
        pass


@pytest.fixture
def server(site: Path) -> Iterator[Server]:
    started = Server(("127.0.0.1", 0), partial(Quiet, directory=str(site)))
    threading.Thread(target=started.serve_forever, daemon=True).start()
    yield started
    started.stop()


TOLD_IS_KEPT = """async () => { const last = new URL("offline/frame.json", location.origin).href;
    while (!(await caches.match(last))) { await new Promise(then => setTimeout(then, 200)); } }"""
"""Waits until the worker has what is told of entries; the frame comes last."""


@pytest.mark.browser
def test_a_walk_and_what_it_ends_at_open_when_the_server_is_gone(browser: Any, server: Server, site: Path, start_key: str):
    address = f"http://127.0.0.1:{server.server_port}"
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(f"{address}/index.html")
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.goto(f"{address}/index.html")
    page.evaluate(TOLD_IS_KEPT)
    server.stop()
    page.goto(f"{address}/keys/{start_key}.html")
    page.keyboard.press("1")
    page.goto(f"{address}/")
    assert page.locator("h1").is_visible()
    entry = next(path for path in sorted((site / "entries").glob("[!i]*.html")) if (site / f"drawings/small/{path.stem}.svg").is_file())
    page.goto(f"{address}/entries/{entry.name}")
    assert page.url.endswith(f"/entries/{entry.name}") and page.locator("h1").is_visible() and page.title().endswith("wetmount")
    assert page.locator(".plate.ink img").evaluate("each => each.decode().then(() => each.naturalWidth)") > 0
    these = next((site / "look-alikes").glob("[!i]*.html")).name
    page.goto(f"{address}/look-alikes/{these}")
    assert page.locator(".strip img").first.evaluate("each => each.decode().then(() => each.naturalWidth)") > 0
    assert said == []
    context.close()


@pytest.mark.browser
def test_a_page_that_was_not_kept_is_named_and_one_can_go_back(browser: Any, server: Server):
    address = f"http://127.0.0.1:{server.server_port}"
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{address}/keys/index.html")
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.goto(f"{address}/keys/index.html#here")
    page.reload()
    server.stop()
    page.goto(f"{address}/drawings/nematodes.html")
    assert "#missing=" in page.url
    assert page.locator("[data-wanted]").inner_text() == "Wanted: drawings/nematodes.html"
    page.locator("[data-back]").click()
    page.wait_for_url("**/keys/index.html#here")
    context.close()


@pytest.mark.browser
def test_everything_can_be_kept(browser: Any, server: Server, site: Path):
    address = f"http://127.0.0.1:{server.server_port}"
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{address}/offline.html")
    page.locator("[data-keep] button").click(timeout=15000)
    page.get_by_text("Everything is kept on this device.").wait_for(timeout=60000)
    server.stop()
    entry = next((site / "entries").glob("[!i]*.html"))
    page.goto(f"{address}/entries/{entry.name}")
    assert page.locator("h1").is_visible() and page.url.endswith(entry.name)
    context.close()


@pytest.mark.browser
def test_from_a_folder_nothing_is_registered_and_nothing_is_said(visit: Any, site: Path):
    seen = visit((site / "offline.html").as_uri())
    seen.page.wait_for_timeout(200)
    assert seen.said == []
    assert seen.page.get_by_text("The button shows where").is_visible()
