"""Pressure decay: what a closed pipe lost beyond what temperature and weather explain."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.barometer import believable, pressure_here
from lightoff.calculations.calculation import Calculation, Input, Note, Output
from lightoff.formula import Number
from lightoff.physics.constants import GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE
from lightoff.physics.meter import absolute_pressure
from lightoff.physics.tightness import (
    ISOLATE_ABOVE,
    LEAST_TEST_PRESSURE,
    code_test_pressure,
    code_test_time,
    end_at_first_barometer,
    largest_gauge_range,
    leak_rate,
    pressure_per_degree,
    temperature_corrected_drop,
    tight_end_pressure,
)

FAHRENHEIT = 5 / 9  # [K]


def pressure_decay(
    *,
    test_start: Number,
    test_end: Number,
    test_start_temperature: Number,
    test_end_temperature: Number,
    altitude: Number,
    barometer: Number | None,
    end_barometer: Number | None,
    pipe_volume: Number | None,
    test_time: Number | None,
    working_pressure: Number | None,
) -> dict[str, Any]:
    """What is left of the drop; with volume and time the leak as a flow of gas."""
    air = pressure_here(altitude, barometer)
    end, air_after = test_end, air
    if end_barometer is not None:
        air_after = believable(end_barometer, "end_barometer")
        end = end_at_first_barometer(test_end, barometer=air, end_barometer=air_after)
    gas = {
        "start_temperature": test_start_temperature,
        "end_temperature": test_end_temperature,
        "barometer": air,
    }
    drop = temperature_corrected_drop(start=test_start, end=end, **gas)
    tight = tight_end_pressure(test_start, **gas, end_barometer=air_after)
    leak = _leak(drop, test_start_temperature, pipe_volume, test_time)
    return {
        "tight_end": tight,
        "unexplained_drop": drop,
        **leak,
        **_due(working_pressure, pipe_volume),
    }


def _leak(
    drop: Number, temperature: Number, volume: Number | None, seconds: Number | None
) -> dict[str, Any]:
    """The leak as a flow of gas, where volume and time are known."""
    if volume is None or seconds is None:
        return {}
    rate = leak_rate(
        drop,
        volume,
        seconds=seconds,
        temperature=temperature,
        base_pressure=GAS_BASE_PRESSURE,
        base_temperature=GAS_BASE_TEMPERATURE,
    )
    return {"leak_rate": rate}


def _due(working_pressure: Number | None, volume: Number | None) -> dict[str, Any]:
    """What the codes ask of a test of new piping, where it can be told."""
    due = {}
    if working_pressure is not None:
        due["least_test_pressure"] = code_test_pressure(working_pressure, LEAST_TEST_PRESSURE)
    if volume is not None:
        due["least_test_time"] = code_test_time(volume)
    return due


def about_test(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What the drop left over means, what the codes ask, and how to test without harm."""
    isolated = used["test_start"] > ISOLATE_ABOVE
    caution = Note("calc-test-capped" if isolated else "calc-test-valve", {"limit": ISOLATE_ABOVE})
    return (*_meaning(used, results["unexplained_drop"]), *_code(used, results), caution)


def _meaning(used: Mapping[str, Any], drop: float) -> tuple[Note, ...]:
    """Whether the drop is more than a degree F of temperature misread."""
    air = pressure_here(used["altitude"], used["barometer"])
    inside = absolute_pressure(used["test_start"], air)
    kelvin = pressure_per_degree(inside, used["test_start_temperature"])
    degree = kelvin * FAHRENHEIT
    note = Note("calc-test-degree", {"fahrenheit": degree, "kelvin": kelvin}, advice=True)
    if abs(drop) <= degree:
        return (note, Note("calc-drop-in-a-degree", {}))
    return (note, Note("calc-drop-gained" if drop < 0 else "calc-drop-leaks", {}))


def _code(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Where a test of new piping would ask for more, and the gauge it is read on."""
    notes = [
        Note("calc-test-gauge", {"largest": largest_gauge_range(used["test_start"])}, advice=True)
    ]
    least, due = results.get("least_test_pressure"), results.get("least_test_time")
    if least is not None and used["test_start"] < least:
        notes.append(Note("calc-test-weak", {"least": least}))
    if due is not None and used["test_time"] is not None and used["test_time"] < due:
        notes.append(Note("calc-test-short", {"due": due}))
    return tuple(notes)


PRESSURE_DECAY = Calculation(
    name="pressure-decay",
    work=pressure_decay,
    inputs=(
        Input("test_start", "test pressure"),
        Input("test_end", "test pressure", signed=True),
        Input("test_start_temperature", "temperature"),
        Input("test_end_temperature", "temperature"),
        Input("test_time", "time", optional=True),
        Input("pipe_volume", "volume", optional=True),
        Input("altitude", "length", default=0.0, signed=True),
        Input("barometer", "absolute pressure", optional=True),
        Input("end_barometer", "absolute pressure", optional=True),
        Input("working_pressure", "test pressure", optional=True),
    ),
    outputs=(
        Output("unexplained_drop", "pressure"),
        Output("tight_end", "test pressure"),
        Output("leak_rate", "gas flow"),
        Output("least_test_pressure", "test pressure"),
        Output("least_test_time", "time"),
    ),
    remark=about_test,
    picture="decay",
)
