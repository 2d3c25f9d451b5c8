"""The operating point: where the fan's pressure meets what the air goes through."""

from dataclasses import dataclass

from plant.machine import Machine


@dataclass(frozen=True)
class Warmth:
    """Temperatures and densities along the air's way, as last found."""

    outdoor: tuple[float, float]  # [K], [kg/m3]
    mixed: tuple[float, float]
    fan: tuple[float, float]
    tubes: tuple[float, ...]  # [kg/m3] in each exchanger
    discharge: tuple[float, float]


@dataclass(frozen=True)
class Stations:
    """Static pressures over outdoors [Pa]."""

    intake: float
    filters: float
    fan_in: float
    fan_out: float
    furnaces: float
    duct: float
    room: float


def stations(plant: Machine, m: float, speed: float, warmth: Warmth, room: float) -> Stations:
    """For a mass flow through a fan at `speed` rpm."""
    side, fan = plant.airside, plant.fan
    intake = -side.hood_drop(m * (1.0 - side.recirculation), warmth.outdoor[1])
    filters = intake - side.filter_drop(m, warmth.mixed[1], warmth.mixed[0])
    tubes = sum(side.furnace_drop(m, density) for density in warmth.tubes)
    coil = side.coil_drop(m, warmth.discharge[1])
    opening = side.opening_drop(m, warmth.discharge[1])
    volume, density = m / warmth.fan[1], warmth.fan[1]
    effect = side.system_effect * fan.velocity_pressure(volume, density)
    lift = fan.static(volume, density, speed) - effect
    if plant.arrangement == "blow-through":
        out = filters + lift
        after = out - tubes
        return Stations(intake, filters, filters, out, after, after - coil - opening, room)
    after = filters - tubes
    into = after - coil
    out = into + lift
    return Stations(intake, filters, into, out, after, out - opening, room)


def surplus(plant: Machine, m: float, speed: float, warmth: Warmth, room: float) -> float:
    """What is left at the duct over what it needs [Pa]."""
    at = stations(plant, m, speed, warmth, room)
    discharge, density = warmth.discharge
    return at.duct - room - plant.airside.duct.loss(m, density, discharge)


def mass_flow(plant: Machine, speed: float, warmth: Warmth, room: float, guess: float) -> float:
    """On the falling side of the curve: the greatest flow at which nothing is left over [kg/s]."""
    m = guess
    for _ in range(40):
        left = surplus(plant, m, speed, warmth, room)
        step = 1e-4 * m
        slope = (surplus(plant, m + step, speed, warmth, room) - left) / step
        if slope >= 0.0:  # on the rising side: come back from the right
            m *= 1.5
            continue
        change = max(min(-left / slope, 0.5 * m), -0.5 * m)
        m = max(m + change, 1e-4)
        if abs(change) < 1e-9 * m:
            break
    return m
