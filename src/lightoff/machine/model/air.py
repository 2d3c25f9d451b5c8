"""The air on its way through the unit: its state where it enters, and what heats it."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import clip
from lightoff.machine.machine import Machine
from lightoff.physics.airstream import temperature_rise
from lightoff.physics.mixing import mixed_enthalpy
from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    temperature_of_enthalpy,
)

DRIEST, DAMPEST = 0.005, 1.0  # [1] relative humidity stays between them
INDOORS = 294.0  # [K] of rooms; engineering judgement
SOIL = 285.0  # [K] of the ground that gas comes from; engineering judgement


class Air(NamedTuple):
    """Air of a run: barometer [Pa], humidity ratio [kg/kg], outdoors and behind the mixing [K]."""

    barometer: Number
    moisture: Number
    outdoor: Number
    mixed: Number

    def density(self, temperature: Number) -> Number:
        """Density at a temperature on the way [kg/m3]."""
        return moist_air_density(temperature, humidity_ratio=self.moisture, pressure=self.barometer)

    def of_pipes(self, warmer: Number) -> Number:
        """Temperature of gas in its pipes [K]: half way between soil and air, and `warmer`."""
        return (self.outdoor + SOIL) / 2 + warmer

    def warmed(self, temperature: Number, heat: Number, flow: Number) -> Number:
        """Temperature after heat [W] went into a flow of dry air [kg/s]."""
        return temperature + temperature_rise(heat, flow, humidity_ratio=self.moisture)


def air_of(machine: Machine, values: Mapping[str, Number]) -> Air:
    """The air of a run; return air is taken to be as moist as that outdoors."""
    barometer, outdoor = values["air.barometer"], values["air.outdoor.db"]
    humidity = clip(values["air.outdoor.rh"], DRIEST, DAMPEST)
    moisture = humidity_ratio(outdoor, relative_humidity=humidity, pressure=barometer)
    mixed = outdoor
    if machine.airside.recirculation > 0:
        enthalpy = mixed_enthalpy(
            clip(values["air.recirculation"], 0.0, 1.0),
            enthalpy=moist_air_enthalpy(values["air.return.db"], moisture),
            other=moist_air_enthalpy(outdoor, moisture),
        )
        mixed = temperature_of_enthalpy(enthalpy, moisture)
    return Air(barometer, moisture, outdoor, mixed)
