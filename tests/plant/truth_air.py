"""What the airside, the fan and the building truly are, beside what is declared."""

from dataclasses import replace
from random import Random

from plant.airside import Airside, duct_for
from plant.building import Building
from plant.control import Sensor
from plant.fan import Fan
from plant.plate import Plate
from plant.si import CFM, INWC, STANDARD_AIR


def wheel(rng: Random, plate: Plate, catalogue: Fan) -> Fan:
    """The wheel in its casing: check test 2.9 %, cabinet 2.5 (sp-fan-scale); efficiency down 2."""
    short = 1.0 + rng.gauss(-0.01, 0.03)
    lossy = 1.0 + rng.gauss(0.02, 0.05)
    return replace(
        catalogue,
        width=catalogue.width * short,
        head=catalogue.head * (1.0 + rng.gauss(-0.005, 0.015)),
        leak=catalogue.leak + 0.7 * (lossy - 1.0),
        disc=catalogue.disc * lossy,
    )


def airside(rng: Random, plate: Plate, catalogue: Fan) -> Airside:
    """Drops within 12 % of the plate's (sp-damper-coil-drop, sp-filter-clean)."""
    air, m = plate.air, plate.air.airflow * CFM * STANDARD_AIR

    def near(inches: float) -> float:
        return inches * INWC * max(rng.gauss(1.0, 0.12), 0.6)

    # as built by as designed: a tail of added elbows, more often than not balanced out again
    built = rng.lognormvariate(-0.03, 0.06 if rng.random() < 0.85 else 0.2)
    duct = duct_for(air.external * INWC * built, m, rng.uniform(4.5, 8.0),
                    rng.uniform(8.0, 60.0), rng.choice((9e-5, 1.5e-4, 9e-4)))  # fmt: skip
    share = 1.0 - air.recirculation
    blow = plate.arrangement == "blow-through"
    return Airside(
        design=m, hood=near(air.hood) / share**2, damper=near(air.damper) / share**2,
        filters=near(air.filters), viscous=rng.uniform(0.25, 0.7), furnace=near(air.furnace),
        coil=near(air.coil), opening=rng.uniform(0.9, 1.4) if blow else rng.uniform(0.0, 0.15),
        system_effect=max(rng.gauss(0.4, 0.35), 0.0) * (0.4 if blow else 1.0), duct=duct,
        recirculation=air.recirculation,
    )  # fmt: skip


def building(rng: Random, plate: Plate) -> Building:
    """Balanced within a few pascals at design flow, by what else blows and leaks."""
    exhaust = plate.air.exhaust * CFM
    true = exhaust * (rng.gauss(0.98, 0.06) if rng.random() < 0.8 else rng.uniform(0.7, 1.2))
    leak = exhaust * STANDARD_AIR * rng.uniform(0.15, 0.5) / 10.0**0.65
    wanted = rng.gauss(0.5, 2.5) if rng.random() < 0.85 else rng.gauss(-4.0, 6.0)
    away = leak * abs(wanted) ** 0.65 * (1.0 if wanted > 0 else -1.0)
    supply = plate.air.airflow * CFM * STANDARD_AIR
    others = true * STANDARD_AIR + away - supply
    heavy = rng.random() < 0.22
    return Building(
        exhaust=true, yielding=rng.uniform(3e-4, 2e-3), others=others, leak=leak,
        exponent=rng.uniform(0.58, 0.7), closer=rng.gauss(60.0 if heavy else 36.0, 8.0),
        inertia=rng.gauss(110.0 if heavy else 75.0, 14.0),
    )  # fmt: skip


def sensor(rng: Random) -> Sensor:
    """Element and place 1.5 K (sp-own-sensor) at worst; most are nearer since a check was made."""
    wide = rng.random() < 0.25
    return Sensor(
        offset=rng.gauss(0.0, 1.8 if wide else 0.5),
        place=rng.gauss(0.0, 0.01),
        radiation=abs(rng.gauss(0.0, 0.3)),
    )
