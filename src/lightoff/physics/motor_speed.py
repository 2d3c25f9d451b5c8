"""How fast an induction motor turns: its slip, and the load that the slip tells."""

from lightoff.formula import Number, formula


@formula
def synchronous_speed(frequency: Number, poles: Number) -> Number:
    """Speed of the field, which the rotor follows a little behind.

    N_s = 120 f / p

    Parameters
    ----------
    frequency : f, frequency at the motor, 5 to 120 [Hz]
    poles : p, number of poles, 2 to 12 [1]

    Returns
    -------
    N_s, synchronous speed [rpm]

    Source: definition; NEMA MG 1.

    >>> synchronous_speed(60.0, 4.0)
    1800.0
    """
    return 120 * frequency / poles


@formula
def slip_speed(speed: Number, synchronous: Number) -> Number:
    """How far a motor lags behind its field.

    N_l = N_s - N

    Parameters
    ----------
    speed : N, of the motor, 0 to 7200 [rpm]
    synchronous : N_s, of its field, 50 to 7200 [rpm]

    Returns
    -------
    N_l, slip speed [rpm]

    Source: definition; NEMA MG 1.

    >>> slip_speed(1755.0, 1800.0)
    45.0
    """
    return synchronous - speed


@formula
def slip(speed: Number, synchronous: Number) -> Number:
    """Slip: the lag as a share of the field's speed.

    s = N_l / N_s

    Parameters
    ----------
    speed : N, of the motor, 0 to 7200 [rpm]
    synchronous : N_s, of its field, 50 to 7200 [rpm]

    Returns
    -------
    s, slip [1]

    Source: definition; NEMA MG 1.

    >>> slip(1755.0, 1800.0)
    0.025
    """
    return slip_speed(speed, synchronous) / synchronous


@formula
def speed_at_load(
    load: Number, *, synchronous: Number, rated_slip_speed: Number, flux: Number
) -> Number:
    """Speed of a motor under load: the lag grows with torque and falls with the square of the flux.

    N = N_s - x N_r / phi^2

    Parameters
    ----------
    load : x, torque over that at full load, 0 to 1.5 [1]
    synchronous : N_s, of its field, 100 to 7200 [rpm]
    rated_slip_speed : N_r, slip speed at full load, 5 to 200 [rpm]
    flux : phi, volts for each hertz over the plate's, 0.5 to 1.3 [1]

    Returns
    -------
    N, speed of the motor [rpm]

    Source: straight part of the torque curve; slip at full load within 20 % of the plate's, NEMA
    MG 1, 12.46.

    >>> speed_at_load(0.5, synchronous=1800.0, rated_slip_speed=40.0, flux=1.0)
    1780.0
    """
    return synchronous - load * rated_slip_speed / flux**2


@formula
def load_by_speed(slip_speed: Number, rated_slip_speed: Number, *, flux: Number) -> Number:
    """Torque of a motor over that at full load, by how far it lags: no better than 12 %.

    x = N_l / N_r phi^2

    Parameters
    ----------
    slip_speed : N_l, how far it lags behind its field, 0 to 300 [rpm]
    rated_slip_speed : N_r, slip speed at full load, 5 to 200 [rpm]
    flux : phi, volts for each hertz over the plate's, 0.5 to 1.3 [1]

    Returns
    -------
    x, torque over that at full load [1]

    Source: US DOE, Determining Electric Motor Load and Efficiency, slip method with voltage
    correction; spread after the slip tolerance of NEMA MG 1, 12.46.

    >>> load_by_speed(20.0, 40.0, flux=1.0)
    0.5
    """
    return slip_speed / rated_slip_speed * flux**2
