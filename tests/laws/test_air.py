"""Moist air and the atmosphere: every way of saying one state says the same state."""

from statistics import fmean, pstdev

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from lightoff.physics.atmosphere import (
    barometric_pressure,
    geopotential_altitude,
    geopotential_altitude_of_pressure,
    pressure_of_altimeter_setting,
    pressure_of_sea_level_pressure,
    standard_density,
    standard_temperature,
)
from lightoff.physics.mixing import (
    largest_unmixed_spread,
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
    moist_air_volume,
    relative_humidity,
    saturated_humidity_ratio,
    temperature_of_enthalpy,
    vapour_pressure,
    vapour_pressure_of_ratio,
)
from lightoff.physics.psychrometer import humidity_ratio_from_wet_bulb, wet_bulb
from lightoff.physics.saturation import FREEZING, dew_point, saturation_pressure

temperatures = st.floats(223.15, 333.15)
humidities = st.floats(0.001, 1)
pressures = st.floats(60e3, 110e3)
shares = st.floats(0, 1)


@given(temperatures, humidities, pressures)
def test_relative_humidity_and_humidity_ratio_say_the_same(T: float, phi: float, p: float) -> None:
    W = humidity_ratio(T, relative_humidity=phi, pressure=p)
    assert relative_humidity(T, humidity_ratio=W, pressure=p) == pytest.approx(phi, rel=1e-12)
    assert vapour_pressure_of_ratio(W, p) == pytest.approx(vapour_pressure(T, phi), rel=1e-12)


@given(st.floats(-6.5, 11.6))
def test_at_the_dew_point_the_vapour_is_saturated(logarithm: float) -> None:
    vapour = 2.718281828**logarithm
    assert saturation_pressure(dew_point(vapour)) == pytest.approx(vapour, rel=2e-10)  # 6e-10 K


@given(temperatures, humidities, pressures)
def test_air_cooled_to_its_dew_point_keeps_its_water(T: float, phi: float, p: float) -> None:
    W = humidity_ratio(T, relative_humidity=phi, pressure=p)
    assert saturated_humidity_ratio(dew_point(vapour_pressure(T, phi)), p) == pytest.approx(W)


@given(temperatures, st.floats(0, 1), pressures)
def test_the_wet_bulb_found_gives_the_humidity_back(T: float, phi: float, p: float) -> None:
    W = humidity_ratio(T, relative_humidity=phi, pressure=p)
    found = wet_bulb(T, humidity_ratio=W, pressure=p)
    again = humidity_ratio_from_wet_bulb(T, wet_bulb=found, pressure=p)
    assert again == pytest.approx(W, rel=1e-9, abs=2e-11)  # 1e-8 K of wet bulb


@given(temperatures, st.floats(0, 25), pressures)
def test_a_wet_bulb_read_is_the_wet_bulb_found(T: float, depression: float, p: float) -> None:
    """But for a wick of ice just below freezing, where one of water just above would do too."""
    read = T - depression
    W = humidity_ratio_from_wet_bulb(T, wet_bulb=read, pressure=p)
    assume(W >= 0)
    found = wet_bulb(T, humidity_ratio=W, pressure=p)
    if read < FREEZING <= found:
        assert found - read < 2
    else:
        assert found == pytest.approx(read, abs=1e-6)


@given(st.floats(274.15, 303.15), shares, pressures)
def test_where_water_and_ice_would_both_do_the_wick_is_wet(T: float, x: float, p: float) -> None:
    thawed = humidity_ratio_from_wet_bulb(T, wet_bulb=FREEZING, pressure=p)
    frozen = humidity_ratio_from_wet_bulb(T, wet_bulb=FREEZING - 1e-9, pressure=p)
    assert frozen > thawed
    assume(thawed > 0)
    found = wet_bulb(T, humidity_ratio=thawed + x * (frozen - thawed), pressure=p)
    assert found >= FREEZING


@given(temperatures, humidities, pressures)
def test_the_wet_bulb_lies_between_dew_point_and_dry_bulb(T: float, phi: float, p: float) -> None:
    W = humidity_ratio(T, relative_humidity=phi, pressure=p)
    found = wet_bulb(T, humidity_ratio=W, pressure=p)
    assert dew_point(vapour_pressure(T, phi)) - 1e-6 <= found <= T


@given(temperatures, pressures)
def test_in_saturated_air_all_three_temperatures_are_one(T: float, p: float) -> None:
    W = humidity_ratio(T, relative_humidity=1.0, pressure=p)
    assert saturated_humidity_ratio(T, p) == W
    assert dew_point(vapour_pressure(T, 1.0)) == pytest.approx(T, abs=1e-6)
    assert wet_bulb(T, humidity_ratio=W, pressure=p) == pytest.approx(T, abs=1e-6)


@given(temperatures, st.floats(0.001, 0.1), pressures)
def test_air_beyond_saturation_has_no_wet_bulb_above_its_own(T: float, x: float, p: float) -> None:
    W = saturated_humidity_ratio(T, p) * (1 + x)
    assert wet_bulb(T, humidity_ratio=W, pressure=p) == T


@given(temperatures, st.floats(0, 0.05), st.floats(0.001, 0.05), pressures)
def test_damp_air_is_lighter(T: float, W: float, more: float, p: float) -> None:
    dry = moist_air_density(T, humidity_ratio=W, pressure=p)
    assert moist_air_density(T, humidity_ratio=W + more, pressure=p) < dry


@given(temperatures, st.floats(0, 0.05), pressures)
def test_density_and_volume_are_of_one_mass(T: float, W: float, p: float) -> None:
    state = {"humidity_ratio": W, "pressure": p}
    mass = moist_air_density(T, **state) * moist_air_volume(T, **state)
    assert mass == pytest.approx(1 + W)


@given(temperatures, st.floats(0, 0.05))
def test_enthalpy_and_temperature_say_the_same(T: float, W: float) -> None:
    assert temperature_of_enthalpy(moist_air_enthalpy(T, W), W) == pytest.approx(T)


@given(st.floats(0.01, 50), st.floats(0.01, 50), temperatures, temperatures, shares, shares)
def test_mixing_loses_neither_air_nor_water_nor_heat(
    m: float, n: float, T: float, U: float, x: float, y: float
) -> None:
    share, W, V = mass_share(m, n), 0.02 * x, 0.02 * y
    h, k = moist_air_enthalpy(T, W), moist_air_enthalpy(U, V)
    water = mixed_humidity_ratio(share, humidity_ratio=W, other=V)
    heat = mixed_enthalpy(share, enthalpy=h, other=k)
    assert (m + n) * water == pytest.approx(m * W + n * V, abs=1e-12)
    assert (m + n) * heat == pytest.approx(m * h + n * k, abs=1e-6)
    assert mass_share(n, m) == pytest.approx(1 - share)
    assert min(T, U) - 1e-9 <= temperature_of_enthalpy(heat, water) <= max(T, U) + 1e-9


@given(shares, st.floats(230, 290), st.floats(291, 310))
def test_three_temperatures_give_the_share_that_was_mixed(x: float, o: float, r: float) -> None:
    heat = mixed_enthalpy(x, enthalpy=moist_air_enthalpy(o, 0.0), other=moist_air_enthalpy(r, 0.0))
    mixed = temperature_of_enthalpy(heat, 0.0)
    assert outdoor_share(mixed, outdoor=o, indoor=r) == pytest.approx(x, abs=1e-9)


@given(shares, st.floats(230, 285), st.floats(291, 310), st.floats(-1, 1), st.floats(-1, 1))
def test_the_spread_of_a_share_is_what_errors_make_of_it(
    x: float, o: float, r: float, a: float, b: float
) -> None:
    """Small errors of three probes move the share by no more than their spread allows: Cauchy's
    inequality, and met where they conspire."""
    e = 1e-4
    mixed = r - x * (r - o)
    moved = outdoor_share(mixed + e, outdoor=o + a * e, indoor=r + b * e) - x
    size = (1 + a * a + b * b) ** 0.5
    spread = outdoor_share_spread(x, r - o, probe=e, unmixed=0.0)
    assert abs(moved) <= spread / 2 * size * (1 + 1e-3)
    worst = outdoor_share(mixed - e, outdoor=o + x * e, indoor=r + (1 - x) * e) - x
    size = (1 + x * x + (1 - x) ** 2) ** 0.5
    assert worst == pytest.approx(spread / 2 * size, rel=1e-3)


@given(st.lists(st.floats(230, 400), min_size=2, max_size=40))
def test_no_unmixed_air_scatters_more_than_the_bound(places: list[float]) -> None:
    mean = min(max(fmean(places), min(places)), max(places))  # its rounding may leave them
    bound = largest_unmixed_spread(mean - min(places), max(places) - mean)
    assert pstdev(places) <= bound * (1 + 1e-9) + 1e-6


@given(st.floats(0, 150), st.integers(1, 9), st.integers(1, 9))
def test_air_in_two_halves_scatters_by_all_of_the_bound(d: float, cold: int, hot: int) -> None:
    places = [300.0] * cold + [300.0 + d] * hot
    mean = fmean(places)
    assert largest_unmixed_spread(mean - 300.0, 300.0 + d - mean) == pytest.approx(
        pstdev(places), abs=1e-6
    )


@given(st.floats(0, 150), st.integers(1, 30))
def test_four_times_the_places_halve_the_spread(d: float, places: int) -> None:
    one = unmixed_probe_spread(d, float(places), share=0.1)
    assert unmixed_probe_spread(d, 4.0 * places, share=0.1) == pytest.approx(one / 2)


@given(st.floats(-500, 4000), st.floats(1, 500))
def test_the_atmosphere_thins_with_altitude(z: float, higher: float) -> None:
    for falls in (barometric_pressure, standard_temperature, standard_density):
        assert falls(z + higher) < falls(z)


@given(st.floats(95e3, 105e3), st.floats(-400, 4000))
def test_an_altimeter_setting_is_so_many_metres_of_standard_air(setting: float, z: float) -> None:
    pressure = pressure_of_altimeter_setting(setting, z)
    climbed = geopotential_altitude_of_pressure(pressure) - geopotential_altitude_of_pressure(
        setting
    )
    assert climbed == pytest.approx(geopotential_altitude(z), abs=1e-6)


@given(st.floats(-500, 4000))
def test_in_standard_air_both_reductions_give_the_standard_pressure(z: float) -> None:
    """The weather map's, with one mean temperature for the column, within its approximation."""
    standard = barometric_pressure(z)
    assert pressure_of_altimeter_setting(101325.0, z) == pytest.approx(standard, rel=1e-12)
    by_map = pressure_of_sea_level_pressure(101325.0, z, temperature=standard_temperature(z))
    assert by_map == pytest.approx(standard, rel=4e-4)
