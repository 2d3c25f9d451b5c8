"""A duct traverse: velocity pressures over a grid, with the profile ducts have."""

from random import Random
from typing import Any

from plant.instrument import Instrument
from plant.machine import Machine
from plant.si import INCH


def traverse(
    rng: Random, bag: dict[str, Instrument], machine: Machine, volume: float, density: float
) -> dict[str, Any]:
    """`volume` as the plane would have it [m3/s]; the gauge's own error comes in here."""
    width, height = _sides(machine.airside.duct.area, rng.choice((1.0, 1.5, 2.0)))
    mean = volume / (width * height * INCH**2)
    shape = _profile(rng, rng.choice((16, 20, 25)))
    gauge = bag["gauge-2"].channel("pressure")
    assert gauge is not None
    pressures = [gauge.shows(0.5 * density * (mean * part) ** 2, rng) for part in shape]
    return {
        "shape": "rectangular",
        "width": f"{width:g} in",
        "height": f"{height:g} in",
        "pressures": [f"{max(p, 0.0):.3f} inwc" for p in pressures],
    }


def _sides(area: float, aspect: float) -> tuple[float, float]:
    """Whole inches; the duct truly has them."""
    height = max(round((area / aspect) ** 0.5 / INCH), 4)
    return float(max(round(area / INCH**2 / height), 4)), float(height)


def _profile(rng: Random, points: int) -> list[float]:
    """Velocities by their mean: 6 to 15 % of scatter, as planes are."""
    scatter = rng.uniform(0.06, 0.15)
    raw = [max(rng.gauss(1.0, scatter), 0.2) for _ in range(points)]
    whole = sum(raw) / points
    return [one / whole for one in raw]
