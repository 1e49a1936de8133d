"""Turn the bytes of a file into text, and refuse the signs that look right but are not."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

import yaml

from keytool.library.finding import Finding, Place

CHECK = "readable"
LARGEST_FILE = 1_000_000
GREEK_MU = "\u03bc"
_INVISIBLE = ("Cc", "Cf", "Zl", "Zp", "Co", "Cs")
_BLANK = "\u115f\u1160\u2800\u3164\uffa0"
"""Letters by their class, and yet nothing is seen of them."""
_BLANKS = re.compile(f"[{_BLANK}]").search
_NOT_YAML = yaml.reader.Reader.NON_PRINTABLE


def say(name: str, message: str, *, line: int = 1, column: int = 1, tip: str = "") -> Finding:
    """A finding on what makes a file unreadable."""
    return Finding(CHECK, Place(name, line, column), message, tip=tip)


def decode(raw: bytes, name: str) -> tuple[str | None, list[Finding]]:
    """The text of a file, or nothing and what is wrong with it."""
    if len(raw) > LARGEST_FILE:
        return None, [say(name, f"The file is larger than {LARGEST_FILE} bytes.", tip="Split it.")]
    if raw.startswith(b"\xef\xbb\xbf"):
        return None, [say(name, "The file starts with a byte order mark.", tip="Save it as UTF-8 without BOM.")]
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = line_column(raw[: error.start].decode("utf-8", "replace"))
        return None, [
            say(
                name,
                f"Byte 0x{raw[error.start]:02x} is not UTF-8.",
                line=line,
                column=column,
                tip="Save the file as UTF-8 and look at the accented letters and signs on this line.",
            )
        ]
    findings = list(_unwelcome_characters(text, name))
    return (None if findings else text), findings


def _unwelcome_characters(text: str, name: str) -> Iterator[Finding]:
    """One finding for each line and kind of fault. Lines may end as Unix or Windows ends them."""
    for number, line in enumerate(text.split("\n"), 1):
        line = line.removesuffix("\r")
        for column, message, tip in _unwelcome_in(line):
            yield say(name, message, line=number, column=column + 1, tip=tip)


def _unwelcome_in(line: str) -> Iterator[tuple[int, str, str]]:
    if line.isascii() and line.isprintable():
        return
    if line.isprintable() and GREEK_MU not in line and not _BLANKS(line) and unicodedata.is_normalized("NFC", line):
        return  # as nearly every line; what follows finds where the fault is
    if "\t" in line:
        yield line.index("\t"), "A tab.", "Use spaces; two for each level."
    if GREEK_MU in line:
        yield (
            line.index(GREEK_MU),
            "A Greek mu (U+03BC) stands where the micro sign belongs.",
            "Use the micro sign µ (U+00B5), so that search and units find it.",
        )
    if (composed := unicodedata.normalize("NFC", line)) != line:
        column = next((i for i, (one, other) in enumerate(zip(line, composed, strict=False)) if one != other), 0)
        yield column, "A letter is written in a form that looks right but is not the usual one (not NFC).", "Delete it and type it again."
    for column, char in enumerate(line):
        if char != "\t" and (unicodedata.category(char) in _INVISIBLE or char in _BLANK or _NOT_YAML.match(char)):
            yield column, f"An invisible character, U+{ord(char):04X}.", "Delete it; retype the words on both sides if you cannot see it."
            break


def escaped_in(value: str) -> tuple[str, str] | None:
    """What is wrong with a value although its file looks right: signs that an escape in double quotes has made.

    Returns:
        The message and what to do, or None. The ends of lines inside a text are no fault.
    """
    if value.isascii() and value.isprintable():
        return None if not value or value.strip() else ("A text of nothing but spaces.", "Write what is meant, or leave the line out.")
    for line in value.split("\n"):
        for _, message, _ in _unwelcome_in(line):
            return message, "It is written as an escape, a backslash in double quotes. Delete it; texts are plain."
    return None


def line_column(before: str) -> tuple[int, int]:
    """The line and column, from 1, at which a text goes on after `before`."""
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
