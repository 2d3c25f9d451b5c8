"""What airflow, pressure, power and amps become when the fan turns at another speed."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.calculations.fan_amps import amps_after, by_plate
from lightoff.formula import Number
from lightoff.physics import fan

# the ways to change the speed: what it is now, and what it will be
CHANGES = (
    ("fan_speed", "new_fan_speed"),
    ("motor_sheave", "new_motor_sheave"),
    ("frequency", "new_frequency"),
    ("fan_airflow", "wanted_airflow"),
)


def fan_law(**given: Any) -> dict[str, Any]:
    """The fan laws in a system that stays as it is; the motor's amps where they were read."""
    n, r = _speed_ratio(given), _density_ratio(given)
    flow, pressure, power = (given[name] for name in ("fan_airflow", "fan_static", "shaft_power"))
    law = {"speed_ratio": n, "size_ratio": 1.0}
    found = {"speed_ratio": n} if any(given[new] is not None for _, new in CHANGES) else {}
    if given["fan_speed"] is not None and given["new_fan_speed"] is None:
        found["fan_speed_after"] = fan.speed_after(given["fan_speed"], n)
    if flow is not None:
        found["airflow_after"] = fan.airflow_by_fan_law(flow, **law)
    if pressure is not None:
        found["static_after"] = fan.pressure_by_fan_law(pressure, density_ratio=r, **law)
    if power is not None:
        found["power_after"] = fan.power_by_fan_law(power, density_ratio=r, **law)
    return found | amps_after(given, n, r)


def _speed_ratio(given: Mapping[str, Any]) -> Number:
    """By the one change that was told; none where only the air changes."""
    told = [(now, new) for now, new in CHANGES if given[new] is not None]
    if not told and given["new_air_density"] is not None:
        return 1.0
    if len(told) != 1:
        raise CannotCalculateError("calc-one-change", "new_fan_speed")
    now, new = told[0]
    return fan.speed_ratio(given[new], _known(given, now))


def _density_ratio(given: Mapping[str, Any]) -> Number:
    if given["new_air_density"] is None:
        return 1.0
    return fan.density_ratio(given["new_air_density"], _known(given, "air_density"))


def _known(given: Mapping[str, Any], name: str) -> Number:
    if given[name] is None:
        raise CannotCalculateError("calc-missing", name)
    return given[name]


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What would be passed, and what the laws take for granted."""
    return (
        *_passed(used, results),
        *_amps(used, results),
        Note("calc-same-system", {}, advice=True),
    )


def _passed(used: Mapping[str, Any], results: Mapping[str, Any]) -> list[Note]:
    """A limit that the new speed would pass."""

    def told(result: str, typed: str) -> Number | None:
        return results.get(result, used[typed])

    limits = (
        ("calc-over-wheel", told("fan_speed_after", "new_fan_speed"), used["max_fan_speed"]),
        ("calc-over-amps", results.get("amps_after"), used["full_load_amps"]),
        ("calc-over-power", results.get("power_after"), used["motor_power"]),
        ("calc-over-base", told("frequency_after", "new_frequency"), used["base_frequency"]),
    )
    return [Note(message, {"value": value, "limit": limit})
            for message, value, limit in limits
            if value is not None and limit is not None and value > limit]  # fmt: skip


def _amps(used: Mapping[str, Any], results: Mapping[str, Any]) -> list[Note]:
    if "amps_after" not in results or by_plate(used):
        return []
    return [Note("calc-amps-in-proportion", {}, advice=True)]


FAN_LAW = Calculation(
    name="fan-law",
    work=fan_law,
    inputs=(
        Input("fan_speed", "rotational speed", optional=True, group="now"),
        Input("motor_sheave", "size", optional=True, group="now"),
        Input("frequency", "frequency", optional=True, group="now"),
        Input("fan_airflow", "airflow", optional=True, group="now"),
        Input("fan_static", "pressure", optional=True, group="now"),
        Input("shaft_power", "shaft power", optional=True, group="now"),
        Input("motor_amps", "current", optional=True, group="now"),
        Input("air_density", "density", optional=True, group="now"),
        Input("new_fan_speed", "rotational speed", optional=True, group="change"),
        Input("new_motor_sheave", "size", optional=True, group="change"),
        Input("new_frequency", "frequency", optional=True, group="change"),
        Input("wanted_airflow", "airflow", optional=True, group="change"),
        Input("new_air_density", "density", optional=True, group="change"),
        Input("full_load_amps", "current", optional=True, group="plate"),
        Input("motor_power", "shaft power", optional=True, group="plate"),
        Input("motor_efficiency", "fraction", optional=True, group="plate", most=1.0),
        Input("motor_volts", "voltage", optional=True, group="plate"),
        Input("phases", default=3.0, group="plate"),
        Input("base_frequency", "frequency", default=60.0, group="plate"),
        Input("max_fan_speed", "rotational speed", optional=True, group="plate"),
    ),
    outputs=(
        Output("frequency_after", "frequency"),
        Output("fan_speed_after", "rotational speed"),
        Output("airflow_after", "airflow"),
        Output("static_after", "pressure"),
        Output("power_after", "shaft power"),
        Output("amps_after", "current"),
        Output("speed_ratio"),
    ),
    remark=remark,
    picture="fan",
)
