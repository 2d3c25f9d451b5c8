"""One run with the fan on: everything that goes on in the unit at once, and whether it balances."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.machine.model.air import Air, air_of
from lightoff.machine.model.airstream import Pressures, Warmth, pressures, shaft_power, warmth
from lightoff.machine.model.building import building_pressure
from lightoff.machine.model.burner import Fire, fire
from lightoff.machine.model.case import Case
from lightoff.machine.model.drive import Turning, motor_share, turning
from lightoff.machine.model.rated import Rated


class State(NamedTuple):
    """What must be found for all to balance: flow of dry air [kg/s], motor load [1]."""

    flow: Number
    load: Number


class Running(NamedTuple):
    """A run worked out at a state; `imbalance` is nothing where the state is the right one.

    Imbalance: fan pressure over what the parts take, in shares of the design pressure; shaft power
    over the load, in shares of rated power.
    """

    state: State
    air: Air
    fires: Mapping[int, Fire]
    turning: Turning
    warmth: Warmth
    pressures: Pressures
    shaft_power: Number
    building: Number
    imbalance: tuple[Number, Number]


class Standing(NamedTuple):
    """What of a run does not hang on its state: the air that comes in, and what burns."""

    air: Air
    fires: Mapping[int, Fire]


def standing(rated: Rated, values: Mapping[str, Number], case: Case) -> Standing:
    """The air of a run and its fires."""
    air = air_of(rated.machine, values)
    fires = {
        number: fire(rated.burners[number - 1], air, values, firing)
        for number, firing in case.firing.items()
    }
    return Standing(air, fires)


def running(rated: Rated, values: Mapping[str, Number], given: Standing, state: State) -> Running:
    """Everything of a run at a state, balanced or not."""
    (flow, load), (air, fires) = state, given
    turn = turning(rated, values, load)
    warm = warmth(rated, air, fires, values, flow=flow, fan_heat=turn.power)
    drops = pressures(rated, air, warm, values, flow=flow, fan_speed=turn.fan_speed)
    density = air.density(warm.fan)
    shaft = shaft_power(
        rated, density, values, airflow=flow * (1 + air.moisture) / density, speed=turn.fan_speed
    )
    building = building_pressure(rated.machine, air, values, flow)
    power = motor_share(rated, values, shaft) / rated.motor.power
    design = rated.fan.pressure
    return Running(
        state, air, fires, turn, warm, drops, shaft, building,
        ((drops.surplus - building) / design, power - load),
    )  # fmt: skip
