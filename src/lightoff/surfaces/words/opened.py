"""A number of the model, opened, in words."""

from lightoff.machine.model.equations import Equations
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.surfaces.words.speech import Speech


def agreed(found: Equations, speech: Speech) -> str:
    """Where fan and system, motor and fan agree; nothing of a number that does not hang on it."""
    state = found.state
    if state is None:
        return ""
    flow = speech.quantity(float(state.flow) / STANDARD_AIR_DENSITY, "airflow")
    load = speech.quantity(float(state.load), "fraction")
    said = speech.word("opened:agreed", flow=flow, load=load)
    return f"{said} {speech.word('opened:along')}" if found.along else said
