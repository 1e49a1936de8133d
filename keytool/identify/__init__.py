"""Identify: weigh all that was told of a thing, walk a key, prove it, and say how sure an answer is."""

from keytool.identify.address import Parsed, parsed, written
from keytool.identify.arrive import Arrival, Rival, arrivals
from keytool.identify.cost import Cost, cost
from keytool.identify.describe import Reason, describe, explain
from keytool.identify.doubt import Doubt, doubt
from keytool.identify.follow import follow
from keytool.identify.ground import Ground, data, ground
from keytool.identify.key_out import key_out
from keytool.identify.library_data import library_data
from keytool.identify.model import CompiledKey, Model, compiled
from keytool.identify.observation import CANNOT_TELL, Answer, Answers, Leg, Observation, Trail
from keytool.identify.onward import carried
from keytool.identify.prove import Fault, Proof, ProofFailure, prove
from keytool.identify.questions import Question
from keytool.identify.result import Identification, Named
from keytool.identify.standing import NoSuchAnswer, Standing, address, answers_at, stand
from keytool.identify.walk import WalkState, evaluate

__all__ = [
    "CANNOT_TELL",
    "Answer",
    "Answers",
    "Arrival",
    "CompiledKey",
    "Cost",
    "Doubt",
    "Fault",
    "Ground",
    "Identification",
    "Leg",
    "Model",
    "Named",
    "NoSuchAnswer",
    "Observation",
    "Parsed",
    "Proof",
    "ProofFailure",
    "Question",
    "Reason",
    "Rival",
    "Standing",
    "Trail",
    "WalkState",
    "address",
    "answers_at",
    "arrivals",
    "carried",
    "compiled",
    "cost",
    "data",
    "describe",
    "doubt",
    "evaluate",
    "explain",
    "follow",
    "ground",
    "key_out",
    "library_data",
    "parsed",
    "prove",
    "stand",
    "written",
]
