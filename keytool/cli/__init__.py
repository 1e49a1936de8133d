"""The command line. Each command imports what it needs when it is run, so that help comes at once."""

from __future__ import annotations

import importlib
from pathlib import Path

import click

from keytool import __version__

COMMANDS = (
    "walk",
    "describe",
    "show",
    "list",
    "check",
    "card",
    "site",
    "serve",
    "new",
    "take",
    "impact",
    "photo",
    "plate",
    "draw",
    "eyepiece",
    "count",
    "measure",
)
_MODULES = {"serve": "site", "list": "listing"}


class Commands(click.Group):
    """The commands, in the order a newcomer needs them."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names, in order."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name."""
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"keytool.cli.{_MODULES.get(cmd_name, cmd_name)}")
        command: click.Command = getattr(module, f"{cmd_name}_command")
        return command


@click.command(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.option(
    "--library",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="FOLDER",
    help="Use the library in this folder (the one that holds keydata/). Default: the one that came with wetmount.",
)
@click.version_option(__version__, prog_name="wetmount")
@click.pass_context
def main(ctx: click.Context, library: Path | None) -> None:
    """Name what lives in a drop of soil, from the same keys as the site and the bench card.

    Start with `wetmount walk`.
    """
    ctx.obj = library
