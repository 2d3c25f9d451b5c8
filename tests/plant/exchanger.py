"""A heat exchanger: hot gas in tubes, air across them, by effectiveness and transfer units."""

from dataclasses import dataclass, replace
from math import exp, log

from plant.flame import Flue


@dataclass(frozen=True)
class Exchanger:
    """Conductances at the rating; each side moves with its own flow and temperature."""

    inside: float  # [W/K] by convection at the rating
    outside: float  # [W/K] at the rating
    radiant: float  # share of the inside conductance that glows at the rating
    gas: float  # [kg/s] at the rating
    air: float  # [kg/s] at the rating
    mean: float  # [K] of the gas at the rating
    exponent: float  # of the gas flow: 0.8 turbulent, more where it turns laminar at low fire
    clean: float = 1.0  # below one when fouled

    def conductance(self, gas: float, mean: float, air: float) -> float:
        hot = mean / self.mean
        convection = (1.0 - self.radiant) * (gas / self.gas) ** self.exponent * hot**0.24
        inside = self.inside * (convection + self.radiant * hot**3)
        outside = self.outside * (max(air, 1e-3 * self.air) / self.air) ** 0.6
        return self.clean / (1.0 / inside + 1.0 / outside)


def effectiveness(transfer_units: float, ratio: float) -> float:
    """Counterflow, which many crossed passes come near to."""
    if abs(1.0 - ratio) < 1e-6:
        return transfer_units / (1.0 + transfer_units)
    decay = exp(-transfer_units * (1.0 - ratio))
    return (1.0 - decay) / (1.0 - ratio * decay)


def transfer_units(effect: float, ratio: float) -> float:
    """The inverse of `effectiveness`."""
    if abs(1.0 - ratio) < 1e-6:
        return effect / (1.0 - effect)
    return log((1.0 - effect * ratio) / (1.0 - effect)) / (1.0 - ratio)


def outlet(
    exchanger: Exchanger,
    flue: Flue,
    fuel_flow: float,
    flame: float,
    air: float,
    cp: float,
    inlet: float,
    p: float,
    guess: float,
) -> float:
    """The gas temperature behind the exchanger [K]; `fuel_flow` in mol/s, `air` in kg/s."""
    T = guess
    hot = flue.sensible(flame)
    for _ in range(5):  # its caller comes again with a better guess
        capacity = fuel_flow * (hot - flue.enthalpy(T, p)) / (flame - T)
        ua = exchanger.conductance(fuel_flow * flue.mass, 0.5 * (flame + T), air)
        least, most = sorted((capacity, air * cp))
        effect = effectiveness(ua / least, least / most) * least / capacity
        before, T = T, flame - effect * (flame - inlet)
        if abs(T - before) < 1e-5:
            break
        if T < 345.0:  # condensing: the capacity jumps with T, so go half way
            T = 0.5 * (T + before)
    return T


def sized(
    rough: Exchanger,
    flue: Flue,
    fuel_flow: float,
    flame: float,
    cp: float,
    inlet: float,
    p: float,
    leaving: float,
) -> Exchanger:
    """The exchanger scaled so that the gas leaves at `leaving` at the rating."""
    capacity = fuel_flow * (flue.sensible(flame) - flue.enthalpy(leaving, p)) / (flame - leaving)
    least, most = sorted((capacity, rough.air * cp))
    effect = (flame - leaving) / (flame - inlet) * capacity / least
    ua = least * transfer_units(min(effect, 0.9999), least / most)
    rough = replace(rough, mean=0.5 * (flame + leaving))
    scale = ua / rough.conductance(rough.gas, rough.mean, rough.air)
    return replace(rough, inside=rough.inside * scale, outside=rough.outside * scale)
