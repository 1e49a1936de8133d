"""The site of one library in pieces, each made when something of it is asked for.

A piece is what is drawn together: an entry's page, a key with its drawings and data. All pieces together are the whole
site; `serving` makes those that are looked at.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from pathlib import Path

from keytool.identify import ground
from keytool.library import Loaded
from keytool.pages import whole_site
from keytool.pages.bundles import bundled
from keytool.pages.entry_page import entry_page
from keytool.pages.extras import Extras
from keytool.pages.figure_files import FigureFiles
from keytool.pages.key_report_page import PATH as KEY_REPORT
from keytool.pages.look_alikes import look_alike_page
from keytool.pages.page import Asset, Page
from keytool.pages.plate_pages import plate_assets, sheet_page, themes

Parts = list[Page | Asset]


class PiecesOfSite:
    """The pieces of the site of a library free of problems. `extras` are made when they are needed first."""

    def __init__(self, loaded: Loaded, folder: Path, extras: Callable[[Loaded], Extras]) -> None:
        library = self._library = loaded.library
        self.paths = whole_site.page_paths(library, folder)
        """The path of every page (`entries/plectus.md`), made or not, in the order of the whole site."""
        grounds = self._grounds = {id: ground(library, key) for id, key in library.keys.items()}
        self._makers: Mapping[str, Callable[[], Parts]] = {
            **{f"keys/{id}": partial(whole_site.of_key, each) for id, each in grounds.items()},
            **{f"entries/{id}": partial(self._entry, id) for id in library.entries},
            **{f"drawings/{id}": partial(self._plates, id) for id in library.entries},
            **{f"sheets/{theme}": partial(self._sheet, theme) for theme in themes(library)},
            **{f"look-alikes/{id}": partial(self._look_alike, id) for id in library.look_alikes},
            "characters": partial(whole_site.of_characters, library),
            "describing": partial(whole_site.of_describing, library),
            "engine": partial(whole_site.of_engine, library),
            "report": partial(whole_site.of_report, library),
            "bundles": lambda: [*bundled(whole_site.written(folder))],
            "rest": lambda: whole_site.undrawn(library, folder, extras(loaded)),
        }

    def __iter__(self) -> Iterator[str]:
        """The names of all pieces."""
        return iter(self._makers)

    def made(self, name: str) -> Parts:
        """The pages and assets of one piece."""
        return self._makers[name]()

    def holding(self, path: str) -> Iterator[str]:
        """The pieces in which a file of the built site (`entries/plectus.html`, `assets/key.js`) may be, the likeliest first."""
        folder, _, file = path.rpartition("/")
        stem = file.rpartition(".")[0]
        likely = {
            "entries": [f"entries/{stem}"],
            "keys": [f"keys/{stem}"],
            "keys/whole": [f"keys/{stem}"],
            "data": [f"keys/{stem.removeprefix('key-')}", "engine"],
            "drawings": [f"drawings/{stem}", f"sheets/{stem}"],
            "drawings/small": [f"drawings/{stem}"],
            "drawings/states": ["characters"],
            "characters": ["characters"],
            "look-alikes": [f"look-alikes/{stem}"],
            "contribute": ["report"] if f"{folder}/{stem}.md" == KEY_REPORT else [],
            "": ["describing"],
        }.get(folder, ["bundles"])
        yield from (name for name in [*likely, "rest"] if name in self._makers)

    def _entry(self, id: str) -> Parts:
        return [entry_page(self._library, list(self._grounds.values()), self._library.entries[id])]

    def _plates(self, id: str) -> Parts:
        return [*plate_assets(self._library, [self._library.entries[id]])]

    def _sheet(self, theme: str) -> Parts:
        return [sheet_page(self._library, theme)]

    def _look_alike(self, id: str) -> Parts:
        figures = FigureFiles()
        return [look_alike_page(self._library, self._library.look_alikes[id], figures), *figures.assets]
