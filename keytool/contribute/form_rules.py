"""The words of the checks for the forms on the site: the templates that each rule declares."""

from __future__ import annotations

from collections.abc import Mapping

from keytool.library import Library
from keytool.library.checks import commonness, feeding, figures, length, look_alikes, members, statements, unknown_ids, unread_sources
from keytool.library.load import TAKEN
from keytool.library.messages import NO_NUMBER, listed

Template = Mapping[str, str]
"""`message`, `allowed` and `tip`, with what differs from case to case in braces."""


def rules_of_an_entry(library: Library) -> dict[str, Template]:
    """What the rules beyond the schema say of an entry, by a name for each."""
    words = library.vocabulary
    return {
        "commonness": commonness.NOT_SAID.template(classes=listed(words["commonness"])),
        "feeding": feeding.NOT_SAID.template(kinds=listed(words["feeding"])),
        "members": members.NO_MEMBERS.template(),
        "low-high": statements.UPSIDE_DOWN.template(),
        "half-range": figures.HALF_A_RANGE.template(),
        "taken": TAKEN.template(),
        **{f"{end} no number": NO_NUMBER.template(name=f"'{end}'") for end in ("low", "high")},
        **{
            f"unread {value} {read}": unread_sources.CLAIMS_MORE.template(**unread_sources.claim(words, value, read))
            for read, word in words["read"].items()
            for value in word.get("not-with", ())
        },
    }


def rules_of_a_look_alike() -> dict[str, Template]:
    """What the rules say of something an entry is taken for."""
    return {
        "itself": look_alikes.ITSELF.template(),
        "twice": look_alikes.TWICE.template(),
        "unknown": unknown_ids.UNKNOWN.template(what="entry", id="{entry}", few="", near=unknown_ids.where_to_write("entry")),
    }


def rules_of_a_couplet(library: Library) -> dict[str, Template]:
    """What is said of a question and of a lead that is too long."""
    return {
        "question": length.TOO_LONG.template(what="The question", most=f"{library.limit(length.QUESTION):g}"),
        "lead": length.TOO_LONG.template(what="The lead", most=f"{library.limit(length.LEAD):g}"),
    }
