"""`wetmount new`: add an entry, a state, a couplet or a set of look-alikes, and see at once what it does."""

from __future__ import annotations

import datetime
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from keytool.contribute.adding import Adding
    from keytool.contribute.talk import Talk

F = TypeVar("F", bound=Callable[..., Any])


@click.group("new", short_help="Add an entry, a state, a couplet or a set of look-alikes.")
def new_command() -> None:
    """Add something you have met to the library.

    Each asks for what it needs; every answer can also be given as an option, and with --yes nothing
    is asked. The change is tried on a copy first: nothing is written that would break the library.
    """


def _common(command: F) -> F:
    """Options that every kind of contribution takes."""
    command = click.option("--yes", is_flag=True, help="Ask nothing: take the answers given, else what is proposed.")(command)
    return click.option("--even-so", is_flag=True, help="Write it even where a key does not end rightly with it yet.")(command)


def _pairs(_context: click.Context, option: click.Parameter, values: tuple[str, ...]) -> dict[str, str]:
    """NAME=WHAT options as a mapping."""
    found = {}
    for value in values:
        name, equals, what = value.partition("=")
        if not equals or not name or not what:
            raise click.BadParameter(f"'{value}' is not NAME=WHAT.", param=option)
        found[name.strip()] = what.strip()
    return found


def _talk(answers: Mapping[str, str | None], *, yes: bool) -> Talk:
    from keytool.cli.terminal import Terminal
    from keytool.contribute.talk import Talk

    terminal = Terminal()

    def read() -> str | None:
        line = sys.stdin.readline()
        return line.rstrip("\n") if line else None

    def say(text: str) -> None:
        for line in text.split("\n"):
            indent = len(line) - len(line.lstrip())
            if indent < 4:
                terminal.say(line.strip(), indent=indent)
            else:
                terminal.raw(line)

    return Talk(say, read, {name.replace("_", "-"): answer for name, answer in answers.items() if answer is not None}, quiet=yes)


@contextmanager
def _adding(named: Path | None, talk: Talk, *, even_so: bool) -> Iterator[Adding]:
    """A contribution to the library; whatever it cannot do ends the command with one message."""
    from keytool.cli.opening import opened, where
    from keytool.contribute.adding import Adding, Refused
    from keytool.contribute.edit import CannotEdit
    from keytool.contribute.said import NotUnderstood
    from keytool.contribute.talk import NoAnswer

    try:
        yield Adding(where(named), opened(named), talk, even_so=even_so)
    except NotUnderstood as error:
        raise click.UsageError(str(error)) from None
    except NoAnswer as error:
        raise click.UsageError(f"{error} Nothing was written.") from None
    except (Refused, CannotEdit) as error:
        raise click.ClickException(str(error)) from None
    except OSError as error:
        raise click.ClickException(f"'{error.filename}' cannot be written: {error.strerror}.") from None


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
@click.option("--shows", multiple=True, callback=_pairs, metavar="CHARACTER=WHAT",
              help="What it shows: states joined by commas, low..high with a unit, or any. May be given many times.")
@click.option("--basis-of", multiple=True, callback=_pairs, metavar="CHARACTER=BASIS",
              help="What one statement rests on, where it differs.")
@click.option("--mistaken-for", multiple=True, callback=_pairs, metavar="ENTRY=HOW",
              help="What it is taken for, and how to tell; written into both entries.")
@click.option("--couplet/--no-couplet", default=None, help="Add the couplet that is proposed where it collides. Otherwise you are asked.")
@click.option("--by", metavar="CHARACTER", help="The character that couplet shall ask for.")
@click.option("--replace", is_flag=True, help="Write over an entry of that id.")
@_common
@click.pass_obj
def entry_command(
    named: Path | None, /, shows: dict[str, str], basis_of: dict[str, str], mistaken_for: dict[str, str], couplet: bool | None,
    by: str | None, replace: bool, yes: bool, even_so: bool, **answers: str | None,
) -> None:
    """Add a thing you have met, and see where in which key it comes out.

    What its groups say is inherited; state what the keys ask on its way, and what it differs in. Where it
    comes out at something else, you are told what both show, and a couplet is proposed that parts them.
    """
    from keytool.contribute.draft import entry_name
    from keytool.contribute.entry_talk import EntryTalk

    talk = _talk({**answers, "couplet": None if couplet is None else "yes" if couplet else "no"}, yes=yes)
    with _adding(named, talk, even_so=even_so) as adding:
        library = adding.library
        unknown = [id for id in mistaken_for if id not in library.entries]
        if unknown:
            raise click.UsageError(f"There is no entry '{unknown[0]}' to be mistaken for.")
        conversation = EntryTalk(talk, library, datetime.date.today().isoformat(), shows, basis_of, mistaken_for)
        raw = conversation.raw()
        taken = library.files.get(("entry", raw["id"]))
        if (taken or (adding.root / entry_name(raw)).exists()) and not replace:
            raise click.UsageError(f"{taken or entry_name(raw)} stands already. Choose another --id, or say --replace.")
        if taken and taken != entry_name(raw):
            raise click.UsageError(f"'{raw['id']}' is the id of {taken}. An entry that stands keeps its theme; choose another --id.")
        adding.bench.new_entry(raw)
        adding.finish_entry(raw["id"], by=by, like=conversation.like)


@new_command.command("couplet", short_help="A question that parts an entry from another.")
@click.option("--for", "entry", help="The entry that collides, or is not told apart; the couplet is then proposed.")
@click.option("--by", metavar="CHARACTER", help="The character it asks for.")
@click.option("--key", help="The key it goes into.")
@click.option("--behind", metavar="COUPLET/LEAD", help="The lead that will go to it.")
@click.option("--id", "slug", help="Its slug, lower-case words joined by '-'.")
@click.option("--asks", help="The question, at most 80 characters.")
@click.option("--lead", "leads", multiple=True, metavar="'SLUG | TEXT | SEEN | GOES'",
              help="A lead: its slug, its text, states joined by commas (or from:QUANTITY, below:QUANTITY, otherwise), "
                   "and end:ID, couplet:ID or key:ID. Give two.")
@_common
@click.pass_obj
def couplet_command(
    named: Path | None, entry: str | None, by: str | None, key: str | None, behind: str | None, slug: str | None, asks: str | None,
    leads: tuple[str, ...], yes: bool, even_so: bool,
) -> None:
    """Add a couplet to a key.

    With --for ENTRY it is drafted for you. Else say where it goes, what it asks and its leads.
    """
    from keytool.cli.opening import pick
    from keytool.contribute.couplet_talk import couplet_from

    talk = _talk({"key": key, "behind": behind, "id": slug, "asks": asks, "by": by, "couplet": "yes" if yes else None}, yes=yes)
    with _adding(named, talk, even_so=even_so) as adding:
        if entry:
            adding.part(pick(entry, list(adding.library.entries), "entry"), by=by)
        else:
            adding.bench.new_couplet(couplet_from(talk, adding.library, leads))
            adding.finish()


@new_command.command("state", short_help="Something a character may show.")
@click.option("--character", help="The character that may show it.")
@click.option("--id", help="Its id, lower-case words joined by '-'.")
@click.option("--name", help="Its short name.")
@click.option("--about", help="One sentence that describes what is seen.")
@click.option("--entries", help="The entries that show it besides what they show now, joined by commas; - for none.")
@click.option("--lead", "leads", multiple=True, metavar="KEY/COUPLET/LEAD",
              help="A lead that takes it. One for each couplet that asks for it.")
@_common
@click.pass_obj
def state_command(named: Path | None, /, leads: tuple[str, ...], yes: bool, even_so: bool, **answers: str | None) -> None:
    """Add a state to a character, to the entries that show it, and to the leads that take it."""
    from keytool.contribute.state_talk import state_from

    talk = _talk(answers, yes=yes)
    with _adding(named, talk, even_so=even_so) as adding:
        adding.bench.new_state(*state_from(talk, adding.library, leads))
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

    talk = _talk(answers, yes=yes)
    with _adding(named, talk, even_so=even_so) as adding:
        raw = look_alikes_from(talk, adding.library)
        if raw["id"] in adding.library.look_alikes and not replace:
            standing = adding.library.files["look-alike", raw["id"]]
            raise click.UsageError(f"{standing} stands already. Choose another --id, or say --replace.")
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
