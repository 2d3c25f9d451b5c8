"""What no unit and no site can be is refused, at its place, with what would be right."""

from collections.abc import Callable

import pytest

from lightoff.job import Fault, JobError, loads

Faults = Callable[..., tuple[Fault, ...]]
LineOf = Callable[[str], int]

# what stands in the example, what is written instead, where that is a fault, its gist
REFUSED = [
    ('power = "15 hp"', "power = 15", "unit.motor.power", '"15 hp" or "11.2 kW"'),
    ('power = "15 hp"', 'power = "15 hpp"', "unit.motor.power", "not a known unit"),
    ('power = "15 hp"', 'power = "15 V"', "unit.motor.power", "a shaft power is due"),
    ('power = "15 hp"', 'power = "0 hp"', "unit.motor.power", "above zero"),
    ('power = "15 hp"', 'power = "-1 kW"', "unit.motor.power", "above zero"),
    ("phases = 3", "phases = 2", "unit.electrical.phases", "write 1 or 3"),
    ("phases = 3", 'phases = "3"', "unit.electrical.phases", "write 1 or 3"),
    ('tag = "MAU-2"', "tag = 5", "unit.tag", 'in quotes, as tag = "MAU-1"'),
    ('tag = "MAU-2"', 'tag = " "', "unit.tag", "blank"),
    (
        'arrangement = "blow-through"',
        'arrangement = "blowthru"',
        "unit.arrangement",
        'did you mean "blow-through"',
    ),
    (
        'firing = "indirect"',
        'firing = "direct"',
        "unit.firing",
        "direct-fired unit has other rules",
    ),
    ('firing = "indirect"', 'firing = "none"', "unit.firing", 'write "indirect"'),
    ('wheel = "27 in"', 'wheell = "27 in"', "unit.fan.wheell", 'did you mean "wheel"'),
    (
        'span = "22 in"',
        'colour = "red"',
        "unit.drive.colour",
        'the keys are "kind", "motor_sheave"',
    ),
    ("belts = 2", "belts = 2.5", "unit.drive.belts", "not a whole number"),
    ("belts = 2", "belts = 0", "unit.drive.belts", "not a whole number from 1"),
    ("adjustable = true", 'adjustable = "yes"', "unit.drive.adjustable", "true or false"),
    ("vfd = true", "vfd = 1", "unit.drive.vfd", "true or false"),
    ("format = 1", "format = 2", "format", "write format = 1"),
    ("format = 1", "format = true", "format", "write format = 1"),
    ('altitude = "980 ft"', 'altitude = "5000 m"', "site.altitude", "at most 4000 m"),
    ('altitude = "980 ft"', 'altitude = "-2000 ft"', "site.altitude", "at least -1640 ft"),
    ('airflow = "9000 cfm"', 'airflow = "0 cfm"', "design.airflow", "above zero"),
    ('winter_outdoor = "-5 degF"', 'winter_outdoor = "-500 degF"', "design.winter_outdoor", "zero"),
    ("efficiency = 0.81", "efficiency = 81", "unit.furnace.1.efficiency", "at most 100 %"),
    ("efficiency = 0.81", "efficiency = 0", "unit.furnace.1.efficiency", "above zero"),
    ("recirculation = 0.0", 'recirculation = "120 %"', "unit.airside.recirculation", "100 %"),
    ('hood = "0.10 inwc"', 'hood = "-0.10 inwc"', "unit.airside.hood", "at least zero"),
    ("flue_o2 = [0.05, 0.09]", "flue_o2 = [0.05, 0.9]", "unit.furnace.1.flue_o2", "at most 25 %"),
    (
        'rise = ["20 degF", "60 degF"]',
        'rise = ["60 degF", "20 degF"]',
        "unit.furnace.1.rise",
        "lower end first",
    ),
    (
        'rise = ["20 degF", "60 degF"]',
        'rise = ["60 degF"]',
        "unit.furnace.1.rise",
        '["20 degF", "60 degF"]',
    ),
    ('rise = ["20 degF", "60 degF"]', 'rise = "60 degF"', "unit.furnace.1.rise", "lower and upper"),
    (
        'supply_max = "13.0 inwc"',
        'supply_max = "5.0 inwc"',
        "unit.furnace.1.supply_max",
        "below supply_min",
    ),
    ("methane = 0.95", "metane = 0.95", "site.gas_composition.metane", 'did you mean "methane"'),
    ("methane = 0.95", "methane = 0.75", "site.gas_composition", "must sum to 1"),
    ('weather = [["-5 degF", 40]', 'weather = [["-5 degF"]', "site.weather.1", '["-5 degF", 40]'),
    ('weather = [["-5 degF", 40]', 'weather = [["-5 degF", nan]', "site.weather.1", "not a finite"),
    ('gas_cost = "1.10 /therm"', "gas_cost = 1.10", "site.gas_cost", "/therm"),
    ('"exhaust interlock"', '"exhaust interlok"', "unit.options.1", '"exhaust interlock"'),
    ('owner = "Larkspur Bay', 'owner = 3 # "Larkspur Bay', "parties.owner", "not text"),
    ('units = "us"', 'units = "imperial"', "display.units", '"us" or "si"'),
    ('rule = "default"', 'rule = "strict"', "decision.rule", '"guarded"'),
    ("2026-02-11", '"soon"', "instrument.1.calibrated", "write it as 2026-11-03"),
    ('id = "stick-1"', 'id = "gauge-1"', "instrument.2.id", "two instruments"),
    ('kind = "manometer"', 'kind = "manometr"', "instrument.1.kind", 'did you mean "manometer"'),
    (
        'quantity = "pressure"',
        'quantity = "presure"',
        "instrument.1.channel.1.quantity",
        'did you mean "pressure"',
    ),
    (
        'range = ["0 inwc", "20 inwc"]',
        'range = ["20 inwc", "0 inwc"]',
        "instrument.1.channel.1.range",
        "lower end first",
    ),
    (
        'plus_minus = "1 degF"',
        'plus_minus = "-1 degF"',
        "instrument.2.channel.1.plus_minus",
        "a temperature difference here is at least zero",
    ),
    ("of_reading = 0.005", "of_reading = 5", "instrument.1.channel.1.of_reading", "at most 100 %"),
    ('target = "manifold high"', 'target = "manifold hi"', "limit.1.target", '"manifold high"'),
    ('lower = "3.1 inwc"', 'lower = "3.1 degF"', "limit.1.lower", "a pressure is due"),
]


@pytest.mark.parametrize(("old", "new", "place", "gist"), REFUSED)
def test_it_is_refused_where_it_stands(
    faults_of: Faults, line_of: LineOf, old: str, new: str, place: str, gist: str
) -> None:
    (fault, *others) = faults_of((old, new))
    assert (fault.place, fault.line) == (place, line_of(old))
    assert gist in fault.message
    assert not [other for other in others if "instrument" not in other.place]


# what is taken out, where it is missed, on which line, the gist
MISSING = [
    (
        'power = "15 hp"\n',
        "unit.motor.power",
        "[unit.motor]",
        'power = "15 hp" or power = "11.2 kW"',
    ),
    ("phases = 3\n", "unit.electrical.phases", "[unit.electrical]", "phases = 1 or phases = 3"),
    ('tag = "MAU-2"\n', "unit.tag", "[unit]", 'tag = "MAU-1"'),
    ('kind = "belt"\n', "unit.drive.kind", "[unit.drive]", 'kind = "belt" or kind = "direct"'),
    ('altitude = "980 ft"\n', "site.altitude", "[site]", 'altitude = "980 ft"'),
    ('id = "gauge-1"\n', "instrument.1.id", "[[instrument]]", 'id = "gauge-1"'),
]


@pytest.mark.parametrize(("gone", "place", "header", "gist"), MISSING)
def test_what_is_missing_is_asked_for_in_two_right_ways(
    faults_of: Faults, line_of: LineOf, gone: str, place: str, header: str, gist: str
) -> None:
    fault = faults_of((gone, ""))[0]
    assert (fault.place, fault.line) == (place, line_of(header))
    assert fault.message.endswith(gist) or gist in fault.message


def test_a_missing_format_has_no_line(faults_of: Faults) -> None:
    assert faults_of(("format = 1", "")) == (
        Fault("format", None, "format is missing: write format = 1"),
    )


def test_missing_tables_are_named_as_a_file_writes_them() -> None:
    with pytest.raises(JobError) as caught:
        loads("format = 1\n[unit]\ntag = 'X'\narrangement = 'draw-through'", form="toml")
    sentences = {fault.place: fault.message for fault in caught.value.faults}
    assert sentences["unit.motor"] == "the table motor is missing: write [unit.motor]"
    assert sentences["unit.furnace"] == "furnace is missing: write at least one [[unit.furnace]]"
    assert sentences["design"] == "the table design is missing: write [design]"


FURNACE = '[[unit.furnace]]\ngas = "propane"\ncontrol = "two-stage"\ninput = "1 kW"\n'


def test_a_unit_has_one_to_three_furnaces(faults_of: Faults) -> None:
    (fault,) = faults_of(("[[unit.furnace]]", FURNACE * 2 + "[[unit.furnace]]"))
    assert fault.place == "unit.furnace"
    assert fault.message == "furnace has 4 entries: 1 to 3 can be"
    with pytest.raises(JobError, match=r"unit.furnace.*furnace has 0 entries: 1 to 3 can be"):
        loads("unit.furnace = []", form="toml")


def test_a_furnace_has_at_most_two_trains(faults_of: Faults) -> None:
    (fault,) = faults_of(("[[unit.furnace.train]]", "[[unit.furnace.train]]\n" * 2))
    assert fault.message == "train has 3 entries: at most 2 can be"


def test_declared_shares_make_one(faults_of: Faults) -> None:
    (fault,) = faults_of(("share = 0.6", "share = 0.7"))
    assert fault.place == "unit.furnace.1.train"
    assert "0.7 and 0.4" in fault.message
    (fault,) = faults_of(("share = 0.6", "share = 1"), ('share = "40 %"', ""))
    assert "each is above 0" in fault.message


def test_a_silent_train_takes_what_the_other_leaves(full_text: str) -> None:
    job = loads(full_text.replace("share = 0.6", ""), form="toml")
    assert [t.share for t in job.machine().furnaces[0].trains] == pytest.approx([0.6, 0.4])


def test_a_curve_needs_two_airflows(faults_of: Faults) -> None:
    rows = '["6000 cfm", "3.30 inwc", "5.3 hp"],\n    ["9000 cfm", "2.60 inwc", "7.1 hp"],'
    (fault,) = faults_of((rows, ""))
    assert fault.place == "unit.fan.curve"
    assert "two airflows" in fault.message


def test_a_limit_limits_something_and_leaves_room(faults_of: Faults) -> None:
    (fault,) = faults_of(('lower = "3.1 inwc"\nupper = "3.3 inwc"\n', ""))
    assert (fault.place, fault.message) == ("limit.1", "a limit needs lower, upper or both")
    (fault,) = faults_of(('lower = "3.1 inwc"', 'lower = "3.4 inwc"'))
    assert "nothing could ever be within" in fault.message


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('control = "single-stage"', 'control = "single-stage"\nleading = true'),
        ("leading = true\n", ""),
        ('supply_pressure = "8.0 inwc"', 'supply_pressure = "30 inwc"'),
        (
            '[unit.motor]\npower = "15 hp"\nvolts = "460 V"',
            '[unit.motor]\npower = "15 hp"\nvolts = "230 V"',
        ),
        ('manifold_low = "0.45 inwc"', 'manifold_low = "-0.1 inwc"'),
        ('exhaust = "9600 cfm"', 'exhaust = "0 cfm"'),
    ],
)
def test_what_is_merely_implausible_is_kept(full_text: str, old: str, new: str) -> None:
    assert old in full_text
    loads(full_text.replace(old, new, 1), form="toml").machine()


def test_every_fault_is_told_at_once(faults_of: Faults) -> None:
    faults = faults_of(
        ('power = "15 hp"', "power = 15"),
        ('altitude = "980 ft"', "altitude = 980"),
        ("format = 1", "format = 3"),
        ('instrument = "gauge-1"', 'instrument = "gauge-9"'),
        ('point = "flue.1.o2"', 'point = "flue.1.o9"'),
        ("minutes = 15", "minutes = 0"),
    )
    assert [fault.place for fault in faults] == [
        "format",
        "unit.motor.power",
        "site.altitude",
        "visit.1.reading.1.instrument",
        "visit.1.reading.4.point",
        "visit.1.decay.1.minutes",
    ]


def test_a_fault_of_the_site_does_not_hide_one_of_a_reading(faults_of: Faults) -> None:
    faults = faults_of(('altitude = "980 ft"', "altitude = 980"), ('"flue.1.o2"', '"flue.2.o2"'))
    assert [fault.place for fault in faults] == ["site.altitude", "visit.1.reading.4.point"]


def test_an_error_reads_as_one_fault_a_line(full_text: str) -> None:
    broken = full_text.replace('power = "15 hp"', "power = 15").replace("format = 1", "format = 3")
    with pytest.raises(JobError) as caught:
        loads(broken, form="toml")
    first, second = str(caught.value).splitlines()
    assert first == "format (line 2): format 3 is not known here: write format = 1"
    assert second.startswith("unit.motor.power (line 31): 15 has no unit")


def test_two_hundred_faults_are_enough() -> None:
    text = "\n".join(f"key_{number} = 1" for number in range(500))
    with pytest.raises(JobError) as caught:
        loads(text, form="toml")
    assert len(caught.value.faults) == 200
    lines = str(caught.value).splitlines()
    assert len(lines) == 201
    assert lines[-1] == f"and {500 + 4 - 200} more"  # and format, unit, design, site
