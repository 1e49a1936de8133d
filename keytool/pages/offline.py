"""The site without a network: the list of what a device keeps, the worker that keeps it, and the page that says how."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path

from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page

WORKER = "sw.js"
OWN_PAGE = "offline.html"
NEVER = (".map", ".gz", "sitemap.xml", "404.html", "search_index.js")
"""Ends of paths that a device has no use for; from a web server the search reads its index as JSON."""
OTHER_LANGUAGES = "assets/javascripts/lunr/"
CORE = ("keys/", "guides/", "assets/", "search/", "index.html", "cautions.html", "live-field.html", "cards.html", OWN_PAGE)
"""What is kept at once: enough to name a thing at the bench. Starts of paths."""
LISTS = 'var BUILT = {"version": "", "core": [], "rest": []};'


def offline_page() -> Page:
    """How to have the site at the bench without a network. The sizes are put in when the site is whole."""
    return page(
        "offline.md",
        "site/worker.js",
        "Without a network",
        [
            heading(1, "Without a network"),
            el("p", "This page was not on your device. Keep everything while you have a network.", id="missing", class_="wm-message"),
            el("p", "There is often no signal where soil is looked at. Three ways, the surest last."),
            heading(2, "On a phone or a tablet", "phone"),
            el(
                "p",
                "Opened from a web server, the keys, guides, cautions and the search (",
                _size("core"),
                ") stay on the device by themselves after the first visit. The entries and look-alikes come with the button: ",
                _size("rest"),
                " more. A server that packs files sends about a tenth of that.",
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
    files = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.is_file()}
    wanted = [name for name in files if not name.endswith(NEVER) and not name.startswith(OTHER_LANGUAGES) and name != WORKER]
    core = [name for name in wanted if name.startswith(CORE)]
    rest = [name for name in wanted if name not in set(core)]
    _say_sizes(site / OWN_PAGE, {"core": _weight(files, core), "rest": _weight(files, rest), "folder": _weight(files, list(files))})
    digest = hashlib.sha256()
    for name in wanted:
        digest.update(f"{name}\0".encode() + hashlib.sha256(files[name].read_bytes()).digest())
    lists = {"version": digest.hexdigest()[:12], "core": core, "rest": rest} if keeps else {"version": "edited", "core": [], "rest": []}
    (site / WORKER).write_text(worker.replace(LISTS, f"var BUILT = {json.dumps(lists)};"), "utf-8")


def _weight(files: Mapping[str, Path], names: list[str]) -> str:
    """How much these files weigh, in whole megabytes."""
    return f"{max(1, round(sum(files[name].stat().st_size for name in names) / 1e6))} MB"


def _say_sizes(path: Path, sizes: Mapping[str, str]) -> None:
    text = path.read_text("utf-8")
    for name, size in sizes.items():
        text = text.replace(_size(name), el("span", size, data_size=name))
    path.write_text(text, "utf-8")
