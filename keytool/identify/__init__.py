"""Identify: weigh all that was told of a thing, walk a key, prove it, and say how sure an answer is."""

from keytool.identify.address import Parsed, address, parsed, written
from keytool.identify.cost import Cost, cost
from keytool.identify.describe import Reason, describe, explain
from keytool.identify.ground import Ground, ground
from keytool.identify.key_out import key_out
from keytool.identify.library_data import library_data
from keytool.identify.model import CompiledKey, Model, compiled, compiled_for
from keytool.identify.observation import CANNOT_TELL, Answer, Answers, Leg, Observation, Trail
from keytool.identify.prove import Fault, Proof, ProofFailure, prove
from keytool.identify.questions import Question
from keytool.identify.result import Identification, Named
from keytool.identify.telling import telling_first
from keytool.identify.walk import WalkState, evaluate, sure_leads

__all__ = [
    "CANNOT_TELL",
    "Answer",
    "Answers",
    "CompiledKey",
    "Cost",
    "Fault",
    "Ground",
    "Identification",
    "Leg",
    "Model",
    "Named",
    "Observation",
    "Parsed",
    "Proof",
    "ProofFailure",
    "Question",
    "Reason",
    "Trail",
    "WalkState",
    "address",
    "compiled",
    "compiled_for",
    "cost",
    "describe",
    "evaluate",
    "explain",
    "ground",
    "key_out",
    "library_data",
    "parsed",
    "prove",
    "sure_leads",
    "telling_first",
    "written",
]
