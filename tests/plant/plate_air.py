"""Draws the airside and the fan of a plate."""

from dataclasses import replace
from random import Random

from plant.fan import PATTERNS, Fan, selected, speed_for
from plant.plate import AirPlate, FanPlate
from plant.root import between
from plant.si import CFM, HP, INWC, STANDARD_AIR, clip


def airside(rng: Random, airflow: float) -> AirPlate:
    """Drops at an airflow [cfm], by what makers of such units print."""
    clean = rng.choice((0.12, 0.15, 0.20, 0.25, 0.30))
    return AirPlate(
        airflow=airflow,
        external=rng.choice((0.30, 0.40, 0.50, 0.60, 0.75, 0.80, 1.00, 1.25)),
        hood=rng.choice((0.05, 0.06, 0.08, 0.10, 0.12)),
        damper=rng.choice((0.05, 0.06, 0.08, 0.10)),
        filters=clean,
        change=round(clean + rng.choice((0.3, 0.4, 0.5)), 2),
        furnace=rng.choice((0.15, 0.18, 0.20, 0.25, 0.30)),
        coil=rng.choice((0.0, 0.0, 0.0, 0.0, 0.12, 0.20)),
        recirculation=rng.choice((0.2, 0.3, 0.5)) if rng.random() < 0.08 else 0.0,
        exhaust=50.0 * round(airflow / rng.uniform(0.85, 1.02) / 50.0),
    )


def total(air: AirPlate, furnaces: int) -> float:
    """What the designer adds up [Pa]."""
    parts = air.hood + air.damper + air.filters + furnaces * air.furnace + air.coil + air.external
    return parts * INWC


def fan(rng: Random, air: AirPlate, furnaces: int, direct: float | None) -> tuple[Fan, FanPlate]:
    """As the maker's catalogue has it; `direct`: the speed it must run at [rpm]."""
    volume, pressure = air.airflow * CFM, total(air, furnaces)
    kind = rng.choice(("backward", "plenum")) if direct else rng.choice(tuple(PATTERNS))
    wheel = selected(_varied(rng, PATTERNS[kind]), volume, pressure, rng.uniform(0.85, 1.15))
    if direct:  # the works trim the width until the wheel's own speed does it
        wheel = _trimmed(wheel, volume, pressure, direct)
    else:
        inches = clip(round(wheel.diameter / 0.0254 / 1.5) * 1.5, 9.0, 44.5)
        wheel = replace(wheel, diameter=inches * 0.0254)
    speed = 5.0 * round(speed_for(wheel, volume, pressure) / 5.0)
    most = 50.0 * round(speed * rng.uniform(1.12, 1.45) / 50.0 + 0.5)
    return wheel, FanPlate(kind, round(wheel.diameter / 0.0254, 1), speed, most,
                           _curve(rng, wheel, speed, air.airflow))  # fmt: skip


def _varied(rng: Random, pattern: Fan) -> Fan:
    """No two makers' wheels are alike: 5 to 12 % on each coefficient (judgement)."""
    return replace(
        pattern,
        head=pattern.head * rng.uniform(0.95, 1.05),
        lean=pattern.lean * rng.uniform(0.9, 1.1),
        shock=pattern.shock * rng.uniform(0.85, 1.15),
        friction=pattern.friction * rng.uniform(0.88, 1.12),
    )


def _trimmed(wheel: Fan, volume: float, pressure: float, speed: float) -> Fan:
    """Diameter for the tip speed, width for the flow."""
    number = wheel.best
    u = wheel.tip(speed_for(wheel, volume, pressure))
    diameter = round(u / (speed * 0.10471976 / 2.0) / 0.0254, 1) * 0.0254
    trimmed = replace(wheel, diameter=diameter, width=1.0)

    def short(width: float) -> float:
        given = replace(trimmed, width=width)
        return given.static(volume, STANDARD_AIR, speed) - pressure

    low = volume / (1.6 * number * trimmed.area * trimmed.tip(speed))
    return replace(trimmed, width=between(short, low, 1.9 * low, 1e-5))


def _curve(
    rng: Random, wheel: Fan, speed: float, cfm: float
) -> tuple[tuple[float, float, float | None], ...]:
    """Some points of the catalogue's curve at the design speed, rounded as catalogues do."""
    if rng.random() < 0.2:
        return ()
    powers = rng.random() < 0.85
    shares = rng.choice(((0.75, 1.0, 1.2), (0.7, 0.85, 1.0, 1.15), (0.6, 0.8, 1.0, 1.1, 1.25)))
    step = 10.0 if cfm < 3000 else 50.0 if cfm < 9000 else 100.0
    points: list[tuple[float, float, float | None]] = []
    for share in shares:
        flow = step * round(share * cfm / step)
        pressure = wheel.static(flow * CFM, STANDARD_AIR, speed) / INWC
        power = wheel.power(flow * CFM, STANDARD_AIR, speed) / HP
        if pressure > 0.1 and (not points or pressure < points[-1][1] + 0.5):
            digits = 2 if power < 5 else 1
            points.append((flow, round(pressure, 2), round(power, digits) if powers else None))
    return tuple(points)
