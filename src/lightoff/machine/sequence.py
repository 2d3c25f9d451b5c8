"""The sequence of operation this unit should follow, step by step, with the plate's seconds."""

from dataclasses import dataclass

from lightoff.machine.machine import Machine
from lightoff.machine.plate import Furnace

_FAN_STEPS = ("call for fan", "damper opens", "end switch", "fan starts", "airflow proven")
_HEAT_STEPS = (
    "call for heat",
    "combustion fan starts",
    "combustion air proven",
    "purge",
    "ignition trial",
    "flame proven",
)
_END_STEPS = ("burner off", "post purge")
STEPS = (*_FAN_STEPS, *_HEAT_STEPS, "stage delay", *_END_STEPS, "flame failure", "fan runs on")
_SECONDS = ("purge", "ignition trial", "flame failure", "post purge", "stage delay")


@dataclass(frozen=True)
class Step:
    """One step; `seconds` [s] is the plate's, None where the plate says nothing."""

    id: str
    furnace: int | None = None
    seconds: float | None = None


def sequence(machine: Machine) -> tuple[Step, ...]:
    """The steps in the order they come: fan, then each furnace from the leading one, then off."""
    order = sorted(machine.numbered(), key=lambda pair: (pair[0] != machine.leading, pair[0]))
    steps = [Step(step) for step in _FAN_STEPS]
    for position, (number, furnace) in enumerate(order):
        names = [*_HEAT_STEPS]
        if position > 0 or furnace.control == "two-stage":
            names.append("stage delay")
        steps += [_step(name, number, furnace) for name in (*names, *_END_STEPS, "flame failure")]
    return (*steps, Step("fan runs on"))


def _step(name: str, number: int, furnace: Furnace) -> Step:
    seconds = getattr(furnace, name.replace(" ", "_")) if name in _SECONDS else None
    return Step(name, number, seconds)
