"""The site without a network: the list of what a device keeps, the worker that keeps it, and the page that says how."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from pathlib import Path

from keytool.pages.html import Html, el
from keytool.pages.offline_pages import FRAME, offline_files, packed
from keytool.pages.page import Page, heading, page

WORKER = "sw.js"
OWN_PAGE = "offline.html"
NEVER = (".map", ".gz", "sitemap.xml", "404.html")
"""Ends of paths that a device has no use for."""
CORE = (
    *("index.html", "describe.html", "count.html", "measure.html", "find.html", "live-field.html", "cards.html", "cautions.html"),
    *("terms.html", "about.html", OWN_PAGE, "keys/", "guides/", "data/", "assets/", "entries/index.html"),
    "look-alikes/index.html",
)
"""What is kept at once: enough to name a thing at the bench, and to read of it. Starts of paths."""
NOT_CORE = ("keys/whole/", "assets/contribute")
"""Starts of paths that wait for being asked for all the same: paper and pencil."""
MOST = 3_000_000
"""What the core may weigh as it is sent, in bytes. It is fetched on whatever a phone has beside a microscope."""
_FIGURE = re.compile(r"figures/[0-9a-f]+\.svg")
LISTS = 'var BUILT = {"version": "", "core": [], "told": [], "rest": []};'


def offline_page() -> Page:
    """How to have the site at the bench without a network. The sizes are put in when the site is whole."""
    return page(
        "offline.md",
        "site/worker.js",
        "Without a network",
        [
            heading(1, "Without a network"),
            el(
                "div",
                el("p", el("strong", "This page is not on your device."), " ", el("span", data_wanted=True)),
                el("p", el("a", "Back to where you were", href="index.html", class_="btn main", data_back=True), class_="acts"),
                id="missing",
                class_="wm-message",
            ),
            el("p", "There is often no signal where soil is looked at. Three ways, the surest last."),
            heading(2, "On a phone or a tablet", "phone"),
            el(
                "p",
                "Opened from a web server, the keys, guides and cautions stay on the device by themselves, "
                "some seconds after the first visit (",
                _size("core"),
                " as sent); then every entry and look-alike with its small drawing (",
                _size("told"),
                " more). Not where the device asks to save data. "
                "Large drawings, moving fields, cards and whole keys stay once you have opened them, or all at once with the button: ",
                _size("rest"),
                " more.",
            ),
            el("div", el("p", "The button shows where the site is opened from a web server with JavaScript."), data_keep=True),
            el(
                "p",
                "A phone may throw such a store away when it runs short of room, or when the site was not opened for some weeks. "
                "Add the site to the home screen to keep it longer.",
            ),
            heading(2, "From a folder or a USB stick", "folder"),
            el(
                "p",
                "The whole site is a folder (",
                _size("folder"),
                "). Copy it, and open index.html in any browser; search works too. The command ",
                el("code", "wetmount site -o FOLDER"),
                " makes it.",
            ),
            heading(2, "On paper", "paper"),
            el("p", "A laminated ", el("a", "bench card", href="cards.html"), " needs neither network nor battery."),
        ],
        description="How to use the keys where there is no network.",
    )


def _size(of: str) -> Html:
    return el("span", "size not known yet", data_size=of)


def put_in(site: Path, worker: str, *, keeps: bool = True) -> None:
    """Write the worker of the built site under `site`, and the sizes on its page about it.

    `worker` is the script with its lists still empty. A site that is being edited keeps nothing.
    """
    if not keeps:
        _put_lists(site, worker, {"version": "edited", "core": [], "told": [], "rest": []})
        return
    told = offline_files(site)
    for name, text in told.items():
        (site / name).parent.mkdir(exist_ok=True)
        (site / name).write_text(text, "utf-8")
    files = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.is_file()}
    wanted = [name for name in files if not name.endswith(NEVER) and name != WORKER]
    core = [name for name in wanted if name.startswith(CORE) and not name.startswith(NOT_CORE)]
    core += sorted(_shown_in(files, core) & set(wanted) - set(core))
    then = sorted(told, key=lambda name: (name == FRAME, name))
    rest = [name for name in wanted if name not in {*core, *then}]
    sent = dict(packed({name: files[name].read_bytes() for name in wanted}))
    sizes = {
        "core": sum(sent[name] for name in core),
        "told": sum(sent[name] for name in then),
        "rest": sum(sent[name] for name in rest),
    }
    folder = sum(path.stat().st_size for path in files.values())
    _say_sizes(site / OWN_PAGE, {**{name: _megabytes(size) for name, size in sizes.items()}, "folder": _megabytes(folder)})
    digest = hashlib.sha256()
    for name in wanted:
        digest.update(f"{name}\0".encode() + hashlib.sha256(files[name].read_bytes()).digest())
    _put_lists(site, worker, {"version": digest.hexdigest()[:12], "core": core, "told": then, "rest": rest})


def _put_lists(site: Path, worker: str, lists: Mapping[str, object]) -> None:
    (site / WORKER).write_text(worker.replace(LISTS, f"var BUILT = {json.dumps(lists)};"), "utf-8")


def _shown_in(files: Mapping[str, Path], names: list[str]) -> set[str]:
    """The drawings that these keys show: a question without its pictures is half a question."""
    texts = (files[name].read_text("utf-8") for name in names if name.startswith(("keys/", "data/key-", "describe.html")))
    return {found for text in texts for found in _FIGURE.findall(text)}


def _megabytes(size: int) -> str:
    """A number of bytes in megabytes, to a tenth below ten."""
    return f"{max(0.1, size / 1e6):.1f} MB" if size < 9.95e6 else f"{size / 1e6:.0f} MB"


def _say_sizes(path: Path, sizes: Mapping[str, str]) -> None:
    text = path.read_text("utf-8")
    for name, size in sizes.items():
        text = text.replace(_size(name), el("span", size, data_size=name))
    path.write_text(text, "utf-8")
