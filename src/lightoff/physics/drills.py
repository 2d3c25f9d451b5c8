"""Twist drills by number and letter: what an orifice is drilled with."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import where
from lightoff.quantity import si

# diameters [in.], number 1 to 80; ASME B94.11M, 1 to 20 from memory
NUMBERS = (
    0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935,
    0.1910, 0.1890, 0.1850, 0.1820, 0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610,
    0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405, 0.1360, 0.1285,
    0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980,
    0.0960, 0.0935, 0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700,
    0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465, 0.0430, 0.0420, 0.0410, 0.0400,
    0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
    0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135,
)  # fmt: skip

# the same of letters A to Z
LETTERS = (
    0.234, 0.238, 0.242, 0.246, 0.250, 0.257, 0.261, 0.266, 0.272, 0.277, 0.281, 0.290, 0.295,
    0.302, 0.316, 0.323, 0.332, 0.339, 0.348, 0.358, 0.368, 0.377, 0.386, 0.397, 0.404, 0.413,
)  # fmt: skip

# diameter [m] by the drill's name, the smallest first
DRILLS: dict[str, float] = {
    **{f"no. {n}": si(d, "in") for n, d in reversed(list(enumerate(NUMBERS, start=1)))},
    **{f"letter {chr(ord('A') + n)}": si(d, "in") for n, d in enumerate(LETTERS)},
}


@formula
def nearest_drill(diameter: Number) -> Number:
    """Diameter of the number or letter drill nearest to a diameter.

    abs(d_n - d) = least of all drills, solved for d_n

    Parameters
    ----------
    diameter : d, diameter, 0.0003 to 0.0108 [m]

    Returns
    -------
    d_n, diameter of the nearest drill [m]

    Source: ASME B94.11M, twist drills number 80 to 1 and A to Z.

    >>> round(nearest_drill(0.0024) * 1000, 4)
    2.3749
    """
    first, *others = DRILLS.values()
    nearest = first + 0.0 * diameter
    for drill in others:
        nearest = where(abs(drill - diameter) < abs(nearest - diameter), drill, nearest)
    return nearest


def drill_name(diameter: float) -> str:
    """What the drill nearest to a diameter [m] is called.

    >>> drill_name(0.0024)
    'no. 42'
    """
    return min(DRILLS, key=lambda name: abs(DRILLS[name] - diameter))
