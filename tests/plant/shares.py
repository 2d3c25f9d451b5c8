"""How often sound plants truly lie outside their limits, target by target."""

from collections import Counter
from collections.abc import Iterable, Iterator

from plant.plant import Plant, draw
from plant.plate import due
from plant.si import CFM, FOOT, HP, INWC, KBTU_H, STANDARD_AIR, kelvin
from plant.state import solve

Judged = tuple[str, bool]  # a target, and whether it is truly violated


def violations(seeds: Iterable[int], fault: str | None = "none") -> dict[str, float]:
    """Shares over the rows of each target; with `fault` None over sound and struck ones alike."""
    rows: Counter[str] = Counter()
    bad: Counter[str] = Counter()
    for seed in seeds:
        for name, violated in judged(draw(seed, fault)):
            rows[name] += 1
            bad[name] += violated
    return {name: bad[name] / rows[name] for name in rows}


def judged(plant: Plant) -> Iterator[Judged]:
    yield from _air(plant)
    yield from _power(plant)
    yield from _site(plant)
    for n in range(1, len(plant.machine.furnaces) + 1):
        if plant.state("high").get(f"input.{n}", 0.0) > 0.0:
            yield from _furnace(plant, n)


def _off(value: float, wanted: float, by: float) -> bool:
    return abs(value / wanted - 1.0) > by


def _air(plant: Plant) -> Iterator[Judged]:
    says = plant.declared.air
    wanted = says.airflow * CFM * STANDARD_AIR
    for run in ("fan", "high"):
        flow = solve(plant.machine, run, plant.weather()).flow
        yield "airflow", _off(flow, wanted, 0.10)
        static = plant.state(run)["static.duct"]
        yield f"external static, {run}", _off(static, says.external * INWC, 0.10)
    seen = plant.state("fan")
    yield "filter drop", seen["static.intake"] - seen["static.filters"] > says.change * INWC
    yield "fan speed maximum", seen["fan.rpm"] > plant.declared.fan.max_speed


def _power(plant: Plant) -> Iterator[Judged]:
    motor, seen = plant.declared.motor, plant.state("fan")
    amps = max(value for name, value in seen.items() if name.startswith("motor.amps"))
    most = 1.10 if plant.machine.vfd else motor.service_factor
    yield "motor current", amps > motor.amps
    yield "motor current limit", amps > most * motor.amps
    yield "shaft power", seen["shaft_power"] > motor.power * HP
    legs = ("power.volts", "power.volts.ab", "power.volts.bc", "power.volts.ca")
    yield "line voltage", any(_off(seen[leg], motor.volts, 0.10) for leg in legs if leg in seen)
    high = plant.state("high")
    volts, open_ = high["power.control_volts"], high["power.control_volts.unloaded"]
    yield "control voltage", not 21.0 <= volts <= 28.0 or volts < 0.9 * open_


def _site(plant: Plant) -> Iterator[Judged]:
    least, most = (end * INWC for end in plant.declared.furnaces[0].supply)
    seen, site = plant.state("high"), plant.declared.site
    yield "gas pressure all off", plant.state("off")["gas.supply"] > most
    yield "gas pressure at high fire", seen["gas.supply"] < least
    yield "gas pressure with everything on", plant.state("all")["gas.supply"] < least
    yield "building pressure", not -0.02 * INWC <= seen["building.pressure"] <= 0.05 * INWC
    yield "discharge sensor", abs(seen["air.discharge.sensor"] - seen["air.discharge.db"]) > 1.111
    hottest = kelvin(plant.declared.furnaces[0].max_outlet)
    yield "discharge temperature", seen["air.discharge.db"] > hottest
    cold = plant.state("high", plant.winter())
    yield "set point reached", cold["air.discharge.db"] < kelvin(site.discharge)


def _furnace(plant: Plant, n: int) -> Iterator[Judged]:
    says, seen = plant.declared.furnaces[n - 1], plant.state("high")
    for m, train in enumerate(says.trains, 1):
        manifold = seen[f"train.{n}.{m}.manifold"] / INWC
        yield "valve outlet", abs(seen[f"train.{n}.{m}.outlet"] / INWC - train.outlet) > 0.3
        yield "manifold high", _off(manifold, train.high, 0.05)
        yield "manifold high limit", manifold > 1.10 * train.high
    least, most = _input(plant, n)
    yield "input", not least <= seen[f"input.{n}"] <= most
    yield "input limit", seen[f"input.{n}"] > 1.05 * most
    yield "O2", not says.oxygen[0] <= seen[f"flue.{n}.o2"] <= says.oxygen[1]
    yield "CO air-free", seen[f"co_air_free.{n}"] > 100e-6
    yield "CO air-free limit", seen[f"co_air_free.{n}"] > 400e-6
    yield "temperature rise", not says.rise[0] <= 1.8 * seen[f"rise.{n}"] <= says.rise[1]
    yield "thermal efficiency", abs(seen[f"efficiency.{n}"] - says.efficiency) > 0.03
    yield "flue temperature maximum", seen[f"flue.{n}.db"] > kelvin(says.flue_max)


def _input(plant: Plant, n: int) -> tuple[float, float]:
    """Least and most a furnace may burn at its site."""
    says, altitude = plant.declared.furnaces[n - 1], plant.declared.site.altitude * FOOT
    local = due(says.derate, altitude, plant.weather().barometer)
    most = says.input * KBTU_H * (1.0 if says.derate == "none" else local)
    return 0.95 * says.input * KBTU_H * min(local, 1.0), most
