"""The codes' pipe equations against Darcy and Weisbach with Colebrook's friction factor.

The codes' equations carry a friction factor that falls with the flow to the -0.152 and knows no
roughness. Compared here with new steel pipe (0.045 mm) at 60 degF, viscosities from CoolProp, in
turbulent flow: the codes should err to the safe side, and by no more than rust may cost.
"""

from functools import cache

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI

from lightoff.physics import gas_pipe
from lightoff.physics.constants import GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE
from lightoff.physics.pipe_tables import CODE_GASES, CODE_TEMPERATURE, SCHEDULE_40
from lightoff.quantity import si

FLUIDS = {"natural gas": "Methane", "propane": "Propane"}
AIR = 28.96546e-3  # [kg/mol]
ROUGHNESS = 4.5e-5  # [m] commercial steel, new
LENGTH = 60.0  # [m]
TURBULENT = 4000  # Reynolds number
DIAMETERS = np.array(list(SCHEDULE_40.values()))
UP_TO_4_IN = DIAMETERS[:9]


@cache
def gas_factor(gas: str) -> float:
    code = CODE_GASES[gas]
    return float(
        gas_pipe.pipe_gas_factor(
            code.relative_density, viscosity=code.viscosity, temperature=CODE_TEMPERATURE
        )
    )


def squares_lost(
    gas: str, flow: np.ndarray, diameter: np.ndarray, pressure: float, ratio: float = 1.0
) -> tuple[np.ndarray, np.ndarray]:
    """Fall of the squared pressure, isothermal, and the Reynolds number.

    `ratio` of inlet to outlet pressure: a gas that expands is driven faster, too.
    """
    molar = CODE_GASES[gas].relative_density * AIR
    constant = 8.314462618 * GAS_BASE_TEMPERATURE / molar
    mass = flow * GAS_BASE_PRESSURE / constant
    viscosity = PropsSI("V", "T", GAS_BASE_TEMPERATURE, "P", pressure, FLUIDS[gas])
    reynolds = 4 * mass / (np.pi * diameter * viscosity)
    flux = mass / (np.pi / 4 * diameter**2)
    resistance = friction(reynolds, ROUGHNESS / diameter) * LENGTH / diameter
    return (resistance + 2 * np.log(ratio)) * flux**2 * constant, reynolds


def friction(reynolds: np.ndarray, roughness: np.ndarray) -> np.ndarray:
    """Colebrook and White, by substitution."""
    factor = np.full_like(reynolds, 0.02)
    for _ in range(40):
        factor = (-2 * np.log10(roughness / 3.7 + 2.51 / (reynolds * factor**0.5))) ** -2
    return factor


@pytest.mark.parametrize(("gas", "mean"), [("natural gas", 1.15), ("propane", 1.13)])
def test_the_low_pressure_drop_is_on_the_safe_side(gas: str, mean: float) -> None:
    """Found: natural gas 5 % under to 29 % over, mean 15; propane 6 under to 27 over, mean 13."""
    drops, diameters = np.meshgrid(np.geomspace(30, 3000, 9), DIAMETERS)
    flow = gas_pipe.low_pressure_flow(
        drops, diameter=diameters, length=LENGTH, gas_factor=gas_factor(gas)
    )
    inlet = 101325 + 7 * 249.08891
    lost, reynolds = squares_lost(gas, flow, diameters, inlet)
    ratio = (drops / (inlet - (inlet**2 - lost) ** 0.5))[reynolds > TURBULENT]
    assert ratio.min() > 0.93
    assert ratio.max() < 1.295
    assert ratio.mean() == pytest.approx(mean, abs=0.02)


@pytest.mark.parametrize("gas", FLUIDS)
@pytest.mark.parametrize(("gauge", "drop"), [(2, 0.5), (2, 1.0), (5, 1.0), (5, 3.5), (10, 3.0)])
def test_the_high_pressure_drop_is_within_a_fifth(gas: str, gauge: float, drop: float) -> None:
    """Found, to 4 in. pipe: natural gas 1 % under to 18 % over, propane 7 % under to 10 % over.

    A short, steep line is worse (13 % under at half the length): the codes leave out that an
    expanding gas has to be driven faster.
    """
    inlet = 101325 + si(gauge, "psi")
    outlet = inlet - si(drop, "psi")
    pipe = {"length": LENGTH, "gas_factor": gas_factor(gas)}
    flow = gas_pipe.high_pressure_flow(
        UP_TO_4_IN, inlet=inlet, outlet=outlet, expansion=CODE_GASES[gas].expansion, **pipe
    )
    lost, _ = squares_lost(gas, flow, UP_TO_4_IN, inlet, inlet / outlet)
    ratio = (inlet**2 - outlet**2) / lost
    assert (ratio > 0.925).all()
    assert (ratio < 1.19).all()


def test_the_codes_factor_takes_heavier_gas_to_be_as_thick_as_it_is() -> None:
    """The codes' viscosities are rounded: 12 % over methane's, 1.4 % over propane's; to the 0.152
    that is less than 2 % of the factor."""
    for gas, fluid in FLUIDS.items():
        code = CODE_GASES[gas]
        real = PropsSI("V", "T", GAS_BASE_TEMPERATURE, "P", 103e3, fluid)
        exact = gas_pipe.pipe_gas_factor(
            code.relative_density, viscosity=real, temperature=GAS_BASE_TEMPERATURE
        )
        assert gas_factor(gas) == pytest.approx(exact, rel=0.02)
