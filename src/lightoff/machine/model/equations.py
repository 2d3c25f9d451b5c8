"""How a point or derived quantity of a run comes about: the model's equations in numbers."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from lightoff.formula import Number, Quantity, Step, working
from lightoff.machine.model.air import Air
from lightoff.machine.model.airstream import Warmth, pressures
from lightoff.machine.model.building import building_pressure
from lightoff.machine.model.case import Case, case_of
from lightoff.machine.model.points import TOPICS, resting_points, running_points, topic_of
from lightoff.machine.model.predict import balanced
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running, State, running, standing
from lightoff.machine.runs import fan_runs

AIRFLOWS = ("airflow", "airflow.standard", "duct.traverse", "duct.hood_total", "filter.face_total")

SURPLUS = Quantity("surplus", "s", "what the fan gives beyond what is taken: nothing", "Pa")

Values = Mapping[str, float]


@dataclass(frozen=True)
class Equations:
    """The steps from the unknowns to a number.

    Where the fan runs, `state` is where fan and system, motor and fan agree, if the number hangs
    on it. What belongs to the airstream takes fan speed and temperatures there as given (`along`);
    an airflow is nothing else than that state, and its steps are what the fan gives and the parts
    take.
    """

    steps: tuple[Step, ...]
    state: State | None = None
    along: bool = False


def equations(rated: Rated, values: Values, run: str, of: Quantity) -> Equations:
    """How a number, `of` that name, follows from the unknowns in a run.

    Raises `NoBalanceError` where nothing balances.
    """
    name = of.name
    letters = {_letter(each): value for each, value in values.items()}
    if not fan_runs(run):
        return Equations(working(partial(_resting, rated, values, name), of=of, **letters).steps)
    case = case_of(rated.machine, run)
    there = balanced(rated, values, case)
    given = {**letters, **there.state._asdict()}
    if topic_of(name) == "airside":
        warm = there.warmth
        found = working(
            partial(_along, rated, values, case, name, there),
            of=SURPLUS if name in AIRFLOWS else of,
            **given,
            air=tuple(there.air),
            warm=(warm.fan, warm.entering, *warm.after, warm.discharge),
            speed=there.turning.fan_speed,
        )
        return Equations(found.steps, there.state, along=True)
    found = working(partial(_whole, rated, values, case, name), of=of, **given)
    return Equations(found.steps, there.state if found.inputs & {"flow", "load"} else None)


def _resting(rated: Rated, values: Values, name: str, /, **letters: Number) -> Number:
    return resting_points(rated, _known(values, letters))[name]


def _whole(
    rated: Rated, values: Values, case: Case, name: str, /,
    flow: Number, load: Number, **letters: Number,
) -> Number:  # fmt: skip
    """A number with all that goes before it."""
    known = _known(values, letters)
    found = running(rated, known, standing(rated, known, case), State(flow, load))
    return running_points(rated, known, case, found, TOPICS)[name]


def _along(
    rated: Rated, values: Values, case: Case, name: str, there: Running, /,
    flow: Number, load: Number, air: tuple[Number, ...], warm: tuple[Number, ...], speed: Number,
    **letters: Number,
) -> Number:  # fmt: skip
    """A number of the airstream; of an airflow, what the fan gives beyond what is taken of it."""
    known, here = _known(values, letters), Air(*air)
    fan, entering, *after, discharge = warm
    warmth = Warmth(fan, entering, tuple(after), discharge, there.warmth.heats)
    drops = pressures(rated, here, warmth, known, flow=flow, fan_speed=speed)
    building = building_pressure(rated.machine, here, known, flow)
    if name in AIRFLOWS:
        return drops.surplus - building
    found = there._replace(
        state=State(flow, load), air=here, warmth=warmth, pressures=drops, building=building
    )
    return running_points(rated, known, case, found, TOPICS)[name]


def _known(values: Values, letters: Mapping[str, Number]) -> dict[str, Number]:
    return {each: letters[_letter(each)] for each in values}


def _letter(unknown: str) -> str:
    return unknown.replace(".", "_")
