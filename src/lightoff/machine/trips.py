"""Trips: the devices that stop the unit, each to be proven by making it act."""

from dataclasses import dataclass

from lightoff.machine.machine import Machine

# whether each furnace has its own, and the option that declares it (None: always there)
TRIPS: dict[str, tuple[bool, str | None]] = {
    "flame failure": (True, None),
    "high limit": (True, None),
    "airflow proving": (False, None),
    "combustion air proving": (True, None),
    "low gas": (False, "low gas switch"),
    "high gas": (False, "high gas switch"),
    "door switch": (False, "door switch"),
    "disconnect": (False, None),
    "freeze": (False, "freeze protection"),
    "smoke": (False, "smoke shutdown"),
    "hood fire": (False, "hood fire shutdown"),
    "exhaust interlock": (False, "exhaust interlock"),
}

OPTIONS = (
    "exhaust interlock",
    "cooling",
    "freeze protection",
    "smoke shutdown",
    "hood fire shutdown",
    "low gas switch",
    "high gas switch",
    "door switch",
    "outdoor reset",
    "room override",
)


@dataclass(frozen=True)
class Trip:
    """A trip of this unit; `furnace` where each furnace has its own."""

    id: str
    furnace: int | None = None


def trips(machine: Machine) -> tuple[Trip, ...]:
    """Every trip declared for this unit."""
    out: list[Trip] = []
    for trip, (of_furnace, option) in TRIPS.items():
        if option is not None and not machine.has(option):
            continue
        if of_furnace:
            out += [Trip(trip, number) for number, _ in machine.numbered()]
        else:
            out.append(Trip(trip))
    return tuple(out)
