"""What the gas line and the meter truly are."""

from random import Random

from plant.fuel import Fuel
from plant.gas_line import Line, Meter, Pipe
from plant.plate import Plate
from plant.si import CUBIC_FOOT, FOOT, INWC, KBTU_H


def line(rng: Random, plate: Plate, fuel: Fuel) -> Line:
    """Set within 8 % of the promise (sp-supply-promised), lock-up 15 % and 8."""
    pipes = tuple(
        Pipe(one.size, one.length * FOOT, one.other * KBTU_H, rng.lognormvariate(0.1, 0.35))
        for one in plate.site.pipes
    )
    load = sum(one.input for one in plate.furnaces) + sum(one.other for one in plate.site.pipes)
    gas = plate.furnaces[0].gas
    spread = 0.05 if gas == "natural gas" else 0.03
    spread *= 1.0 if rng.random() < 0.75 else 3.0
    return Line(
        setting=plate.site.supply * INWC * (1.0 + rng.gauss(0.02, spread)),
        droop=rng.uniform(0.02, 0.09),
        lockup=max(rng.gauss(0.12 if gas == "natural gas" else 0.08, 0.05), 0.02),
        capacity=load * KBTU_H / (fuel.gross / fuel.molar_mass) * rng.uniform(1.0, 1.6),
        pipes=pipes, gas=gas,
    )  # fmt: skip


def meter(rng: Random, plate: Plate) -> Meter:
    """Slow by a half per cent, 0.6, as set (sp-meter-us-set)."""
    return Meter(
        dial=plate.site.dial * CUBIC_FOOT, gain=1.0 + rng.gauss(-0.004, 0.006),
        compensated=plate.site.compensated, upstream=rng.uniform(60.0, 250.0),
    )  # fmt: skip
