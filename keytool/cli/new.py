"""`wetmount new`: add an entry, a state, a couplet, a set of look-alikes or a drawing, and see at once what it does."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from keytool.cli.new_talk import adding_to, pairs, talk_of

F = TypeVar("F", bound=Callable[..., Any])


@click.group("new", short_help="Add an entry, a state, a couplet, look-alikes or a drawing.")
def new_command() -> None:
    """Add something you have met to the library.

    Each asks for what it needs; every answer can also be given as an option, and with --yes nothing
    is asked. The change is tried on a copy first: nothing is written that would break the library.
    """


def _common(command: F) -> F:
    """Options that every kind of contribution takes."""
    command = click.option("--yes", is_flag=True, help="Ask nothing: take the answers given, else what is proposed.")(command)
    return click.option("--even-so", is_flag=True, help="Write it even where a key does not end rightly with it yet.")(command)


@new_command.command("entry", short_help="A thing you have met.")
@click.option("--like", help="The entry it is nearest to; its groups, kind and theme are then proposed, and the characters that matter.")
@click.option("--common", help="Its common name, or an English description.")
@click.option("--scientific", help="Its scientific name; - for none.")
@click.option("--id", help="Its id, lower-case words joined by '-'. Proposed from its name.")
@click.option("--kind", help="What kind of thing it is.")
@click.option("--theme", help="Its theme.")
@click.option("--within", help="The groups that hold it, joined by commas; - for none.")
@click.option("--summary", help="What one sees, in a sentence or two.")
@click.option("--basis", help="What your statements rest on: memory (proposed), common-practice, published:SOURCE:seen, computed:FORMULA.")
@click.option("--commonness", help="How often it is in soil drops.")
@click.option("--feeding", help="What it lives on, joined by commas.")
@click.option("--would-tell", help="What would tell it; for kind cannot-be-told.")
@click.option("--contributor", help="Your name, as it shall stand on its page.")
@click.option("--reviewed", help="The date, year-month-day. Proposed: today.")
@click.option(
    "--shows",
    multiple=True,
    callback=pairs,
    metavar="CHARACTER=WHAT",
    help="What it shows: states joined by commas, low..high with a unit, or any. May be given many times.",
)
@click.option("--basis-of", multiple=True, callback=pairs, metavar="CHARACTER=BASIS", help="What one statement rests on, where it differs.")
@click.option(
    "--mistaken-for",
    multiple=True,
    callback=pairs,
    metavar="ENTRY=HOW",
    help="What it is taken for, and how to tell; written into both entries.",
)
@click.option("--couplet/--no-couplet", default=None, help="Add the couplet that is proposed where it collides. Otherwise you are asked.")
@click.option("--by", metavar="CHARACTER", help="The character that couplet shall ask for.")
@click.option("--replace", is_flag=True, help="Write over an entry of that id.")
@_common
@click.pass_obj
def entry_command(
    named: Path | None,
    /,
    shows: dict[str, str],
    basis_of: dict[str, str],
    mistaken_for: dict[str, str],
    couplet: bool | None,
    by: str | None,
    replace: bool,
    yes: bool,
    even_so: bool,
    **answers: str | None,
) -> None:
    """Add a thing you have met, and see where in which key it comes out.

    What its groups say is inherited; state what the keys ask on its way, and what it differs in. Where it
    comes out at something else, you are told what both show, and a couplet is proposed that parts them.
    """
    from keytool.contribute.draft import entry_name
    from keytool.contribute.entry_talk import EntryTalk

    talk = talk_of({**answers, "couplet": None if couplet is None else "yes" if couplet else "no"}, yes=yes)
    with adding_to(named, talk, even_so=even_so) as adding:
        today = datetime.date.today().isoformat()
        conversation = EntryTalk(talk, adding.loaded, today, shows, basis_of, mistaken_for, replace=replace)
        raw = talk.through(conversation.raw)
        name, standing = entry_name(raw), adding.library.files.get(("entry", raw["id"]))
        if standing and standing != name:
            raise click.UsageError(f"'{raw['id']}' is the id of {standing}. An entry that stands keeps its theme; choose another --id.")
        if (adding.root / name).exists() and not standing:
            raise click.UsageError(f"{name} stands already, and cannot be read as an entry. Choose another --id, or move it away.")
        adding.bench.new_entry(raw)
        adding.finish_entry(raw["id"], by=by, like=conversation.like)


@new_command.command("drawing", short_help="A picture, from an SVG drawn to scale.")
@click.option("--svg", type=click.Path(path_type=Path), required=True, help="The SVG file: paths, polygons, ellipses and lines.")
@click.option("--id", "id_", required=True, help="Its id, lower-case words joined by '-'; figures name it as their kind.")
@click.option("--theme", required=True, help="The theme it belongs to.")
@click.option("--name", required=True, help="What it shows, in a few words.")
@click.option("--about", required=True, help="One sentence: what can be seen, as a screen reader says it.")
@click.option("--after", required=True, help="What it was drawn after, as its basis says.")
@click.option("--front", type=click.Choice(["top", "left"]), default="top", show_default=True, help="Where the head is.")
@click.option("--um-per-unit", type=float, help="How many µm one unit of the SVG stands for.")
@click.option("--length", type=float, help="The length of the body drawn, in µm; instead of --um-per-unit.")
@click.pass_obj
def drawing_command(
    named: Path | None,
    svg: Path,
    id_: str,
    theme: str,
    name: str,
    about: str,
    after: str,
    front: str,
    um_per_unit: float | None,
    length: float | None,
) -> None:
    """Add a picture from an SVG drawn at a stated scale.

    The closed line named outline (by its id, label or class), or else the largest one, is the edge of the body; the names of the
    others are those of parts. Scripts, images, links and text are refused. Nothing is written where anything is wrong.
    """
    from keytool.cli.opening import opened, where
    from keytool.contribute.svg_drawing import MOST_UM, add_drawing, raw_drawing
    from keytool.contribute.svg_lines import SvgRefused, lines_of_svg
    from keytool.library.report import as_text

    if (um_per_unit is None) == (length is None):
        raise click.UsageError("Say the scale once: --um-per-unit, or --length of the body in µm.")
    scale = um_per_unit if length is None else length
    if scale is None or not 0 < scale <= MOST_UM:
        raise click.UsageError(f"The scale is {scale:g}. Allowed: more than 0, at most {MOST_UM:g} µm.")
    loaded = opened(named)
    if theme not in loaded.library.vocabulary["theme"]:
        raise click.UsageError(f"There is no theme '{theme}'. Allowed: {', '.join(loaded.library.vocabulary['theme'])}.")
    if id_ in loaded.library.drawings:
        raise click.UsageError(f"There is a drawing '{id_}' already. Choose another --id.")
    try:
        told = {"id": id_, "theme": theme, "name": name, "about": about, "front": front, "after": after}
        raw = raw_drawing(lines_of_svg(svg), um_per_unit=um_per_unit, length=length, **told)
    except SvgRefused as error:
        raise click.ClickException(str(error)) from None
    written, wrong = add_drawing(where(named), loaded, raw)
    if wrong:
        raise click.ClickException("Nothing is written.\n" + as_text(wrong))
    click.echo(f"{written} is written. Name it in an entry, figure: {{kind: {id_}}}, and run wetmount check.")


@new_command.command("couplet", short_help="A question that parts an entry from another.")
@click.option("--for", "entry", help="The entry that collides, or is not told apart; the couplet is then proposed.")
@click.option("--by", metavar="CHARACTER", help="The character it asks for.")
@click.option("--key", help="The key it goes into.")
@click.option("--behind", metavar="COUPLET/LEAD", help="The lead that will go to it.")
@click.option("--id", "slug", help="Its slug, lower-case words joined by '-'.")
@click.option("--asks", help="The question, at most 80 characters.")
@click.option(
    "--lead",
    "leads",
    multiple=True,
    metavar="'SLUG | TEXT | SEEN | GOES'",
    help="A lead: its slug, its text, states joined by commas (or from:QUANTITY, below:QUANTITY, otherwise), "
    "and end:ID, couplet:ID or key:ID. Give two.",
)
@_common
@click.pass_obj
def couplet_command(
    named: Path | None,
    entry: str | None,
    by: str | None,
    key: str | None,
    behind: str | None,
    slug: str | None,
    asks: str | None,
    leads: tuple[str, ...],
    yes: bool,
    even_so: bool,
) -> None:
    """Add a couplet to a key.

    With --for ENTRY it is drafted for you. Else say where it goes, what it asks and its leads.
    """
    from keytool.cli.opening import pick
    from keytool.contribute.couplet_talk import couplet_from

    talk = talk_of({"key": key, "behind": behind, "id": slug, "asks": asks, "by": by, "couplet": "yes" if yes else None}, yes=yes)
    with adding_to(named, talk, even_so=even_so) as adding:
        if entry:
            adding.part(pick(entry, list(adding.library.entries), "entry"), by=by)
        else:
            adding.bench.new_couplet(talk.through(lambda: couplet_from(talk, adding.loaded, leads)))
            adding.finish()


@new_command.command("state", short_help="Something a character may show.")
@click.option("--character", help="The character that may show it.")
@click.option("--id", help="Its id, lower-case words joined by '-'.")
@click.option("--name", help="Its short name.")
@click.option("--about", help="One sentence that describes what is seen.")
@click.option("--entries", help="The entries that show it besides what they show now, joined by commas; - for none.")
@click.option(
    "--lead", "leads", multiple=True, metavar="KEY/COUPLET/LEAD", help="A lead that takes it. One for each couplet that asks for it."
)
@_common
@click.pass_obj
def state_command(named: Path | None, /, leads: tuple[str, ...], yes: bool, even_so: bool, **answers: str | None) -> None:
    """Add a state to a character, to the entries that show it, and to the leads that take it."""
    from keytool.contribute.state_talk import state_from

    talk = talk_of(answers, yes=yes)
    with adding_to(named, talk, even_so=even_so) as adding:
        adding.bench.new_state(*talk.through(lambda: state_from(talk, adding.loaded, leads)))
        adding.finish()


@new_command.command("look-alike", short_help="Things that are taken for each other.")
@click.option("--entries", help="The entries, two to six, joined by commas.")
@click.option("--title", help="The question people have.")
@click.option("--id", help="Its id. Proposed from the title.")
@click.option("--about", help="Why they are taken for each other.")
@click.option("--decisive", help="The one test to do first, and what each shows in it.")
@click.option("--basis", help="What that test rests on, written as for an entry.")
@click.option("--characters", help="The characters to compare, joined by commas. Proposed: those in which they differ.")
@click.option("--replace", is_flag=True, help="Write over a set of that id.")
@_common
@click.pass_obj
def look_alike_command(named: Path | None, /, replace: bool, yes: bool, even_so: bool, **answers: str | None) -> None:
    """Set things side by side that are taken for each other, with the one test to do first."""
    from keytool.contribute.look_alike_talk import look_alikes_from

    talk = talk_of(answers, yes=yes)
    with adding_to(named, talk, even_so=even_so) as adding:
        raw = talk.through(lambda: look_alikes_from(talk, adding.loaded, replace=replace))
        adding.bench.new_look_alikes(raw)
        adding.finish(f"look-alikes/{raw['id']}.html")


@new_command.command("editor-schemas", short_help="The schemas that let your editor complete and explain.")
@click.option("-o", "--output", type=click.Path(path_type=Path, file_okay=False), help="The folder to write. Default: build/schemas.")
@click.pass_obj
def editor_schemas_command(named: Path | None, output: Path | None) -> None:
    """Write the schemas of all kinds of file, each whole in itself.

    An editor with a YAML language server finds them by the first line of a file that 'wetmount new' wrote.
    """
    from keytool.cli.opening import opened, where
    from keytool.cli.terminal import Terminal
    from keytool.contribute.draft import SCHEMA_FOLDER
    from keytool.contribute.schemas import schema_files
    from keytool.library.save import save

    folder = output or where(named) / SCHEMA_FOLDER
    files = schema_files(opened(named))
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, data in files.items():
            save(folder / name, data)
    except OSError as error:
        raise click.ClickException(f"'{folder}' cannot be written: {error.strerror}.") from None
    Terminal().say(f"{len(files)} schemas in {folder}.")
