"""Build the site into a folder, whole or not at all, and serve it while the library is edited."""

from __future__ import annotations

import gc
import json
import logging
import os
import re
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import click

from keytool.library import Loaded, load
from keytool.pages.extras import Extras
from keytool.pages.moved import MovedNowhere
from keytool.pages.site_cache import Adding, cached_site, finished_key, recall_finished, remember_finished
from keytool.pages.valid import LibraryProblems
from keytool.pages.whole_site import NOTHING, SiteContent, navigation
from keytool.pages.written_files import written_root

MARK = "assets/wetmount.css"
"""A folder that holds this is a site made here and may be replaced."""


def nothing_more(loaded: Loaded) -> Extras:
    """Adds nothing."""
    return NOTHING


class SiteNotBuilt(click.ClickException):
    """Raised when no site was made; the message says why. What stood there before is untouched."""


def build_site(root: Path, out: Path, extras: Adding = nothing_more, *, variant: str = "") -> None:
    """Build the site of the library under `root` into the folder `out`, with the `extras` made from that library.

    What was made from exactly the same files is remembered and taken as it was; `variant` tells
    apart builds of one library with different extras.

    It is built beside `out` and takes its place only when it is whole. The same library gives
    the same bytes, whenever it is built.

    Raises:
        SiteNotBuilt: the library has problems, the build failed, or `out` holds something else.
    """
    out = out.resolve()
    if out.is_file() or (out.is_dir() and any(out.iterdir()) and not (out / MARK).is_file()):
        raise SiteNotBuilt(f"'{out}' is not empty and holds no site made by wetmount. Name another folder, or empty it first.")
    key = finished_key(root, written_root(root), extras, variant)
    out.parent.mkdir(parents=True, exist_ok=True)
    clear_begun(out)
    with tempfile.TemporaryDirectory(prefix=f".{out.name}-{os.getpid()}-", dir=out.parent) as beside:
        new = Path(beside) / "new"
        if not recall_finished(key, new):
            _build(root, new, extras, variant)
            remember_finished(key, new)
        if out.is_dir():
            out.rename(Path(beside) / "old")
        new.rename(out)


def clear_begun(out: Path) -> None:
    """Takes away what killed builds of `out` left beside it; a site they had set aside, and not put a new one in the place of, comes back.

    A folder of a process that still runs is left alone.
    """
    for beside in sorted(out.parent.glob(f".{out.name}-*-*")):
        process = re.fullmatch(re.escape(f".{out.name}-") + r"(\d+)-\w+", beside.name)
        if process is None or _runs(int(process[1])):
            continue
        if not out.exists() and (beside / "old").is_dir():
            (beside / "old").rename(out)
        shutil.rmtree(beside, ignore_errors=True)


def _runs(process: int) -> bool:
    """Whether there is such a process; where that cannot be asked without harm, it is taken to run."""
    if os.name != "posix":
        return True
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True


def _build(root: Path, new: Path, extras: Adding, variant: str) -> None:
    """Have MkDocs build the site into the folder `new`."""
    from mkdocs.commands.build import build
    from mkdocs.config import load_config

    from keytool.pages.plugin import WetmountPlugin

    ready = _made(root, extras, variant)
    with _environment(root, ready.reviewed, extras, variant), _warnings() as said, _kept_as_it_is():
        try:
            config = load_config(str(written_root(root) / "mkdocs.yml"), site_dir=str(new))
            plugin = config.plugins["wetmount"]
            assert isinstance(plugin, WetmountPlugin)
            plugin.ready = ready
            config.plugins.on_startup(command="build", dirty=False)
            build(config)
            config.plugins.on_shutdown()
        except click.ClickException as error:
            raise SiteNotBuilt("\n".join([*said, error.format_message()])) from None


def serve(root: Path, port: int, extras: Adding = nothing_more) -> None:
    """Serve the site of the library under `root` on this machine until stopped; a change of a file there reloads it.

    Raises:
        SiteNotBuilt: the library has problems, or the port is taken.
    """
    from keytool.pages.serving import serve_edited

    logging.basicConfig(format="%(message)s")
    for name in ("mkdocs", "wetmount"):
        logging.getLogger(name).setLevel(logging.INFO)
    with _environment(root, "2000-01-01", extras, "serve"):
        try:
            serve_edited(root, port, extras)
        except (LibraryProblems, MovedNowhere) as problems:
            raise SiteNotBuilt(str(problems)) from None
        except OSError as error:
            raise SiteNotBuilt(f"Cannot serve on port {port}: {error}") from None


def plain_config(root: Path) -> str:
    """The configuration of a MkDocs without our plugin that builds the pages written into `docs/` beside it.

    `wetmount site --sources` writes such pages. Theme and navigation are those of the site of the library under `root`.
    """
    text = (written_root(root) / "mkdocs.yml").read_text("utf-8")
    text = re.sub(r"  - wetmount:\n(?: {6}.*\n)+", "  - search\n", text)
    text = text.replace("docs_dir: site/pages", "docs_dir: docs").replace("strict: true", "strict: false")
    text = text.replace("  custom_dir: site/overrides\n", "").replace("plugins:", "extra_css: [assets/wetmount.css]\n\nplugins:", 1)
    return f"{text}\nnav: {json.dumps(navigation(load(root).library), ensure_ascii=False)}\n"


def _made(root: Path, extras: Adding, variant: str) -> SiteContent:
    try:
        return cached_site(root, written_root(root) / "site", extras, variant)
    except (LibraryProblems, MovedNowhere) as problems:
        raise SiteNotBuilt(str(problems)) from None


@contextmanager
def _environment(root: Path, last: str, extras: Adding, variant: str) -> Iterator[None]:
    """Tells the plugin where the library is and what is added, and MkDocs which day to date pages with: that of the last review."""
    from keytool.pages.plugin import WetmountPlugin

    epoch = str(int(datetime.fromisoformat(last).replace(tzinfo=UTC).timestamp()))
    before, added = dict(os.environ), (WetmountPlugin.extras, WetmountPlugin.variant)
    WetmountPlugin.extras, WetmountPlugin.variant = staticmethod(extras), variant
    os.environ.update({"WETMOUNT_ROOT": str(root.resolve()), "SOURCE_DATE_EPOCH": os.environ.get("SOURCE_DATE_EPOCH", epoch)})
    try:
        yield
    finally:
        os.environ.clear()
        os.environ.update(before)
        WetmountPlugin.extras, WetmountPlugin.variant = staticmethod(added[0]), added[1]


@contextmanager
def _kept_as_it_is() -> Iterator[None]:
    """Spares Python's search for circular garbage what was made already: a library and its drawings are millions of parts."""
    gc.freeze()
    try:
        yield
    finally:
        gc.unfreeze()


@contextmanager
def _warnings() -> Iterator[list[str]]:
    """What MkDocs warns of, gathered so that it can be said in one message."""
    said: list[str] = []
    gather = logging.Handler(logging.WARNING)
    gather.emit = lambda record: said.append(record.getMessage())  # type: ignore[method-assign]
    log = logging.getLogger("mkdocs")
    log.addHandler(gather)
    try:
        yield said
    finally:
        log.removeHandler(gather)
