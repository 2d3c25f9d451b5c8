"""`predict`: what every point of a machine would show in a run, its unknowns being as they are."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import clip, everywhere, exp
from lightoff.machine.machine import Machine
from lightoff.machine.model.case import Case, case_of
from lightoff.machine.model.points import Shown, resting_points, running_points
from lightoff.machine.model.rated import Rated, rate
from lightoff.machine.model.running import Running, Standing, State, running, standing
from lightoff.machine.runs import fan_runs
from lightoff.physics.constants import STANDARD_AIR_DENSITY

STEPS = 40  # at most; a usual machine takes five
FEW = 12  # of them for a state that need only be near: a fit that gets no nearer looks elsewhere
STILL = 1e-12  # of the flow and of the load: after a step as short as this they are found
NEAR = 1e-2  # after a step as short as this the slopes need not be taken anew
BALANCED = 1e-9  # [1] what may be left of the imbalance
STRIDE = 0.4  # how far one step may go, in the logarithm of the flow and in the load
TINY = 1e-6  # step of a slope
NORMAL = "as it should"
NO_BALANCE = "fan and system never agree"
NO_AIR = "no air for the flame"
NO_GAS = "no gas for the flame"
NO_NUMBERS = "beyond what any equation holds for"
START_LOAD = 0.8  # [1] of the motor, to begin with; the end does not hang on it


class NoBalanceError(ArithmeticError):
    """No airflow at which the fan gives what the unit takes, or none that numbers can tell."""


class Condition(NamedTuple):
    """What is being done to the machine: the run, and values that hold in it alone."""

    run: str
    values: Mapping[str, Number] = {}


@dataclass(frozen=True)
class Prediction:
    """What every point and derived quantity of a run would be [SI], and how the machine fares.

    Nothing is shown where the machine cannot work.
    """

    run: str
    shown: Shown
    outcome: str
    found: Running | None = None


def predict(
    machine: Machine | Rated, unknowns: Mapping[str, Number], condition: Condition
) -> Prediction:
    """Every point of one run."""
    rated = machine if isinstance(machine, Rated) else rate(machine)
    values = {**unknowns, **condition.values}
    try:
        return _predicted(rated, values, condition.run)
    except NoBalanceError:
        return Prediction(condition.run, {}, NO_BALANCE)
    except (ArithmeticError, TypeError, ValueError):  # a root of less than nothing
        return Prediction(condition.run, {}, NO_NUMBERS)


def _predicted(rated: Rated, values: Mapping[str, Number], run: str) -> Prediction:
    if not fan_runs(run):
        return Prediction(run, resting_points(rated, values), NORMAL)
    case = case_of(rated.machine, run)
    found = balanced(rated, values, case)
    shown = running_points(rated, values, case, found)
    return Prediction(run, shown, _outcome(found, shown), found)


def _outcome(found: Running, shown: Shown) -> str:
    """Whether what burns can burn."""
    fires = found.fires.values()
    if not all(everywhere(each.excess_air > 0) for each in fires):
        return NO_AIR
    if fires and not everywhere(shown["gas.supply"] > 0):
        return NO_GAS
    return NORMAL


def balanced(
    rated: Rated, values: Mapping[str, Number], case: Case, start: State | None = None
) -> Running:
    """The run at the state where everything balances, by Newton's method from `start`.

    Raises `NoBalanceError` where nothing does.
    """
    found = about_balanced(rated, values, case, start, still=STILL, most=STEPS)
    if not everywhere(sum(map(abs, found.imbalance)) < BALANCED):
        raise NoBalanceError("fan and system never agree")
    return found


def about_balanced(
    rated: Rated,
    values: Mapping[str, Number],
    case: Case,
    start: State | None = None,
    *,
    still: float = NEAR,
    most: int = FEW,
) -> Running:
    """The same only about: after a step as short as `still`, which misses by about its square."""
    usual = State(rated.machine.design.airflow * STANDARD_AIR_DENSITY, START_LOAD)
    try:
        return _balanced(rated, values, case, start or usual, still, most)
    except (ArithmeticError, TypeError, ValueError) as error:  # a root of less than nothing
        raise NoBalanceError("the numbers describe no running machine") from error


def _balanced(
    rated: Rated,
    values: Mapping[str, Number],
    case: Case,
    start: State,
    still: float,
    most: int,
) -> Running:
    given = standing(rated, values, case)
    there, step = running(rated, values, given, start), None
    for _ in range(most):
        step = step or _towards_balance(rated, values, given, there)
        flow, load = step(there.imbalance)
        state = State(there.state.flow * exp(flow), there.state.load + load)
        there = running(rated, values, given, state)
        if everywhere(abs(flow) + abs(load) <= still):
            break
        if not everywhere(abs(flow) + abs(load) <= NEAR):
            step = None
    return there


def _towards_balance(
    rated: Rated, values: Mapping[str, Number], given: Standing, there: Running
) -> Callable[[tuple[Number, Number]], tuple[Number, Number]]:
    """The step that takes an imbalance away: of the flow's logarithm, and of the load."""
    (flow, load), (p, q) = there.state, there.imbalance
    by_flow = running(rated, values, given, State(flow * exp(TINY), load)).imbalance
    by_load = running(rated, values, given, State(flow, load + TINY)).imbalance
    a, c = (by_flow[0] - p) / TINY, (by_flow[1] - q) / TINY
    b, d = (by_load[0] - p) / TINY, (by_load[1] - q) / TINY
    whole = a * d - b * c

    def step(imbalance: tuple[Number, Number]) -> tuple[Number, Number]:
        x, y = imbalance
        flow, load = (b * y - d * x) / whole, (c * x - a * y) / whole
        return clip(flow, -STRIDE, STRIDE), clip(load, -STRIDE, STRIDE)

    return step
