"""Every entry and look-alike page in a few small files, so that a device without a network can put it together again.

Packed one by one, hundreds of pages that share most of their words weigh as much as photographs. In one file they share
those words. The worker of the site sets the body of such a page into the frame of another, and answers for a drawing
with its small picture.
"""

from __future__ import annotations

import gzip
import json
import re
from collections.abc import Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from keytool.pages.parallel import processors

FOLDER = "offline"
FRAME = f"{FOLDER}/frame.json"
TOLD = ("entries", "look-alikes")
"""The folders whose pages are told in this way."""
DRAWINGS = "drawings"
_MAIN = re.compile(r"(<main\b[^>]*>)(.*)(</main>)", re.DOTALL)
_TITLE = re.compile(r"<title>(.*?)</title>", re.DOTALL)
_KIND = re.compile(r'<body class="([^"]*)"')
_NOT_TOLD = re.compile(
    r'<div class="eye".*?<script src="[^"]*assets/entry\.js" defer></script>'
    r'|<section class="part"><h2 id="(?:moves|keys|about)">.*?</section>',
    re.DOTALL,
)
"""What moves or is computed, and what is not wanted at the bench: it stays with the whole page."""
_STRIP = re.compile(r'(<a href="\.\./entries/([^"/]+)\.html"><span class="clip"><img src=")[^"]*(")')
_CITED = re.compile(r'<p class="cite".*?</p>', re.DOTALL)


def file_of(folder: str, name: str) -> str:
    """The file that holds what is called `name` in a folder: one for each first letter."""
    return f"{FOLDER}/{folder}-{name[0]}.json"


def offline_files(site: Path) -> dict[str, str]:
    """The files by path, from the pages and small drawings of the built site under `site`; nothing where it has no such pages."""
    found: dict[str, dict[str, object]] = {}
    frame: dict[str, str] = {}
    for folder in TOLD:
        for path in sorted((site / folder).glob("*.html")):
            if path.stem != "index":
                html = path.read_text("utf-8")
                frame[folder] = frame.get(folder) or _frame(html)
                found.setdefault(file_of(folder, path.stem), {})[path.stem] = _told(html)
    for path in sorted((site / DRAWINGS / "small").glob("*.svg")):
        found.setdefault(file_of(DRAWINGS, path.stem), {})[path.stem] = path.read_text("utf-8")
    if frame:
        found[FRAME] = dict(frame)
    return {name: json.dumps(content, ensure_ascii=False, separators=(",", ":")) for name, content in found.items()}


def _frame(html: str) -> str:
    """A page without what is its own: its title, its kind and its body stand as slots."""
    html = _MAIN.sub(lambda found: f"{found[1]}<!--main-->{found[3]}", html)
    html = _TITLE.sub("<title><!--title--></title>", html, count=1)
    html = re.sub(r'<meta name="description"[^>]*>|<link rel="canonical"[^>]*>', "", html)
    return _CITED.sub("", _KIND.sub('<body class="<!--kind-->"', html, count=1))


def _told(html: str) -> list[str]:
    """Title, kind and body of a page."""
    main, title, kind = _MAIN.search(html), _TITLE.search(html), _KIND.search(html)
    body = _NOT_TOLD.sub("", main[2] if main else "")
    body = _STRIP.sub(lambda found: f"{found[1]}../{DRAWINGS}/small/{found[2]}.svg{found[3]}", body)
    return [title[1] if title else "", kind[1] if kind else "", body]


def packed(contents: Mapping[str, bytes]) -> Iterator[tuple[str, int]]:
    """What each file weighs as a server sends it that packs text (gzip, level 6)."""
    with ThreadPoolExecutor(processors()) as pool:  # zlib lets other threads run meanwhile
        yield from zip(contents, pool.map(_weight, contents, contents.values()), strict=True)


def _weight(name: str, content: bytes) -> int:
    is_text = name.endswith((".html", ".js", ".css", ".svg", ".json", ".csv", ".txt", ".webmanifest"))
    return len(gzip.compress(content, 6)) if is_text else len(content)
