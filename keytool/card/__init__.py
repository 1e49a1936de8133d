"""The bench card: a key on paper, to scale, to be laminated and kept beside the microscope."""

from keytool.card.errors import CardError, DoesNotFit, NoSuchKey, NoSuchLetter, NoSuchPaper
from keytool.card.make import card
from keytool.card.papers import PAPERS, Paper, paper_named

__all__ = ["PAPERS", "CardError", "DoesNotFit", "NoSuchKey", "NoSuchLetter", "NoSuchPaper", "Paper", "card", "paper_named"]
