"""Where a shortcut fails, it names one of its own rules; every shortcut says where it fails."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import not_among
from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "failures"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each failure of a rule the shortcut does not have, and each shortcut without a failure."""
    for shortcut in loaded.library.shortcuts.values():
        if not shortcut.fails:
            yield Finding(
                NAME,
                loaded.files.place_of("shortcuts", shortcut.id, "fails"),
                f"'{shortcut.id}' names nothing it fails on.",
                tip="Name at least one entry that it gets wrong; a rule of thumb is shown only with its exceptions.",
            )
        for number, failure in enumerate(shortcut.fails):
            if failure.rule not in shortcut.rules:
                yield not_among(
                    NAME,
                    f"'{shortcut.id}' has no rule '{failure.rule}'.",
                    failure.rule,
                    shortcut.rules,
                    loaded.files.place_of("shortcuts", shortcut.id, "fails", number, "rule"),
                )
