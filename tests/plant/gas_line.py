"""The gas line: a regulator that droops and locks up, pipes with friction, a meter."""

from dataclasses import dataclass, replace
from math import pi

from plant.airside import friction_factor

# inside diameters of steel pipe, schedule 40, by nominal size in inches [m] (from memory)
INSIDE = {
    "3/4": 0.0209, "1": 0.0266, "1 1/4": 0.0351, "1 1/2": 0.0409,
    "2": 0.0525, "2 1/2": 0.0627, "3": 0.0779, "4": 0.1023,
}  # fmt: skip
VISCOSITY = {"natural gas": 1.1e-5, "propane": 0.8e-5}  # [Pa s] about 15 degC


@dataclass(frozen=True)
class Pipe:
    """A stretch with what else hangs behind it."""

    size: str
    length: float  # [m] as declared, with its fittings
    other: float  # [W] of other appliances it feeds
    true: float = 1.0  # real by declared equivalent length

    def drop(self, m: float, density: float, viscosity: float) -> float:
        """Darcy and Weisbach with steel's roughness [Pa]."""
        d = INSIDE[self.size]
        if m <= 0.0:
            return 0.0
        reynolds = 4.0 * m / (pi * d * viscosity)
        factor = _factor(reynolds, 4.6e-5 / d)
        velocity = 4.0 * m / (pi * d * d * density)
        return factor * self.length * self.true / d * 0.5 * density * velocity**2


def _factor(reynolds: float, roughness: float) -> float:
    """Laminar, turbulent, and a straight line between, where nobody knows."""
    turbulent = min(max((reynolds - 2000.0) / 2000.0, 0.0), 1.0)
    rough = friction_factor(max(reynolds, 4000.0), roughness)
    return turbulent * rough + (1.0 - turbulent) * 64.0 / min(reynolds, 2000.0)


@dataclass(frozen=True)
class Line:
    """From the regulator's seat to the unit's cock."""

    setting: float  # [Pa] at small flow
    droop: float  # fall at `capacity`, relative
    lockup: float  # rise at no flow, relative
    capacity: float  # [kg/s]
    pipes: tuple[Pipe, ...]
    tank: float = 0.0  # fall at capacity because the liquid is cold, relative
    gas: str = "natural gas"

    def at_unit(self, own: float, others: float, density: float) -> float:
        """Gauge pressure at the unit; `own` its flow, `others` the share of other load firing."""
        heat = 50e6  # [J/kg] only to turn other appliances' input into a flow
        elsewhere = others * sum(pipe.other for pipe in self.pipes) / heat
        total = own + elsewhere
        if total <= 0.0:
            return self.setting * (1.0 + self.lockup)
        load = total / self.capacity
        p = self.setting * (1.0 - self.droop * load - self.tank * load)
        behind = total
        for pipe in self.pipes:
            p -= pipe.drop(behind, density, VISCOSITY[self.gas])
            behind -= others * pipe.other / heat
        return max(p, 0.0)


@dataclass(frozen=True)
class Meter:
    """A gas meter and what its dial shows."""

    dial: float  # [m3] a turn
    gain: float  # shown by true volume
    compensated: bool  # the index shows volume at 60 degF, at the line's own pressure
    upstream: float  # [Pa] its pressure over the unit's, at full flow

    def seconds(self, volume_flow: float, flow_at_60: float) -> float:
        """For one turn, of the gas as warm as it is or as at 60 degF, as it is built [s]."""
        shown = (flow_at_60 if self.compensated else volume_flow) * self.gain
        return self.dial / shown


def sized(
    load: float,
    lengths: tuple[float, ...],
    others: tuple[float, ...],
    allowed: float,
    density: float,
    gas: str,
    heat: float,
) -> tuple[Pipe, ...]:
    """The next sizes that lose no more than `allowed` together [Pa]; `load` in W."""
    pipes, behind = [], load + sum(others)
    for length, other in zip(lengths, others, strict=True):
        budget = allowed * length / sum(lengths)
        for size in INSIDE:
            pipe = Pipe(size, length, other)
            if pipe.drop(behind / heat, density, VISCOSITY[gas]) <= budget:
                break
        pipes.append(replace(pipe, size=size))
        behind -= other
    return tuple(pipes)
