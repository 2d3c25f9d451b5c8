"""The unknowns of a machine, as tables: mean, spread, wander, and where they come from."""

from collections.abc import Callable, Iterator

from lightoff.machine.gas import TOGETHER, expected_manifold, heating_value, relative_density
from lightoff.machine.machine import Machine
from lightoff.machine.model.burner import CASING_LOSS, FLUE_O2
from lightoff.machine.model.drive import FREE_LEGS, FREE_LINES
from lightoff.machine.model.rated import Rated, design_frequency
from lightoff.machine.model.unknown import Origin, Stage, Unknown
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.combustion import excess_air_from_o2
from lightoff.physics.constants import GAS_BASE_TEMPERATURE
from lightoff.physics.heat_exchanger import TURBULENT
from lightoff.quantity import si

INCH = si(1, "inwc")  # [Pa]
MILD = 283.15  # [K] outdoors, before anybody looked

# which unknowns are known together, and their correlation: GRI-92/0123 (from memory), worked out
CORRELATED = {"gas.relative_density": ("gas.heating_value", TOGETHER)}


def _at(stage: Stage) -> Callable[..., Unknown]:
    def row(
        name: str,
        mean: float,
        spread: float,
        origin: Origin,
        source: str,
        *,
        wander: float = 0.0,
        inspected: str = "",
    ) -> Unknown:
        return Unknown(name, mean, spread, stage, origin, source, wander, inspected)

    return row


_fire, _balance, _show = _at("fire"), _at("balance"), _at("show")

JUDGED: Origin = "judgement"


def unknowns(rated: Rated) -> tuple[Unknown, ...]:
    """Every unknown of this machine.

    Of two that nobody can tell apart by what was read, the first one listed is found.
    """
    return (
        *_weather(rated.machine),
        *_gas(rated.machine),
        *_airside(rated),
        *_turning(rated),
        *_electrical(rated.machine),
        *(each for number, _ in rated.machine.numbered() for each in _furnace(rated, number)),
        *_probes(rated),
        *_building(rated.machine),
    )


def _weather(machine: Machine) -> Iterator[Unknown]:
    pressure = float(barometric_pressure(machine.site.altitude))
    yield _fire(
        "air.barometer",
        pressure,
        0.0074 * pressure,
        "published spread",
        "hours at five stations about the altitude's pressure",
    )
    yield _fire(
        "air.outdoor.db",
        MILD,
        15.0,
        JUDGED,
        "any season",
        wander=1.5,
        inspected=r"air\.(outdoor|entering)\.db",
    )
    yield _fire("air.outdoor.rh", 0.5, 0.2, JUDGED, "any weather", wander=0.03)
    if machine.airside.recirculation > 0:
        yield _fire("air.return.db", 294.0, 5.0, JUDGED, "occupied rooms", wander=0.5)
        yield _fire(
            "air.recirculation",
            machine.airside.recirculation,
            0.10,
            JUDGED,
            "damper position against flow",
        )


def _gas(machine: Machine) -> Iterator[Unknown]:
    kind = machine.furnaces[0].gas
    heat, density = heating_value(machine, kind), relative_density(machine, kind)
    promised = machine.site.supply_pressure or si(7.0, "inwc")
    yield _fire(
        "gas.heating_value",
        heat.value,
        heat.spread,
        "published spread",
        "US EIA state means; month to month where declared",
    )
    yield _fire(
        "gas.relative_density",
        density.value,
        density.spread,
        "published spread",
        "GRI-92/0123 (from memory); month to month where declared",
    )
    yield _fire(
        "gas.orifice.db",
        GAS_BASE_TEMPERATURE,
        8.0,
        JUDGED,
        "gas at the orifice against 60 degF",
        wander=1.0,
    )
    yield _show(
        "gas.set",
        promised,
        0.08 * promised,
        JUDGED,
        "static supply against what was promised",
        wander=0.01 * promised,
        inspected=r"gas\.supply",
    )
    yield _show(
        "gas.lost",
        0.08 * promised,
        0.06 * promised,
        JUDGED,
        "droop and pipe at the unit's input",
        inspected=r"gas\.supply",
    )
    yield _show(
        "gas.lock_up",
        0.15 * promised,
        0.08 * promised,
        JUDGED,
        "regulator at no flow over its setting",
        inspected=r"gas\.supply",
    )
    yield _show("gas.others", 0.5, 1.0, JUDGED, "all other appliances over the unit's input")
    yield _show(
        "gas.meter.pressure",
        promised,
        0.8 * INCH,
        JUDGED,
        "utilization pressure, not read",
        inspected=r"gas\.meter\.pressure",
    )
    yield _show(
        "gas.meter.db", GAS_BASE_TEMPERATURE, 5.0, JUDGED, "mean of air and soil", wander=0.5
    )
    yield _show(
        "gas.meter.other_flow",
        0.0,
        1e-6,
        "declared",
        "nothing else on the meter",
        inspected=r"gas\.meter\.other_flow",
    )
    yield _show(
        "meter.factor",
        1.0,
        0.0115,
        "published spread",
        "meters in service, within 2 %; state and city rules",
    )


def _airside(rated: Rated) -> Iterator[Unknown]:
    plate, known = rated.machine.airside, rated.fan.declared
    yield _balance(
        "duct.resistance",
        1.1,
        0.3,
        JUDGED,
        "as built over design",
        wander=0.01,
        inspected=r"airflow.*|static\.duct",
    )
    yield _balance(
        "fan.pressure",
        1.0,
        0.06 if known else 0.12,
        JUDGED,
        "the plate's curve, the place's part",
        wander=0.01,
    )
    yield _balance(
        "fan.shape",
        0.0,
        0.05 if known else 0.25,
        JUDGED,
        "how steep the curve is away from the design point",
    )
    yield _balance(
        "fan.power",
        1.03,
        0.06 if known else 0.20,
        JUDGED,
        "fan efficiency against the plate's curve",
        wander=0.01,
    )
    yield _balance(
        "filters.resistance",
        1.0,
        0.3,
        JUDGED,
        "clean filters",
        wander=0.01,
        inspected=r"static\.filters",
    )
    told = {
        "intake": plate.hood is not None and plate.damper is not None,
        "furnace": plate.furnace is not None,
        "coil": True,
    }
    for part, declared in told.items():
        yield _balance(
            f"{part}.resistance",
            1.0,
            0.12 if declared else 0.4,
            JUDGED,
            "drop against the plate",
            wander=0.01,
        )


def _turning(rated: Rated) -> Iterator[Unknown]:
    machine = rated.machine
    if machine.drive.vfd:
        yield _balance(
            "vfd.hz",
            design_frequency(rated),
            4.0,
            JUDGED,
            "about that of the design speed",
            wander=0.1,
            inspected=r"vfd\.hz",
        )
    if machine.drive.kind == "belt":
        yield _balance(
            "drive.ratio", 1.0, 0.02, JUDGED, "pitch of an adjustable sheave", inspected=r"fan\.rpm"
        )
        yield _balance("belt.slip", 0.01, 0.005, "common practice", "V-belts", wander=0.002)
        yield _balance("belt.loss", 0.035, 0.009, "published spread", "V-belt drive efficiency")
    yield _balance(
        "motor.slip",
        1.0,
        0.115,
        "manufacturing tolerance",
        "slip at rated load within 20 %, NEMA MG 1",
        wander=0.01,
    )
    yield _balance(
        "motor.losses",
        1.0,
        0.10,
        "manufacturing tolerance",
        "losses against nominal, NEMA MG 1 (from memory)",
    )
    yield _show(
        "motor.current",
        1.0,
        0.058,
        "manufacturing tolerance",
        "current at rated output within 10 %, NEMA MG 1",
        wander=0.01,
    )


def _electrical(machine: Machine) -> Iterator[Unknown]:
    volts = machine.electrical.volts
    yield _balance(
        "power.volts",
        volts,
        0.029 * volts,
        "published spread",
        "supply voltage, ANSI C84.1 (from memory)",
        wander=0.01 * volts,
        inspected=r"power\.volts.*",
    )
    if machine.three_phase:
        for leg in FREE_LEGS:
            yield _show(
                f"power.volts.{leg}",
                0.0,
                0.009,
                "published spread",
                "unbalance (from memory)",
                wander=0.006,
                inspected=r"power\.volts.*",
            )
        for line in FREE_LINES:
            yield _show(
                f"motor.amps.{line}",
                0.0,
                0.05,
                JUDGED,
                "current unbalance, six to ten times that of the volts",
                wander=0.01,
                inspected=r"motor\.amps.*",
            )


def _furnace(rated: Rated, number: int) -> Iterator[Unknown]:
    machine, plate = rated.machine, rated.machine.furnace(number)
    burner = rated.burners[number - 1]
    for train in burner.trains:
        high = expected_manifold(machine, plate, train.high)
        yield _fire(
            train.manifold("high"),
            high,
            0.06 * high,
            JUDGED,
            "as found",
            wander=0.015 * high,
            inspected=rf"{train.name}\.manifold",
        )
        if plate.has_low_fire:
            low = train.low
            yield _fire(
                train.manifold("low"),
                low,
                0.15 * low,
                JUDGED,
                "as found",
                wander=0.015 * low,
                inspected=rf"{train.name}\.manifold",
            )
        yield _fire(
            train.orifice, 1.0, 0.02, JUDGED, "input at plate manifold and gas", wander=0.004
        )
    o2 = sum(plate.flue_o2) / 2 if plate.flue_o2 else FLUE_O2
    excess = float(excess_air_from_o2(o2, burner.air_ratio))
    name = f"furnace.{number}"
    yield _fire(
        f"{name}.combustion_air.high",
        excess,
        0.16,
        JUDGED,
        "O2 as found, 1.5 points",
        wander=0.01,
        inspected=rf"flue\.{number}\.c?o2",
    )
    if plate.has_low_fire:
        yield _fire(
            f"{name}.combustion_air.low",
            2 * excess,
            0.6,
            JUDGED,
            "O2 as found",
            wander=0.02,
            inspected=rf"flue\.{number}\.c?o2",
        )
    yield _fire(
        f"{name}.exchanger",
        1.0,
        0.04 if plate.efficiency else 0.12,
        JUDGED,
        "conductance for plate efficiency",
        wander=0.01,
    )
    yield _fire(
        f"{name}.exponent",
        TURBULENT,
        0.15,
        JUDGED,
        "transfer units on flue flow: film of the tubes, turbulent or not",
    )


def _probes(rated: Rated) -> Iterator[Unknown]:
    rooftop = rated.machine.unit.mounting == "rooftop"
    yield _fire(
        "combustion_air.warmer",
        3.0 if rooftop else 10.0,
        3.0 if rooftop else 10.0,
        JUDGED,
        "air to the fire over that outdoors: sun, casing, room",
        wander=1.0,
    )
    yield _balance("casing.loss", CASING_LOSS, 0.005, JUDGED, "outdoor unit")
    for number, _ in rated.machine.numbered():
        yield _show(
            f"probe.after.{number}",
            0.0,
            0.10,
            JUDGED,
            "one probe close behind a furnace, share of the rise",
        )
    mixed = 0.03 if rated.blow_through else 0.01
    yield _show(
        "probe.discharge", 0.0, mixed, JUDGED, "probe where the duct begins, share of the rise"
    )
    yield _show("sensor.place", 0.0, mixed, JUDGED, "the unit's own sensor, share of the rise")
    yield _show(
        "sensor.offset",
        0.0,
        1.5,
        JUDGED,
        "element and place",
        wander=0.3,
        inspected=r"air\.discharge\.sensor",
    )


def _building(machine: Machine) -> Iterator[Unknown]:
    exhaust, airflow = machine.design.exhaust, machine.design.airflow
    if exhaust is None:
        yield _balance(
            "building.pressure",
            0.0,
            12.0,
            JUDGED,
            "any building",
            wander=2.0,
            inspected=r"building\.pressure",
        )
        yield _show(
            "exhaust.airflow",
            airflow,
            0.5 * airflow,
            JUDGED,
            "none scheduled",
            inspected=r"exhaust\.airflow",
        )
        return
    yield _balance(
        "exhaust.airflow",
        exhaust,
        0.15 * exhaust,
        JUDGED,
        "as built",
        wander=0.01 * exhaust,
        inspected=r"exhaust\.airflow",
    )
    yield _balance(
        "envelope.leakage", 0.2 * airflow, 0.2 * airflow, JUDGED, "at 10 Pa, any building"
    )
