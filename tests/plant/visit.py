"""A visit: the weather of a day, a bag, a reader, and what ends up in the job file."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta, timezone
from random import Random
from typing import Any

from plant import kit, limit, plan, reader
from plant.instrument import Channel, Instrument, in_si
from plant.machine import Condition, Machine
from plant.method import shown
from plant.plate import Plate
from plant.points import Values, values
from plant.proofs import proofs
from plant.si import CUBIC_FOOT, INWC, clip
from plant.state import solve
from plant.traverse import traverse

Tree = dict[str, Any]
ZONE = timezone(timedelta(hours=-6))
# which instrument and which of its quantities reads a point, by how its name begins or ends
BY: tuple[tuple[str, str, str], ...] = (
    ("air.barometer", "baro-1", "pressure"), (".rh", "hygro-1", "humidity"),
    ("air.discharge.sensor", "unit-1", "temperature"), ("vfd.hz", "unit-1", "frequency"),
    ("vfd.volts", "unit-1", "voltage"), ("vfd.amps", "unit-1", "current"),
    ("vfd.kw", "unit-1", "power"), ("motor.kw", "unit-1", "power"),
    ("air.intake.co", "co-1", "CO"), ("air.discharge.co", "co-1", "CO"),
    (".flame", "", "flame"), (".signal", "", "signal"), (".orifice", "", "orifice"),
    (".combustion_air.db", "therm-1", "temperature"), (".combustion_fan.rpm", "tach-1", "speed"),
    ("flue.*.db", "flue-1", "temperature"), (".o2", "flue-1", "O2"), (".co2", "flue-1", "CO2"),
    (".co", "flue-1", "CO"), (".draft", "flue-1", "pressure"), (".db", "therm-1", "temperature"),
    ("power.", "clamp-1", "voltage"), ("motor.amps", "clamp-1", "current"),
    (".rpm", "tach-1", "speed"), ("static.", "gauge-2", "pressure"),
    ("building.pressure", "gauge-2", "pressure"), ("gas.meter.seconds", "watch-1", "time"),
    (".proving_pressure", "gauge-2", "pressure"), ("belt.force", "scale-1", "force"),
    ("belt.angle", "scale-1", "angle"), ("door.", "scale-1", "force"),
    ("duct.hood_total", "hood-1", "flow"), ("exhaust.airflow", "hood-1", "flow"),
    ("", "gauge-1", "pressure"),
)  # fmt: skip


@dataclass(frozen=True)
class Visit:
    """The job tree with one visit in it, and everything needed to score an answer."""

    tree: Tree
    truth: Tree


@dataclass
class _Notebook:
    """What is being written; times move on as it fills."""

    rng: Random
    bag: dict[str, Instrument]
    who: reader.Reader
    now: datetime
    rows: list[Tree]
    errors: list[Tree]


def made(rng: Random, machine: Machine, plate: Plate, job: Tree, style: str, slips: float) -> Visit:
    """One visit; `slips` is the chance that one of its readings is grossly wrong."""
    bag = kit.drawn(rng, machine.method.unzeroed, machine.method.zero / INWC)
    book = _Notebook(rng, bag, reader.drawn(rng), _morning(rng), [], [])
    weather = _drifting(rng, machine)
    runs = plan.order(rng, machine, style)
    true = {run: values(machine, solve(machine, run, weather[run])) for run in runs}
    wanted = plan.enough(rng, machine, plate, style, true)
    wanted = [one for line in wanted for one in [line] * (1 + (rng.random() < 0.02))]  # repeats
    if machine.extras.fan_held:
        wanted = [line for line in wanted if line[0] == "off"]
    short = {run for run in runs if limit.opens(machine, plate, true[run])}
    wanted = [(run, point) for run, point in wanted if run not in short or limit.readable(point)]
    seen = {run: shown(machine, run, true[run]) for run in {run for run, _ in wanted}}
    for run, point in wanted:
        _read(book, machine, run, point, seen[run], true[run])
    # high fire once more, hours later: as far from its first setting as the last run was
    for point in plan.again(rng, machine, style, true["all"]):
        _read(book, machine, "high", point, shown(machine, "all", true["all"]), true["all"])
    slip = _slip(book) if rng.random() < slips else None
    return Visit(_tree(book, machine, plate, job, style, short), _truth(book, machine, true, slip))


def _morning(rng: Random) -> datetime:
    day = datetime(2026, rng.randint(9, 12), rng.randint(1, 28), 8, 0, tzinfo=ZONE)
    return day + timedelta(minutes=rng.randint(0, 150))


def _drifting(rng: Random, machine: Machine) -> dict[str, Condition]:
    """1.3 K an hour at random (sp-outdoor-hour), gas pressure by what neighbours burn."""
    at, found = machine.weather, {}
    for run in machine.runs():
        outdoor = clip(at.outdoor + rng.gauss(0.25, 0.7), 240.0, 312.0)
        at = replace(at, outdoor=outdoor, supply=1.0 + rng.gauss(0.0, 0.008))
        found[run] = at
    return found


def _matches(pattern: str, point: str) -> bool:
    if pattern == "flue.*.db":
        return point.startswith("flue.") and point.endswith(".db")
    return point.endswith(pattern) if pattern.startswith(".") else point.startswith(pattern)


def means_for(point: str) -> tuple[str, str]:
    """The instrument and quantity a point is read by."""
    return next((name, quantity) for pattern, name, quantity in BY if _matches(pattern, point))


def _read(
    book: _Notebook, machine: Machine, run: str, point: str, shows: Values, truth: Values
) -> None:
    """One line of the notebook, where the instrument reaches."""
    seen, true = shows[point], truth[point]
    name, quantity = means_for(point)
    steady = 6.0 if point.endswith((".o2", ".co")) else 0.0
    book.now += timedelta(minutes=round(book.rng.uniform(1.0, 3.0) + steady))
    row: Tree = {"run": run, "point": point, "at": book.now}
    if point == "duct.traverse":
        pressures = traverse(book.rng, book.bag, machine, seen, truth["density.duct"])
        row |= {"instrument": "gauge-2", "traverse": pressures}
        book.rows.append(row)
        book.errors.append({"run": run, "point": point, "true": true, "read": None})
        return
    if not name:
        _bare(book, row, quantity, seen, true)
        return
    channel = _channel(book, name, quantity, seen)
    if channel is None:
        return
    if quantity == "time":
        _clocked(book, machine, row, channel[1], seen, true)
    else:
        _written(book, row, channel, quantity, seen, true)


def _channel(book: _Notebook, name: str, quantity: str, seen: float) -> tuple[str, Channel] | None:
    """The fine gauge where it reaches, else the other; None where neither does."""
    names = (name, "gauge-1") if name == "gauge-2" else (name,)
    for one in names:
        channel = book.bag[one].channel(quantity)
        if channel is not None and channel.reaches(seen):
            return one, channel
    return None


def _written(
    book: _Notebook, row: Tree, found: tuple[str, Channel], quantity: str, seen: float, true: float
) -> None:
    name, channel = found
    display = channel.shows(seen, book.rng)
    coarse = quantity == "pressure" and channel.resolution >= 0.1
    number, step = book.who.writes(display, channel.resolution, coarse)
    if quantity in ("CO", "force", "current", "speed", "O2", "CO2"):
        number = max(number, 0.0)
    row |= {"value": text(number, step, channel.unit), "instrument": name}
    book.rows.append(row)
    book.errors.append({"run": row["run"], "point": row["point"], "true": true,
                        "read": in_si(number, channel.unit)})  # fmt: skip


def text(number: float, step: float, unit: str) -> str:
    digits = max(0, len(f"{step:.6f}".rstrip("0").split(".")[1]))
    return f"{number + 0.0:.{digits}f} {unit}"


def _bare(book: _Notebook, row: Tree, quantity: str, seen: float, true: float) -> None:
    """Read off something that is in no bag."""
    if quantity == "flame":
        number = round(seen * 1e6 * book.rng.gauss(1.0, 0.04), 1)
        row["value"], read = f"{number:.1f} uA", number * 1e-6
    elif quantity == "signal":
        number = round(seen * 100.0)
        row["value"], read = f"{number:g} %", number / 100.0
    else:
        number = round(seen / 0.0254 * book.rng.gauss(1.0, 0.004), 4)
        row["value"], read = f"{number:.4f} in", number * 0.0254
    book.rows.append(row)
    book.errors.append({"run": row["run"], "point": row["point"], "true": true, "read": read})


def _clocked(
    book: _Notebook, machine: Machine, row: Tree, watch: Channel, turn: float, true: float
) -> None:
    """Whole turns, a minute or more by the careful; the hand passes its mark within 0.7 %."""
    turns = max(1, round(60.0 / turn + 0.5)) if book.rng.random() < 0.7 else 1
    mark = turn * book.rng.gauss(0.0, 0.007)
    seconds = watch.shows(turns * turn + mark, book.rng)
    dial = machine.meter.dial * machine.method.dial / CUBIC_FOOT
    row |= {"value": f"{max(seconds, 0.5):.1f} s", "instrument": "watch-1",
            "dial": f"{dial:g} ft3", "revolutions": turns}  # fmt: skip
    book.rows.append(row)
    book.errors.append({"run": row["run"], "point": row["point"], "true": true * turns,
                        "read": seconds})  # fmt: skip


def _slip(book: _Notebook) -> Tree | None:
    """One reading made grossly wrong."""
    index = book.rng.randrange(len(book.rows)) if book.rows else 0
    if not book.rows or "value" not in book.rows[index]:
        return None
    row = book.rows[index]
    quantity = means_for(row["point"])[1]
    number, unit = row["value"].split(" ", 1)
    slipped, kind = reader.slipped(book.rng, quantity, float(number))
    if not kind or slipped == float(number):
        return None
    digits = len(number.partition(".")[2])
    row["value"] = f"{slipped:.{digits}f} {unit}"
    return {"index": index, "kind": kind, "run": row["run"], "point": row["point"]}


def _tree(
    book: _Notebook, machine: Machine, plate: Plate, job: Tree, style: str, short: set[str]
) -> Tree:
    visit = {
        "purpose": "start-up", "by": "A. Practice", "date": book.now.date(), "left": "off",
        "reading": book.rows, **proofs(book.rng, machine, plate, style, bool(short)),
    }  # fmt: skip
    tree = {**job, "instrument": [one.tree() for one in book.bag.values()], "visit": [visit]}
    if style == "scant" and book.rng.random() < 0.5:  # nobody wrote down with what
        for row in book.rows:
            row.pop("instrument", None)
        del tree["instrument"]
    return tree


def _truth(
    book: _Notebook, machine: Machine, true: dict[str, dict[str, float]], slip: Tree | None
) -> Tree:
    return {
        "seed": machine.seed,
        "fault": machine.fault.id,
        "furnace": machine.fault.furnace,
        "severity": machine.fault.severity,
        "runs": true,
        "method": machine.method,
        "instruments": book.bag,
        "reader": book.who,
        "readings": book.errors,
        "slip": slip,
    }
