"""All readings of one state put to the model together, and what it says of anything."""

from collections.abc import Iterator
from dataclasses import dataclass

from lightoff.inference.estimate import Estimate, NoSuchStateError, with_part
from lightoff.inference.reconcile import Reconciled, Taken, reconcile
from lightoff.judgement.airside import AIRFLOW_POINTS, measured_airflow
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.gas_input import turned
from lightoff.machine import fan_runs, firing, kind_of
from lightoff.machine.model.points import shows_at_rest, topic_of
from lightoff.machine.model.rated import rate
from lightoff.machine.visit import Reading

AGAIN = 0.015  # [1] from one start to the next: manifold, supply, volts; engineering judgement
AGAIN_KELVIN = 1.0  # [K] the same of a temperature
# how people read: a share of the value, and an amount [SI]; engineering judgement
BY_EYE: dict[str, tuple[float, float]] = {
    "pressure": (0.01, 2.5),  # a needle or a flickering digit, rounded to 0.02 or 0.05 in. w.c.
    "rotational speed": (0.003, 1.5),  # rounded to five
    "temperature": (0.0, 0.3),  # whole degrees
    "voltage": (0.003, 0.0),
    "current": (0.01, 0.0),
    "time": (0.002, 0.0),
    "frequency": (0.0, 0.15),
    "fraction": (0.02, 0.001),  # of flue gas that is not the same all over the flue
}
ONE_DIAL = 1.0  # [m3] of a meter whose dial only its readings tell


@dataclass(frozen=True)
class Together:
    """A state of the machine as all its readings leave it."""

    evidence: Evidence
    found: Reconciled

    def estimate(self, name: str, run: str) -> Estimate | None:
        """A point or derived quantity in a run, read or not; None where the model has none."""
        return self.found.estimate(name, run)


def together(evidence: Evidence) -> Together | None:
    """The model as these readings leave it; None where they describe no machine."""
    taken = list(_taken(evidence))
    if not taken:
        return None
    try:
        return Together(evidence, reconcile(rate(evidence.machine), taken))
    except ArithmeticError:
        return None


def _taken(evidence: Evidence) -> Iterator[Taken]:
    """Every reading the model knows, as it knows it."""
    for run, point in evidence.history.state(evidence.state):
        if not _is_known(evidence, point, run):
            continue
        readings = [each for each in evidence.readings(point, run) if each.main_fan]
        places = {each.position for each in readings}
        if len(places) > 1:  # several places make one reading, as uncertain as they scatter
            found = evidence.get(point, run)
            if found is not None:
                yield Taken(run, point, found, readings[-1].place)
            continue
        for each in readings:
            for taken in _one(evidence, each, run):
                yield _again(taken) if len(readings) > 1 else taken


def _again(taken: Taken) -> Taken:
    """A reading taken more than once: the machine was not quite the same each time."""
    temperature = taken.point.endswith((".db", ".wb", ".sensor"))
    size = AGAIN_KELVIN if temperature else AGAIN * abs(taken.estimate.value)
    return taken._replace(estimate=with_part(taken.estimate, "another moment", taken.place, size))


def _one(evidence: Evidence, reading: Reading, run: str) -> Iterator[Taken]:
    """A reading in the model's terms: airflow at standard density, a dial's single turn."""
    point, found = reading.point, evidence.of(reading)
    try:
        if point in AIRFLOW_POINTS:
            point, found = "airflow.standard", measured_airflow(evidence, reading, run)
    except NoSuchStateError:
        return
    if point == "gas.meter.seconds":
        volume = turned(evidence, reading)
        if volume is None:
            return
        share = (evidence.machine.site.meter_dial or ONE_DIAL) / volume
        parts = {part: size * share for part, size in found.parts.items()}
        found = Estimate(found.value * share, parts)
    share, amount = BY_EYE.get(kind_of(reading.point) or "", (0.0, 0.0))
    size = share * abs(found.value) + amount
    yield Taken(run, point, with_part(found, "read by eye", reading.place, size), reading.place)


def _is_known(evidence: Evidence, point: str, run: str) -> bool:
    """Whether the model says anything of a point in a run."""
    if not fan_runs(run):
        return shows_at_rest(point)
    topic = topic_of(point)
    if topic in ("fire", "flue"):
        furnace = int(point.split(".")[1])
        return furnace in firing(evidence.machine, run)
    return topic is not None
