"""Orifice and meter against real gases from CoolProp."""

import itertools

import pytest
from CoolProp.CoolProp import PropsSI

from lightoff.physics import meter, orifice_size
from lightoff.physics.constants import GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE

AIR = 28.96546e-3  # [kg/mol]
BAROMETERS = (70e3, 84.56e3, 101.325e3)
TEMPERATURES = (250.0, 270.0, 288.706, 310.0)
DROPS = (82.0, 300.0, 870.0, 1743.0, 2740.0)  # [Pa] 0.33 to 11 in. w.c.


def mass_flux(fluid: str, pressure: float, drop: float, temperature: float) -> float:
    """Of a real gas that expands without loss, mass for each area and time."""
    before = pressure + drop
    entropy = PropsSI("S", "P", before, "T", temperature, fluid)
    above = PropsSI("H", "P", before, "T", temperature, fluid)
    below = PropsSI("H", "P", pressure, "S", entropy, fluid)
    density = PropsSI("D", "P", pressure, "S", entropy, fluid)
    return float(density * (2 * (above - below)) ** 0.5)


@pytest.mark.parametrize(("fluid", "within"), [("Methane", 0.0025), ("Propane", 0.0145)])
def test_an_incompressible_ideal_gas_is_enough_for_an_orifice(fluid: str, within: float) -> None:
    """Found: methane 0.16 % under to 0.25 % over, propane 1.4 % under to 0.15 % over.

    Cold propane is denser than an ideal gas; at 60 degF 0.9 %. An orifice's own scale is known
    to 2 %.
    """
    relative = PropsSI("M", fluid) / AIR
    for pressure, temperature, drop in itertools.product(BAROMETERS, TEMPERATURES, DROPS):
        density = orifice_size.flowing_density(relative, pressure=pressure, temperature=temperature)
        ours = density * orifice_size.orifice_speed(drop, density)
        assert ours == pytest.approx(mass_flux(fluid, pressure, drop, temperature), rel=within)


@pytest.mark.parametrize(("fluid", "within"), [("Methane", 0.0025), ("Propane", 0.0215)])
def test_the_ideal_gas_law_is_enough_at_a_meter(fluid: str, within: float) -> None:
    """Found, to 5 psi gauge: methane 0.23 %, propane 2.1 %: cold and compressed."""
    base = PropsSI("D", "P", GAS_BASE_PRESSURE, "T", GAS_BASE_TEMPERATURE, fluid)
    for pressure, temperature in itertools.product((*BAROMETERS, 115e3, 135e3), TEMPERATURES):
        real = PropsSI("D", "P", pressure, "T", temperature, fluid) / base
        ours = meter.base_volume_factor(pressure, temperature)
        assert ours == pytest.approx(real, rel=within)
