"""Duct traverses: where the points lie, and how they are averaged."""

from typing import Any

from lightoff.physics import traverse_points as points
from lightoff.physics.duct import rectangular_area, round_area
from lightoff.physics.traverse import duct_airflow, mean_velocity, pitot_velocity
from published.cases import Given, Method
from published.units import FOOT, INCH_60F

# air in which one inch of water is 4005 fpm, the constant of the case
AIR_OF_4005 = 2 * INCH_60F / (4005 * FOOT / 60) ** 2


def tabled(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"x": list(points.LOG_TCHEBYCHEFF[round(given["n"])])}


def log_linear(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"x": list(points.LOG_LINEAR[round(given["n"])])}


def number(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"n": [points.log_tchebycheff_points(side) for side in given["side"]]}


def rings(given: Given, _: dict[str, str]) -> dict[str, Any]:
    n = round(given["n"])
    return {"x": [points.ring_position(i, n) for i in range(1, n + 1)]}


def average(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pressures = given["pv"]
    speeds = {str(i): pitot_velocity(p, AIR_OF_4005) for i, p in enumerate(pressures)}
    of_the_mean = pitot_velocity(sum(pressures) / len(pressures), AIR_OF_4005)
    return {"V_right": mean_velocity(speeds), "V_wrong": of_the_mean}


def wall(x: float) -> float:
    """The case's profile: 1/7 power of the distance from the nearer wall."""
    return float((2 * min(x, 1 - x)) ** (1 / 7))


def rectangle(given: Given, _: dict[str, str]) -> dict[str, Any]:
    across, down = (
        points.LOG_TCHEBYCHEFF[int(points.log_tchebycheff_points(given[side]))]
        for side in ("width", "height")
    )
    speeds = {f"{x} {y}": given["V_peak"] * wall(x) * wall(y) for x in across for y in down}
    mean = mean_velocity(speeds)
    return {"V_mean": mean,
            "Q": duct_airflow(mean, rectangular_area(given["width"], given["height"]))}  # fmt: skip


def circle(given: Given, _: dict[str, str]) -> dict[str, Any]:
    along = points.LOG_LINEAR[int(points.diameter_points(given["d"]))]
    mean = mean_velocity({str(x): given["V_peak"] * wall(x) for x in along})
    return {"V_mean": mean, "Q": duct_airflow(mean, round_area(given["d"]))}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"tr-logt-\d+", tabled),
    (r"tr-logt-choice", number),
    (r"tr-loglin-\d+", log_linear),
    (r"tr-epa1-\d+", rings),
    (r"tr-average-trap", average),
    (r"tr-rect-powerlaw", rectangle),
    (r"tr-round-powerlaw", circle),
)
