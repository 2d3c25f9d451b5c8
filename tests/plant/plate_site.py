"""Draws the site of a plate: height, climate, gas as the utility tells it, pipes."""

from random import Random

from plant.air import atmosphere
from plant.fuel import Fuel, normal
from plant.gas_line import Pipe
from plant.plate import PipePlate, SitePlate
from plant.si import BTU, CUBIC_FOOT, FOOT, INWC, KBTU_H, SEA_LEVEL


def altitude(rng: Random) -> float:
    """Most of the trade is low; one in seven stands above 1,500 m (judgement) [ft]."""
    low, high = rng.choices(((0, 1600), (1600, 4900), (4900, 9840)), (58, 27, 15))[0]
    return 10.0 * round(rng.uniform(low, high) / 10.0)


def natural_gas(rng: Random) -> Fuel:
    """Pipeline gas: heating value 1035 and 16 Btu/ft3 (sp-gas-hv-us), Wobbe number 1336 and 10.

    Rich gas is ballasted: nitrogen and carbon dioxide go up with the ethane (sp-gas-wobbe-cities).
    """
    ethane = min(rng.gammavariate(6.0, 0.0072), 0.11)
    propane = ethane * rng.uniform(0.04, 0.14)
    butane = propane * rng.uniform(0.1, 0.35)
    nitrogen = 0.17 * ethane + rng.uniform(0.001, 0.011)
    carbon = 0.09 * ethane + rng.uniform(0.001, 0.009)
    rest = 1.0 - ethane - propane - butane - nitrogen - carbon
    return normal(methane=rest, ethane=ethane, propane=propane, butane=0.55 * butane,
                  isobutane=0.45 * butane, nitrogen=nitrogen, carbon_dioxide=carbon)  # fmt: skip


def propane(rng: Random) -> Fuel:
    """HD-5: at least 90 % propane, at most 5 % propylene, butanes 2.5 % (sp-propane-content)."""
    propylene, ethane = rng.uniform(0.0, 0.05), rng.uniform(0.0, 0.04)
    butane = rng.uniform(0.0, 0.025)
    return normal(propane=1.0 - propylene - ethane - butane, propylene=propylene,
                  ethane=ethane, butane=butane * 0.5, isobutane=butane * 0.5)  # fmt: skip


def gas_words(
    rng: Random, fuel: Fuel, gas: str, feet: float
) -> tuple[float | None, str, float | None, tuple[tuple[str, float], ...]]:
    """Heating value, its basis, relative density, composition, as somebody found them."""
    true = fuel.heating_value / BTU * CUBIC_FOOT
    way = rng.random()
    if gas == "propane":
        # suppliers print one of two figures, both older than any tank of theirs
        value, density = (2500.0, 1.53) if way < 0.6 else (2516.0, 1.52)
        return value, "standard", density, ()
    if way < 0.08:
        parts = tuple((name, round(x, 4)) for name, x in fuel.parts if x > 0.0005)
        return None, "standard", None, parts
    if way < 0.25:  # nobody asked: the national figure
        return (rng.choice((1030.0, 1037.0, 1000.0 if way < 0.1 else 1030.0)), "standard", 0.60, ())
    # the utility's last figures (sp-gas-hv-month, sp-gas-sg-month; they go together)
    common = rng.gauss(0.0, 1.0)
    value = true * (1.0 + 0.007 * common)
    density = fuel.relative_density * (1.0 + 0.012 * (0.88 * common + 0.47 * rng.gauss(0.0, 1.0)))
    if feet > 3000 and rng.random() < 0.4:  # bought by the cubic foot as it comes
        local = atmosphere(feet * FOOT) / SEA_LEVEL
        return round(value * local), "as delivered", round(density, 3), ()
    return round(value), "standard", round(density, 3), ()


def climate(rng: Random) -> tuple[float, float]:
    """The design winter day and the set point [degF]."""
    winter = float(round(rng.triangular(-25.0, 38.0, 8.0)))
    return winter, float(rng.choice((60, 65, 68, 70, 70, 72, 75)))


def site(
    rng: Random,
    feet: float,
    fuel: Fuel,
    gas: str,
    load: float,
    pipes: tuple[Pipe, ...],
    winter: float,
    discharge: float,
) -> SitePlate:
    """`load` is the whole unit's [W]."""
    value, basis, density, parts = gas_words(rng, fuel, gas, feet)
    hour = load / fuel.heating_value * 3600.0 / CUBIC_FOOT  # [ft3/h]
    dial = 1.0 if hour < 250 else 2.0 if hour < 900 else 5.0 if hour < 1800 else 10.0
    return SitePlate(
        altitude=feet, winter=winter, summer=float(round(winter * 0.12 + rng.uniform(84, 96))),
        discharge=discharge, heating_value=value, basis=basis,
        relative_density=density, composition=parts,
        supply=rng.choice((7.0, 7.0, 8.0, 9.0)) if gas == "natural gas" else 11.5,
        dial=dial, compensated=rng.random() < 0.45,
        pipes=tuple(PipePlate(pipe.size, round(pipe.length / FOOT), round(pipe.other / KBTU_H))
                    for pipe in pipes),
    )  # fmt: skip


def lengths(rng: Random) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Metres of each stretch, and the share of the unit's load that others take from it."""
    count = rng.choice((1, 1, 2))
    metres = tuple(FOOT * 5.0 * round(rng.uniform(30, 200) / 5.0 / count) for _ in range(count))
    others = tuple(rng.choice((0.0, 0.0, 0.3, 0.6)) for _ in range(count))
    return metres, others


ALLOWED = 0.5 * INWC  # what a pipe sizer spends on a low-pressure line
