"""What can be wrong with gas, its supply, its trains and its meter. Sizes are judgement."""

from collections.abc import Iterator, Sequence

from lightoff.inference.causes.effect import Cause, Effect, shares
from lightoff.inference.pushes import Size, between, either_way
from lightoff.machine.gas import UNDECLARED
from lightoff.machine.model.burner import RatedBurner
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.plate import Gas
from lightoff.machine.runs import Level, firing
from lightoff.physics.stoichiometry import AIR_OXYGEN
from lightoff.quantity import si

DIALS = (0.3, -0.5), (0.2, -0.75), (0.3, 1.0), (0.1, 3.0), (0.1, -0.8)  # 2, 4, 5 times, or parts
INCH = si(1, "inwc")  # [Pa]


def supply(rated: Rated, table: Sequence[Unknown]) -> Iterator[Cause]:
    """Of the gas, its supply and its meter."""
    usual = {each.id: each.mean for each in table}
    promised = usual["gas.set"]
    gas = rated.machine.furnaces[0].gas
    yield Cause("gas supply too small", tuple(_starved(usual, between(0.15, 0.6))))
    if gas == "propane":
        yield Cause("cold propane tank", tuple(_starved(usual, between(0.2, 0.8))))
    yield Cause("regulator creeps", (Effect(between(0.35, 1.5), {"gas.lock_up": promised}),))
    held = Effect(shares(0.7, either_way(0.15, 0.6)), {"gas.set": promised})
    yield Cause("blocked regulator vent", (held, *_starved(usual, shares(0.3, between(0.15, 0.6)))))
    yield Cause("air in line")
    heat = {"gas.heating_value": usual["gas.heating_value"]}
    yield Cause("heating value off", (Effect(either_way(0.015, 0.08), heat),))
    yield Cause("wrong gas", (Effect((Size(1.0, 1.0, 0.1),), _other_gas(usual, gas), far=True),))
    yield Cause("meter compensated twice", (Effect(either_way(0.02, 0.15), {"meter.factor": 1.0}),))
    dials = tuple(Size(share, by, 0.05 * (1 + by)) for share, by in DIALS)
    yield Cause("wrong meter dial", (Effect(dials, read=r"gas\.meter\.seconds", scale=1.0),))


def _starved(usual: dict[str, float], sizes: tuple[Size, ...]) -> Iterator[Effect]:
    """More pressure lost under load than should be; the manifolds hold, or fall with it."""
    lost = {"gas.lost": usual["gas.set"]}
    manifolds = {name: -0.6 * value for name, value in usual.items() if name.endswith("fold.high")}
    yield Effect(shares(0.6, sizes), lost)
    yield Effect(shares(0.4, sizes), lost | manifolds)


def _other_gas(usual: dict[str, float], gas: Gas) -> dict[str, float]:
    """How far the other gas is from the declared one."""
    heat, density = UNDECLARED["natural gas" if gas == "propane" else "propane"]
    return {
        "gas.heating_value": heat.value - usual["gas.heating_value"],
        "gas.relative_density": density.value - usual["gas.relative_density"],
    }


def stages(burners: tuple[RatedBurner, ...], table: Sequence[Unknown]) -> Iterator[Cause]:
    """Low and high fire exchanged, in whichever furnace has both."""
    usual = {each.id: each.mean for each in table}
    both = [each for each in burners if each.has_low_fire]
    swapped = (
        _swapped(_pressures(each, usual, "low"), _pressures(each, usual, "high")) for each in both
    )
    if both:
        size = (Size(1 / len(both), 1.0, 0.1),)
        yield Cause("stages swapped", tuple(Effect(size, off) for off in swapped))


def trains(
    rated: Rated, burner: RatedBurner, table: Sequence[Unknown], runs: Sequence[str]
) -> Iterator[Cause]:
    """Of the trains of one furnace; `runs` are those that were read."""
    n, usual = burner.number, {each.id: each.mean for each in table}
    orifices = {train.orifice: 1.0 for train in burner.trains}
    yield Cause("wrong orifice", (Effect(either_way(0.07, 0.35), orifices),), n)
    ports = Effect(either_way(0.15 * INCH, 1.2 * INCH), read=rf"train\.{n}\.\d\.manifold", adds=1.0)
    yield Cause("wrong reference port", (ports,), n)
    fired = [run for run in runs if n in firing(rated.machine, run)]
    slipped = shares(1 / max(len(fired), 1), either_way(0.04, 0.25))
    if len(fired) > 1:
        effects = (Effect(slipped, _pressures(burner, usual, run), run=run) for run in fired)
        yield Cause("setting did not hold", tuple(effects), n)
    if burner.has_low_fire:
        low, high = _pressures(burner, usual, "low"), _pressures(burner, usual, "high")
        mismatch = (
            Effect(shares(0.6, between(0.3, 4.0, 4)), low),
            Effect(shares(0.4, between(-0.65, -0.12)), high),
        )
        yield Cause("signal range mismatch", mismatch, n)
    out = {name: -value for name, value in _pressures(burner, usual, "high").items()}
    cold = out | {burner.air("high"): AIR_OXYGEN - burner.o2}
    yield Cause("stage does not fire", (Effect((Size(1.0, 1.0, 0.05),), cold),), n)


def _pressures(burner: RatedBurner, usual: dict[str, float], run: str) -> dict[str, float]:
    """The manifold pressures that a run at high or at low fire has."""
    level: Level = "low" if run.startswith("low") else "high"
    names = (train.manifold(level) for train in burner.trains)
    return {name: usual[name] for name in names}


def _swapped(low: dict[str, float], high: dict[str, float]) -> dict[str, float]:
    pairs = list(zip(low.items(), high.items(), strict=True))
    return {a: y - x for (a, x), (_, y) in pairs} | {b: x - y for (_, x), (b, y) in pairs}
