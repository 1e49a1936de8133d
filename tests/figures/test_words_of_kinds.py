"""What a drawing and its choices are called is read in forms: no two words run together."""

from __future__ import annotations

import re

from keytool.figures import kinds


def test_no_two_words_of_a_description_run_together() -> None:
    glued = re.compile(r"[a-z](?:or|and|with|a)(?:with|without|or|and)\b|[;,][a-z]")
    for kind in kinds().values():
        for text in (kind.description, *(param.description for param in kind.params)):
            assert not glued.search(text), (kind.name, text)
