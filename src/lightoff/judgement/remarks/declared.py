"""The plate, the design and the site held against each other."""

from collections.abc import Iterator

from lightoff.judgement.message import Remark
from lightoff.machine import Machine
from lightoff.machine.plate import Furnace
from lightoff.physics.airstream import sensible_heat
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.physics.orifice import CODE_DERATE_ABOVE
from lightoff.quantity import si

EFFICIENCY = 0.80  # [1] gross, where the plate is silent; common practice, no source
RISE_MARGIN = 0.10  # [1] of the window's ends, before a rise is called impossible; [cp]
SHEAVE_MARGIN = 0.05  # [1] of the speed; [cp]
DRIVE_HERTZ = (25.0, 66.0)  # [Hz] at which a drive is still reasonably run; [cp]
AMPS_PRODUCT = (0.35, 0.97)  # [1] efficiency times power factor of any motor here; [cp]
VOLTS_MARGIN = 0.10  # [1] NEMA MG 1
LEAST_PROPANE_MANIFOLD = si(6, "inwc")  # [Pa] propane is fired at 8 to 11 in. w.c.; [cp]
MOST_NATURAL_MANIFOLD = si(6, "inwc")  # [Pa] natural gas at 2 to 4 in. w.c.; [cp]
LEAST_PROPANE_SUPPLY = si(10, "inwc")  # [Pa] propane comes at 11 to 14 in. w.c.; [cp]
LEAN = si(900, "Btu/ft3")  # [J/m3] less than pipeline gas at standard conditions
HIGH_GROUND = 1000.0  # [m] where a low heating value is likely stated as delivered


def declared(machine: Machine) -> Iterator[Remark]:
    """Remarks on what was declared, whatever was read."""
    for number, furnace in machine.numbered():
        yield from _rise(machine, number, furnace)
        yield from _gas_pressures(number, furnace)
        yield from _derate(machine, number, furnace)
    yield from _leading(machine)
    yield from _sheaves(machine)
    yield from _amps(machine)
    yield from _volts(machine)
    yield from _heating_value(machine)


def _rise(machine: Machine, number: int, furnace: Furnace) -> Iterator[Remark]:
    """A rise the input cannot give at that airflow."""
    if furnace.rise is None:
        return
    mass_flow = machine.design.airflow * STANDARD_AIR_DENSITY
    heat = furnace.input * (furnace.efficiency if furnace.efficiency is not None else EFFICIENCY)
    expected = heat / float(sensible_heat(mass_flow, 1.0))
    lower, upper = furnace.rise
    if not lower * (1 - RISE_MARGIN) <= expected <= upper * (1 + RISE_MARGIN):
        values = {"expected": expected, "lower": lower, "upper": upper, "furnace": number}
        yield Remark(f"unit.furnace.{number}.rise", "rise-against-input", values)


def _gas_pressures(number: int, furnace: Furnace) -> Iterator[Remark]:
    """Propane with natural-gas pressures, or the other way round."""
    place = f"unit.furnace.{number}"
    propane = furnace.gas == "propane"
    word = "propane-at-natural-gas-pressure" if propane else "natural-gas-at-propane-pressure"
    for m, train in enumerate(furnace.trains, start=1):
        high = train.manifold_high
        if high is None:
            continue
        wrong = high < LEAST_PROPANE_MANIFOLD if propane else high > MOST_NATURAL_MANIFOLD
        if wrong:
            yield Remark(f"{place}.train.{m}.manifold_high", word, {"pressure": high})
    if propane and furnace.supply_max is not None and furnace.supply_max < LEAST_PROPANE_SUPPLY:
        yield Remark(f"{place}.supply_max", word, {"pressure": furnace.supply_max})


def _derate(machine: Machine, number: int, furnace: Furnace) -> Iterator[Remark]:
    """Derated twice, or where the codes ask for nothing."""
    made = furnace.derate in ("orifice", "manifold")
    high = machine.site.altitude > CODE_DERATE_ABOVE
    place = f"unit.furnace.{number}.derate"
    values = {"altitude": machine.site.altitude, "furnace": number}
    if made and not high:
        yield Remark(place, "derate-not-due", values)
    if made and high and machine.site.heating_value_basis == "as delivered":
        yield Remark(place, "derated-twice", values)


def _leading(machine: Machine) -> Iterator[Remark]:
    leading = [number for number, furnace in machine.numbered() if furnace.leading]
    if len(leading) > 1:
        place = f"unit.furnace.{leading[1]}.leading"
        yield Remark(place, "two-leading", {"taken": leading[0], "furnaces": leading})
    if not leading and len(machine.furnaces) > 1:
        yield Remark("unit.furnace", "none-leading", {"taken": machine.leading})


def _sheaves(machine: Machine) -> Iterator[Remark]:
    """Sheaves against speeds, at full frequency or within a drive's reach."""
    drive, motor, fan = machine.drive, machine.motor, machine.fan
    sizes = (drive.motor_sheave, drive.fan_sheave, motor.speed, fan.speed)
    if drive.kind != "belt" or any(size is None for size in sizes):
        return
    driver, driven, motor_speed, wanted = (size or 1.0 for size in sizes)
    given = motor_speed * driver / driven
    if drive.vfd:
        hertz = drive.full_speed_frequency * wanted / given
        wrong = not DRIVE_HERTZ[0] <= hertz <= DRIVE_HERTZ[1]
    else:
        wrong = abs(given - wanted) > SHEAVE_MARGIN * wanted
    if wrong:
        values = {"given": given, "wanted": wanted}
        yield Remark("unit.drive.motor_sheave", "sheaves-against-speed", values)


def _amps(machine: Machine) -> Iterator[Remark]:
    """Full-load amps against power and volts."""
    motor, phases = machine.motor, machine.electrical.phases
    apparent = phases**0.5 * motor.volts * motor.full_load_amps
    product = motor.power / apparent
    low, high = AMPS_PRODUCT
    if not low <= product <= high:
        values = {
            "amps": motor.full_load_amps,
            "least": motor.power / (phases**0.5 * motor.volts * high),
            "most": motor.power / (phases**0.5 * motor.volts * low),
        }
        yield Remark("unit.motor.full_load_amps", "amps-against-power", values)


def _volts(machine: Machine) -> Iterator[Remark]:
    motor, supply = machine.motor.volts, machine.electrical.volts
    if abs(supply - motor) > VOLTS_MARGIN * motor:
        yield Remark("unit.motor.volts", "motor-against-supply", {"motor": motor, "supply": supply})


def _heating_value(machine: Machine) -> Iterator[Remark]:
    site = machine.site
    natural = any(f.gas == "natural gas" for f in machine.furnaces)
    if (
        natural
        and site.heating_value is not None
        and site.heating_value < LEAN
        and site.heating_value_basis == "standard"
        and site.altitude > HIGH_GROUND
    ):
        values = {"heating_value": site.heating_value, "altitude": site.altitude}
        yield Remark("site.heating_value", "heating-value-as-delivered", values)
