"""The runs and points a target is judged in."""

from collections.abc import Iterator

from lightoff.judgement.target import Instance
from lightoff.machine import Machine, fan_runs, firing, high_run, low_run, runs


def motor_on(machine: Machine) -> tuple[str, ...]:
    """Every run with the fan motor on."""
    return tuple(run for run in runs(machine) if fan_runs(run))


def fan_and_high(_: Machine) -> tuple[str, ...]:
    """Fan alone, and all burners at high fire."""
    return ("fan", "high")


def at_high(machine: Machine, furnace: int) -> tuple[str, ...]:
    """All burners at high fire, or this furnace alone."""
    return tuple(dict.fromkeys(("high", high_run(machine, furnace))))


def at_low(machine: Machine, furnace: int) -> tuple[str, ...]:
    """This furnace at low fire."""
    own = low_run(machine, furnace)
    return tuple(run for run in dict.fromkeys((own, f"low.{furnace}")) if run in runs(machine))


def while_firing(machine: Machine, furnace: int) -> tuple[str, ...]:
    """Every run in which this furnace fires."""
    return tuple(run for run in runs(machine) if furnace in firing(machine, run))


def any_firing(machine: Machine) -> tuple[str, ...]:
    """Every run in which some furnace fires."""
    return tuple(run for run in runs(machine) if firing(machine, run))


def each_furnace(machine: Machine, point: str, runs_of: str) -> Iterator[Instance]:
    """One instance a furnace, of a point with {n} in its name; `runs_of`: high, low or firing."""
    choose = {"high": at_high, "low": at_low, "firing": while_firing}[runs_of]
    for number, _ in machine.numbered():
        name = point.format(n=number)
        if there := choose(machine, number):
            yield Instance(name, there, (name,), furnace=number)


def each_train(machine: Machine, point: str, runs_of: str) -> Iterator[Instance]:
    """One instance a train, of a point with {n} and {m} in its name."""
    choose = {"high": at_high, "low": at_low}[runs_of]
    for number, furnace in machine.numbered():
        for train in range(1, len(furnace.trains) + 1):
            name = point.format(n=number, m=train)
            if there := choose(machine, number):
                yield Instance(name, there, (name,), furnace=number, train=train)
