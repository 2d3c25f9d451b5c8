"""The fan's motor after a change of speed: its load, and amps where the plate tells too little."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import minimum


@formula
def load_by_fan_law(load: Number, *, speed_ratio: Number, density_ratio: Number) -> Number:
    """Load of the fan's motor afterwards, the belt's share of it taken to stay the same.

    x_2 = x_1 n^3 r

    Parameters
    ----------
    load : x_1, shaft power of the motor over its rated power, before, 0 to 1.5 [1]
    speed_ratio : n, new fan speed over old, 0 to 3 [1]
    density_ratio : r, new air density at the fan over old, 0.4 to 2 [1]

    Returns
    -------
    x_2, load afterwards [1]

    Source: AMCA 201 and ASHRAE HVAC Systems and Equipment, fan laws (from memory).

    >>> round(load_by_fan_law(0.5, speed_ratio=1.1, density_ratio=1.0), 4)
    0.6655
    """
    return load * speed_ratio**3 * density_ratio


@formula
def amps_in_proportion(
    amps: Number, *, speed_ratio: Number, density_ratio: Number, volts_ratio: Number
) -> Number:
    """Motor amps after a change of fan speed, taken in proportion to power over volts.

    I_2 = I_1 n^3 r / v

    Parameters
    ----------
    amps : I_1, before, 0 to 500 [A]
    speed_ratio : n, new fan speed over old, 0 to 3 [1]
    density_ratio : r, new air density at the fan over old, 0.4 to 2 [1]
    volts_ratio : v, new volts at the motor over old, 0.1 to 3 [1]

    Returns
    -------
    I_2, afterwards: too high after a rise in load, too low after a fall [A]

    Source: common practice, no source; the idle part of the amps does not grow with the load.

    >>> round(amps_in_proportion(10.0, speed_ratio=1.1, density_ratio=1.0, volts_ratio=1.0), 2)
    13.31
    """
    return amps * speed_ratio**3 * density_ratio / volts_ratio


@formula
def frequency_after(frequency: Number, ratio: Number) -> Number:
    """Frequency of the drive that makes the fan turn so much faster.

    f_2 = n f_1

    Parameters
    ----------
    frequency : f_1, before, 5 to 120 [Hz]
    ratio : n, new fan speed over old, 0 to 3 [1]

    Returns
    -------
    f_2, afterwards, the motor's slip taken to stay the same share [Hz]

    Source: kinematics.

    >>> frequency_after(40.0, 1.25)
    50.0
    """
    return ratio * frequency


@formula
def volts_ratio(frequency: Number, new: Number, *, base_frequency: Number) -> Number:
    """Volts a drive gives the motor after a change of frequency, over those before.

    v = min(f_2, f_b) / min(f_1, f_b)

    Parameters
    ----------
    frequency : f_1, before, 5 to 120 [Hz]
    new : f_2, afterwards, 5 to 120 [Hz]
    base_frequency : f_b, at which the motor gets its plate's volts, 50 to 60 [Hz]

    Returns
    -------
    v, volts ratio [1]

    Source: volts in step with the hertz up to base frequency, then constant.

    >>> volts_ratio(45.0, 60.0, base_frequency=60.0) == 60.0 / 45.0
    True
    """
    return minimum(new, base_frequency) / minimum(frequency, base_frequency)
