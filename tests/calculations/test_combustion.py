"""Fuel gas, a flue reading, CO free of air: against published figures and against harm."""

from typing import Any

import pytest

from lightoff.calculations import CALCULATIONS, Answer, CannotCalculateError, calculate
from lightoff.quantity import si

PPM = 1e-6


def answer(name: str, **given: Any) -> Answer:
    return calculate(CALCULATIONS[name], given)


def said(found: Answer) -> list[str]:
    return [note.message for note in found.notes]


def refused(name: str, **given: Any) -> tuple[str, str | None]:
    with pytest.raises(CannotCalculateError) as refusal:
        answer(name, **given)
    return refusal.value.message, refusal.value.place


def degC(number: float) -> float:
    return number + 273.15


# ---- flue

WARM = {"flue_temperature": degC(180), "combustion_air_temperature": degC(20)}
DRY = {**WARM, "relative_humidity": 0.0}


def test_a_reading_of_natural_gas() -> None:
    """Published case co-loss-natural-gas-o5-t180 (Cantera)."""
    found = answer("flue", o2=0.05, **DRY)
    results = found.results
    assert results["combustion_efficiency"] == pytest.approx(0.82905719, abs=5e-4)
    assert results["sensible_loss"] == pytest.approx(0.073440513, abs=4e-4)
    assert results["latent_loss"] == pytest.approx(0.0975023, abs=2e-4)
    assert results["excess_air"] == pytest.approx(0.28197151, abs=5e-4)
    assert said(found) == ["calc-typical-natural-gas", "calc-flue-steady"]


def test_a_reading_of_propane() -> None:
    """Published case co-loss-propane-o9-t200 (Cantera)."""
    found = answer("flue", gas="propane", o2=0.09, **{**DRY, "flue_temperature": degC(200)})
    assert found.results["combustion_efficiency"] == pytest.approx(0.81562047, abs=5e-4)
    assert found.results["excess_air"] == pytest.approx(0.69026836, abs=5e-4)
    assert "calc-typical-propane" in said(found)


def test_the_dew_point_falls_with_altitude() -> None:
    """Published cases co-dp-alt-0 and co-dp-alt-3000: 50 % excess air is 7.4846513 % O2."""
    low = answer("flue", o2=0.074846513, **DRY).results["flue_dew_point"]
    high = answer("flue", o2=0.074846513, altitude=3000.0, **DRY).results["flue_dew_point"]
    assert low == pytest.approx(degC(51.092367), abs=0.05)
    assert high == pytest.approx(degC(43.808341), abs=0.05)


def test_o2_and_the_co2_that_goes_with_it_say_the_same() -> None:
    by_o2 = answer("flue", o2=0.05, **WARM).results
    by_co2 = answer("flue", co2=by_o2["co2_found"], **WARM).results
    assert by_co2["o2_found"] == pytest.approx(0.05)
    assert by_co2["combustion_efficiency"] == pytest.approx(by_o2["combustion_efficiency"])


def test_two_readings_that_do_not_go_together_are_told() -> None:
    """Propane's 10.3 % CO2 beside an O2 of 5.2 % is no natural gas (co-flue-propane-ea30)."""
    readings = {"o2": 0.051666802, "co2": 0.10333362, **WARM}
    assert "calc-o2-co2-disagree" in said(answer("flue", gas="natural gas", **readings))
    assert "calc-o2-co2-disagree" not in said(answer("flue", gas="propane", **readings))
    assert not {"o2_found", "co2_found"} & answer("flue", **readings).results.keys()


def test_a_flue_below_its_dew_point_is_said_to_condense() -> None:
    cold = {**WARM, "flue_temperature": degC(35)}
    found = answer("flue", o2=0.05, **cold)
    assert "calc-flue-condenses" in said(found)
    assert found.results["latent_loss"] < answer("flue", o2=0.05, **WARM).results["latent_loss"]
    assert found.results["combustion_efficiency"] > 0.94


def test_damp_air_raises_the_dew_point() -> None:
    dry = answer("flue", o2=0.05, **DRY).results["flue_dew_point"]
    damp = answer("flue", o2=0.05, **WARM, relative_humidity=1.0).results["flue_dew_point"]
    assert 1.0 < damp - dry < 3.0


def test_a_thinned_sample_is_told() -> None:
    assert "calc-flue-diluted" in said(answer("flue", o2=0.16, **WARM))
    assert "calc-flue-diluted" in said(answer("flue", co2=0.02, **WARM))


def test_what_is_no_flue_is_refused() -> None:
    assert refused("flue", **WARM) == ("calc-o2-or-co2", "o2")
    assert refused("flue", o2=0.209, **WARM) == ("calc-no-such-o2", "o2")
    assert refused("flue", o2=-0.001, **WARM) == ("calc-no-such-o2", "o2")
    assert refused("flue", co2=0.13, **WARM) == ("calc-no-such-co2", "co2")
    assert refused("flue", co2=0.0, **WARM) == ("calc-no-such-co2", "co2")
    swapped = {"flue_temperature": degC(20), "combustion_air_temperature": degC(180)}
    assert refused("flue", o2=0.05, **swapped) == ("calc-flue-cold", "flue_temperature")
    damp = {**WARM, "relative_humidity": 40.0}
    assert refused("flue", o2=0.05, **damp) == ("calc-humidity-share", "relative_humidity")


# ---- CO


def test_co_free_of_air() -> None:
    """Published cases co-airfree-100-9 and co-airfree-co2 (ultimate CO2 11.9 there, 11.92 here)."""
    found = answer("co-air-free", co=100 * PPM, o2=0.09)
    assert found.results["co_air_free"] / PPM == pytest.approx(175.63025, rel=1e-6)
    by_co2 = answer("co-air-free", co=80 * PPM, co2=0.08)
    assert by_co2.results["co_air_free"] / PPM == pytest.approx(119, rel=3e-3)


@pytest.mark.parametrize(
    ("co", "note"), [(50, "calc-co-again"), (99, "calc-co-again"), (101, "calc-co-look"),
                     (399, "calc-co-look"), (401, "calc-co-unsafe")]
)  # fmt: skip
def test_where_co_becomes_a_matter(co: float, note: str) -> None:
    """At no excess air what is read is what is judged: 100 and 400 ppm (domain.md)."""
    assert said(answer("co-air-free", co=co * PPM, o2=0.0)) == [note]


def test_a_diluted_sample_is_not_reckoned_with() -> None:
    assert refused("co-air-free", co=50 * PPM, o2=0.151) == ("calc-co-diluted", "o2")
    assert refused("co-air-free", co=50 * PPM, co2=0.03) == ("calc-co-diluted", "co2")
    assert answer("co-air-free", co=50 * PPM, o2=0.15).results["co_air_free"] > 150 * PPM


@pytest.mark.parametrize(
    "beside", [{}, {"o2": 0.18}, {"co2": 0.01}, {"o2": 0.25}, {"co2": 0.5}, {"o2": 0.02}]
)
def test_co_past_the_limit_is_never_let_off(beside: dict[str, float]) -> None:
    """Raw CO above 400 ppm is past the limit whatever stands beside it, right or wrong."""
    given = {"co": 450 * PPM, **beside}
    if beside == {"o2": 0.02}:
        assert said(answer("co-air-free", **given)) == ["calc-co-unsafe"]
    else:
        assert refused("co-air-free", **given) == ("calc-co-unsafe-as-read", "co")


def test_what_is_no_reading_of_co_is_refused() -> None:
    assert refused("co-air-free", co=-5 * PPM, o2=0.05) == ("calc-co-negative", "co")
    assert refused("co-air-free", co=20 * PPM) == ("calc-o2-or-co2", "o2")


# ---- gas

STANDARD = {"methane": 0.933212, "ethane": 0.025656, "propane": 0.015368,
            "nitrogen": 0.01035, "carbon_dioxide": 0.015414}  # fmt: skip


def test_the_example_of_the_standard() -> None:
    """ISO 6976:2016, Annex D.2: 38.410611 MJ/m3, Z 0.99776224."""
    found = answer("gas", **STANDARD, reference="15/15")
    assert found.results["heating_value"] / 1e6 == pytest.approx(38.410611, rel=1e-6)
    assert found.results["compressibility"] == pytest.approx(0.99776224, abs=1e-7)
    assert said(found) == ["calc-gas-dry"]


def test_propane_is_told_to_be_more_than_its_ideal_table() -> None:
    """GPA 2145: 2516.1 Btu/ft3, ideal; a real cubic foot holds 1/Z of it, at 60 degF 1.8 % more."""
    found = answer("gas", propane=1.0, reference="us-14.696")
    ideal = found.results["heating_value"] * found.results["compressibility"]
    assert ideal / si(1, "Btu/ft3") == pytest.approx(2516.1, rel=5e-4)
    note = next(note for note in found.notes if note.message == "calc-gas-real")
    assert note.values["more"] == pytest.approx(0.018, abs=5e-4)


def test_a_higher_base_pressure_holds_more() -> None:
    low = answer("gas", **STANDARD, reference="us-14.696").results["heating_value"]
    high = answer("gas", **STANDARD, reference="us-14.73").results["heating_value"]
    assert high / low == pytest.approx(14.73 / 14.696, rel=1e-4)


def test_a_rounded_analysis_is_taken_and_told() -> None:
    found = answer("gas", methane=0.96, ethane=0.03, nitrogen=0.012)
    assert "calc-parts-rounded" in said(found)
    exact = answer("gas", methane=0.96 / 1.002, ethane=0.03 / 1.002, nitrogen=0.012 / 1.002)
    assert found.results["wobbe"] == pytest.approx(exact.results["wobbe"])


def test_an_analysis_with_a_part_left_out_is_refused() -> None:
    assert refused("gas", methane=0.90, ethane=0.03) == ("calc-parts-sum", "methane")
    assert refused("gas") == ("calc-parts-sum", "methane")
    assert refused("gas", methane=1.1, ethane=-0.1) == ("calc-part-negative", "ethane")
    assert refused("gas", methane=93.0, ethane=7.0) == ("calc-parts-sum", "methane")
