"""The whole site: all pages, all assets, its navigation; and the same written to a folder."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from keytool.identify import ground
from keytool.library.model import Library
from keytool.pages.characters_page import characters_page
from keytool.pages.entry_page import entry_page
from keytool.pages.home import home
from keytool.pages.key_page import key_page
from keytool.pages.lists import cautions_page, entries_page, first_keys, keys_page, method_page, quantities_page, terms_page
from keytool.pages.page import Asset, Page
from keytool.pages.prose import prose_pages
from keytool.pages.sources_page import sources_page


def pages(library: Library, site: Path | None = None) -> list[Page]:
    """Every page, in a fixed order. The library must be free of problems."""
    grounds = [ground(library, key) for key in library.keys.values()]
    return [
        *prose_pages(library, site or home() / "site"),
        keys_page(library),
        *(key_page(each) for each in grounds),
        entries_page(library),
        *(entry_page(library, grounds, each) for each in library.entries.values()),
        characters_page(library),
        terms_page(library),
        sources_page(library),
        cautions_page(library),
        method_page(library),
        quantities_page(library),
    ]


def assets(site: Path | None = None) -> list[Asset]:
    """Every file under `site/assets`, as it stands there."""
    folder = site or home() / "site"
    return [
        Asset(path.relative_to(folder).as_posix(), path.read_bytes(), f"site/{path.relative_to(folder).as_posix()}")
        for path in sorted((folder / "assets").rglob("*"))
        if path.is_file()
    ]


def navigation(library: Library) -> list[dict[str, Any]]:
    """The navigation, as site builders take it. Entries are reached from their index and from the keys."""
    return [
        {"Home": "index.md"},
        {"Keys": ["keys/index.md", *({library.keys[id].title: f"keys/{id}.md"} for id in first_keys(library))]},
        {"Entries": "entries/index.md"},
        {
            "Bench": [
                {library.guides["making-the-slide"].title: "method.md"},
                {"Characters": "characters/index.md"},
                {"Figures": "quantities.md"},
                {"Take care": "cautions.md"},
            ]
        },
        {"Words": "terms.md"},
        {"About": [{"About wetmount": "about.md"}, {"Sources": "sources.md"}]},
    ]


def write(library: Library, folder: Path, site: Path | None = None) -> None:
    """Pages and assets as files under `folder`, for any site builder; what stood there under these names is replaced."""
    for page in pages(library, site):
        _put(folder / page.path, page.text.encode())
    for asset in assets(site):
        _put(folder / asset.path, asset.content)


def _put(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
