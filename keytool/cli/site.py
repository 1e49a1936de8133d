"""`wetmount site` and `wetmount serve`: the site, built or served while you edit."""

from __future__ import annotations

import contextlib
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.library import Loaded
    from keytool.pages import Extras

CARD_PAPER = "A4"
"""The paper of the cards that lie ready on the site."""


@click.command("site", short_help="Build the site into a folder.")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path("build/site"),
    show_default=True,
    help="The folder to write. An older site there is replaced only when the new one is whole.",
)
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
    from keytool.card import FORMS, INKS, PAPERS
    from keytool.contribute.form import form_script
    from keytool.contribute.page_slots import slots
    from keytool.contribute.schemas import schema_files
    from keytool.pages import Extras
    from keytool.pages.eyepiece import eyepiece_files
    from keytool.pages.photos import photo_files
    from keytool.pages.written_files import written_root

    files = {"assets/contribute-data.js": form_script(loaded)}
    files |= {f"schemas/{name}": content for name, content in schema_files(loaded).items()}
    files |= photo_files(loaded) | eyepiece_files(loaded)
    files |= _short_cards(loaded, ("sheet", "pocket") if cards else ("sheet",))
    if cards:
        files |= _cards(loaded)
    return Extras(
        files, slots(loaded, written_root() / "site" / "pages"), tuple(PAPERS), FORMS, {ink.name: ink.about for ink in INKS.values()}
    )


def _short_cards(loaded: Loaded, forms: tuple[str, ...]) -> dict[str, bytes]:
    """The short card on the papers it fits, with pictures of both sides of one."""
    from keytool.card import PAPERS, CardError, DoesNotFit, short_card
    from keytool.pages.cards_page import short, short_preview

    files = dict[str, bytes]()
    if not loaded.library.short_card.met:
        return files
    try:
        for form in forms:
            for paper in PAPERS:
                with contextlib.suppress(DoesNotFit):
                    made = short_card(loaded.library, paper, form=form)
                    files[short(paper, form)] = made.pdf()
                    if paper == CARD_PAPER and form == "sheet":
                        files |= {short_preview(paper, form, side): made.preview(side).encode() for side in (0, 1)}
    except CardError as error:
        raise click.ClickException(str(error)) from None
    return files


def _cards(loaded: Loaded) -> dict[str, bytes]:
    """The card of every key with a preview of its first side, and a preview of each form in which the shortest key fits."""
    from keytool.card import FORMS, CardError, DoesNotFit, laid_out
    from keytool.pages.card_form import form_preview
    from keytool.pages.cards_page import preview, ready

    library, files = loaded.library, dict[str, bytes]()
    try:
        for key in library.keys:
            made = laid_out(library, [key], CARD_PAPER)
            files |= {ready(key, CARD_PAPER): made.pdf(), preview(key, CARD_PAPER): made.preview().encode()}
    except CardError as error:
        raise click.ClickException(str(error)) from None
    shortest = min(library.keys, key=lambda id: len(library.keys[id].couplets))
    for form in FORMS:
        with contextlib.suppress(DoesNotFit):
            files[form_preview(form)] = laid_out(library, [shortest], CARD_PAPER, form=form).preview().encode()
    return files
