"""The building: what the unit blows in and the exhaust takes out leaks through its cracks."""

from collections.abc import Mapping

from lightoff.formula import Number
from lightoff.formula.elementary import exp
from lightoff.machine.machine import Machine
from lightoff.machine.model.air import INDOORS, Air
from lightoff.physics.building import LEAKAGE_EXPONENT, air_surplus, pressure_of_surplus

TEST_PRESSURE = 10.0  # [Pa] at which the leakage is told


def building_pressure(
    machine: Machine, air: Air, values: Mapping[str, Number], flow: Number
) -> Number:
    """Pressure indoors less outdoors [Pa], worked out where an exhaust is scheduled."""
    if machine.design.exhaust is None:
        return values["building.pressure"] + values["building.wind"]
    fresh = flow * (1 - machine.airside.recirculation) * (1 + air.moisture)
    surplus = air_surplus(fresh / air.density(INDOORS), values["exhaust.airflow"])
    return values["building.wind"] + pressure_of_surplus(
        surplus,
        leakage=exp(values["envelope.leakage"]),
        test_pressure=TEST_PRESSURE,
        exponent=LEAKAGE_EXPONENT,
    )
