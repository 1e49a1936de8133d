"""`wetmount walk`: one question at a time, typed answers, on a screen or through a pipe."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

FIRST_KEY = "first-look"


@click.command("walk", short_help="Identify something: answer one question at a time.")
@click.argument("key", default="")
@click.option("--from", "start", metavar="ADDRESS", default="", help="Go on from an address, such as one the page or an earlier walk gave.")
@click.option(
    "--json", "as_json", is_flag=True, help="Print the finished record as JSON on standard output; questions go to standard error."
)
@click.pass_obj
def walk_command(named: Path | None, key: str, start: str, as_json: bool) -> None:
    """Identify something by walking KEY (default: first-look).

    Answers: the number of a lead, u cannot tell, b back (also from an end), + what else you saw ("+ tail like a hair"),
    = what it may be now, ? how to see this, q stop. Answers may be piped in, one a line.
    Exit code 1 when the input ends before the walk does.
    """
    from keytool.cli.opening import library, pick
    from keytool.cli.terminal import Terminal
    from keytool.cli.walking import Walking
    from keytool.identify import Leg, Trail, compiled, parsed
    from keytool.identify.record import record

    out = Terminal(sys.stderr if as_json else sys.stdout)
    model = compiled(library(named))
    key, _, hash_part = key.partition("#")
    given = start or hash_part
    begins = key and pick(key, list(model.keys), "key")
    if not begins and "key:" not in given and given.split("#")[0] not in model.keys:
        begins = FIRST_KEY if FIRST_KEY in model.keys else next(iter(model.keys))
    read = parsed(model, given, "" if given.startswith(("key:", "from:", "at:")) else begins)
    trail = read.trail if read.trail.legs else Trail(read.trail.sample, read.trail.pictures, (Leg(begins or FIRST_KEY),), read.trail.saw)
    for left in read.left:
        out.say(model.library.say("link-left-out", what=left))
    walking = Walking(model, out, trail)
    finished = walking.run(iter(sys.stdin.readline, ""))
    if as_json and (finished or walking.was_stopped):
        Terminal(sys.stdout).raw(json.dumps(record(model, walking.trail), ensure_ascii=False, indent=2))
    if not finished and not walking.was_stopped:
        sys.exit(1)
