"""The orifice for an input, and the manifold pressure for another gas or altitude."""

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
from lightoff.physics.drills import drill_name, nearest_drill
from lightoff.physics.gas_input import flow_for_input, flow_input, input_share
from lightoff.physics.meter import base_volume_factor
from lightoff.physics.orifice import (
    CODE_DERATE_ABOVE,
    altitude_density_ratio,
    code_derate_factor,
    derated_input,
    manifold_for_gas,
    untouched_factor,
    wobbe_ratio,
)
from lightoff.physics.orifice_size import (
    flowing_density,
    input_of_each,
    orifice_diameter,
    orifice_flow,
    orifice_speed,
)

DERATES = ("no derate", "code derate")
NEAR = 0.02  # [1] an orifice is no better known than this; engineering judgement
HIGHEST = 1.10  # [1] manifold over the plate's, never to be passed; common practice, no source
LICENSED = Note("calc-gas-licensed", {})


def no_derate(used: Mapping[str, Any]) -> tuple[Note, ...]:
    """High up, and no derate asked for: right only if the plate or the maker says so."""
    if used["derate"] == "code derate" or used["altitude"] <= CODE_DERATE_ABOVE:
        return ()
    return (Note("calc-no-derate", {"altitude": used["altitude"], "above": CODE_DERATE_ABOVE}),)


def orifice(
    *,
    rated_input: Number,
    orifices: Number,
    manifold: Number,
    heating_value: Number,
    relative_density: Number,
    altitude: Number,
    derate: str,
    flowing_temperature: Number,
    discharge_coefficient: Number,
) -> dict[str, Any]:
    """The bore that passes one orifice's share of the input, in the air of this altitude."""
    if not manifold > 0:
        raise CannotCalculateError("calc-no-manifold", "manifold")
    if derate == "code derate":
        rated_input = derated_input(rated_input, code_derate_factor(altitude))
    wanted = input_of_each(rated_input, orifices)
    pressure = barometric_pressure(altitude)
    gas = {
        "heating_value": heating_value,
        "factor": base_volume_factor(pressure, flowing_temperature),
    }
    density = flowing_density(relative_density, pressure=pressure, temperature=flowing_temperature)
    passing = {"coefficient": discharge_coefficient, "speed": orifice_speed(manifold, density)}
    diameter = orifice_diameter(flow_for_input(wanted, **gas), **passing)
    drill = nearest_drill(diameter)
    given = flow_input(orifice_flow(drill, **passing), **gas)
    return {
        "orifice_input": wanted,
        "orifice_diameter": diameter,
        "drill": drill_name(float(diameter)),
        "drill_diameter": drill,
        "drill_input": given,
        "drill_share": input_share(given, wanted),
    }


def remark_orifice(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Who may change it, and how far the drill is off."""
    share = results["drill_share"]
    notes = [LICENSED]
    if share > 1 + NEAR:
        notes.append(Note("calc-drill-large", {"share": share}))
    if share < 1 - NEAR:
        notes.append(Note("calc-drill-small", {"share": share}, advice=True))
    return (*notes, *no_derate(used))


def manifold_pressure(
    *,
    rated_manifold: Number,
    rated_heating_value: Number,
    rated_relative_density: Number,
    heating_value: Number,
    relative_density: Number,
    altitude: Number,
    derate: str,
    **_limits: Number | None,
) -> dict[str, Any]:
    """The pressure at which the same orifice gives the input it should, with this gas up here."""
    wobbe = wobbe_ratio(
        heating_value=heating_value,
        relative_density=relative_density,
        rated_heating_value=rated_heating_value,
        rated_relative_density=rated_relative_density,
    )
    density = altitude_density_ratio(altitude)
    # where the codes' derate is not to be made the pressure is not raised against altitude either
    wanted = (
        code_derate_factor(altitude) if derate == "code derate" else untouched_factor(1.0, density)
    )
    here = {"wobbe_ratio": wobbe, "density_ratio": density}
    return {
        "manifold": manifold_for_gas(rated_manifold=rated_manifold, input_factor=wanted, **here),
        "wanted_share": wanted,
        "untouched_share": untouched_factor(**here),
    }


def remark_manifold(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Who may set it, and whether the maker lets it be set so."""
    low, high = used["manifold_least"], used["manifold_most"]
    pressure = results["manifold"]
    if low is None and high is None:
        far = pressure > HIGHEST * used["rated_manifold"]
        own = Note("calc-manifold-high", {}) if far else Note("calc-maker-range", {}, advice=True)
        return (LICENSED, own, *no_derate(used))
    if (low is not None and pressure < low) or (high is not None and pressure > high):
        return (LICENSED, Note("calc-change-orifices", {"manifold": pressure}), *no_derate(used))
    return (LICENSED, *no_derate(used))


ORIFICE = Calculation(
    name="orifice",
    work=orifice,
    inputs=(
        Input("rated_input", "heat"),
        Input("orifices", "number", default=1.0),
        Input("manifold", "pressure"),
        Input("heating_value", "heating value", default=38.4e6),
        Input("relative_density", default=0.60),
        Input("altitude", "length", default=0.0, signed=True),
        Input("derate", choices=DERATES, default="no derate"),
        Input("flowing_temperature", "temperature", default=288.706),
        Input("discharge_coefficient", default=0.90),
    ),
    outputs=(
        Output("drill", "word"),
        Output("orifice_diameter", "size"),
        Output("orifice_input", "heat"),
        Output("drill_diameter", "size"),
        Output("drill_input", "heat"),
        Output("drill_share", "fraction"),
    ),
    remark=remark_orifice,
)

MANIFOLD = Calculation(
    name="manifold",
    work=manifold_pressure,
    inputs=(
        Input("rated_manifold", "pressure"),
        Input("rated_heating_value", "heating value", default=38.4e6),
        Input("rated_relative_density", default=0.60),
        Input("heating_value", "heating value", default=38.4e6),
        Input("relative_density", default=0.60),
        Input("altitude", "length", default=0.0, signed=True),
        Input("derate", choices=DERATES, default="no derate"),
        Input("manifold_least", "pressure", optional=True),
        Input("manifold_most", "pressure", optional=True),
    ),
    outputs=(
        Output("manifold", "pressure"),
        Output("wanted_share", "fraction"),
        Output("untouched_share", "fraction"),
    ),
    remark=remark_manifold,
)
