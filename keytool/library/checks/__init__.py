"""Rules that go beyond the shape of one file: one small module each.

A rule is a module with a `NAME`, a docstring that says the rule, its sentences as `Message`s,
and `check(loaded)`, which yields a finding for each place that breaks it. To add one, write the
module: whatever has a `check` here is a rule. A form that says the same while one types takes
the sentence from the rule.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator, Mapping
from typing import Protocol, cast

from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message


class Check(Protocol):
    """A module that holds one rule."""

    NAME: str

    def check(self, loaded: Loaded) -> Iterator[Finding]:
        """What breaks the rule."""


def _found() -> Iterator[Check]:
    for name in sorted(name for _, name, _ in pkgutil.iter_modules(__path__)):
        module = importlib.import_module(f"{__name__}.{name}")
        if hasattr(module, "check"):
            yield cast(Check, module)


CHECKS: tuple[Check, ...] = tuple(_found())


def messages(rule: Check) -> Mapping[str, Message]:
    """The sentences of a rule by name."""
    return {name: each for name, each in vars(rule).items() if isinstance(each, Message)}


def run(loaded: Loaded) -> tuple[Finding, ...]:
    """What breaks any of the rules, in the order of the files. Never raises: a rule that fails is itself a finding."""
    return tuple(sorted((finding for each in CHECKS for finding in _guarded(each, loaded)), key=lambda finding: finding.order))


def _guarded(rule: Check, loaded: Loaded) -> tuple[Finding, ...]:
    try:
        return tuple(dict.fromkeys(rule.check(loaded)))
    except Exception as error:
        message = f"The check '{rule.NAME}' itself failed: {type(error).__name__}: {error}."
        tip = "This is a fault of the program. Please report it with the files you changed."
        return (Finding(rule.NAME, Place("keydata"), message, tip=tip),)
