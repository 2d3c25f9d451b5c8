"""Airflow from the rise, against the trade's rule."""

import pytest

from lightoff.calculations import CALCULATIONS, CannotCalculateError, calculate
from lightoff.quantity import si

FOUND = CALCULATIONS["airflow-from-rise"]


def degF(number: float) -> float:
    return (number + 459.67) * 5 / 9


def test_the_rule_of_one_point_oh_eight() -> None:
    """q = 1.08 Q dT, standard air of 0.075 lb/ft3 (ASHRAE; published case bu-sensible-*)."""
    answer = calculate(
        FOUND,
        {
            "burner_input": si(400, "kBtu/h"),
            "efficiency": 0.81,
            "entering_temperature": degF(70),
            "discharge_temperature": degF(110),
            "relative_humidity": 0.0,
        },
    )
    ours = answer.results["airflow"] / si(1, "cfm")
    assert ours == pytest.approx(400e3 * 0.81 / (1.08 * 40), rel=0.005)


def test_thin_air_takes_a_larger_flow_for_the_same_heat() -> None:
    given = {
        "burner_input": 100e3,
        "entering_temperature": 280.0,
        "discharge_temperature": 300.0,
    }
    low = calculate(FOUND, given).results
    high = calculate(FOUND, {**given, "altitude": 1500.0}).results
    assert high["airflow"] / low["airflow"] == pytest.approx(101325 / 84560, rel=1e-3)
    assert high["standard_airflow"] == pytest.approx(low["standard_airflow"], rel=2e-3)


def test_a_small_rise_is_said_to_be_blind() -> None:
    given = {"burner_input": 1e5, "entering_temperature": 280.0, "discharge_temperature": 285.0}
    assert "calc-small-rise" in [note.message for note in calculate(FOUND, given).notes]


def test_air_that_leaves_colder_is_refused() -> None:
    given = {"burner_input": 1e5, "entering_temperature": 300.0, "discharge_temperature": 280.0}
    with pytest.raises(CannotCalculateError) as refused:
        calculate(FOUND, given)
    assert (refused.value.message, refused.value.place) == ("calc-no-rise", "discharge_temperature")


def test_what_is_missing_is_named() -> None:
    with pytest.raises(CannotCalculateError) as refused:
        calculate(FOUND, {"burner_input": 1e5})
    assert refused.value.place == "entering_temperature"
