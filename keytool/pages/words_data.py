"""The lay words as a script file, which works from a folder too: the page's script hears with them."""

from __future__ import annotations

import json

from keytool.library.model import Library
from keytool.pages.page import Asset
from keytool.words import compile_words

PATH = "data/words.js"


def words_data(library: Library) -> Asset:
    """`data/words.js`, which sets `wetmountWordsData`; without lay words it holds nothing to hear."""
    data = json.dumps(compile_words(library), ensure_ascii=False, separators=(",", ":")) if library.lay.spelling else "null"
    return Asset(PATH, f"window.wetmountWordsData={data.replace('<', chr(92) + 'u003c')};\n".encode(), "keydata/words")
