"""What an adjustment moves: until taken again, the readings named here are stale.

The table of the trade. The model may find more that moves; it never takes a row away.
"""

import re

from lightoff.machine import Machine, canonical, fan_runs, firing

_AIRSIDE = re.compile(
    r"static\..*|duct\..*|filter\..*|fan\.rpm|motor\..*|vfd\..*|building\.pressure|door\..*"
    r"|exhaust\.airflow"
)
_BELT = re.compile(r"belt\..*")
_WARMED = re.compile(r"air\.discharge\..*")
_AFTER = re.compile(r"air\.after\.(\d)\.db")
_METER = re.compile(r"gas\.meter\.(seconds|pressure|db)")
_TRAIN = re.compile(r"train\.(\d)\.(\d)\.(outlet|manifold)")
_AIR_SETTINGS = ("vfd.hz", "drive.motor_sheave", "drive.fan_sheave", "damper.position", "filters")


def moves(machine: Machine, what: str, turned_in: str | None, point: str, run: str) -> bool:
    """Whether turning `what` (in run `turned_in`) can move a reading at `point` in `run`."""
    if what in _AIR_SETTINGS:
        return _air_moves(machine, what, point, run)
    if what == "fan.rotation":
        every = [number for number, _ in machine.numbered()]
        return _air_moves(machine, what, point, run) or _burner_moves(machine, every, point, run)
    if what == "gas.regulator":
        every = [number for number, _ in machine.numbered()]
        train = _TRAIN.fullmatch(point) is not None
        return point == "gas.supply" or train or _burner_moves(machine, every, point, run)
    if what == "wiring":
        return _burner_moves(machine, [n for n, _ in machine.numbered()], point, run)
    if what.startswith(("train.", "furnace.")):
        furnace = int(what.split(".")[1])
        return _train_moves(machine, what, turned_in, point, run) or _burner_moves(
            machine, [furnace], point, run
        )
    return False


def _air_moves(machine: Machine, what: str, point: str, run: str) -> bool:
    """Airside, amps, power, rise and flue readings; a sheave moves the belt too."""
    if what.startswith("drive.") and _BELT.fullmatch(point):
        return True
    if not fan_runs(run):
        return False
    flue = point.startswith("flue.") and bool(firing(machine, run))
    return bool(_AIRSIDE.fullmatch(point)) or _warmed(machine, (1,), point, run) or flue


def _burner_moves(machine: Machine, furnaces: list[int], point: str, run: str) -> bool:
    """Flue, CO, input, rise and supply readings of the furnaces concerned, where they fire."""
    concerned = [number for number in furnaces if number in firing(machine, run)]
    if not concerned:
        return False
    own = re.match(r"(?:flue|furnace)\.(\d)\.", point)
    if own:
        return int(own[1]) in concerned and not point.endswith((".orifice", "combustion_fan.rpm"))
    return (
        point == "gas.supply"
        or bool(_METER.fullmatch(point))
        or _warmed(machine, tuple(concerned), point, run)
    )


def _warmed(machine: Machine, furnaces: tuple[int, ...], point: str, run: str) -> bool:
    """Air temperatures and CO after the first of `furnaces`, in a run in which something fires."""
    if not firing(machine, run):
        return False
    if after := _AFTER.fullmatch(point):
        return int(after[1]) >= min(furnaces)
    return bool(_WARMED.fullmatch(point))


def _train_moves(machine: Machine, what: str, turned_in: str | None, point: str, run: str) -> bool:
    """The train's own pressures: the manifold at the level at which it was turned, or all."""
    there = _TRAIN.fullmatch(point)
    parts = what.split(".")
    if there is None or there[1] != parts[1]:
        return False
    if parts[0] == "furnace":  # another orifice: every manifold of that furnace is set anew
        return there[3] == "manifold"
    if there[2] != parts[2]:
        return False
    if parts[3] == "outlet":
        return True
    furnace = int(parts[1])
    level = firing(machine, canonical(machine, turned_in or "")).get(furnace)
    here = firing(machine, run).get(furnace)
    return there[3] == "manifold" and (level is None or level == here)
