"""Where to put the probe: the points of a traverse, by the size of the duct."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.calculations.traverse import area_of
from lightoff.formula import Number
from lightoff.physics import traverse_points as points
from lightoff.physics.traverse_points import FEWEST_RECTANGULAR

RULES = ("log", "equal area")
MOST = 20  # points along a line that anyone would take


def traverse_points(
    *,
    shape: str,
    duct_width: Number,
    duct_height: Number,
    duct_diameter: Number,
    rule: str,
    points_wanted: Number,
    diameters: Number,
) -> dict[str, Any]:
    """Depths of the probe along each side, or along every diameter."""
    area_of(shape, duct_width, duct_height, duct_diameter)  # refuses sizes that are missing
    if shape == "round":
        _whole("diameters", diameters)
        count, across = _along(duct_diameter, shape, rule, points_wanted)
        return {"points": points.points_in_all(count, diameters), "positions_across": across}
    count, across = _along(duct_width, shape, rule, points_wanted)
    lines, down = _along(duct_height, shape, rule, points_wanted)
    total = points.points_in_all(count, lines)
    return {"points": total, "positions_across": across, "positions_down": down}


def _along(side: Number, shape: str, rule: str, wanted: Number) -> tuple[Number, tuple[Any, ...]]:
    """How many points there are along one side or diameter, and the depth of each."""
    count = _usual(side, shape, rule) if wanted is None else wanted
    shares = _shares(count, shape, rule)
    return count, tuple(points.probe_depth(share, side) for share in shares)


def _usual(side: Number, shape: str, rule: str) -> Number:
    if shape == "round":
        return points.diameter_points(side)
    return points.log_tchebycheff_points(side) if rule == "log" else points.equal_area_points(side)


def _shares(count: Number, shape: str, rule: str) -> tuple[Number, ...]:
    """The points' places over the whole length."""
    number = _whole("points_wanted", count)
    if rule == "equal area":
        place = points.ring_position if shape == "round" else points.strip_position
        return tuple(place(float(i), count) for i in range(1, number + 1))
    table = points.LOG_LINEAR if shape == "round" else points.LOG_TCHEBYCHEFF
    if number not in table:
        raise CannotCalculateError("calc-no-such-points", "points_wanted", numbers=tuple(table))
    return table[number]


def _whole(name: str, count: Number) -> int:
    """A count that can be counted."""
    if not 2 <= count <= MOST or count != int(count):
        raise CannotCalculateError("calc-count", name, low=2, high=MOST)
    return int(count)


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Where the probe is turned, and where fewer points were asked for than the rule has."""
    few = used["shape"] == "rectangular" and results["points"] < FEWEST_RECTANGULAR
    count = {"count": int(results["points"]), "due": FEWEST_RECTANGULAR}
    return (
        Note("calc-probe-depth", {}, advice=True),
        *((Note("calc-traverse-few", count),) if few else ()),
    )


TRAVERSE_POINTS = Calculation(
    name="traverse-points",
    work=traverse_points,
    inputs=(
        Input("shape", default="rectangular", choices=("rectangular", "round")),
        Input("duct_width", "size", optional=True),
        Input("duct_height", "size", optional=True),
        Input("duct_diameter", "size", optional=True),
        Input("rule", default="log", choices=RULES),
        Input("points_wanted", optional=True),
        Input("diameters", default=2.0),
    ),
    outputs=(
        Output("positions_across", "size"),
        Output("positions_down", "size"),
        Output("points"),
    ),
    remark=remark,
    picture="traverse",
)
