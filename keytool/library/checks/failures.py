"""Where a shortcut fails, it names one of its own rules; every shortcut says where it fails."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import missing, not_among
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "failures"
NO_FAILURE = Message(
    NAME,
    "'{shortcut}' names nothing it fails on.",
    tip="Name at least one entry that it gets wrong; a rule of thumb is shown only with its exceptions.",
)
NO_SUCH_RULE = missing(NAME, "'{shortcut}' has no rule '{rule}'.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each failure of a rule the shortcut does not have, and each shortcut without a failure."""
    for shortcut in loaded.library.shortcuts.values():
        if not shortcut.fails:
            yield NO_FAILURE.at(loaded.files.place_of("shortcuts", shortcut.id, "fails"), shortcut=shortcut.id)
        for number, failure in enumerate(shortcut.fails):
            if failure.rule not in shortcut.rules:
                yield not_among(
                    NO_SUCH_RULE,
                    failure.rule,
                    shortcut.rules,
                    loaded.files.place_of("shortcuts", shortcut.id, "fails", number, "rule"),
                    shortcut=shortcut.id,
                    rule=failure.rule,
                )
