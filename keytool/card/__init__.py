"""The bench card: a key, a look-alike set or entries on paper, to scale, to be laminated and kept beside the microscope."""

from keytool.card.errors import (
    CardError,
    DoesNotFit,
    Impossible,
    NoSuchForm,
    NoSuchLetter,
    NoSuchPaper,
    NoSuchPicture,
    NothingAsked,
    NotInLibrary,
)
from keytool.card.form import FORMS
from keytool.card.inks import INKS
from keytool.card.make import Card, card, check_fit, laid_out, short_card
from keytool.card.papers import PAPERS, Paper, paper_named
from keytool.card.photographs import card_photos

__all__ = [
    "FORMS",
    "INKS",
    "PAPERS",
    "Card",
    "CardError",
    "DoesNotFit",
    "Impossible",
    "NoSuchForm",
    "NoSuchLetter",
    "NoSuchPaper",
    "NoSuchPicture",
    "NotInLibrary",
    "NothingAsked",
    "Paper",
    "card",
    "card_photos",
    "check_fit",
    "laid_out",
    "paper_named",
    "short_card",
]
