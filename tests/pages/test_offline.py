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

from keytool.pages.offline import LISTS, put_in
from keytool.pages.written_files import written_root

WORKER = written_root() / "site" / "worker.js"


def lists(site: Path) -> dict[str, Any]:
    found = re.search(r"^var BUILT = (\{.*\});$", (site / "sw.js").read_text("utf-8"), re.MULTILINE)
    assert found
    return json.loads(found[1])


@pytest.fixture
def built(tmp_path: Path) -> Path:
    """A folder that looks like a built site."""
    for name in (
        "index.html",
        "keys/one.html",
        "entries/a.html",
        "assets/a.js",
        "assets/a.js.map",
        "sitemap.xml",
        "search/search_index.json",
    ):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(name)
    (tmp_path / "offline.html").write_text('<span data-size="core">size not known yet</span>')
    return tmp_path


def test_the_script_has_the_place_for_the_lists():
    assert WORKER.read_text("utf-8").count(LISTS) == 1


def test_what_is_kept_at_once_and_what_on_request(built: Path):
    put_in(built, WORKER.read_text("utf-8"))
    found = lists(built)
    assert found["core"] == ["assets/a.js", "index.html", "keys/one.html", "offline.html", "search/search_index.json"]
    assert found["rest"] == ["entries/a.html"]
    assert (built / "offline.html").read_text("utf-8") == '<span data-size="core">1 MB</span>'


def test_the_version_changes_with_any_byte_and_with_nothing_else(built: Path):
    worker = WORKER.read_text("utf-8")
    put_in(built, worker)
    first = lists(built)["version"]
    put_in(built, worker)
    assert lists(built)["version"] == first and re.fullmatch("[0-9a-f]{12}", first)
    (built / "entries/a.html").write_text("changed")
    put_in(built, worker)
    assert lists(built)["version"] != first


def test_a_site_being_edited_keeps_nothing(built: Path):
    put_in(built, WORKER.read_text("utf-8"), keeps=False)
    assert lists(built)["core"] == lists(built)["rest"] == []


def test_each_listed_file_exists_and_every_page_is_listed(site: Path):
    found = lists(site)
    names = [*found["core"], *found["rest"]]
    assert [name for name in names if not (site / name).is_file()] == []
    assert len(set(names)) == len(names)
    pages = {path.relative_to(site).as_posix() for path in site.rglob("*.html")} - {"404.html"}
    assert pages <= set(names)
    assert not [name for name in names if name.endswith((".map", ".gz"))]
    said = re.findall(r'data-size="(\w+)">(\d+) MB<', (site / "offline.html").read_text("utf-8"))
    weight = {part: sum((site / name).stat().st_size for name in found[part]) / 1e6 for part in ("core", "rest")}
    assert {part for part, _ in said} == {"core", "rest", "folder"}
    assert all(abs(int(size) - weight[part]) < 1 for part, size in said if part in weight)


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


@pytest.mark.browser
def test_the_keys_open_when_the_server_is_gone(browser: Any, server: Server, site: Path):
    address = f"http://127.0.0.1:{server.server_port}"
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(f"{address}/index.html")
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.goto(f"{address}/index.html")
    server.stop()
    page.goto(f"{address}/keys/threads.html")
    page.locator(".wm-asked h3").wait_for()
    page.keyboard.press("1")
    assert page.locator(".wm-step").count() == 1
    page.goto(f"{address}/")
    assert page.locator("h1").is_visible()
    entry = next((site / "entries").glob("[!i]*.html")).name
    page.goto(f"{address}/entries/{entry}")
    assert page.url.endswith("offline.html#missing")
    assert page.locator("#missing").is_visible()
    assert said == []
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
