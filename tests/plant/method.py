"""What an ideal instrument would show at a point, the way it is held and where."""

from random import Random

from plant.machine import Machine, Method
from plant.si import STANDARD_AIR

Values = dict[str, float]
STATIC = ("intake", "filters", "fan_in", "fan_out", "furnaces", "duct")


def of_visit(rng: Random, machine: Machine) -> Method:
    """The ways of one technician at one unit; spreads named after spreads.toml."""
    behind = _three(rng, 0.07)  # sp-stratified-one is 10 %: most move the probe about
    blow = machine.arrangement == "blow-through"
    return Method(
        discharge=rng.gauss(0.0, 0.035 if blow else 0.012),  # sp-stratified-far after the fan
        between=behind, radiation=abs(rng.gauss(0.0, 1.2 if blow else 0.3)),  # sp-probe-radiation
        entering=rng.gauss(0.1, 0.3), shade=abs(rng.gauss(0.3, 0.4)),  # sp-outdoor-shield
        traverse=rng.gauss(0.0, 0.026 if rng.random() < 0.6 else 0.045),  # good, fair planes
        area=rng.gauss(0.0, 0.01), taps=_taps(rng, blow),
        dilution=(_air(rng), _air(rng), _air(rng)),
        flue=_three(rng, 4.0, -3.0),  # sp-flue-temperature-place
        clamp=rng.gauss(-0.01, 0.02) if machine.vfd else rng.gauss(0.0, 0.008),
        hood=rng.gauss(-0.02, 0.03),  # sp-hood-large
    )  # fmt: skip


def _three(rng: Random, spread: float, mean: float = 0.0) -> tuple[float, float, float]:
    return rng.gauss(mean, spread), rng.gauss(mean, spread), rng.gauss(mean, spread)


def _air(rng: Random) -> float:
    """1 % and 1.5, never negative (sp-flue-dilution)."""
    return max(rng.gauss(0.006, 0.008), 0.0)


def _taps(rng: Random, blow: bool) -> tuple[float, float, float, float, float, float]:
    """0.05 velocity pressures in quiet air, 0.25 beside a fan (sp-static-tap, -turbulent)."""
    spreads = (0.08, 0.08, 0.2, 0.25, 0.25 if blow else 0.08, 0.06)
    return tuple(rng.gauss(0.0, spread) for spread in spreads)  # type: ignore[return-value]


def shown(machine: Machine, run: str, true: Values) -> Values:
    """The true values moved by how and where they are read; gauge and reader come later."""
    way = machine.method
    seen = dict(true)
    firing = sum(true.get(f"input.{n}", 0.0) > 0.0 for n in (1, 2, 3)) / len(machine.furnaces)
    seen["air.outdoor.db"] += way.shade
    seen["air.entering.db"] += way.entering
    rise = true["air.discharge.db"] - true["air.entering.db"]
    seen["air.discharge.db"] += way.discharge * rise + way.radiation * firing
    for n in range(1, len(machine.furnaces) + 1):
        seen[f"air.after.{n}.db"] += way.between[n - 1] * _own_rise(true, n) + way.radiation * (
            true.get(f"input.{n}", 0.0) > 0.0
        )
        seen.update(_flue(machine, true, n))
        seen.update(_manifolds(machine, true, n))
    seen.update(_static(machine, true))
    seen["duct.traverse"] *= (1.0 + way.traverse) * (1.0 + way.area)
    seen["duct.hood_total"] *= 1.0 + way.hood
    for name in ("motor.amps", "motor.amps.a", "motor.amps.b", "motor.amps.c"):
        if name in seen:
            seen[name] *= 1.0 + way.clamp
    for name in ("fan.rpm", "motor.rpm"):
        seen[name] *= way.harmonic
    return seen


def _own_rise(true: Values, n: int) -> float:
    before = true[f"air.after.{n - 1}.db"] if n > 1 else true["air.entering.db"]
    return true[f"air.after.{n}.db"] - before


def _flue(machine: Machine, true: Values, n: int) -> Values:
    """Air drawn into the sample, and a probe beside the hottest thread."""
    if f"input.{n}" not in true or true[f"input.{n}"] <= 0.0:
        return {}
    share = machine.method.dilution[n - 1]
    return {
        f"flue.{n}.o2": true[f"flue.{n}.o2"] * (1.0 - share) + 0.2095 * share,
        f"flue.{n}.co2": true[f"flue.{n}.co2"] * (1.0 - share),
        f"flue.{n}.co": true[f"flue.{n}.co"] * (1.0 - share),
        f"flue.{n}.db": true[f"flue.{n}.db"] + machine.method.flue[n - 1],
    }


def _manifolds(machine: Machine, true: Values, n: int) -> Values:
    """Against the wrong port the box's own pressure comes in."""
    if not machine.method.reference[n - 1]:
        return {}
    box = true.get(f"box.{n}", 0.0)
    sign = 1.0 if machine.furnaces[n - 1].trains[0].boxed else -1.0
    ids = [f"train.{n}.{m}.manifold" for m in range(1, len(machine.furnaces[n - 1].trains) + 1)]
    return {name: true[name] + sign * box for name in ids if true[name] > 0.0}


def _static(machine: Machine, true: Values) -> Values:
    """Every tap off by its share of the velocity pressure there."""
    duct = machine.airside.duct
    velocity = 0.5 * STANDARD_AIR * (true["airflow"] / duct.area) ** 2
    casing = 0.1 * velocity
    return {
        f"static.{name}": true[f"static.{name}"]
        + tap * (velocity if name == "duct" else 2.0 * casing if name.startswith("fan") else casing)
        for name, tap in zip(STATIC, machine.method.taps, strict=True)
    }
