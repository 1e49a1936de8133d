"""Old addresses of pages that were renamed: each a small page that leads on, with what stands behind the `#`."""

from __future__ import annotations

import posixpath
from collections.abc import Collection, Mapping
from html import escape
from pathlib import Path

import yaml

MOVED = "moved.yaml"
POLICY = "default-src 'none'; script-src 'self'; base-uri 'none'; form-action 'none'"


class MovedNowhere(Exception):
    """Raised when an old address leads to no page, or stands where there is one; the message says which and what to do."""


def moved_pages(site: Path, pages: Collection[str]) -> Mapping[str, str]:
    """The HTML of each old address (`entries/old.html`), from `moved.yaml` in the folder `site`; `pages` are those there are now.

    Raises:
        MovedNowhere: an old address leads nowhere, or a page stands at it.
    """
    file = site / MOVED
    moved = (yaml.safe_load(file.read_text("utf-8")) or {}).get("moved") or {} if file.is_file() else {}
    for old, new in moved.items():
        if new not in pages:
            raise MovedNowhere(f"{MOVED}: '{old}' leads to '{new}', and there is no such page. Name a page as it stands in the built site.")
        if old in pages:
            raise MovedNowhere(f"{MOVED}: there is a page '{old}' again. Take the line out, or give the page another id.")
    return {old: _leads_on(posixpath.relpath(new, posixpath.dirname(old) or "."), "../" * old.count("/")) for old, new in moved.items()}


def _leads_on(to: str, root: str) -> str:
    """A page that goes to another without a script; with one it takes along what stands behind the `#`."""
    href = escape(to)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>Moved</title>\n<meta name="robots" content="noindex">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        f'<link rel="canonical" href="{href}" data-moved>\n<script src="{root}assets/moved.js"></script>\n'
        f'<noscript><meta http-equiv="refresh" content="0;url={href}"></noscript>\n</head>\n'
        f'<body>\n<p>This page has moved: <a href="{href}">on to it</a>.</p>\n</body>\n</html>\n'
    )
