"""Thermal efficiency: heat into the airstream over gross input."""

from lightoff.inference.estimate import Estimate, combine
from lightoff.judgement.airside import output
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.gas_input import Input, furnace_input


def efficiency(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """Heat a furnace gives to the airstream over what it burns, gross [1]."""
    heat = output(evidence, furnace, run)
    burnt = furnace_input(evidence, furnace, run)
    if isinstance(heat, Missing):
        return heat
    if not isinstance(burnt, Input):
        return burnt
    return combine(lambda a, b: a / b, heat, burnt.estimate)
