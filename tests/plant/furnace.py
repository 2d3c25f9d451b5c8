"""A furnace at work: gas, combustion fan, flame and exchanger, solved together."""

from dataclasses import dataclass

from plant import flame
from plant.blower import Blower, Draught, draw
from plant.exchanger import Exchanger, outlet
from plant.flame import DRY_AIR, Flue
from plant.fuel import AIR_MASS, Fuel
from plant.si import UNIVERSAL
from plant.train import Train, mass_flow

AIR_CP = 29.3  # [J/mol K] of moist air, about 0 degC


@dataclass(frozen=True)
class Furnace:
    """One furnace as it truly is."""

    gas: str
    trains: tuple[Train, ...]
    blower: Blower
    exchanger: Exchanger
    jacket: float  # of the input, lost at the burner's front
    casing: float  # [W/K] from its air to outdoors
    preheat: float  # [K] of the combustion air over its source
    vent_loss: float  # of the flue's excess temperature, on the way to where it is read
    co: float  # air-free at plenty of air
    impingement: float = 0.0
    flame_signal: float = 4e-6  # [A] at high fire
    leak: float = 0.0  # [m2] between air and flue side
    reentrained: float = 0.0  # share of its own flue gas in its combustion air
    fires: bool = True
    signal: tuple[float, float] = (0.0, 1.0)  # what the valve makes of low and high
    swapped: bool = False


@dataclass(frozen=True)
class Surroundings:
    """What a furnace meets in a run."""

    run: str
    fuel: Fuel
    p: float  # [Pa] absolute
    outdoor: float  # [K] where its combustion air comes from
    moisture: float  # of that air [kg/kg]
    gas_temperature: float
    wind: float = 0.0


@dataclass(frozen=True)
class Stream:
    """The air over the exchanger."""

    flow: float  # [kg/s] moist
    cp: float
    inlet: float  # [K]
    pressure: float  # [Pa] gauge


@dataclass(frozen=True)
class Fire:
    """A furnace in a run, all of it."""

    manifolds: tuple[float, ...]
    flows: tuple[float, ...]  # [kg/s] by train
    flue: Flue | None
    fuel_flow: float  # [mol/s]
    gross: float  # [W]
    to_air: float  # [W] out of the gas, before casing losses
    flue_temperature: float
    draught: Draught
    excess: float
    co_air_free: float
    speed: float  # relative, of the combustion fan
    leak: float  # [kg/s] flue gas into the air; negative: air into the flue

    @property
    def gas(self) -> float:
        return sum(self.flows)


def idle(furnace: Furnace, around: Surroundings) -> Fire:
    """Not firing: nothing flows, the flue is at rest."""
    none = (0.0,) * len(furnace.trains)
    still = Draught(0.0, 0.0, 0.0, 0.0)
    T = around.outdoor
    return Fire(none, none, None, 0.0, 0.0, 0.0, T, still, 0.0, 0.0, 0.0, 0.0)


def fire(
    furnace: Furnace,
    around: Surroundings,
    stream: Stream,
    level: str,
    inlet: float,
    guess: Fire | None,
) -> Fire:
    """At a level with `inlet` gas pressure at the unit; `guess` is the last answer."""
    if not furnace.fires or inlet <= 0.0:
        return idle(furnace, around)
    level, speed = _called(furnace, level)
    air_in = around.outdoor + furnace.preheat
    gas, box, T, hot = _start(furnace, guess)
    for _ in range(3 if guess is None or guess.flue is None else 1):  # the caller comes again
        flows, manifolds = _trains(furnace, around, level, inlet, gas, box)
        gas = flows
        draught, leak = _draught(furnace, around, stream, speed, T, hot)
        fuel_flow = sum(flows) / around.fuel.molar_mass
        if fuel_flow <= 0.0:
            return idle(furnace, around)
        # air through a crack half way along: the blower moves more, the burner gets less
        total = draught.flow + 0.5 * max(-leak, 0.0)
        excess, behind = _mixture(furnace, around, fuel_flow, total, sum(flows), leak)
        flue = flame.burn(around.fuel, excess, _moles(around.moisture))
        if behind > 0.0:
            flue = flame.with_air(flue, behind, _moles(around.moisture))
        burning = _burning(furnace, around, flue, air_in)
        hot = flame.temperature(flue, burning, 1900.0 if hot < 900.0 else hot)
        # one flow runs through all tubes; the exchanger is fed by what is burnt in front of it
        T = outlet(
            furnace.exchanger, flue, fuel_flow, hot, stream.flow, stream.cp, stream.inlet,
            around.p, T,
        )  # fmt: skip
        box = draught.box
    given = fuel_flow * (flue.sensible(hot) - flue.enthalpy(T, around.p))
    # what warms the combustion air comes out of the casing it passes, and so out of the airstream
    given -= fuel_flow * furnace.preheat * AIR_CP * _air_moles(around.fuel, flue)
    co = flame.carbon_monoxide(excess, furnace.co, furnace.impingement)
    shown = T - furnace.vent_loss * (T - around.outdoor)
    at_sample = excess + behind * DRY_AIR["o2"] / around.fuel.oxygen
    return Fire(
        manifolds, flows, flue, fuel_flow, fuel_flow * around.fuel.gross, given, shown, draught,
        at_sample, co, speed, leak,
    )  # fmt: skip


def _called(furnace: Furnace, level: str) -> tuple[str, float]:
    """The level its valve takes, and the speed its combustion fan is sent."""
    speed = furnace.blower.speed * (furnace.blower.low if level == "low" else 1.0)
    if furnace.swapped:
        level = "low" if level == "high" else "high"
    return level, speed


def _start(furnace: Furnace, guess: Fire | None) -> tuple[tuple[float, ...], float, float, float]:
    if guess is None or guess.flue is None:
        return tuple(train.rated for train in furnace.trains), 0.0, 470.0, 0.0
    return guess.flows, guess.draught.box, guess.flue_temperature, 1900.0


def _trains(
    furnace: Furnace,
    around: Surroundings,
    level: str,
    inlet: float,
    gas: tuple[float, ...],
    box: float,
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    manifolds, flows = [], []
    for train, flow in zip(furnace.trains, gas, strict=True):
        signal = furnace.signal[1 if level == "high" else 0]
        asked = level if furnace.signal == (0.0, 1.0) else "signal"
        manifold = train.manifold(around.run, asked, inlet, flow, signal)
        across = manifold if train.boxed else manifold - box
        manifolds.append(manifold)
        flows.append(mass_flow(train, around.fuel, across, around.p, around.gas_temperature))
    return tuple(flows), tuple(manifolds)


def _draught(
    furnace: Furnace, around: Surroundings, stream: Stream, speed: float, T: float, hot: float
) -> tuple[Draught, float]:
    constant = around.p * 0.0281 / UNIVERSAL  # 28.1 g/mol: common flue gas
    mean = 0.5 * (T + max(hot, 1500.0))
    outdoor = around.p * AIR_MASS / UNIVERSAL / around.outdoor
    draught = draw(furnace.blower, speed, outdoor, constant / mean, constant / T, around.wind)
    if furnace.leak <= 0.0:
        return draught, 0.0
    # the crack sits half way along the tubes
    gas_side = 0.5 * (draught.box + draught.proving)
    across = gas_side - stream.pressure
    density = constant / mean if across > 0.0 else 1.1
    leak = 0.62 * furnace.leak * (2.0 * density * abs(across)) ** 0.5
    return draught, leak if across > 0.0 else -leak


def _mixture(
    furnace: Furnace,
    around: Surroundings,
    fuel_flow: float,
    total: float,
    gas: float,
    leak: float,
) -> tuple[float, float]:
    """Excess air at the flame, and moles of air that come in behind it, by mole of fuel."""
    behind = max(-leak, 0.0)
    air = max(total + max(leak, 0.0) - gas - behind, 0.0) * (1.0 - 0.7 * furnace.reentrained)
    dry = air / (1.0 + around.moisture) / AIR_MASS / fuel_flow
    return (
        max(dry * DRY_AIR["o2"] / around.fuel.oxygen - 1.0, -0.75),
        min(behind / AIR_MASS / fuel_flow, 3.0 * dry + 1.0),
    )


def _air_moles(fuel: Fuel, flue: Flue) -> float:
    """Moist air that went into the products [mol/mol fuel]."""
    burnt = min(fuel.oxygen, flue.o2 + fuel.oxygen)
    return flue.moles + burnt - fuel.carbon - fuel.hydrogen / 2.0 - fuel.inert


def _burning(furnace: Furnace, around: Surroundings, flue: Flue, air_in: float) -> float:
    """Sensible heat of the products before the exchanger [J/mol fuel]."""
    warm = (air_in - flame.BASE) * AIR_CP * _air_moles(around.fuel, flue)
    return flue.heat + warm - furnace.jacket * around.fuel.gross


def _moles(w: float) -> float:
    return w * AIR_MASS / 0.018015
