"""What is read in a visit, in which run and in what order, by how thorough it is."""

from random import Random

from plant.machine import Machine
from plant.plate import Plate

Line = tuple[str, str]  # run, point
STYLES = ("ordinary", "thorough", "scant")
# how likely a point is read in each style, by what its name begins with in a run
OFTEN: dict[str, dict[str, tuple[float, float, float]]] = {
    "off": {
        "power.volts.": (0.5, 1.0, 0.1), "power.volts": (0.5, 1.0, 0.2),
        "gas.supply": (0.85, 1.0, 0.3),
        "air.barometer": (0.15, 0.7, 0.0), "power.control_volts.unloaded": (0.2, 0.7, 0.0),
        "belt.force": (0.15, 0.8, 0.0), "belt.angle": (0.1, 0.6, 0.0),
    },
    "fan": {
        "power.volts.": (0.35, 1.0, 0.0), "motor.amps": (0.9, 1.0, 0.45), "vfd.hz": (0.7, 1.0, 0.4),
        "vfd.volts": (0.1, 0.5, 0.0), "vfd.amps": (0.1, 0.5, 0.0), "fan.rpm": (0.55, 0.95, 0.1),
        "motor.rpm": (0.08, 0.5, 0.0), "motor.kw": (0.02, 0.2, 0.0),
        "power.control_volts": (0.3, 0.8, 0.1), "static.intake": (0.35, 0.9, 0.0),
        "static.filters": (0.4, 0.9, 0.0), "static.fan_in": (0.2, 0.8, 0.0),
        "static.fan_out": (0.2, 0.8, 0.0), "static.furnaces": (0.15, 0.8, 0.0),
        "static.duct": (0.65, 1.0, 0.3), "duct.traverse": (0.4, 0.95, 0.08),
        "duct.hood_total": (0.05, 0.15, 0.0), "air.outdoor.db": (0.5, 1.0, 0.2),
        "air.outdoor.rh": (0.15, 0.7, 0.0), "air.discharge.db": (0.2, 0.7, 0.0),
        "air.discharge.sensor": (0.3, 0.8, 0.05),
    },
    "high": {
        "power.volts.": (0.25, 0.8, 0.1), "motor.amps": (0.35, 0.9, 0.2),
        "power.control_volts": (0.2, 0.6, 0.0), "fan.rpm": (0.05, 0.4, 0.0),
        "static.duct": (0.15, 0.6, 0.0), "gas.supply": (0.9, 1.0, 0.55),
        "air.outdoor.db": (0.7, 1.0, 0.35), "air.outdoor.rh": (0.05, 0.3, 0.0),
        "air.entering.db": (0.65, 1.0, 0.2), "air.after.": (0.1, 0.7, 0.0),
        "air.discharge.db": (0.9, 1.0, 0.75), "air.discharge.sensor": (0.35, 0.9, 0.1),
        "air.intake.co": (0.15, 0.9, 0.0), "air.discharge.co": (0.25, 0.95, 0.05),
        "building.pressure": (0.2, 0.7, 0.03), "door.unlatch": (0.05, 0.4, 0.0),
        "door.start": (0.05, 0.4, 0.0), "door.open": (0.05, 0.4, 0.0),
        "exhaust.airflow": (0.02, 0.15, 0.0),
    },
    "high.": {"gas.supply": (0.1, 0.4, 0.0), "air.discharge.db": (0.15, 0.5, 0.0),
              "air.entering.db": (0.1, 0.4, 0.0), "air.discharge.co": (0.1, 0.6, 0.0)},
    "low": {"gas.supply": (0.05, 0.3, 0.0), "air.discharge.db": (0.2, 0.5, 0.0),
            "air.entering.db": (0.1, 0.3, 0.0)},
    "all": {"gas.supply": (0.4, 0.95, 0.1)},
}  # fmt: skip
# of each furnace that fires, where it is read alone or with the others
FURNACE: dict[str, dict[str, tuple[float, float, float]]] = {
    "high": {
        ".outlet": (0.5, 0.95, 0.1), ".manifold": (0.95, 1.0, 0.8), ".o2": (0.8, 1.0, 0.4),
        ".co": (0.85, 1.0, 0.5), "flue.db": (0.75, 1.0, 0.3), ".draft": (0.1, 0.6, 0.0),
        ".proving_pressure": (0.05, 0.4, 0.0), ".flame": (0.2, 0.7, 0.0),
        ".combustion_air.db": (0.05, 0.4, 0.0), ".co2": (0.06, 0.2, 0.0),
        ".combustion_fan.rpm": (0.0, 0.15, 0.0), ".orifice": (0.0, 0.3, 0.0),
        "gas.meter": (0.5, 0.95, 0.15),
    },
    "low": {
        ".manifold": (0.8, 1.0, 0.3), ".o2": (0.5, 1.0, 0.05), ".co": (0.5, 1.0, 0.08),
        "flue.db": (0.4, 1.0, 0.0), "gas.meter": (0.08, 0.6, 0.0), ".signal": (0.05, 0.2, 0.0),
    },
}  # fmt: skip


LEAST = {"ordinary": 18, "thorough": 45, "scant": 7}


def enough(
    rng: Random, machine: Machine, plate: Plate, style: str, runs: dict[str, dict[str, float]]
) -> list[Line]:
    """The longest of a few plans, unless one is as long as its style asks for."""
    longest: list[Line] = []
    for _ in range(4):
        found = lines(rng, machine, plate, style, runs)
        longest = max(longest, found, key=len)
        if len(longest) >= LEAST[style]:
            break
    return longest


def lines(
    rng: Random, machine: Machine, plate: Plate, style: str, runs: dict[str, dict[str, float]]
) -> list[Line]:
    """Runs in the trade's order; `runs` holds what there is to be read in each."""
    found: list[Line] = []
    column = STYLES.index(style)
    for run, points in runs.items():
        table = OFTEN.get(run) or OFTEN["high." if run.startswith("high.") else "low"]
        if run.startswith(("high", "low")):
            found += _furnaces(rng, machine, plate, column, run, points)
        found += _chosen(rng, table, column, run, points)
    return found


def order(rng: Random, machine: Machine, style: str) -> list[str]:
    """Each furnace alone only where somebody takes the time."""
    alone = {"ordinary": 0.3, "thorough": 0.7, "scant": 0.0}[style]
    names = machine.runs()
    singly = [run for run in names if "." in run and rng.random() < alone]
    low = ["low"] if "low" in names and not any(run.startswith("low.") for run in singly) else []
    return ["off", "fan", *singly, *low, "high", "all"]


def again(rng: Random, machine: Machine, style: str, points: dict[str, float]) -> list[str]:
    """Manifolds gone back to at high fire, the last thing before the covers: who does so."""
    if rng.random() >= {"ordinary": 0.2, "thorough": 0.7, "scant": 0.0}[style]:
        return []
    burning = [n for n in range(1, len(machine.furnaces) + 1) if points.get(f"input.{n}", 0.0) > 0]
    names = [f"train.{n}.{m}.manifold" for n in burning
             for m in range(1, len(machine.furnaces[n - 1].trains) + 1)]  # fmt: skip
    return [name for name in names if name in points]


def _chosen(
    rng: Random,
    table: dict[str, tuple[float, float, float]],
    column: int,
    run: str,
    points: dict[str, float],
) -> list[Line]:
    """All legs of a quantity or none: nobody measures two phases and goes home."""
    found = []
    for begins, odds in table.items():
        if rng.random() >= odds[column]:
            continue
        names = [name for name in points if _belongs(name, begins)]
        found += [(run, name) for name in names]
    return found


def _belongs(name: str, begins: str) -> bool:
    if begins == "power.volts.":
        return name in ("power.volts.ab", "power.volts.bc", "power.volts.ca")
    if begins == "motor.amps":
        return name.startswith("motor.amps")
    return name.startswith(begins) if begins.endswith(".") else name == begins


def _furnaces(
    rng: Random, machine: Machine, plate: Plate, column: int, run: str, points: dict[str, float]
) -> list[Line]:
    found: list[Line] = []
    table = FURNACE["high" if run.startswith("high") else "low"]
    for n, level in enumerate(machine.levels(run), 1):
        if level is None or points.get(f"input.{n}", 0.0) <= 0.0:
            continue
        for ends, odds in table.items():
            if ends != "gas.meter" and rng.random() < odds[column]:
                found += [(run, name) for name in points if _of_furnace(name, n, ends)]
    clocked = plate.furnaces[0].gas == "natural gas" or rng.random() < 0.2
    if clocked and "gas.meter.seconds" in points and rng.random() < table["gas.meter"][column]:
        found += _meter(rng, run, column)
    return found


def _of_furnace(name: str, n: int, ends: str) -> bool:
    if ends == "flue.db":
        return name == f"flue.{n}.db"
    if name == f"box.{n}" or not name.startswith((f"train.{n}.", f"flue.{n}.", f"furnace.{n}.")):
        return False
    return name.endswith(ends)


def _meter(rng: Random, run: str, column: int) -> list[Line]:
    found = [(run, "gas.meter.seconds")]
    if rng.random() < (0.35, 0.9, 0.1)[column]:
        found.append((run, "gas.meter.pressure"))
    if rng.random() < (0.35, 0.9, 0.1)[column]:
        found.append((run, "gas.meter.db"))
    return found
