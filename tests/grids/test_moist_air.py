"""Moist air on a grid of states: against PsychroLib (the same equations) and CoolProp (a real gas).

States: -40 to 60 degC, 0 to 3500 m, dry to saturated.
"""

from collections.abc import Callable

import numpy as np
import psychrolib
import pytest
from CoolProp.CoolProp import HAPropsSI, PropsSI

from lightoff.physics.atmosphere import barometric_pressure, pressure_of_sea_level_pressure
from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    moist_air_volume,
    vapour_pressure,
)
from lightoff.physics.psychrometer import humidity_ratio_from_wet_bulb, wet_bulb
from lightoff.physics.saturation import FREEZING, dew_point, saturation_pressure

psychrolib.SetUnitSystem(psychrolib.SI)

Array = np.ndarray
t, z, phi = (
    grid.ravel()
    for grid in np.meshgrid(
        np.arange(-40.0, 61.0, 5.0),
        [0.0, 1000.0, 2000.0, 3500.0],
        [0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0],
        indexing="ij",
    )
)
T, p = t + FREEZING, barometric_pressure(z)
W = humidity_ratio(T, relative_humidity=phi, pressure=p)
T_wb = wet_bulb(T, humidity_ratio=W, pressure=p)
T_dp = dew_point(vapour_pressure(T, phi))
rho = moist_air_density(T, humidity_ratio=W, pressure=p)


def each(function: Callable[..., float], *arguments: Array) -> Array:
    return np.array([function(*map(float, row)) for row in zip(*arguments, strict=True)])


def test_humidity_ratio_is_psychrolibs_to_the_last_digits() -> None:
    theirs = each(psychrolib.GetHumRatioFromRelHum, t, phi, p)
    np.testing.assert_allclose(W, theirs, rtol=1e-13)


def test_density_is_psychrolibs_but_for_a_constant_rounded_there() -> None:
    """It writes 1.607858 for 1/0.621945, 8e-7 less; that times the humidity: found 2.3e-7."""
    np.testing.assert_allclose(rho, each(psychrolib.GetMoistAirDensity, t, W, p), rtol=3e-7)


def test_enthalpy_is_psychrolibs_to_the_last_digits() -> None:
    theirs = each(psychrolib.GetMoistAirEnthalpy, t, W)
    np.testing.assert_allclose(moist_air_enthalpy(T, W), theirs, rtol=1e-13, atol=1e-8)


def test_dew_and_frost_point_are_psychrolibs() -> None:
    """It stops when Newton's step falls below 0.001 K; what is left then is far less: 4e-9."""
    theirs = each(psychrolib.GetTDewPointFromRelHum, t, phi) + FREEZING
    np.testing.assert_allclose(T_dp, theirs, rtol=0, atol=1e-7)


def test_wet_bulb_is_psychrolibs_within_its_own_tolerance() -> None:
    """It halves an interval down to 0.001 K. Where water just above freezing and ice just below
    would both do, it takes one or the other as its halving falls, and we the water."""
    theirs = each(psychrolib.GetTWetBulbFromHumRatio, t, W, p) + FREEZING
    other = (T_wb >= FREEZING) & (theirs < FREEZING)
    np.testing.assert_allclose(T_wb[~other], theirs[~other], rtol=0, atol=1e-3)
    assert 0 < other.sum() < 0.01 * other.size
    as_ice = humidity_ratio_from_wet_bulb(T[other], wet_bulb=theirs[other], pressure=p[other])
    as_water = humidity_ratio_from_wet_bulb(T[other], wet_bulb=T_wb[other], pressure=p[other])
    np.testing.assert_allclose(as_water, W[other], rtol=1e-9)
    np.testing.assert_allclose(as_ice, W[other], rtol=1e-2)  # 0.001 K of its own is 0.5 % of W


def test_the_weather_maps_pressure_is_psychrolibs() -> None:
    """It takes the altitude for the geopotential one, 2 m less at 3500 m: found 2.7e-4."""
    theirs = each(psychrolib.GetStationPressure, np.full_like(z, 101325.0), z, t)
    ours = pressure_of_sea_level_pressure(101325.0, z, temperature=T)
    np.testing.assert_allclose(ours, theirs, rtol=2.8e-4)


def real(name: str) -> Array:
    """CoolProp's moist air after ASHRAE RP-1485, a real gas."""
    return each(lambda t, p, phi: HAPropsSI(name, "T", t, "P", p, "R", phi), T, p, phi)


@pytest.mark.parametrize(("below", "most"), [(40.0, 0.0055), (60.0, 0.0075)])
def test_a_perfect_gas_holds_a_little_less_water_than_the_real_one(
    below: float, most: float
) -> None:
    """The enhancement factor: found 0.53 % to 40 degC, 0.73 % to 60, and never more than it."""
    part = t <= below
    less = 1 - W[part] / real("W")[part]
    assert np.all((less > 0) & (less < most))


def test_volume_is_the_real_gass_within_a_seventh_of_a_percent() -> None:
    """Found 0.131 % at -40 degC, where air is farthest from perfect."""
    ours = moist_air_volume(T, humidity_ratio=W, pressure=p)
    np.testing.assert_allclose(ours, real("V"), rtol=0.00135)


def test_enthalpy_is_the_real_gass_within_a_sixth_of_a_degree() -> None:
    """Constant heat capacities, at one humidity ratio: found 149 J/kg to 40 degC, 0.15 K of air."""
    part = t <= 40.0
    ours = moist_air_enthalpy(T, real("W"))
    np.testing.assert_allclose(ours[part], real("H")[part], rtol=0, atol=155)


def test_dew_point_is_the_real_gass() -> None:
    """The enhancement factor again: found 0.0255 K, at 60 degC and sea level."""
    np.testing.assert_allclose(T_dp, real("D"), rtol=0, atol=0.026)


def test_wet_bulb_is_the_real_gass() -> None:
    """Found 0.031 K; where water and ice would both do, CoolProp takes the ice."""
    theirs = real("B")
    one = (T_wb >= FREEZING) == (theirs >= FREEZING)
    np.testing.assert_allclose(T_wb[one], theirs[one], rtol=0, atol=0.032)
    assert one.mean() > 0.99


def test_saturation_pressure_is_that_of_iapws_95() -> None:
    """Hyland and Wexler used the temperature scale of 1968: found 0.022 % to 60 degC."""
    warm = np.arange(0.05, 60.0, 0.5) + FREEZING
    water = each(lambda T: PropsSI("P", "T", T, "Q", 0, "Water"), warm)
    np.testing.assert_allclose(saturation_pressure(warm), water, rtol=2.5e-4)
