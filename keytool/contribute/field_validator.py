"""Whether a text may stand where it is to stand, said as soon as it is typed and in the words of `wetmount check`."""

from __future__ import annotations

from collections.abc import Callable

from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.talk import text
from keytool.library import Loaded
from keytool.library.load import taken_ids


def validate_field(loaded: Loaded, kind: str, path: tuple[str, ...]) -> Callable[[str], str]:
    """Understands a text that the schema of a kind of file allows at a path."""

    def parse(words: str) -> str:
        found = loaded.schemas.field_findings(kind, path, text(words))
        if found:
            said = (found[0].message, f"Allowed: {found[0].allowed}." if found[0].allowed else "", found[0].tip)
            raise NotUnderstood(" ".join(each for each in said if each))
        return words

    return parse


def taken(loaded: Loaded) -> dict[str, str]:
    """Every id that a link leads to, and the file that has it."""
    found: dict[tuple[str, str], str] = {}
    for (kind, _), file in loaded.files.by_id.items():
        list(taken_ids(kind, file, found))
    return {id: file for (space, id), file in found.items() if space == "page"}


def refuse_taken(loaded: Loaded, id: str, kind: str, *, replace: bool) -> None:
    """Nothing where an id is free, or stands for one of its own kind that may be written over.

    Raises:
        NotUnderstood: something else has it.
    """
    file = taken(loaded).get(id)
    is_own = file is not None and loaded.library.files.get((kind, id)) == file
    if file and not (replace and is_own):
        raise NotUnderstood(f"{file} stands already. Choose another --id{', or say --replace' if is_own else ''}.")
