"""Carbon monoxide, free of the air it is diluted with."""

from lightoff.inference.estimate import Estimate, combine
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.physics.combustion import (
    CO_CLASS_LIMIT,
    LARGEST_CO2,
    MOST_O2,
    air_free_from_co2,
    air_free_from_o2,
    o2_from_co2,
)


def air_free_co(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """CO without excess air [1]; raw CO past the class limit is past it whatever the O2."""
    found = _air_free(evidence, furnace, run)
    raw = evidence.get(f"flue.{furnace}.co", run)
    if isinstance(found, Missing) and raw is not None and raw.value > CO_CLASS_LIMIT:
        return raw
    return found


def _air_free(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """From O2 or, where that was not read, from CO2."""
    co = evidence.get(f"flue.{furnace}.co", run)
    o2, co2 = evidence.get(f"flue.{furnace}.o2", run), evidence.get(f"flue.{furnace}.co2", run)
    if co is None:
        return Missing((f"flue.{furnace}.co",))
    if o2 is not None:
        if o2.value > MOST_O2:
            return Missing((f"flue.{furnace}.o2",), "diluted")
        return combine(lambda c, o: air_free_from_o2(c, min(o, 0.2)), co, o2)
    if co2 is not None:
        largest = LARGEST_CO2[evidence.machine.furnace(furnace).gas]
        if o2_from_co2(co2.value, largest) > MOST_O2:
            return Missing((f"flue.{furnace}.co2",), "diluted")
        return combine(lambda c, d: air_free_from_co2(c, max(d, 1e-3), largest), co, co2)
    return Missing((f"flue.{furnace}.o2",))
