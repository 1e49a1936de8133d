"""`wetmount walk`: one question at a time, typed answers, on a screen or through a pipe."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click


@click.command("walk", short_help="Identify something: answer one question at a time.")
@click.argument("key", default="first-look")
@click.option("--from", "start", metavar="ADDRESS", default="", help="Go on from an address, such as one the page or an earlier walk gave.")
@click.option(
    "--json", "as_json", is_flag=True, help="Print the finished record as JSON on standard output; questions go to standard error."
)
@click.pass_obj
def walk_command(named: Path | None, key: str, start: str, as_json: bool) -> None:
    """Identify something by walking KEY (default: first-look).

    Answers: the number of a lead, u cannot tell, b back, ? how to see this, q stop.
    Answers may be piped in, one a line. Exit code 1 when the input ends before the walk does.
    """
    from keytool.cli.opening import library, pick
    from keytool.cli.terminal import Terminal
    from keytool.cli.walking import Walking
    from keytool.identify import NoSuchAnswer
    from keytool.identify.record import record

    terminal = Terminal(sys.stderr if as_json else sys.stdout)
    everything = library(named)
    key, _, hash_part = key.partition("#")
    key = pick(key, list(everything.keys), "key")
    try:
        walking = Walking(everything, terminal, key, start.removeprefix(f"{key}#") or hash_part)
    except NoSuchAnswer as error:
        raise click.UsageError(f"That address does not fit the key '{key}': {error}") from None
    finished = walking.run(iter(sys.stdin.readline, ""))
    if as_json and (finished or walking.was_stopped):
        Terminal(sys.stdout).raw(json.dumps(record(walking.legs), ensure_ascii=False, indent=2))
    if not finished and not walking.was_stopped:
        sys.exit(1)
