"""What every point of every run should show, as far as the model of the machine can tell."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from lightoff.judgement.history import history
from lightoff.machine import Machine, Visit
from lightoff.machine.model.expect import Expected, expect
from lightoff.machine.model.predict import NoBalanceError
from lightoff.machine.model.rated import rate

# weather that has been met with on land [Pa, K, 1]; what was read outside it is a finding of the
# visit, and nothing to expect anything from
WEATHER = {
    "air.barometer": (45e3, 110e3),
    "air.outdoor.db": (180.0, 335.0),
    "air.outdoor.rh": (0.0, 1.0),
}


@dataclass(frozen=True)
class Expectation:
    """Expected values by run and name, and the runs in which the machine cannot work."""

    values: Mapping[tuple[str, str], Expected] = field(default_factory=dict)
    no_balance: tuple[str, ...] = ()

    def get(self, name: str, run: str) -> Expected | None:
        return self.values.get((run, name))


def expectation(machine: Machine, runs: Iterable[str], weather: Mapping[str, float]) -> Expectation:
    """The model asked once for each run, the weather being as told."""
    values: dict[tuple[str, str], Expected] = {}
    stuck = []
    rated = rate(machine)
    for run in runs:
        try:
            shown = expect(rated, run, weather)
        except NoBalanceError:
            stuck.append(run)
            continue
        values |= {(run, name): found for name, found in shown.items()}
    return Expectation(values, tuple(stuck))


def weather_read(machine: Machine, visit: Visit) -> dict[str, float]:
    """The weather of the day, as far as this visit has read it: the last of each."""
    found: dict[str, float] = {}
    for (_, point), held in history(machine, visit).left.items():
        value = held.readings[-1].value
        if value is not None and is_weather(point, value):
            found[point] = value
    return found


def is_weather(point: str, value: float) -> bool:
    """Whether a point is of the weather, and a value such as there has been."""
    low, high = WEATHER.get(point, (0.0, 0.0))
    return point in WEATHER and low <= value <= high
