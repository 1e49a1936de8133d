"""Build the site into a folder, whole or not at all, and serve it while the library is edited."""

from __future__ import annotations

import logging
import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import click

from keytool.library import Library, load
from keytool.pages.home import home
from keytool.pages.sound import LibraryProblems, sound

MARK = "assets/walk.js"
"""A folder that holds this is a site made here and may be replaced."""


class SiteNotBuilt(click.ClickException):
    """Raised when no site was made; the message says why. What stood there before is untouched."""


def build_site(root: Path, out: Path) -> None:
    """Build the site of the library under `root` into the folder `out`.

    It is built beside `out` and takes its place only when it is whole. The same library gives
    the same bytes, whenever it is built.

    Raises:
        SiteNotBuilt: the library has problems, the build failed, or `out` holds something else.
    """
    from mkdocs.commands.build import build
    from mkdocs.config import load_config

    out = out.resolve()
    if out.is_file() or (out.is_dir() and any(out.iterdir()) and not (out / MARK).is_file()):
        raise SiteNotBuilt(f"'{out}' is not empty and holds no site made by wetmount. Name another folder, or empty it first.")
    library = _sound(root)
    out.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix=f".{out.name}-", dir=out.parent) as beside, _environment(root, library), _warnings() as said:
        made = Path(beside) / "new"
        try:
            config = load_config(str(home(root) / "mkdocs.yml"), site_dir=str(made))
            config.plugins.on_startup(command="build", dirty=False)
            build(config)
            config.plugins.on_shutdown()
        except click.ClickException as error:
            raise SiteNotBuilt("\n".join([*said, error.format_message()])) from None
        if out.is_dir():
            out.rename(Path(beside) / "old")
        made.rename(out)


def serve(root: Path, port: int) -> None:
    """Serve the site of the library under `root` on this machine until stopped; a change of a file there reloads it.

    Raises:
        SiteNotBuilt: the library has problems, or the port is taken.
    """
    from mkdocs.commands.serve import serve as mkdocs_serve

    library = _sound(root)
    logging.basicConfig(level=logging.INFO, format="%(message)s")
    with _environment(root, library):
        try:
            mkdocs_serve(str(home(root) / "mkdocs.yml"), dev_addr=f"127.0.0.1:{port}", livereload=True)
        except (OSError, click.ClickException) as error:
            raise SiteNotBuilt(f"Cannot serve on port {port}: {error}") from None


def _sound(root: Path) -> Library:
    try:
        return sound(load(root))
    except LibraryProblems as problems:
        raise SiteNotBuilt(str(problems)) from None


@contextmanager
def _environment(root: Path, library: Library) -> Iterator[None]:
    """Tells the plugin where the library is, and MkDocs which day to date pages with: that of the last review."""
    last = max((entry.reviewed for entry in library.entries.values()), default="2000-01-01")
    epoch = str(int(datetime.fromisoformat(last).replace(tzinfo=UTC).timestamp()))
    before = dict(os.environ)
    os.environ.update({"WETMOUNT_ROOT": str(root.resolve()), "SOURCE_DATE_EPOCH": os.environ.get("SOURCE_DATE_EPOCH", epoch)})
    try:
        yield
    finally:
        os.environ.clear()
        os.environ.update(before)


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
