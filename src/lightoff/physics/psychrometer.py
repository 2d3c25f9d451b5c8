"""Wet bulb: what a psychrometer says of the air it hangs in."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import clip, log, minimum, where
from lightoff.physics.constants import AIR_HEAT_CAPACITY, VAPOUR_HEAT_CAPACITY, WATER_AIR_RATIO
from lightoff.physics.moist_air import (
    VAPORISATION,
    saturated_humidity_ratio,
    vapour_pressure_of_ratio,
)
from lightoff.physics.saturation import FREEZING, LOWEST, log_saturation, steepness

SUBLIMATION = 2830e3  # [J/kg] latent heat of ice at 0 degC; ASHRAE Fundamentals, eq. 35
ICE_FALLS = 240.0  # [J/(kg K)] how that falls with temperature; the same
WATER_FALLS = 2326.0  # [J/(kg K)] how that of water falls; eq. 33

_STEPS = 3  # the last leaves 5e-9 K at most, in the hottest and driest air


@formula
def bulb_latent_heat(wet_bulb: Number) -> Number:
    """Heat that takes water from a wet bulb into the air as vapour; from its ice below freezing.

    L = 2830000 - 240 (T_wb - 273.15) if T_wb < 273.15 else 2501000 - 2326 (T_wb - 273.15)

    Parameters
    ----------
    wet_bulb : T_wb, wet bulb, 173.15 to 333.15 [K]

    Returns
    -------
    L, latent heat [J/kg]

    Source: ASHRAE Fundamentals, psychrometrics, the first brackets of eq. 33 and 35.

    >>> bulb_latent_heat(283.15)
    2477740.0
    """
    t = wet_bulb - FREEZING
    return where(wet_bulb < FREEZING, SUBLIMATION - ICE_FALLS * t, VAPORISATION - WATER_FALLS * t)


@formula
def humidity_ratio_from_wet_bulb(
    temperature: Number, *, wet_bulb: Number, pressure: Number
) -> Number:
    """Humidity ratio from a psychrometer: the heat that dries its wick is the heat the air lost.

    W = (L W_s - 1006 (T - T_wb)) / (L + 1860 (T - T_wb))

    Parameters
    ----------
    temperature : T, dry bulb, 223.15 to 333.15 [K]
    wet_bulb : T_wb, thermodynamic wet bulb, 213.15 to 333.15 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    W, humidity ratio; below 0 where no air could have cooled the bulb that far [kg/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 33 and 35, both in one.

    >>> W = humidity_ratio_from_wet_bulb(313.15, wet_bulb=293.15, pressure=101325.0)
    >>> round(W, 4)
    0.0064
    """
    latent, cooled = bulb_latent_heat(wet_bulb), temperature - wet_bulb
    saturated = saturated_humidity_ratio(wet_bulb, pressure)
    return (latent * saturated - AIR_HEAT_CAPACITY * cooled) / (
        latent + VAPOUR_HEAT_CAPACITY * cooled
    )


@formula
def wet_bulb(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Wet bulb of air: where water, or ice below freezing, would cool it by drying into it.

    W = W(T, T_wb, p), solved for T_wb

    Parameters
    ----------
    temperature : T, dry bulb, 223.15 to 333.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.05 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    T_wb, thermodynamic wet bulb; the dry bulb where the air is more than saturated [K]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 33 and 35, solved step by step. Where a
    bulb of water just above freezing and one of ice just below would both do, it is the water.

    >>> round(wet_bulb(313.15, humidity_ratio=0.00645, pressure=101325.0) - 273.15, 1)
    20.0
    """
    thawed = humidity_ratio_from_wet_bulb(temperature, wet_bulb=FREEZING, pressure=pressure)
    freezes = (temperature < FREEZING) | (humidity_ratio < thawed)
    upper = where(freezes, minimum(temperature, FREEZING), temperature)
    lower = where(freezes, LOWEST, FREEZING)
    air = (temperature, humidity_ratio, pressure)
    bulb = clip(_near(upper, *air), lower, upper)
    for _ in range(_STEPS):
        bulb = clip(_nearer(bulb, *air), lower, upper)
    return bulb


# The air gives up heat down to the bulb's temperature, and holds what that heat has dried into it;
# at the wet bulb that is saturation: W_s = W + (1006 + 1860 W) (T - T_wb) / L, eq. 33 and 35 again.


def _near(bulb: Number, temperature: Number, ratio: Number, pressure: Number) -> Number:
    """A step of Halley's on W_s: it bends up, so that from above none falls below the wet bulb."""
    saturated, latent = saturated_humidity_ratio(bulb, pressure), bulb_latent_heat(bulb)
    capacity = AIR_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * ratio
    steep = steepness(bulb) / bulb**2 * (1 + saturated / WATER_AIR_RATIO)
    rise = latent * saturated * steep
    surplus = latent * (saturated - ratio) - capacity * (temperature - bulb)
    step = surplus / (rise + capacity)
    return bulb - step / (1 - step * steep * rise / (2 * (rise + capacity)))


def _nearer(bulb: Number, temperature: Number, ratio: Number, pressure: Number) -> Number:
    """A step of Newton's on the logarithm of the vapour pressure, which is almost straight."""
    latent = bulb_latent_heat(bulb)
    capacity = AIR_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * ratio
    dried = capacity * (temperature - bulb) / latent
    held = ratio + dried
    excess = log_saturation(bulb) - log(vapour_pressure_of_ratio(held, pressure))
    eased = capacity - where(bulb < FREEZING, ICE_FALLS, WATER_FALLS) * dried
    falls = eased / (latent * held * (1 + held / WATER_AIR_RATIO))
    return bulb - excess / (steepness(bulb) / bulb**2 + falls)
