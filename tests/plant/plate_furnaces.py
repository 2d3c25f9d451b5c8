"""Draws the furnaces of a plate."""

from random import Random

from plant.plate import FurnacePlate, TrainPlate
from plant.si import clip

INPUTS = (100, 125, 150, 200, 250, 300, 350, 400, 500, 600, 800, 1000, 1200)  # [kBtu/h]
CONTROLS = ("modulating", "two-stage", "single-stage")


def furnaces(rng: Random, altitude: float, gas: str, rise: float) -> tuple[FurnacePlate, ...]:
    """One to three alike, save their control; `rise` is what each should make [degF]."""
    count = rng.choices((1, 2, 3), (45, 37, 18))[0]
    size = rng.choice(INPUTS)
    derate = _derate(rng, altitude)
    condensing = gas == "natural gas" and size <= 400 and rng.random() < 0.06
    first = _furnace(rng, gas, _control(rng), size, derate, rise / count, condensing)
    others = [first.control if rng.random() < 0.6 else rng.choice(CONTROLS[1:])
              for _ in range(count - 1)]  # fmt: skip
    return first, *(_like(rng, first, control) for control in others)


def _control(rng: Random) -> str:
    return rng.choices(CONTROLS, (60, 25, 15))[0]


def _derate(rng: Random, altitude: float) -> str:
    if altitude < 610.0:
        return "none" if rng.random() < 0.9 else "plate"
    # some are shipped as for the sea and nobody asks
    weights = (50, 30, 10, 10) if altitude < 1300.0 else (12, 55, 15, 18)
    return rng.choices(("none", "orifice", "manifold", "plate"), weights)[0]


def _furnace(
    rng: Random, gas: str, control: str, size: float, derate: str, rise: float, condensing: bool
) -> FurnacePlate:
    natural = gas == "natural gas"
    oxygen = rng.choice(((0.05, 0.09), (0.055, 0.095), (0.06, 0.10), (0.05, 0.10)))
    return FurnacePlate(
        gas=gas, control=control, input=size, derate=derate,
        heating_value=rng.choice((1030.0, 1050.0, 1020.0)) if natural else 2500.0,
        relative_density=0.60 if natural else 1.53,
        efficiency=rng.choice((0.90, 0.91, 0.92)) if condensing else rng.choice((0.80, 0.81, 0.82)),
        rise=_window(rng, rise),
        max_outlet=rng.choice((140.0, 150.0, 160.0, 175.0)),
        supply=(rng.choice((5.0, 5.5, 6.0)), rng.choice((10.5, 13.5, 14.0))) if natural
        else (rng.choice((10.5, 11.0)), rng.choice((13.5, 14.0))),
        oxygen=oxygen, flue_max=rng.choice((480.0, 500.0, 550.0)), condensing=condensing,
        draft=rng.choice((None, (-0.10, 0.08))), proving=None, flame=rng.choice((None, 1.5, 2.0)),
        purge=rng.choice((15.0, 30.0, 45.0, 60.0)), trial=rng.choice((4.0, 7.0, 10.0)),
        failure=rng.choice((1.0, 2.0, 3.0)), trains=_trains(rng, gas, control, size),
    )  # fmt: skip


def _window(rng: Random, rise: float) -> tuple[float, float]:
    """About the rise it is chosen for, in steps of 5 degF."""
    return 5.0 * round(rise * 0.55 / 5.0), 5.0 * round(rise * rng.uniform(1.2, 1.45) / 5.0 + 0.5)


def _like(rng: Random, first: FurnacePlate, control: str) -> FurnacePlate:
    fields = {**first.__dict__, "control": control}
    fields["trains"] = _trains(rng, first.gas, control, first.input)
    return FurnacePlate(**fields)


def _trains(rng: Random, gas: str, control: str, size: float) -> tuple[TrainPlate, ...]:
    count = 2 if control == "modulating" and size >= 300 and rng.random() < 0.2 else 1
    high = rng.choice((3.2, 3.4, 3.5)) if gas == "natural gas" else rng.choice((9.5, 10.0, 10.5))
    outlet = high + (rng.choice((1.0, 1.2, 1.5)) if control == "modulating" else 0.3)
    turndown = {
        "modulating": rng.uniform(2.5, 4.5),
        "two-stage": rng.uniform(1.5, 2.2),
        "single-stage": 1.0,
    }[control]
    low = None if control == "single-stage" else clip(round(high / turndown**2, 2), 0.15, high)
    reference = "burner compartment" if rng.random() < 0.25 else "atmosphere"
    plate = TrainPlate(round(outlet, 1), high, low, reference, 1.0 / count)
    return (plate,) * count
