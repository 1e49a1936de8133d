"""Lay words: typed text read as observations, with the spelling and the wording that growers use."""

from keytool.words.compiled import compile_words
from keytool.words.hear import Heard, hear

__all__ = ["Heard", "compile_words", "hear"]
