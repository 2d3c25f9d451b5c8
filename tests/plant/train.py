"""A gas train: valve and regulator, what throttles behind them, the orifices."""

from dataclasses import dataclass

from plant.fuel import Fuel


@dataclass(frozen=True)
class Train:
    """One regulator with its orifices. Pressures gauge against the burner's `reference`."""

    outlet: float  # [Pa] regulated, at high fire
    droop: float  # rise of the outlet pressure from high fire to no flow, relative
    valve: float  # [Pa] lost in the valve at high fire, fully open
    high: float  # manifold by outlet at high fire
    low: float | None  # manifold at low fire [Pa] as it was set; None on a single stage
    area: float  # [m2] of all orifices
    coefficient: float  # discharge, at high fire
    boxed: bool  # the manifold is stated against the burner compartment
    rated: float  # [kg/s] at high fire
    settle: tuple[tuple[str, float], ...] = ()  # how far each run came back from its setting

    def manifold(self, run: str, level: str, inlet: float, flow: float, signal: float) -> float:
        """Against its reference, from the `inlet` pressure and the `flow` as last found [Pa]."""
        load = min(flow / self.rated, 1.5)
        held = self.outlet * (1.0 + self.droop * (1.0 - load))
        outlet = max(min(held, inlet - self.valve * load * load), 0.0)
        most = outlet * self.high
        wanted = most if level == "high" or self.low is None else self.low
        if level == "signal" and self.low is not None:
            part = self.low**0.5 + signal * (most**0.5 - self.low**0.5)
            wanted = part * part
        return min(wanted * dict(self.settle).get(run, 1.0), most * 1.5, max(inlet, 0.0))

    def outlet_at(self, inlet: float, flow: float) -> float:
        """What a gauge at the valve's outlet tap is under [Pa]."""
        load = min(flow / self.rated, 1.5)
        held = self.outlet * (1.0 + self.droop * (1.0 - load))
        return max(min(held, inlet - self.valve * load * load), 0.0)


def mass_flow(train: Train, fuel: Fuel, across: float, p: float, T: float) -> float:
    """Through the orifices [kg/s]: incompressible, less the gas's expansion, Reynolds a little."""
    if across <= 0.0:
        return 0.0
    upstream = fuel.density(p + across, T)
    expansion = 1.0 - 0.37 * across / (p + across)  # ASME's for an orifice in free space, k = 1.3
    ideal = train.area * (2.0 * upstream * across) ** 0.5
    load = max(ideal * train.coefficient / train.rated, 0.05)
    coefficient = train.coefficient * (1.0 - 0.006 * (load**-0.5 - 1.0))
    return coefficient * expansion * ideal
