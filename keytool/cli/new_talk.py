"""What the commands of `wetmount new` share: a conversation, what it ends in, and how to take it up again."""

from __future__ import annotations

import shlex
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING

import click
from click.core import ParameterSource

BUNDLED = "_bundled"
"""The folder of the library that is installed with the program."""

if TYPE_CHECKING:
    from keytool.contribute.adding import Adding
    from keytool.contribute.talk import Talk


def pairs(_context: click.Context, option: click.Parameter, values: tuple[str, ...]) -> dict[str, str]:
    """NAME=WHAT options as a mapping."""
    from keytool.contribute.parse_answer import NotUnderstood
    from keytool.contribute.talk import legible

    found = {}
    for value in values:
        try:
            name, equals, what = legible(value).partition("=")
        except NotUnderstood as error:
            raise click.BadParameter(str(error), param=option) from None
        if not equals or not name.strip() or not what.strip():
            raise click.BadParameter(f"'{value}' is not NAME=WHAT.", param=option)
        found[name.strip()] = what.strip()
    return found


def talk_of(answers: Mapping[str, str | None], *, yes: bool) -> Talk:
    """A conversation in the terminal; answers that were given as options are not asked for."""
    from keytool.cli.terminal import Terminal
    from keytool.contribute.talk import Talk

    terminal = Terminal()

    def say(text: str) -> None:
        for line in text.split("\n"):
            indent = len(line) - len(line.lstrip())
            if indent < 4:
                terminal.say(line.strip(), indent=indent)
            else:
                terminal.raw(line)

    given = {name.replace("_", "-"): answer for name, answer in answers.items() if answer is not None}
    return Talk(say, _typed_at(terminal.is_screen), given, quiet=yes)


def _typed_at(is_screen: bool) -> Callable[[], str | None]:
    """Reads a line: with a sign to type behind and keys that move in the line where somebody sits there."""
    reconfigure = getattr(sys.stdin, "reconfigure", None)
    if reconfigure:
        reconfigure(errors="surrogateescape")
    if not (is_screen and sys.stdin.isatty()):
        return lambda: line.rstrip("\n") if (line := sys.stdin.readline()) else None
    with suppress(ImportError):
        import readline  # noqa: F401  what input() reads through is set by this alone

    def read() -> str | None:
        try:
            return input("> ")
        except EOFError:
            return None

    return read


def to_write(named: Path | None) -> Path:
    """The root folder of the library that is written to; ends the command where that is the copy that came with the program."""
    from keytool.cli.opening import where

    root = where(named)
    if root.name == BUNDLED:
        raise click.UsageError(
            "This would be written into the copy that came with the program, and be gone with the next one. "
            "Name your own copy, the folder that holds keydata/: wetmount --library FOLDER ..."
        )
    return root


@contextmanager
def adding_to(named: Path | None, talk: Talk, *, even_so: bool) -> Iterator[Adding]:
    """A contribution to the library. Whatever it cannot do ends the command with one message, and with how to go on."""
    from keytool.cli.opening import opened
    from keytool.contribute.adding import Adding, Refused
    from keytool.contribute.edit import CannotEdit
    from keytool.contribute.parse_answer import NotUnderstood
    from keytool.contribute.talk import NoAnswer

    try:
        yield Adding(to_write(named), opened(named), talk, even_so=even_so)
    except NotUnderstood as error:
        raise click.UsageError(f"{error}{_going_on(talk)}") from None
    except NoAnswer as error:
        raise click.UsageError(f"{error}\nNothing was written.{_going_on(talk)}") from None
    except (Refused, CannotEdit) as error:
        raise click.ClickException(f"{error}{_going_on(talk)}") from None
    except KeyboardInterrupt:
        click.echo(err=True)
        raise click.ClickException(f"Stopped. Nothing was written.{_going_on(talk)}") from None
    except OSError as error:
        raise click.ClickException(f"'{error.filename}' cannot be written: {error.strerror}.{_going_on(talk)}") from None


def _going_on(talk: Talk) -> str:
    """The command that asks only for what was not answered yet, where something was."""
    answered = [word for name, answer in talk.typed for word in _option(name, answer)]
    if not answered:
        return ""
    words = [*_given(click.get_current_context()), *answered]
    return f"\nWhat you answered is not lost. To go on from there:\n\n  {shlex.join(words)}\n"


def _option(name: str, answer: str) -> list[str]:
    """The option that gives the answer to a question beforehand; none for what is decided anew each time."""
    if name == "couplet":
        return []
    word, _, about = name.partition(" ")
    if word == "lead":
        return ["--lead", answer if about.isdecimal() else about.removesuffix("LEAD") + answer]
    return [f"--{word}", f"{about}={answer}" if about else answer]


def _given(context: click.Context) -> list[str]:
    """The command as it was typed, with the options that were given."""
    words = [*(_given(context.parent) if context.parent else ()), context.info_name or "wetmount"]
    for option in context.command.params:
        if option.name and context.get_parameter_source(option.name) is ParameterSource.COMMANDLINE:
            words += _spelt(option, context.params[option.name])
    return words


def _spelt(option: click.Parameter, value: object) -> list[str]:
    if isinstance(value, bool):
        return [option.opts[0] if value else option.secondary_opts[0]]
    values = [f"{name}={what}" for name, what in value.items()] if isinstance(value, dict) else value
    values = values if isinstance(values, list | tuple) else [values]
    return [word for each in values for word in (option.opts[0], str(each))]
