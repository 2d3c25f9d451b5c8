"""Where a fan and what it blows through agree on airflow and pressure."""

from collections.abc import Sequence
from typing import NamedTuple

from lightoff.formula import Number, formula
from lightoff.formula.elementary import everywhere, maximum, where
from lightoff.physics.curve import Piece, Points, piece_at
from lightoff.physics.fan_curve import pressure_curve

STEPS = 14  # at most; 12 were the most that any of a million drawn machines took
FURTHEST = 4.0  # times the last declared airflow: as far as a crossing is looked for
_LEAST = 1e-12  # of the last declared airflow: where "no flow" is, so that powers have a slope
_SLACK = 0.05  # of the airflow, how far a step may leave its bracket
_STILL = 1e-9  # of the airflow: after a step as short as this one, the next would be rounding
_AGREED = 1e-9  # of the pressures: what is further apart than that has no crossing

# What `condition` says of the crossing. Where there is none the airflow is that end of the search,
# never NaN, so that an iteration round this one goes on.
ON_CURVE = 0.0
LEFT_OF_CURVE = -1.0  # less air than the first declared point: the pressure is held there
RIGHT_OF_CURVE = 1.0  # more air than the last declared point: a straight line goes on
TOO_WEAK = -2.0  # at no airflow does the fan give what the system asks: no air moves
TOO_FREE = 2.0  # even far beyond the curve the system asks for less than the fan gives
CONDITIONS = {
    ON_CURVE: "on the curve",
    LEFT_OF_CURVE: "left of the curve",
    RIGHT_OF_CURVE: "right of the curve",
    TOO_WEAK: "fan too weak",
    TOO_FREE: "system too free",
}


class Part(NamedTuple):
    """What one part takes: `drop` at the fan airflow `airflow`, going with its power `exponent`.

    A pressure that does not move with the airflow, such as that of the building, has exponent 0.
    """

    drop: Number
    airflow: Number
    exponent: Number


class OperatingPoint(NamedTuple):
    """The crossing, and one of `CONDITIONS`."""

    airflow: Number
    pressure: Number
    condition: Number


System = Sequence[Part]
_Powers = Sequence[tuple[Number, Number]]  # factor and exponent of each part


@formula
def operating_point(
    points: Points, system: System, *, speed_ratio: Number, density_ratio: Number
) -> OperatingPoint:
    """The crossing of the fan's curve with the system's; of several, that of the largest airflow.

    p = C(V / n) n^2 r = the sum of Delta_p (V / V_r)^e, solved for V

    Parameters
    ----------
    points : C, of each declared point its airflow and pressure, airflow rising [m3/s, Pa]
    system : S, of each part its drop, the airflow of that drop, its exponent [Pa, m3/s, 1]
    speed_ratio : n, fan speed over that of the points, above 0, 0.05 to 3 [1]
    density_ratio : r, air density at the fan over that of the points, 0.4 to 2 [1]

    Returns
    -------
    airflow : V, through the fan [m3/s]
    pressure : p, fan pressure [Pa]
    condition : k, 0 on the curve, -1 left and 1 right of it, -2 fan too weak, 2 system too free [1]

    Source: AMCA 201, fan laws, fan and system curves (from memory); Newton's method in a bracket.

    >>> found = operating_point(((2.0, 800.0), (4.0, 600.0)), (Part(700.0, 3.0, 2.0),),
    ...     speed_ratio=1.0, density_ratio=1.0)
    >>> round(found.airflow, 9), round(found.pressure, 6), CONDITIONS[found.condition]
    (3.0, 700.0, 'on the curve')
    """
    lift = speed_ratio**2 * density_ratio
    felt = tuple((drop / lift * (speed_ratio / rated) ** n, n) for drop, rated, n in system)
    airflow, pressure, condition = _crossing(points, felt)
    return OperatingPoint(airflow * speed_ratio, pressure * lift, condition)


def _crossing(points: Points, system: _Powers) -> OperatingPoint:
    """The crossing with the curve as declared, `system` being as a fan of that speed feels it."""
    curve = pressure_curve(points)
    first, last = points[0][0], points[-1][0]
    least, furthest = _LEAST * last, FURTHEST * last
    # Looked for from declared point to declared point: where the curve falls between two of them
    # there is one crossing at most; only where fan and system both rise may a pair stay unseen.
    declared = [maximum(airflow, least) for airflow, _ in points]
    reached = [p >= sum(_drops(system, x)) for x, (_, p) in zip(declared, points, strict=True)]
    piece = piece_at(curve, reached)
    low, high = _bracket(reached, [least, *declared, furthest])
    airflow, excess = _root(piece, system, low, high)
    side = where(airflow < first, LEFT_OF_CURVE, where(airflow > last, RIGHT_OF_CURVE, ON_CURVE))
    weak = where(low > least, False, excess < -_AGREED)
    free = where(high < furthest, False, excess > _AGREED)
    airflow = where(free, furthest, where(weak, 0.0, airflow))
    side = where(free, TOO_FREE, where(weak, TOO_WEAK, side))
    return OperatingPoint(airflow, piece.value(airflow), side)


def _bracket(reached: list[Number], bounds: list[Number]) -> tuple[Number, Number]:
    """The last declared point where the fan gives enough, and the next one, where it does not."""
    low, high = bounds[0], bounds[1]
    for enough, here, following in zip(reached, bounds[1:-1], bounds[2:], strict=True):
        low, high = where(enough, here, low), where(enough, following, high)
    return low, high


def _root(piece: Piece, system: _Powers, low: Number, high: Number) -> tuple[Number, Number]:
    """Where both agree, and how far from that they still are, in shares of the pressures there.

    Newton's method; a step that leaves the bracket is replaced by the bracket's middle. A little
    way out is allowed, because a crossing at a declared point is come at from both sides.
    """
    airflow, drop, excess = (low + high) / 2, 0.0, 0.0
    for _ in range(STEPS):
        drops = _drops(system, airflow)
        drop, rise = sum(drops), sum(n * each for each, (_, n) in zip(drops, system, strict=True))
        excess = piece.value(airflow) - drop
        more = excess > 0
        low, high = where(more, airflow, low), where(more, high, airflow)
        before = airflow
        newton = airflow + excess / maximum(rise / airflow - piece.slope(airflow), _LEAST)
        outside = (newton - (1 - _SLACK) * low) * ((1 + _SLACK) * high - newton) < 0
        airflow = where(outside, (low + high) / 2, newton)
        if everywhere(abs(airflow - before) <= _STILL * before):
            break
    return airflow, excess / (abs(drop) + abs(piece.a))


def _drops(system: _Powers, airflow: Number) -> list[Number]:
    """What each part takes at an airflow above zero."""
    return [factor * airflow**exponent for factor, exponent in system]
