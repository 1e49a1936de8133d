"""The site while the library is edited: the same pages, each made when it is looked at, and anew after a change."""

from __future__ import annotations

import socket
import threading
import time
import urllib.request
from pathlib import Path

import pytest

from keytool.library import load
from keytool.pages.build import SiteNotBuilt, build_site, nothing_more, serve
from keytool.pages.page import Asset, Page
from keytool.pages.pieces_of_site import PiecesOfSite
from keytool.pages.serving import EditedSite, EditedSiteServer
from keytool.pages.valid import LibraryProblems
from keytool.pages.whole_site import build_site as content_of
from keytool.pages.written_files import written_root

BUTTON = "keydata/entries/debris/coat-button.yaml"


@pytest.fixture
def edited(mini: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> EditedSite:
    monkeypatch.setenv("WETMOUNT_ROOT", str(mini))
    (tmp_path / "out").mkdir()
    site = EditedSite(mini, tmp_path / "out", nothing_more, "")
    site.renew()
    return site


def change(root: Path, old: str, new: str) -> None:
    file = root / BUTTON
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")


def test_all_pieces_together_are_the_whole_site(mini: Path):
    loaded, folder = load(mini), written_root(mini) / "site"
    pieces = PiecesOfSite(loaded, folder, nothing_more)
    made = [each for name in pieces for each in pieces.made(name)]
    whole = content_of(loaded.library, folder)
    assert {each.path: each for each in made if isinstance(each, Page)} == {each.path: each for each in whole.pages}
    assert {each.path: each for each in made if isinstance(each, Asset)} == {each.path: each for each in whole.assets}
    assert pieces.paths == [each.path for each in whole.pages]


def test_each_file_of_the_built_site_is_there_when_it_is_asked_for_and_the_same(edited: EditedSite, mini: Path, tmp_path: Path):
    build_site(mini, tmp_path / "built")
    built = {
        path.relative_to(tmp_path / "built").as_posix(): path.read_bytes() for path in (tmp_path / "built").rglob("*") if path.is_file()
    }
    kept = {path for path in built if path.startswith("offline") or path in ("sw.js", "sitemap.xml", "sitemap.xml.gz")}
    assert "sw.js" in kept and len(built) - len(kept) > 60
    for path in sorted(built.keys() - kept, key=lambda each: (not each.endswith(".html"), each)):  # a page before its drawings
        edited.ensure(path)
    there = {path: (edited.out / path).read_bytes() if (edited.out / path).is_file() else None for path in built.keys() - kept}
    assert sorted(path for path, content in there.items() if content != built[path]) == []


def test_only_what_is_looked_at_is_made(edited: EditedSite):
    edited.ensure("entries/coat-button.html")
    assert {path.name for path in edited.out.rglob("*.html")} == {"coat-button.html", "404.html"}
    edited.ensure("entries/no-such.html")
    edited.ensure("../conftest.py")
    assert not (edited.out / "entries/no-such.html").exists()


def test_after_a_change_the_page_says_the_new_and_a_broken_file_leaves_the_old(edited: EditedSite, mini: Path):
    page = edited.out / "entries/coat-button.html"
    edited.ensure("entries/coat-button.html")
    change(mini, "summary: ", "summary: Seen anew. ")
    edited.renew()
    edited.ensure("entries/coat-button.html")
    assert "Seen anew." in page.read_text("utf-8")
    change(mini, "within: [button]", "within: [buton]")
    with pytest.raises(LibraryProblems, match="buton"):
        edited.renew()
    edited.ensure("entries/coat-button.html")
    assert "Seen anew." in page.read_text("utf-8")


def test_a_browser_is_told_when_a_file_changed(edited: EditedSite, mini: Path):
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    server = EditedSiteServer(edited, port)
    server.watch(str(mini / "keydata"))
    threading.Thread(target=server.serve, daemon=True).start()
    address = f"http://127.0.0.1:{port}/entries/coat-button.html"

    def says(words: str) -> bool:
        try:
            return words in urllib.request.urlopen(address, timeout=60).read().decode()
        except OSError:
            return False

    try:
        waited_for(lambda: says("livereload("))
        change(mini, "summary: ", "summary: Seen anew. ")
        waited_for(lambda: says("Seen anew."))
    finally:
        server.shutdown()


def waited_for(what) -> None:
    for _ in range(600):
        if what():
            return
        time.sleep(0.1)
    raise AssertionError("it never came")


def test_a_library_with_problems_is_not_served_and_says_why(mini: Path):
    change(mini, "within: [button]", "within: [buton]")
    with pytest.raises(SiteNotBuilt, match="buton"):
        serve(mini, 8000)


def test_a_taken_port_is_said_in_one_line(mini: Path):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        with pytest.raises(SiteNotBuilt, match=f"Cannot serve on port {taken.getsockname()[1]}"):
            serve(mini, taken.getsockname()[1])
