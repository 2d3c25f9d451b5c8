"""The root of a function between two bounds."""

from collections.abc import Callable


def between(f: Callable[[float], float], low: float, high: float, within: float) -> float:
    """False position, Illinois; the nearer bound where `f` has one sign throughout."""
    below, above = f(low), f(high)
    if (below > 0.0) == (above > 0.0):
        return low if abs(below) < abs(above) else high
    x = low
    for _ in range(60):
        x = (low * above - high * below) / (above - below)
        y = f(x)
        if y == 0.0 or abs(high - low) < within:
            break
        if (y > 0.0) == (above > 0.0):
            step = abs(high - x)
            high, above, below = x, y, 0.5 * below
        else:
            step = abs(x - low)
            low, below, above = x, y, 0.5 * above
        if step < within:
            break
    return x
