"""Walks over one key, for tests: every printed way, and many with "cannot tell"."""

from __future__ import annotations

import random

from keytool.identify import CANNOT_TELL, Answer, Answers, Ground, stand

DOUBTFUL = 60


def walks(it: Ground) -> list[Answers]:
    """Every way through the printed key and every beginning of one, and many with "cannot tell"; always the same."""
    return [*_printed(it, it.key.first, ()), *_doubtful(it)]


def _printed(it: Ground, at: str, answers: Answers) -> list[Answers]:
    """Every walk of the printed key, and every part of one from its beginning."""
    found = [answers]
    for lead in it.key.couplets[at].leads.values():
        steps = (*answers, Answer(at, lead.id))
        found += _printed(it, lead.couplet, steps) if lead.couplet else [steps]
    return found


def _doubtful(it: Ground) -> list[Answers]:
    dice = random.Random(it.key.id)
    found: list[Answers] = []
    for _ in range(DOUBTFUL):
        answers: Answers = ()
        while asks := stand(it, answers).asks:
            leads = list(it.key.couplets[asks].leads)
            answers = (*answers, Answer(asks, CANNOT_TELL if dice.random() < 0.35 else dice.choice(leads)))
            found.append(answers)
    return found
