"""The whole site: all pages, all assets, its navigation; and the same written to a folder."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from keytool.identify import Ground, ground
from keytool.library.model import Library
from keytool.pages.bundles import bundled
from keytool.pages.cards_page import cards_page
from keytool.pages.characters_page import characters_page, state_assets, states_shown
from keytool.pages.count_page import count_page, measure_page
from keytool.pages.describe_page import describe_page
from keytool.pages.downloads import downloads, downloads_page
from keytool.pages.entry_page import entry_page
from keytool.pages.extras import Extras
from keytool.pages.face_data import engine_data, face_data
from keytool.pages.figure_files import FigureFiles
from keytool.pages.find_index import find_index
from keytool.pages.find_page import find_page
from keytool.pages.gallery_page import gallery_page
from keytool.pages.guides import guide_page, guides_page
from keytool.pages.index_pages import cautions_page, entries_page, first_keys, keys_page, quantities_page, terms_page
from keytool.pages.key_data import key_data
from keytool.pages.key_page import key_page
from keytool.pages.key_report_page import PATH as KEY_REPORT
from keytool.pages.key_report_page import key_report_page
from keytool.pages.look_alikes import look_alike_page, look_alikes_page
from keytool.pages.moved import MOVED, moved_pages
from keytool.pages.movement import live_field_page
from keytool.pages.offline import offline_page
from keytool.pages.page import Asset, Page
from keytool.pages.parallel import run_parallel
from keytool.pages.plate_pages import plate_assets, sheet_page, sheets_page, themes
from keytool.pages.point_at import has_optics
from keytool.pages.practice_and_published import voices_page
from keytool.pages.prose import prose_pages, prose_paths
from keytool.pages.sources_page import sources_page
from keytool.pages.whole_key_page import whole_key_page
from keytool.pages.words_data import words_data
from keytool.pages.written_files import written_root

NOTHING = Extras()


@dataclass(frozen=True, slots=True)
class SiteContent:
    """Everything of a site that is made from the library: pages, assets, navigation, and the day of the last review."""

    pages: tuple[Page, ...]
    assets: tuple[Asset, ...]
    navigation: list[dict[str, Any]]
    reviewed: str
    version: str


def build_site(library: Library, site: Path | None = None, extras: Extras = NOTHING) -> SiteContent:
    """The whole site of a library that is free of problems, before a site builder has seen it. Pages stand in a fixed order."""
    folder = site or written_root() / "site"
    made = [*undrawn(library, folder, extras), *_drawn(library)]
    pages = {each.path: each for each in made if isinstance(each, Page)}
    assets = {each.path: each for each in (*bundled(written(folder)), *made) if isinstance(each, Asset)}
    in_order = tuple(pages[path] for path in page_paths(library, folder))
    return SiteContent(in_order, tuple(assets.values()), navigation(library), last_review(library), library.version)


def last_review(library: Library) -> str:
    """The day an entry was last looked through, which dates the site."""
    return max((entry.reviewed for entry in library.entries.values()), default="2000-01-01")


def page_paths(library: Library, folder: Path) -> list[str]:
    """The path of every page of the site, in its fixed order."""
    return [
        *prose_paths(folder),
        "describe.md",
        *(["gallery.md"] if has_optics(library) else []),
        "keys/index.md",
        *(f"keys/{id}.md" for id in library.keys),
        *(f"keys/whole/{id}.md" for id in library.keys),
        "entries/index.md",
        *(f"entries/{id}.md" for id in library.entries),
        *("characters/index.md", "terms.md", "sources.md", "cautions.md", "guides/index.md"),
        *(f"guides/{id}.md" for id in library.guides),
        "look-alikes/index.md",
        *(f"look-alikes/{id}.md" for id in library.look_alikes),
        "drawings/index.md",
        *(f"drawings/{theme}.md" for theme in themes(library)),
        *("voices.md", "quantities.md"),
        *(["live-field.md"] if library.manners else []),
        *(["count.md", "measure.md"] if library.bench.tally else []),
        *("cards.md", "downloads.md", KEY_REPORT, "offline.md", "find.md"),
    ]


def undrawn(library: Library, folder: Path, extras: Extras) -> list[Page | Asset]:
    """The pages and assets for which little is drawn: written by hand, lists, downloads, what is found, and what was added."""
    there = {path.removesuffix(".md") + ".html" for path in page_paths(library, folder)}
    taken = downloads(library)
    return [
        *prose_pages(library, folder, extras.slots),
        keys_page(library),
        entries_page(library),
        terms_page(library),
        sources_page(library),
        cautions_page(library),
        guides_page(library),
        *(guide_page(library, each) for each in library.guides.values()),
        look_alikes_page(library),
        sheets_page(library),
        voices_page(library),
        quantities_page(library),
        *([live_field_page(library)] if library.manners else []),
        *([count_page(library), measure_page(library, "describe.html")] if library.bench.tally else []),
        cards_page(library, extras),
        downloads_page(library, taken),
        offline_page(),
        find_page(library),
        *taken,
        words_data(library),
        find_index(library, there),
        *(Asset(path, text.encode(), f"site/{MOVED}") for path, text in moved_pages(folder, there).items()),
        *(Asset(path, content, "keydata") for path, content in extras.files.items()),
    ]


def _drawn(library: Library) -> list[Page | Asset]:
    """What takes long, because it is drawn, shared out: what shows the same drawings stays together."""
    grounds = [ground(library, key) for key in library.keys.values()]
    done = run_parallel(
        [
            *(partial(of_key, each) for each in sorted(grounds, key=lambda each: -len(each.key.couplets))),
            *(partial(_of_theme, library, grounds, theme) for theme in themes(library)),
            partial(of_characters, library),
            partial(_of_look_alikes, library),
            partial(of_describing, library),
            partial(of_engine, library),
            partial(of_report, library),
        ]
    )
    return [each for group in done for each in group]


def of_key(of: Ground) -> list[Page | Asset]:
    """A key: its page, the whole of it, its data, and the drawings they show."""
    figures = FigureFiles()
    return [key_page(of, figures), whole_key_page(of, figures), key_data(of, figures), *figures.assets]


def _of_theme(library: Library, grounds: Sequence[Ground], theme: str) -> list[Page | Asset]:
    entries = [each for each in library.entries.values() if each.theme == theme]
    return [*(entry_page(library, grounds, each) for each in entries), sheet_page(library, theme), *plate_assets(library, entries)]


def of_characters(library: Library) -> list[Page | Asset]:
    """The page of the characters, and the drawing of each state."""
    shown = states_shown(library)
    return [characters_page(library, shown), *state_assets(library, shown)]


def of_describing(library: Library) -> list[Page | Asset]:
    """The page on which one says what one sees, the gallery, and the drawings they show."""
    figures = FigureFiles()
    made = [describe_page(library, figures), *([gallery_page(library, figures)] if has_optics(library) else [])]
    return [*made, *figures.assets]


def of_engine(library: Library) -> list[Page | Asset]:
    """What the scripts that name things know of the library."""
    return [face_data(library), engine_data(library)]


def of_report(library: Library) -> list[Page | Asset]:
    """How good the keys are."""
    return [key_report_page(library)]


def _of_look_alikes(library: Library) -> list[Page | Asset]:
    figures = FigureFiles()
    made = [look_alike_page(library, each, figures) for each in library.look_alikes.values()]
    return [*made, *figures.assets]


def pages(library: Library, site: Path | None = None, extras: Extras = NOTHING) -> list[Page]:
    """Every page, in a fixed order. The library must be free of problems."""
    return list(build_site(library, site, extras).pages)


def assets(library: Library, site: Path | None = None, extras: Extras = NOTHING) -> list[Asset]:
    """Every file that is no page: what stands under `site/assets`, the downloads, the drawings, and the extra files."""
    return list(build_site(library, site, extras).assets)


def written(folder: Path) -> list[Asset]:
    """Every file under `site/assets` as it stands there."""
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
        {
            "Entries": [
                "entries/index.md",
                {"Look-alikes": "look-alikes/index.md"},
                {"All drawings": "drawings/index.md"},
                {"Two voices": "voices.md"},
            ]
        },
        {
            "Bench": [
                "guides/index.md",
                *({each.title: f"guides/{each.id}.md"} for each in library.guides.values()),
                *([{"Live field": "live-field.md"}] if library.manners else []),
                {"Bench cards": "cards.md"},
                {"Characters": "characters/index.md"},
                {"Figures": "quantities.md"},
                {"Take care": "cautions.md"},
            ]
        },
        {"Words": "terms.md"},
        {"Contribute": [f"contribute/{name}.md" for name in ("index", "form", "fields", "judgement", "commands", "key-report")]},
        {
            "About": [
                {"About wetmount": "about.md"},
                {"Sources": "sources.md"},
                {"Downloads": "downloads.md"},
                {"Without a network": "offline.md"},
            ]
        },
    ]


def write(library: Library, folder: Path, site: Path | None = None, extras: Extras = NOTHING) -> None:
    """Pages and assets as files under `folder`, for any site builder; what stood there under these names is replaced."""
    whole = build_site(library, site, extras)
    for page in whole.pages:
        _put(folder / page.path, page.text.encode())
    for asset in whole.assets:
        _put(folder / asset.path, asset.content)


def _put(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
