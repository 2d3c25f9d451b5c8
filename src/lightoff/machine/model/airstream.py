"""The airstream of a run: temperatures on the way, pressures along the unit, and the fan."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.machine.model.air import Air
from lightoff.machine.model.burner import Fire
from lightoff.machine.model.exchanger import Heat, exchange
from lightoff.machine.model.rated import Rated
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.physics.curve import read
from lightoff.physics.duct import component_drop
from lightoff.physics.fan import (
    airflow_by_fan_law,
    power_by_fan_law,
    pressure_by_fan_law,
    speed_ratio,
)

SQUARE = 2.0  # [1] exponent of fittings
FILTER = 1.5  # [1] exponent of a filter, between laminar media and pleats; engineering judgement
DUCT = 1.92  # [1] exponent of a duct with its fittings; from memory


class Warmth(NamedTuple):
    """Temperatures [K] before the fan, after it, after each furnace, where the duct begins.

    `heats` has what each furnace that fires gives.
    """

    fan: Number
    entering: Number
    after: tuple[Number, ...]
    discharge: Number
    heats: Mapping[int, Heat]


class Pressures(NamedTuple):
    """Drops of the parts [Pa] in the order the air meets them, and what the fan gives."""

    intake: Number
    filters: Number
    furnaces: Number
    coil: Number
    outlet: Number
    duct: Number
    fan: Number

    @property
    def surplus(self) -> Number:
        """What the fan gives more than the parts take."""
        before = self.intake + self.filters + self.furnaces + self.coil
        return self.fan - before - self.outlet - self.duct


def warmth(
    rated: Rated,
    air: Air,
    fires: Mapping[int, Fire],
    values: Mapping[str, Number],
    *,
    flow: Number,
    fan_heat: Number,
) -> Warmth:
    """Temperatures along the unit: a fan before the furnaces warms what enters them."""
    entering = air.mixed
    if rated.blow_through:
        entering = air.warmed(entering, fan_heat, flow)
    after, heats, here = [], {}, entering
    for burner in rated.burners:
        flame = fires.get(burner.number)
        if flame is not None:
            given = exchange(flame.hot, air, entering=here, flow=flow, lost=values["casing.loss"])
            here = air.warmed(here, given.output, flow)
            heats[burner.number] = given
        after.append(here)
    if rated.blow_through:
        return Warmth(air.mixed, entering, tuple(after), here, heats)
    return Warmth(here, entering, tuple(after), air.warmed(here, fan_heat, flow), heats)


def pressures(
    rated: Rated,
    air: Air,
    warm: Warmth,
    values: Mapping[str, Number],
    *,
    flow: Number,
    fan_speed: Number,
) -> Pressures:
    """What each part takes of the flow at its own density, and what the fan gives to it."""
    drops = rated.drops

    def taken(drop: float, temperature: Number, exponent: float, scale: Number) -> Number:
        density = air.density(temperature)
        return component_drop(
            flow * (1 + air.moisture) / density,
            rated_airflow=rated.machine.design.airflow,
            rated_drop=drop * scale,
            exponent=exponent,
            density_ratio=density / STANDARD_AIR_DENSITY,
        )

    before = warm.entering
    furnaces = 0.0
    for after in warm.after:
        furnaces = furnaces + taken(
            drops.furnace, (before + after) / 2, SQUARE, values["furnace.resistance"]
        )
        before = after
    cold = warm.after[-1]
    return Pressures(
        intake=taken(drops.intake, air.outdoor, SQUARE, values["intake.resistance"]),
        filters=taken(drops.filters, air.mixed, FILTER, values["filters.resistance"]),
        furnaces=furnaces,
        coil=taken(drops.coil, cold, SQUARE, values["coil.resistance"]) if drops.coil else 0.0,
        outlet=taken(drops.outlet, warm.discharge, SQUARE, values["outlet.resistance"]),
        duct=taken(drops.duct, warm.discharge, DUCT, values["duct.resistance"]),
        fan=_fan_pressure(rated, air, warm, values, flow=flow, fan_speed=fan_speed),
    )


def _fan_pressure(
    rated: Rated,
    air: Air,
    warm: Warmth,
    values: Mapping[str, Number],
    *,
    flow: Number,
    fan_speed: Number,
) -> Number:
    """Static pressure of the fan, its curve as steep as `fan.shape` says."""
    fan, density = rated.fan, air.density(warm.fan)
    law = {"speed_ratio": speed_ratio(fan_speed, fan.speed), "size_ratio": 1.0}
    airflow = flow * (1 + air.moisture) / density
    at_rated = airflow_by_fan_law(airflow, speed_ratio=1 / law["speed_ratio"], size_ratio=1.0)
    tilt = 1 + values["fan.shape"] * (at_rated / fan.airflow - 1)
    return pressure_by_fan_law(
        read(fan.pressures, at_rated) * values["fan.pressure"] * tilt,
        density_ratio=density / STANDARD_AIR_DENSITY,
        **law,
    )


def shaft_power(
    rated: Rated, density: Number, values: Mapping[str, Number], *, airflow: Number, speed: Number
) -> Number:
    """Power at the fan's shaft [W] for an airflow as it enters the fan [m3/s]."""
    ratio = speed_ratio(speed, rated.fan.speed)
    at_rated = airflow_by_fan_law(airflow, speed_ratio=1 / ratio, size_ratio=1.0)
    return power_by_fan_law(
        read(rated.fan.powers, at_rated) * values["fan.power"],
        speed_ratio=ratio,
        size_ratio=1.0,
        density_ratio=density / STANDARD_AIR_DENSITY,
    )
