"""What the kinds of sample and the pictures to point at name is there."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "met"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry or group that does not exist in samples.yaml or pictures.yaml."""
    library = loaded.library
    for steps in library.samples.values():
        for number, id in enumerate(steps.of):
            yield from unknown(loaded, NAME, "entry", id, loaded.files.place_of("samples", steps.id, "of", number))
    for picture in library.pictures.values():
        for number, id in enumerate(picture.like):
            yield from unknown(loaded, NAME, "entry", id, loaded.files.place_of("pictures", picture.id, "like", number))
        yield from unknown(loaded, NAME, "entry", picture.entry, loaded.files.place_of("pictures", picture.id, "entry"))
