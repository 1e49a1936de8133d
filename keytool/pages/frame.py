"""The frame of every page: where it leads, what it may load, and how to cite it."""

from __future__ import annotations

import base64
import hashlib
import json
import posixpath
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path

import yaml

from keytool.pages.html import Html, el, join

SCHEME = (
    'try{var s=localStorage.getItem("wetmount.scheme");if(/^(light|dark|dim)$/.test(s))document.documentElement.dataset.scheme=s}catch(e){}'
)
"""The one script that stands in a page: the scheme someone chose is there before the first paint."""


@dataclass(frozen=True, slots=True)
class Way:
    """A word that leads to a page of the site, and the starts of the addresses at which it is the place one is at."""

    name: str
    to: str
    here: tuple[str, ...]

    def is_at(self, path: str) -> bool:
        """Whether the page at `path` belongs to this word."""
        return path == self.to or path.startswith(self.here or ("\0",))


@dataclass(frozen=True)
class Frame:
    """What the template of a page asks for. `version` and `year` are those of the library."""

    head: tuple[Way, ...]
    dock: tuple[Way, ...]
    menu: Mapping[str, tuple[Way, ...]]
    foot: tuple[Way, ...]
    version: str
    year: str
    folders: tuple[str, ...] = ()
    """The folders of the site, by which the page for a wrong address finds where the site begins."""
    scheme: str = SCHEME

    @cached_property
    def policy(self) -> str:
        """What a page may load (Content Security Policy Level 3): files of its own folder, and the one script by its hash."""
        return (
            f"default-src 'none'; script-src 'self' {_hash(self.scheme)}; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
            "media-src 'self' blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; "
            "form-action 'none'"
        )

    @cached_property
    def lost(self) -> str:
        """The script of the page for a wrong address: its links go to where the site begins, and it says what was asked for."""
        folders = json.dumps(list(self.folders))
        return (
            f"(function(){{var folders={folders},parts=location.pathname.split('/'),at=parts.findIndex(function(each,n){{"
            "return n<parts.length-1&&folders.indexOf(each)>=0}),"
            "root=parts.slice(0,at<0?-1:at).join('/')+'/';if(location.protocol==='file:'&&at<0)return;"
            "document.querySelectorAll('[data-to]').forEach(function(each){each.href=root+each.dataset.to});"
            "var asked=document.getElementById('asked');asked.hidden=false;"
            "asked.querySelector('code').textContent=location.pathname.slice(root.length)})()"
        )

    @cached_property
    def lost_policy(self) -> str:
        """What that page may load: nothing, and its one script by its hash."""
        return f"default-src 'none'; script-src {_hash(self.lost)}; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

    def link(self, way: Way, path: str) -> str:
        """The address of a way as seen from the page at `path`."""
        return posixpath.relpath(way.to, posixpath.dirname(path) or ".")

    def words(self, group: str, path: str, looks: str = "") -> Html:
        """The words of the head, the dock or the foot as links from the page at `path`, the place one is at marked."""
        ways: tuple[Way, ...] = getattr(self, group)
        return _words(ways, posixpath.dirname(path), tuple(_at(each, path) for each in ways), looks)

    def list(self, group: str, path: str) -> Html:
        """The words of one group of the menu as items of a list."""
        ways = self.menu[group]
        return _words(ways, posixpath.dirname(path), tuple(_at(each, path) for each in ways), "", "li")


def _at(way: Way, path: str) -> str:
    """What `aria-current` says of a way on the page at `path`."""
    return "page" if way.to == path else "true" if way.is_at(path) else ""


@lru_cache(maxsize=256)
def _words(ways: tuple[Way, ...], folder: str, at: tuple[str, ...], looks: str, tag: str = "") -> Html:
    """Links, the same for all pages of a folder that stand at the same words."""
    links = (
        el(
            "a",
            way.name,
            class_=looks or None,
            href=posixpath.relpath(way.to, folder or "."),
            data_find=way.to == "find.html",
            aria_current=current or None,
        )
        for way, current in zip(ways, at, strict=True)
    )
    return join(el(tag, each) if tag else each for each in links)


def _hash(script: str) -> str:
    """A script as a policy names it."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"


def frame(site: Path, pages: Iterable[str], version: str, year: str) -> Frame:
    """The frame of a site that holds `pages` (`entries/index.html`), from the file `menu.yaml` of the folder `site`."""
    there = set(pages)
    written = yaml.safe_load((site / "menu.yaml").read_text("utf-8"))

    def ways(listed: Iterable[Mapping[str, object]]) -> tuple[Way, ...]:
        found = ((each, next((to for to in _texts(each["to"]) if to.partition("#")[0] in there), "")) for each in listed)
        return tuple(Way(str(each["name"]), to, tuple(_texts(each.get("here", [])))) for each, to in found if to)

    menu = {group: ways(listed) for group, listed in written["menu"].items()}
    folders = tuple(sorted({path.partition("/")[0] for path in there if "/" in path}))
    return Frame(ways(written["head"]), ways(written["dock"]), menu, ways(written["foot"]), version, year, folders)


def _texts(value: object) -> list[str]:
    return [str(each) for each in value] if isinstance(value, list) else []
