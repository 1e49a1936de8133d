"""`wetmount site` and `wetmount serve`: the site, built or served while you edit."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.library import Loaded
    from keytool.pages import Extras

CARD_PAPER = "A4"
"""The paper of the cards that lie ready on the site."""


@click.command("site", short_help="Build the site into a folder.")
@click.option("-o", "--output", type=click.Path(path_type=Path, file_okay=False), default=Path("build/site"), show_default=True,
              help="The folder to write. An older site there is replaced only when the new one is whole.")
@click.option("--cards", is_flag=True, help="Make a bench card of every key and put it on the site; takes some seconds a key.")
@click.option("--sources", is_flag=True, help="Write the pages as Markdown instead, for another site builder.")
@click.pass_obj
def site_command(named: Path | None, output: Path, cards: bool, sources: bool) -> None:
    """Build the site. It can be opened from the folder, from a USB stick or from a web server."""
    from keytool.cli.opening import opened, where
    from keytool.cli.terminal import Terminal
    from keytool.pages import write
    from keytool.pages.build import build_site

    if sources:
        loaded = opened(named)
        write(loaded.library, output, extras=extras(loaded, cards=cards))
    else:
        build_site(where(named), output, lambda loaded: extras(loaded, cards=cards), variant="cards" if cards else "")
    Terminal().say(f"The site is in {output}" + ("." if sources else f"; open {output / 'index.html'} in a browser."))


@click.command("serve", short_help="Show the site on this machine and reload it as files change.")
@click.option("--port", default=8000, show_default=True, help="The port to serve on.")
@click.pass_obj
def serve_command(named: Path | None, port: int) -> None:
    """Serve the site on this machine; a change of a YAML file reloads it. Stop with Ctrl-C."""
    from keytool.cli.opening import where
    from keytool.pages.build import serve

    serve(where(named), port, extras)


def extras(loaded: Loaded, *, cards: bool = False) -> Extras:
    """What the other faces add to the site: the guide for contributors, its form and schemas, and ready bench cards if wanted."""
    from keytool.card.papers import PAPERS
    from keytool.contribute.form import form_script
    from keytool.contribute.schemas import schema_files
    from keytool.contribute.slots import slots
    from keytool.pages import Extras
    from keytool.pages.home import home

    files = {"assets/contribute-data.js": form_script(loaded)}
    files |= {f"schemas/{name}": content for name, content in schema_files(loaded).items()}
    if cards:
        files |= _cards(loaded)
    return Extras(files, slots(loaded, home() / "site" / "pages"), tuple(PAPERS))


def _cards(loaded: Loaded) -> dict[str, bytes]:
    from keytool.card import CardError, card
    from keytool.pages.cards_page import ready

    try:
        return {ready(key, CARD_PAPER): card(loaded.library, [key], CARD_PAPER) for key in loaded.library.keys}
    except CardError as error:
        raise click.ClickException(str(error)) from None
