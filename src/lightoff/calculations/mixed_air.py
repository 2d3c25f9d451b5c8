"""Outdoor and return air: what they make together, and how much of each is in the mixture."""

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
from lightoff.physics.airstream import dry_air_flow
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.mixing import (
    IN_MIXING_BOX,
    mass_share,
    mixed_enthalpy,
    mixed_humidity_ratio,
    outdoor_share,
    outdoor_share_spread,
    unmixed_probe_spread,
)
from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    relative_humidity,
    temperature_of_enthalpy,
)

BLIND = 0.2  # [1] uncertainty of a share that no longer tells anything; engineering judgement
PROBE = 0.5  # [K] standard uncertainty of an air temperature where it is taken; the same


def mixed_air(
    *,
    outdoor_airflow: Number,
    outdoor_temperature: Number,
    outdoor_humidity: Number,
    return_airflow: Number,
    return_temperature: Number,
    return_humidity: Number,
    altitude: Number,
) -> dict[str, Any]:
    """Two airflows, each as it was measured at its own temperature."""
    pressure = barometric_pressure(altitude)
    outdoor = _stream(outdoor_airflow, outdoor_temperature, outdoor_humidity, pressure)
    indoor = _stream(return_airflow, return_temperature, return_humidity, pressure)
    share = mass_share(outdoor["mass"], indoor["mass"])
    enthalpy = mixed_enthalpy(share, enthalpy=outdoor["enthalpy"], other=indoor["enthalpy"])
    moisture = mixed_humidity_ratio(
        share, humidity_ratio=outdoor["moisture"], other=indoor["moisture"]
    )
    mixed = temperature_of_enthalpy(enthalpy, moisture)
    humidity = relative_humidity(mixed, humidity_ratio=moisture, pressure=pressure)
    return {
        "mixture_temperature": mixed,
        "mixture_humidity": humidity,
        "humidity_ratio": moisture,
        "outdoor_share": share,
    }


def _stream(
    airflow: Number, temperature: Number, humidity: Number, pressure: Number
) -> dict[str, Number]:
    """Dry air, water and heat of one airstream."""
    moisture = humidity_ratio(temperature, relative_humidity=humidity, pressure=pressure)
    density = moist_air_density(temperature, humidity_ratio=moisture, pressure=pressure)
    return {
        "mass": dry_air_flow(airflow=airflow, density=density, humidity_ratio=moisture),
        "moisture": moisture,
        "enthalpy": moist_air_enthalpy(temperature, moisture),
    }


def before_it_is_mixed(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """How far a probe near the dampers may be off, and whether the mixture is fog."""
    difference = abs(used["return_temperature"] - used["outdoor_temperature"])
    spread = 2 * unmixed_probe_spread(difference, 1.0, share=IN_MIXING_BOX)
    fog = (Note("calc-fog", {}),) if results["mixture_humidity"] > 1 else ()
    return (*fog, Note("calc-one-probe", {"spread": spread}, advice=True))


MIXED_AIR = Calculation(
    name="mixed-air",
    work=mixed_air,
    inputs=(
        Input("outdoor_airflow", "airflow"),
        Input("outdoor_temperature", "temperature"),
        Input("return_airflow", "airflow"),
        Input("return_temperature", "temperature"),
        Input("outdoor_humidity", "fraction", default=0.5),
        Input("return_humidity", "fraction", default=0.5),
        Input("altitude", "length", default=0.0, signed=True),
    ),
    outputs=(
        Output("mixture_temperature", "temperature"),
        Output("mixture_humidity", "fraction"),
        Output("humidity_ratio", "humidity ratio"),
        Output("outdoor_share", "fraction"),
    ),
    remark=before_it_is_mixed,
)


def outdoor_air(
    *,
    outdoor_temperature: Number,
    return_temperature: Number,
    mixed_temperature: Number,
    probe_places: Number,
    probe_spread: Number,
) -> dict[str, Any]:
    """The share from three temperatures, and how uncertain they leave it."""
    difference = abs(return_temperature - outdoor_temperature)
    if not difference > 0:
        raise CannotCalculateError("calc-streams-alike", "return_temperature")
    share = outdoor_share(mixed_temperature, outdoor=outdoor_temperature, indoor=return_temperature)
    unmixed = unmixed_probe_spread(difference, probe_places, share=IN_MIXING_BOX)
    spread = outdoor_share_spread(share, difference, probe=probe_spread, unmixed=unmixed)
    return {"outdoor_share": share, "outdoor_share_spread": spread}


def blindness(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Whether the temperatures say anything, and whether they can be right."""
    share, spread = results["outdoor_share"], results["outdoor_share_spread"]
    blind = (Note("calc-share-blind", {"spread": spread}),) if spread > BLIND else ()
    impossible = not -spread <= share <= 1 + spread
    return (*blind, *((Note("calc-share-impossible", {}),) if impossible else ()))


OUTDOOR_AIR = Calculation(
    name="outdoor-air",
    work=outdoor_air,
    inputs=(
        Input("outdoor_temperature", "temperature"),
        Input("return_temperature", "temperature"),
        Input("mixed_temperature", "temperature"),
        Input("probe_places", "number", default=1.0),
        Input("probe_spread", "temperature difference", default=PROBE),
    ),
    outputs=(
        Output("outdoor_share", "fraction"),
        Output("outdoor_share_spread", "fraction"),
    ),
    remark=blindness,
)
