"""`wetmount describe`: tell what was seen, in any order and in your own words, and see what it is likely to be."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.cli.observations import Words
    from keytool.cli.terminal import Terminal
    from keytool.identify import Trail

LIKE = 3
"""How many of what the user's own words are like are named."""
SENTENCE = re.compile(r"(?<=[.!?;])\s+|\n")
"""Where one sentence ends and another begins, so that each that was not understood can be named."""


def sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return [each.strip() for each in SENTENCE.split(text) if each.strip()]


@click.command("describe", short_help="Tell what you saw, in any order; see what it may be.")
@click.argument("seen", nargs=-1)
@click.option("--from", "start", metavar="ADDRESS", default="", help="Go on from an address, such as one the page or an earlier walk gave.")
@click.option("--why", metavar="ENTRY", default="", help="Say what speaks for this entry and what against it.")
@click.option("--json", "as_json", is_flag=True, help="Print the record as JSON on standard output.")
@click.pass_obj
def describe_command(named: Path | None, seen: tuple[str, ...], start: str, why: str, as_json: bool) -> None:
    """Say what was SEEN: character=state, a number with its unit, or plain words.

    \b
    wetmount describe mouth=spear body-length="600 µm" tail=!blunt
    wetmount describe "tail like a hair" "about 0.5 mm long" sample=compost
    wetmount describe                    asks, and takes one thing a line

    Several states: tail=blunt,pointed. Cannot tell: tail=?. A first look: at=worm.
    """  # noqa: D301
    from keytool.cli.observations import Unreadable, Words, unheard
    from keytool.cli.opening import library, pick
    from keytool.cli.terminal import Terminal
    from keytool.identify import compiled, parsed
    from keytool.identify.record import record

    model = compiled(library(named))
    words = Words(model)
    read = parsed(model, start)
    trail = read.trail
    out = Terminal(sys.stderr if as_json else sys.stdout)
    for left in read.left:
        out.say(f"Left out: {left}")
    try:
        for each in (each for each in seen if "=" in each):  # what is told exactly goes first: free words are heard for what may be there
            trail = words.take(trail, each)
        said = [each for each in seen if "=" not in each]
        if len(said) == 1 and not trail.saw and not trail.pictures:
            said = sentences(said[0])
        text = "".join(f"{each}\n" for each in said)
        understood = words.understood(trail, text)
        trail, not_heard = understood.added_to(trail), unheard(understood, said)
        if said and len(not_heard) == len(said) and not understood.called:
            words.take(trail, " ".join(said))  # raises, with what may have been meant
    except Unreadable as error:
        raise click.UsageError(str(error)) from None
    entry = pick(why, list(model.entries), "entry") if why else ""
    for each in not_heard:
        near = words.nearest(each)
        out.say(f"Not understood, so not taken: {each}" + (f" Nearest: {', '.join(near)}." if near else ""))
    if not seen and not start:
        trail = _asked(words, out, trail)
    beside = {each.observation.character: text[each.start : each.end] for each in understood.places if each.observation}
    _tell(words, out, trail, entry, beside)
    if as_json:
        Terminal(sys.stdout).raw(json.dumps(record(model, trail), ensure_ascii=False, indent=2))


def _asked(words: Words, out: Terminal, trail: Trail) -> Trail:
    """What is typed line by line, each line answered with what it may be now, until an empty line or the end of the input."""
    from keytool.cli.observations import Unreadable
    from keytool.cli.result_text import ResultText
    from keytool.identify import describe
    from keytool.library.wording import plain

    out.say(out.bold("What did you see? One thing a line, in your own words or as character=state; an empty line ends."))
    result_text = ResultText(words.model, out, lambda _: None)
    for line in iter(sys.stdin.readline, ""):
        typed = line.strip()
        if not typed:
            break
        if not out.is_screen:
            out.raw(f"> {typed}")
        try:
            trail = words.take(trail, typed)
        except Unreadable as error:
            out.say(str(error), indent=2)
            continue
        result = describe(words.model, trail)
        result_text.brief(result)
        if result.next:
            out.say(f"Look next: {plain(words.model.library, words.model.library.characters[result.next[0].character].asks)}", indent=2)
    return trail


def _tell(words: Words, out: Terminal, trail: Trail, entry: str, beside: Mapping[str, str]) -> None:
    """What was seen, each with the words `beside` it in which it was heard, and what it probably is."""
    from keytool.cli.observations import said_words
    from keytool.cli.result_text import ResultText
    from keytool.identify import describe, explain, written
    from keytool.library.wording import name_of, plain

    model = words.model
    library = model.library

    def caution(id: str) -> None:
        each = library.cautions[id]
        out.say(f"{out.warn('Caution')}, {each.title}: {plain(library, each.brief)}", indent=2)

    out.say(out.bold("You saw"))
    for each in trail.saw:
        heard = " ".join(beside.get(each.character, "").split())
        out.say(said_words(model, each) + (f" (“{heard}”)" if heard else ""), indent=4, label="  -")
    if trail.called:
        names = ", ".join(name_of(library, id) for id, _ in trail.called[:LIKE])
        out.say(library.say("words-like", names=names), indent=4, label="  -")
    for picture in trail.pictures:
        out.say(f"At first sight: {library.pictures[picture].name}", indent=4, label="  -")
    if trail.sample:
        out.say(f"Sample: {library.vocabulary['sample-kind'][trail.sample].label}", indent=4, label="  -")
    result = describe(model, trail)
    ResultText(model, out, caution).whole(result)
    if entry:
        out.say()
        out.say(out.bold(f"{name_of(library, entry)}: what speaks for it (+) and against it (-), in bits"))
        for reason in explain(model, trail, entry):
            names = ", ".join(dict.fromkeys(library.characters[name].name for look in reason.looks for name in sorted(look.characters)))
            out.say(f"{reason.weight:+.1f}  {names}", indent=2)
    out.say()
    out.say(out.faint(f"This description: wetmount describe --from '{written(trail)}'"))
