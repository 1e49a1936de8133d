"""A built site and a browser to look at it with."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from keytool.cli.site import extras
from keytool.library import Library, root
from keytool.pages.build import build_site
from keytool.pages.site_cache import cached_site
from keytool.pages.whole_site import SiteContent
from keytool.pages.written_files import written_root
from tests.conftest import copy_mini

PHONE = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}


@pytest.fixture(scope="session")
def site(shared_folder: Path) -> Path:
    """The site of the real library, built by whichever process asks first; the others wait for it.

    WETMOUNT_SITE names one that is built already, to look at one test again and again.
    """
    if built := os.environ.get("WETMOUNT_SITE"):
        return Path(built)
    out = shared_folder / "site"
    with one_at_a_time(shared_folder):
        if not out.is_dir():  # it takes its place whole
            build_site(root(), out, extras)
    return out


@pytest.fixture(scope="session")
def content(shared_folder: Path) -> SiteContent:
    """The same site as pages and assets, before a builder has seen it: made by whichever process asks first, remembered for the others."""
    with one_at_a_time(shared_folder):
        return cached_site(root(), written_root(root()) / "site", extras, "")


@pytest.fixture(scope="session")
def texts(content: SiteContent) -> dict[str, str]:
    """What each page of the real library says, by path (`entries/plectus.md`)."""
    return {each.path: each.text for each in content.pages}


@contextmanager
def one_at_a_time(folder: Path) -> Iterator[None]:
    """Lets the processes of a run draw the whole library one after the other, so that the second finds it drawn."""
    with (folder / "site.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        yield


@pytest.fixture(scope="session")
def mini_root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A mini library that nobody breaks."""
    return copy_mini(tmp_path_factory.mktemp("mini") / "library")


@pytest.fixture(scope="session")
def start_key(library: Library) -> str:
    """The key one starts with."""
    from keytool.pages.index_pages import first_keys

    return first_keys(library)[0]


def an_entry(library: Library) -> str:
    """The entry with most on its page."""
    return max(library.entries.values(), key=lambda each: (len(each.mistaken_for) + len(each.tells) + len(each.statements), each.id)).id


@pytest.fixture(scope="session")
def kinds(library: Library, start_key: str) -> list[str]:
    """One page of each kind."""
    return [
        "index.html",
        "keys/index.html",
        f"keys/{start_key}.html",
        "entries/index.html",
        f"entries/{an_entry(library)}.html",
        "characters/index.html",
        "terms.html",
        "sources.html",
        "cautions.html",
        "guides/index.html",
        "guides/making-the-slide.html",
        "look-alikes/index.html",
        f"look-alikes/{max(library.look_alikes.values(), key=lambda each: (len(each.entries), each.id)).id}.html",
        f"look-alikes/{min(library.look_alikes.values(), key=lambda each: (len(each.entries), each.id)).id}.html",
        "voices.html",
        "live-field.html",
        "cards.html",
        "downloads.html",
        "offline.html",
        "quantities.html",
        "about.html",
    ]


@dataclass
class Seen:
    """A page with all it asked for and all it said in the console."""

    page: Any
    requests: list[str] = field(default_factory=list)
    said: list[str] = field(default_factory=list)


@pytest.fixture
def visit(browser: Any) -> Iterator[Callable[..., Seen]]:
    """Opens an address in a fresh context: `visit(url, color_scheme="dark", **PHONE)`."""
    contexts = []

    def opened(url: str, **how: Any) -> Seen:
        context = browser.new_context(**how)
        contexts.append(context)
        seen = Seen(context.new_page())
        seen.page.on("request", lambda request: seen.requests.append(request.url))
        seen.page.on("console", lambda message: seen.said.append(message.text))
        seen.page.on("pageerror", lambda error: seen.said.append(str(error)))
        seen.page.goto(url)
        return seen

    yield opened
    for context in contexts:
        context.close()
