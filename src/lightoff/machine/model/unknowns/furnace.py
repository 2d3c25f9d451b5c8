"""Unknowns of one furnace: its trains, its fire, its exchanger."""

from collections.abc import Iterator

from lightoff.machine.gas import expected_manifold
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns.row import JUDGED, fire
from lightoff.physics.combustion import excess_air_from_o2, o2_from_excess_air
from lightoff.physics.heat_exchanger import TURBULENT


def furnace(rated: Rated, number: int) -> Iterator[Unknown]:
    """Manifolds, orifices, combustion air and exchanger of one furnace."""
    machine, plate = rated.machine, rated.machine.furnace(number)
    burner = rated.burners[number - 1]
    for train in burner.trains:
        high = expected_manifold(machine, plate, train.high)
        yield fire(
            train.manifold("high"),
            high,
            0.06 * high,
            JUDGED,
            "as found",
            wander=0.015 * high,
            inspected=rf"{train.name}\.manifold",
            unit="Pa",
        )
        if plate.has_low_fire:
            low = train.low
            yield fire(
                train.manifold("low"),
                low,
                0.15 * low,
                JUDGED,
                "as found",
                wander=0.015 * low,
                inspected=rf"{train.name}\.manifold",
                unit="Pa",
            )
        yield fire(
            train.orifice, 1.0, 0.013, JUDGED, "input at plate manifold and gas", wander=0.004
        )
    name = f"furnace.{number}"
    yield fire(
        burner.warmer,
        -4.0 if burner.indoor else 3.0,
        10.0 if burner.indoor else 3.0,
        JUDGED,
        "air to the fire over that of the room, or outdoors: sun, casing",
        wander=1.0,
        unit="K",
    )
    yield fire(
        f"{name}.combustion_air.high",
        burner.o2,
        0.015,
        JUDGED,
        "O2 as found, 1.5 points",
        wander=0.001,
        inspected=rf"flue\.{number}\.c?o2",
    )
    if plate.has_low_fire:
        twice = 2 * excess_air_from_o2(burner.o2, burner.air_ratio)
        yield fire(
            f"{name}.combustion_air.low",
            float(o2_from_excess_air(twice, burner.air_ratio)),
            0.03,
            JUDGED,
            "O2 as found, 3 points about twice the excess air",
            wander=0.001,
            inspected=rf"flue\.{number}\.c?o2",
        )
    yield fire(
        f"flue.{number}.false_air",
        0.01,
        0.012,
        JUDGED,
        "air in the sample: probe hole, hose, filter bowl",
        wander=0.004,
    )
    # a point of efficiency is a twentieth of the exchanger, of a condensing one a fifth
    known = 0.2 if plate.condensing else 0.06 if plate.efficiency else 0.12
    yield fire(
        f"{name}.exchanger",
        1.0,
        known,
        JUDGED,
        "conductance for plate efficiency",
        wander=known / 2,
    )
    yield fire(
        f"{name}.exponent",
        TURBULENT,
        0.15,
        JUDGED,
        "transfer units on flue flow: film of the tubes, turbulent or not",
    )
