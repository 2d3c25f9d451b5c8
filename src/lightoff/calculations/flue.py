"""Excess air, efficiency and dew point from one reading of a flue."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.combustion import (
    FUEL_FACTORS,
    MOST_O2,
    co2_from_o2,
    excess_air_from_co2,
    excess_air_from_o2,
    fuel_factor,
    o2_from_co2,
)
from lightoff.physics.constants import AIR_O2
from lightoff.physics.flue_gas import (
    FlueGas,
    condensed_water,
    dry_flue,
    flue_gas,
    flue_vapour_pressure,
    vapour_capacity,
    water_fraction,
)
from lightoff.physics.flue_loss import (
    combustion_efficiency,
    flue_enthalpy,
    latent_loss,
    net_efficiency,
    sensible_loss,
)
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.heating_value import net_molar_heating_value
from lightoff.physics.moist_air import humidity_ratio
from lightoff.physics.saturation import dew_point
from lightoff.physics.stoichiometry import (
    Stoichiometry,
    flue_air_ratio,
    stoichiometry,
    ultimate_co2,
)
from lightoff.physics.thermochemistry import HEAT_REFERENCE

GASES = tuple(TYPICAL)


def from_flue(
    *,
    gas: str,
    o2: Number | None,
    co2: Number | None,
    flue_temperature: Number,
    combustion_air_temperature: Number,
    altitude: Number,
    relative_humidity: Number,
) -> dict[str, Any]:
    """The balance of one fire, by its O2 where that was read, else by its CO2."""
    if not flue_temperature > combustion_air_temperature:
        raise CannotCalculateError("calc-flue-cold", "flue_temperature")
    if not 0 <= relative_humidity <= 1:
        raise CannotCalculateError("calc-humidity-share", "relative_humidity")
    made = stoichiometry(TYPICAL[gas])
    excess, other = _air(made, o2, co2)
    pressure = barometric_pressure(altitude)
    moisture = humidity_ratio(
        combustion_air_temperature, relative_humidity=relative_humidity, pressure=pressure
    )
    flue = flue_gas(excess_air=excess, water=made.water, humidity_ratio=moisture, **_dry(made))
    sensible = sensible_loss(
        flue_enthalpy(flue_temperature, **flue._asdict()),
        flue_enthalpy(combustion_air_temperature, **flue._asdict()),
        heat=made.heat,
    )
    dew, condensed = _water(flue, flue_temperature, pressure)
    latent = latent_loss(
        water=made.water, condensed=condensed, temperature=flue_temperature, heat=made.heat
    )
    efficiency = combustion_efficiency(sensible, latent)
    net_heat = net_molar_heating_value(TYPICAL[gas], HEAT_REFERENCE)
    return {
        "excess_air": excess,
        **other,
        "combustion_efficiency": efficiency,
        "net_combustion_efficiency": net_efficiency(efficiency, heat=made.heat, net_heat=net_heat),
        "sensible_loss": sensible,
        "latent_loss": latent,
        "flue_dew_point": dew,
    }


def _dry(made: Stoichiometry) -> dict[str, Number]:
    """What decides the dry flue gas."""
    return {
        "oxygen": made.oxygen,
        "carbon_dioxide": made.carbon_dioxide,
        "nitrogen": made.nitrogen,
    }


def _air(
    made: Stoichiometry, o2: Number | None, co2: Number | None
) -> tuple[Number, dict[str, Number]]:
    """Excess air, and of O2 and CO2 the one nobody read."""
    ratio, largest = flue_air_ratio(**_dry(made)), ultimate_co2(**_dry(made))
    if o2 is not None:
        believe_o2(o2)
        found = {} if co2 is not None else {"co2_found": co2_from_o2(o2, largest)}
        return excess_air_from_o2(o2, ratio), found
    if co2 is None:
        raise CannotCalculateError("calc-o2-or-co2", "o2")
    believe_co2(co2, largest)
    excess = excess_air_from_co2(co2, largest_co2=largest, ratio=ratio)
    return excess, {"o2_found": o2_from_co2(co2, largest)}


def believe_o2(o2: Number) -> None:
    """Refuse what is no flue gas."""
    if not 0 <= o2 < AIR_O2:
        raise CannotCalculateError("calc-no-such-o2", "o2", air=AIR_O2)


def believe_co2(co2: Number, largest: Number) -> None:
    """Refuse what this gas cannot make."""
    if not 0 < co2 <= largest:
        raise CannotCalculateError("calc-no-such-co2", "co2", largest=float(largest))


def _water(flue: FlueGas, temperature: Number, pressure: Number) -> tuple[Number, Number]:
    """The dew point, and what condenses below it."""
    dry = dry_flue(carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen)
    vapour = flue_vapour_pressure(water_fraction(flue.water, dry), pressure)
    capacity = vapour_capacity(dry, temperature=temperature, pressure=pressure)
    return dew_point(vapour), condensed_water(flue.water, capacity)


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What the reading stands on, and where it tells little."""
    notes = [
        Note(f"calc-typical-{used['gas'].replace(' ', '-')}", {}, advice=True),
        Note("calc-flue-steady", {}, advice=True),
    ]
    notes += _doubts(used, results)
    dew, flue = results["flue_dew_point"], used["flue_temperature"]
    if flue < dew:
        notes.append(Note("calc-flue-condenses", {"dew_point": dew, "flue": flue}))
    return tuple(notes)


def _doubts(used: Mapping[str, Any], results: Mapping[str, Any]) -> list[Note]:
    """A sample thinned with air; two readings that do not go together."""
    notes = []
    o2 = used["o2"] if used["o2"] is not None else results["o2_found"]
    if o2 > MOST_O2:
        notes.append(Note("calc-flue-diluted", {"o2": o2, "most": MOST_O2}))
    if used["o2"] is not None and used["co2"]:
        factor, (low, high) = fuel_factor(o2, used["co2"]), FUEL_FACTORS[used["gas"]]
        if not low <= factor <= high:
            notes.append(Note("calc-o2-co2-disagree", {"factor": factor, "low": low, "high": high}))
    return notes


FLUE = Calculation(
    name="flue",
    work=from_flue,
    inputs=(
        Input("gas", choices=GASES, default="natural gas"),
        Input("o2", "fraction", optional=True),
        Input("co2", "fraction", optional=True),
        Input("flue_temperature", "temperature"),
        Input("combustion_air_temperature", "temperature"),
        Input("altitude", "length", default=0.0, signed=True),
        Input("relative_humidity", "fraction", default=0.5),
    ),
    outputs=(
        Output("excess_air", "fraction"),
        Output("o2_found", "fraction"),
        Output("co2_found", "fraction"),
        Output("combustion_efficiency", "fraction"),
        Output("net_combustion_efficiency", "fraction"),
        Output("sensible_loss", "fraction"),
        Output("latent_loss", "fraction"),
        Output("flue_dew_point", "temperature"),
    ),
    remark=remark,
)
