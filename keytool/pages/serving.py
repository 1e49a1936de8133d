"""The site while the library is edited: after a change the library is read again, and each page is made when it is looked at."""

from __future__ import annotations

import logging
import shutil
import tempfile
import threading
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

from mkdocs.commands.build import _build_page, _build_theme_template, _populate_page
from mkdocs.config import load_config
from mkdocs.livereload import LiveReloadServer
from mkdocs.structure.files import get_files, set_exclusions
from mkdocs.structure.nav import get_navigation
from mkdocs.structure.pages import Page as MkDocsPage

from keytool.library import load
from keytool.pages.figure_files import FOLDER as FIGURES
from keytool.pages.moved import MovedNowhere
from keytool.pages.page import Asset, Page
from keytool.pages.pieces_of_site import PiecesOfSite
from keytool.pages.plugin import WetmountPlugin
from keytool.pages.site_cache import Adding
from keytool.pages.valid import LibraryProblems, require_valid
from keytool.pages.whole_site import SiteContent, last_review, navigation
from keytool.pages.written_files import written_root

log = logging.getLogger("wetmount")


class EditedSite:
    """The site of the library under `root`, whose files stand in the folder `out` as soon as they were asked for."""

    def __init__(self, root: Path, out: Path, extras: Adding, address: str) -> None:
        self.out = out
        self._root, self._extras, self._address = root, extras, address
        self._one_at_a_time = threading.RLock()

    def renew(self) -> None:
        """Read the library as it is now, and forget what was made of it before.

        Raises:
            LibraryProblems: the library has problems; what was made before is still shown.
        """
        loaded = require_valid(load(self._root))
        with self._one_at_a_time:
            self._pieces = PiecesOfSite(loaded, written_root(self._root) / "site", self._extras)
            self._made: set[str] = set()
            for old in self.out.iterdir():
                if old.name != FIGURES:  # a drawing is called after what is in it, so an old one is never wrong
                    shutil.rmtree(old) if old.is_dir() else old.unlink()
            pages = tuple(Page(path, "", "keydata", is_html=True) for path in self._pieces.paths)
            self._frame_of(SiteContent(pages, (), navigation(loaded.library), last_review(loaded.library), loaded.library.version))

    def ensure(self, path: str) -> None:
        """Make the file of the built site at `path` (`entries/plectus.html`), if there is one and it was not asked for before."""
        with self._one_at_a_time:
            for name in self._pieces.holding(path):
                if (self.out / path).is_file():
                    return
                if name not in self._made:
                    self._made.add(name)
                    for each in self._pieces.made(name):
                        self._put(each)

    def _put(self, each: Page | Asset) -> None:
        if isinstance(each, Asset):
            place = self.out / each.path
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(each.content)
            return
        file = self._files.get_file_from_path(each.path)
        file.content_string = each.text
        file.edit_uri = each.source
        page = file.page or MkDocsPage(None, file, self._config)
        if each.html:
            self._plugin.ready_html[each.path] = each.html
        _populate_page(page, self._config, self._files)
        _build_page(page, self._config, self._files.documentation_pages(), self._navigation, self._env)

    def _frame_of(self, content: SiteContent) -> None:
        """Have MkDocs get ready to put pages into their frame; `content` names the pages."""
        config: Any = load_config(str(written_root(self._root) / "mkdocs.yml"), site_dir=str(self.out))
        config.site_url = self._address
        plugin = config.plugins["wetmount"]
        assert isinstance(plugin, WetmountPlugin)
        plugin.ready = content
        config.plugins.on_startup(command="serve", dirty=False)
        config = config.plugins.on_config(config)
        files = get_files(config)
        env = config.theme.get_env()
        files = config.plugins.on_files(files, config=config)
        set_exclusions(files, config)
        self._plugin, self._config, self._files = plugin, config, files
        self._navigation = get_navigation(files, config)
        self._env = config.plugins.on_env(env, config=config, files=files)
        files.copy_static_files()
        for template in config.theme.static_templates:
            _build_theme_template(template, self._env, files, config, self._navigation)
        config.plugins.on_post_build(config=config)


class EditedSiteServer(LiveReloadServer):
    """MkDocs' server that reloads a page when a file changes; what it is asked for is made first."""

    def __init__(self, site: EditedSite, port: int) -> None:
        super().__init__(builder=self._renew, host="127.0.0.1", port=port, root=str(site.out))
        self._site = site

    def _renew(self) -> None:
        try:
            self._site.renew()
        except (LibraryProblems, MovedNowhere) as problems:
            log.error("%s\nUntil this is mended, the site is shown as it was.", problems)

    def _serve_request(self, environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes] | None:
        path = environ["PATH_INFO"].encode("latin-1").decode("utf-8", "ignore").lstrip("/")
        if not path.startswith("livereload/"):
            with self._epoch_cond:
                self._epoch_cond.wait_for(lambda: self._visible_epoch == self._wanted_epoch)
            self._site.ensure(path if path and not path.endswith("/") else f"{path}index.html")
        return super()._serve_request(environ, start_response)


def serve_edited(root: Path, port: int, extras: Adding) -> None:
    """Serve the site of the library under `root` until stopped; a change of a file there reloads what is looked at.

    Raises:
        LibraryProblems: the library has problems.
        OSError: the port is taken.
    """
    with tempfile.TemporaryDirectory(prefix="wetmount-") as folder:
        site = EditedSite(root, Path(folder), extras, f"http://127.0.0.1:{port}/")
        site.renew()
        server = EditedSiteServer(site, port)
        for watched in (root / "keydata", written_root(root) / "site", written_root(root) / "mkdocs.yml"):
            server.watch(str(watched))
        try:
            server.serve()  # type: ignore[no-untyped-call]
        except KeyboardInterrupt:
            log.info("Stopped.")
        finally:
            server.shutdown()
