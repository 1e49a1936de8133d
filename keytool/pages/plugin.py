"""The MkDocs plugin: hands the generated pages to MkDocs, and nothing else."""

from __future__ import annotations

import posixpath
from collections.abc import Callable
from pathlib import Path
from typing import ClassVar

from jinja2 import Environment
from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page

from keytool.library import Loaded
from keytool.pages.extras import Extras
from keytool.pages.eyepiece import eyepiece_files
from keytool.pages.frame import frame
from keytool.pages.offline import put_in
from keytool.pages.page import prose_in_parts
from keytool.pages.photos import photo_files
from keytool.pages.site_cache import cached_site
from keytool.pages.valid import LibraryProblems
from keytool.pages.whole_site import SiteContent


class WetmountConfig(Config):  # type: ignore[no-untyped-call]
    """`root`: the folder that holds `keydata/`; by default the one `mkdocs.yml` stands in."""

    root = config_options.Optional(config_options.Dir(exists=True))


class WetmountPlugin(BasePlugin[WetmountConfig]):  # type: ignore[no-untyped-call]
    """Adds every page and asset made from `keydata/` to a MkDocs site."""

    extras: ClassVar[Callable[[Loaded], Extras]] = staticmethod(lambda loaded: Extras(photo_files(loaded) | eyepiece_files(loaded)))
    """What other faces add, asked for anew at each build; whoever starts MkDocs may put their own here."""
    variant: ClassVar[str] = "plain"
    """Tells apart sites of one library with different extras."""
    ready: SiteContent | None = None
    """A site that was made already, and need not be made again."""
    made: SiteContent
    is_served: bool = False
    ready_html: dict[str, str]
    """The pages made from the library, by the path of their source."""

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Remember whether the site is only shown while it is edited."""
        self.is_served = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read the library, watch what the pages are made from, and set the navigation."""
        try:
            self.made, self.ready = self.ready or self._make(config), None
        except LibraryProblems as problems:
            raise PluginError(str(problems)) from None
        self.ready_html = {each.path: each.html for each in self.made.pages if each.html}
        config.watch += [str(self._root(config) / "keydata"), str(self._site(config))]
        config.nav = list(self.made.navigation)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Put the generated pages beside the written ones, each with the file its edit link goes to."""
        for each in [each for each in files if each.generated_by is None and not _is_ours(each, config)]:
            files.remove(each)
        named = _paths(config.nav)
        for page in self.made.pages:
            if written := files.get_file_from_path(page.path):
                files.remove(written)
            level = InclusionLevel.INCLUDED if page.path in named else InclusionLevel.NOT_IN_NAV
            file = File.generated(config, page.path, content=page.text, inclusion=level)
            file.edit_uri = page.source
            files.append(file)
        for asset in self.made.assets:
            files.append(File.generated(config, asset.path, content=asset.content))
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Hand the templates where every page leads."""
        paths = [each.dest_uri for each in files.documentation_pages()]
        env.globals["frame"] = frame(self._site(config), paths, self.made.version, self.made.reviewed[:4])
        return env

    def on_page_markdown(self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Spare Markdown the pages that are HTML already."""
        return "" if page.file.src_uri in self.ready_html else markdown

    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """The HTML of a page, in its parts."""
        return self.ready_html.get(page.file.src_uri) or prose_in_parts(html)

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Add the worker that keeps the finished site on a device."""
        worker = (self._site(config) / "worker.js").read_text("utf-8")
        put_in(Path(config.site_dir), worker, keeps=not self.is_served)

    def _make(self, config: MkDocsConfig) -> SiteContent:
        return cached_site(self._root(config), self._site(config), type(self).extras, type(self).variant)

    def _root(self, config: MkDocsConfig) -> Path:
        return Path(self.config.root or posixpath.dirname(str(config.config_file_path)))

    def _site(self, config: MkDocsConfig) -> Path:
        return Path(config.docs_dir).parent


def _is_ours(file: File, config: MkDocsConfig) -> bool:
    """Whether a file is one of the site's own, not one that the theme brings along for a frame that is not used."""
    return Path(str(file.abs_src_path)).is_relative_to(config.docs_dir)


def _paths(nav: object) -> set[str]:
    """Every path a navigation names."""
    if isinstance(nav, str):
        return {nav}
    parts = nav.values() if isinstance(nav, dict) else nav if isinstance(nav, list) else ()
    return {path for part in parts for path in _paths(part)}
