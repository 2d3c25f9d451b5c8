"""A gas, a pressure to begin with and a run of pipe: what the codes' two equations say of it."""

from dataclasses import dataclass

from lightoff.formula import Number
from lightoff.physics import gas_pipe
from lightoff.physics.gas_pressure import pressure_left, pressure_lost
from lightoff.physics.pipe_tables import (
    CODE_GASES,
    CODE_TEMPERATURE,
    equivalent_length,
    fitting_diameters,
)


@dataclass(frozen=True)
class Run:
    """Length [m] and what stands in the way."""

    length: Number
    elbows: Number
    tees: Number
    valves: Number

    def equivalent(self, diameter: float) -> Number:
        """Length with its fittings, in pipe of this inside diameter [m]."""
        fittings = fitting_diameters(self.elbows, self.tees, valves=self.valves)
        return equivalent_length(self.length, diameter=diameter, fittings=fittings)


@dataclass(frozen=True)
class Line:
    """A gas under an absolute pressure [Pa]; `high` is whether the equation above 1.5 psi holds."""

    gas: str
    gas_factor: Number
    inlet: Number
    high: bool

    def outlet(self, flow: Number, diameter: float, length: Number) -> Number:
        """Absolute pressure at the end of a pipe [Pa]."""
        pipe = {"diameter": diameter, "length": length, "gas_factor": self.gas_factor}
        if self.high:
            return gas_pipe.high_pressure_outlet(
                flow, inlet=self.inlet, expansion=CODE_GASES[self.gas].expansion, **pipe
            )
        return pressure_left(self.inlet, gas_pipe.low_pressure_drop(flow, **pipe))

    def flow(self, outlet: Number, diameter: float, length: Number) -> Number:
        """Flow at base conditions that leaves this absolute pressure at the end [m3/s]."""
        pipe = {"diameter": diameter, "length": length, "gas_factor": self.gas_factor}
        if self.high:
            expansion = CODE_GASES[self.gas].expansion
            return gas_pipe.high_pressure_flow(
                inlet=self.inlet, outlet=outlet, expansion=expansion, **pipe
            )
        return gas_pipe.low_pressure_flow(pressure_lost(self.inlet, outlet), **pipe)

    def diameter(self, flow: Number, outlet: Number, length: Number) -> Number:
        """Inside diameter that leaves this absolute pressure at the end [m]."""
        pipe = {"length": length, "gas_factor": self.gas_factor}
        if self.high:
            expansion = CODE_GASES[self.gas].expansion
            return gas_pipe.high_pressure_diameter(
                flow, inlet=self.inlet, outlet=outlet, expansion=expansion, **pipe
            )
        return gas_pipe.low_pressure_diameter(flow, drop=pressure_lost(self.inlet, outlet), **pipe)


def gas_factor(gas: str, relative_density: Number | None) -> Number:
    """The codes' factor for a gas, of its own density where that is known."""
    code = CODE_GASES[gas]
    density = code.relative_density if relative_density is None else relative_density
    return gas_pipe.pipe_gas_factor(density, viscosity=code.viscosity, temperature=CODE_TEMPERATURE)
