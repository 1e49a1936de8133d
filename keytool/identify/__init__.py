"""Identify: walk a key, prove it, and say how sure an answer is."""

from keytool.identify.answer import CANNOT_TELL, Answer, Answers
from keytool.identify.arrive import Arrival, Rival, arrivals
from keytool.identify.cost import Cost, cost
from keytool.identify.doubt import Doubt, doubt
from keytool.identify.follow import follow
from keytool.identify.ground import Ground, data, ground
from keytool.identify.onward import carried
from keytool.identify.prove import Failure, Fault, Proof, prove
from keytool.identify.walk import NoSuchAnswer, Standing, address, answers_at, stand

__all__ = [
    "CANNOT_TELL",
    "Answer",
    "Answers",
    "Arrival",
    "Cost",
    "Doubt",
    "Failure",
    "Fault",
    "Ground",
    "NoSuchAnswer",
    "Proof",
    "Rival",
    "Standing",
    "address",
    "answers_at",
    "arrivals",
    "carried",
    "cost",
    "data",
    "doubt",
    "follow",
    "ground",
    "prove",
    "stand",
]
