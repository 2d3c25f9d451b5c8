"""What goes wrong in the measuring. Severity ranges are judgement unless said."""

from dataclasses import replace
from random import Random

from plant.cause import Cause, Struck, with_method
from plant.machine import Machine
from plant.si import INWC


def meter_compensated_twice(rng: Random, machine: Machine, _: int) -> Struck:
    """The job says of the meter's index what is not so, the one way or the other."""
    other = replace(machine.meter, compensated=not machine.meter.compensated)
    return machine.but(meter=other), 1.0


def wrong_meter_dial(rng: Random, machine: Machine, _: int) -> Struck:
    """Input off by 2, 4 or 5 times (prevalence.toml), up or down."""
    factor = rng.choice((0.5, 2.0, 2.0, 5.0, 0.2, 0.25, 4.0))
    return with_method(machine, dial=factor), factor


def diluted_flue_sample(rng: Random, machine: Machine, index: int) -> Struck:
    """O2 up by a point (prevalence.toml) to six: 7 to 40 % of air in the sample."""
    share = rng.uniform(0.07, 0.40)
    shares = tuple(share if i == index else own for i, own in enumerate(machine.method.dilution))
    return with_method(machine, dilution=shares), share


def stratified_discharge(rng: Random, machine: Machine, _: int) -> Struck:
    """One place off the mean by a tenth of the rise (prevalence.toml) to a third."""
    off = rng.choice((-1.0, 1.0)) * rng.uniform(0.10, 0.35)
    return with_method(machine, discharge=off), off


def gauge_zero(rng: Random, machine: Machine, _: int) -> Struck:
    """0.01 in. w.c. or more (prevalence.toml), to 0.2 where nobody ever zeroed it."""
    zero = rng.choice((-1.0, 1.0)) * 0.01 * 20.0 ** rng.random() * INWC
    return with_method(machine, zero=zero, unzeroed=rng.choice(("gauge-1", "gauge-2"))), zero


def tachometer_harmonic(rng: Random, machine: Machine, _: int) -> Struck:
    """Two marks, a keyway, a strobe that stands still at half."""
    factor = rng.choice((0.5, 2.0, 2.0, 1.5))
    return with_method(machine, harmonic=factor), factor


def bad_traverse_plane(rng: Random, machine: Machine, _: int) -> Struck:
    """Under 2 diameters: more often high than low, 8 to 25 % (sp-traverse-poor: +3, 10)."""
    off = rng.uniform(0.08, 0.25) * (1.0 if rng.random() < 0.65 else -0.8)
    return with_method(machine, traverse=off), off


CAUSES = {
    "meter compensated twice": Cause(meter_compensated_twice),
    "wrong meter dial": Cause(wrong_meter_dial),
    "diluted flue sample": Cause(diluted_flue_sample, each_furnace=True),
    "stratified discharge": Cause(stratified_discharge),
    "gauge zero": Cause(gauge_zero),
    "tachometer harmonic": Cause(tachometer_harmonic),
    "bad traverse plane": Cause(bad_traverse_plane),
}
