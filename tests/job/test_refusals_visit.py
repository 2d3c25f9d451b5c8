"""What cannot have happened on a visit to this unit is refused; what is only odd is kept."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from lightoff.job import Fault, Job, JobError, loads, parse_tree

Faults = Callable[..., tuple[Fault, ...]]
LineOf = Callable[[str], int]
Tree = dict[str, Any]

FIRST = "visit.1.reading.1"
FOURTH = "visit.1.reading.4"
REFUSED = [
    ('run = "fan"', 'run = "fann"', "visit.1.reading.5.run", '(did you mean "fan"?)'),
    ('run = "fan"', 'run = "high.3"', "visit.1.reading.5.run", '"off", "fan", "high", "low"'),
    ('run = "fan"', 'run = "low.2"', "visit.1.reading.5.run", '"low.1", "high.2" or "all"'),
    ('"flue.1.o2"', '"flue.1.o3"', f"{FOURTH}.point", 'did you mean "flue.1.o2"?'),
    (
        '"flue.1.o2"',
        '"flue.2.o2"',
        f"{FOURTH}.point",
        'furnace 2 does not fire in run "high.1": "flue.2.o2" may be read in "high", "high.2" or',
    ),
    ('value = "6.8 %"', 'value = "26 %"', f"{FOURTH}.value", "at most 21.5 %"),
    ('value = "6.8 %"', 'value = "-1 %"', f"{FOURTH}.value", "at least zero"),
    ('value = "6.8 %"', 'value = "6.8 ohm"', f"{FOURTH}.value", "a fraction is due"),
    ('value = "8920 scfm"', "value = 8920", "visit.1.reading.7.value", '"9000 cfm"'),
    ('value = "62.4 s"', 'value = "0 s"', "visit.1.reading.2.value", "above zero"),
    ("revolutions = 3", "revolutions = 0", "visit.1.reading.2.revolutions", "above zero"),
    ('instrument = "gauge-1"', 'instrument = "guage-1"', f"{FIRST}.instrument", '"gauge-1"'),
    ("at = 2026-11-03T10:12:00-06:00", "at = 2026-11-03", f"{FIRST}.at", "a day without a time"),
    ("at = 2026-11-03T10:12:00-06:00", 'at = "2026-11-03"', f"{FIRST}.at", "a day without a time"),
    ("at = 2026-11-03T10:12:00-06:00", "at = 10:12:00", f"{FIRST}.at", "not a date with a time"),
    ("at = 2026-11-03T10:12:00-06:00", 'at = "noon"', f"{FIRST}.at", "2026-11-03T10:12:00-06:00"),
    ("at = 2026-11-03T10:12:00-06:00", "at = 5", f"{FIRST}.at", "not a date with a time"),
    ("date = 2026-11-03", "date = 2026-11-03T10:00:00", "visit.1.date", "write it as 2026-11-03"),
    ('state = "as found"', 'state = "found"', f"{FIRST}.state", 'did you mean "as found"'),
    ("main_fan = false", 'main_fan = "no"', f"{FOURTH}.main_fan", "true or false"),
    ('shape = "round"', 'shape = "oval"', "visit.1.reading.6.traverse.shape", '"round"'),
    (
        'velocities = ["1610 fpm"',
        'velocities = ["1610"',
        "visit.1.reading.6.traverse.velocities.1",
        "has no unit",
    ),
    ('what = "train.1.1.manifold"', 'what = "train.1.manifold"', "visit.1.adjustment.1.what", "?"),
    ('from = "3.12 inwc"', 'from = "3.12"', "visit.1.adjustment.1.from", '"3.5 inwc"'),
    (
        "at = 2026-11-03T10:20:00-06:00\n",
        "at = 2026-11-03\n",
        "visit.1.adjustment.1.at",
        "day without a time",
    ),
    ('id = "high limit"', 'id = "hi limit"', "visit.1.trip.1.id", 'did you mean "high limit"'),
    ('value = "186 degF"', 'value = "186 Pa"', "visit.1.trip.1.value", "a temperature is due"),
    ("seconds = 4.1", "seconds = -1", "visit.1.trip.1.seconds", "at least zero"),
    ("seconds = 4.1", "seconds = inf", "visit.1.trip.1.seconds", "not a finite number"),
    ("acted = true", 'acted = "ok"', "visit.1.trip.1.acted", "true or false"),
    ('id = "fan.rotation"', 'id = "fan.rotate"', "visit.1.check.1.id", '"fan.rotation"'),
    ('id = "fan.rotation"', "id = 4", "visit.1.check.1.id", "4 is not a check"),
    ('outcome = "right"', 'outcome = "ok"', "visit.1.check.1.outcome", '"right", "wrong" or'),
    ('id = "purge"', 'id = "purg"', "visit.1.step.1.id", 'did you mean "purge"'),
    ('outcome = "tight"', 'outcome = "dry"', "visit.1.joint.1.outcome", '"tight" or "leaks"'),
    ('medium = "air"', 'medium = "Oxygen"', "visit.1.decay.1.medium", "air or an inert gas"),
    ('start = "1.50 psi"', 'start = "0 psi"', "visit.1.decay.1.start", "above zero"),
    ('found = "65 degF"', 'found = "warm"', "visit.1.setpoint.1.found", "-12 degF"),
    ("left = 68", "left = true", "visit.1.setpoint.2.left", "neither words nor a number"),
    ('severity = "correct"', 'severity = "bad"', "visit.1.deficiency.1.severity", '"stop"'),
    ('left = "running"', 'left = "on"', "visit.1.left", '"gas shut and tagged"'),
    ('target = "rise"', 'target = "rize"', "visit.1.deferred.1.target", 'did you mean "rise"?'),
    ("[[visit.symptom]]", "[[visit.symptoms]]", "visit.1.symptoms", 'did you mean "symptom"?'),
]


@pytest.mark.parametrize(("old", "new", "place", "gist"), REFUSED)
def test_it_is_refused_where_it_stands(
    faults_of: Faults, line_of: LineOf, old: str, new: str, place: str, gist: str
) -> None:
    (fault,) = faults_of((old, new))
    assert fault.place == place
    assert fault.line == line_of(old)
    assert gist in fault.message


def test_a_reading_has_its_value_or_its_traverse(faults_of: Faults, line_of: LineOf) -> None:
    (fault,) = faults_of(('value = "6.8 %"\n', ""))
    assert (fault.place, fault.message) == (FOURTH, "a reading of flue.1.o2 needs its value")
    assert fault.line == line_of('[[visit.reading]]\nrun = "high.1"')
    (fault,) = faults_of(("traverse = { shape", 'value = "1 m3/s"\ntraverse = { shape'))
    assert fault.message == "a reading of duct.traverse needs its value or traverse, one of the two"
    (fault,) = faults_of(('point = "duct.traverse"', 'point = "duct.hood_total"'))
    assert fault.message == "only duct.traverse is read by a traverse: write value instead"


def test_a_traverse_is_one_plane_of_one_kind(faults_of: Faults) -> None:
    (fault,) = faults_of(('diameter = "30 in"', 'width = "30 in"'))
    assert fault.place == "visit.1.reading.6.traverse"
    assert fault.message == "a round duct is given by its diameter, and by nothing else"
    (fault,) = faults_of((', height = "24 in"', ""))
    assert (
        fault.message == "a rectangular duct is given by its width and height, and by nothing else"
    )
    (fault,) = faults_of((', velocities = ["1610 fpm", "8.4 m/s"]', ""))
    assert "either pressures or velocities" in fault.message
    (fault,) = faults_of(('["1610 fpm", "8.4 m/s"]', "[]"))
    assert fault.message == "velocities has 0 entries: at least 1 can be"


def test_an_undeclared_instrument_is_asked_for(faults_of: Faults, full_tree: Tree) -> None:
    del full_tree["instrument"]
    with pytest.raises(JobError, match=r"gauge-1.*write an \[\[instrument\]\] with this id"):
        parse_tree(full_tree)


def test_each_furnace_has_its_own_high_limit_and_its_own_purge(faults_of: Faults) -> None:
    (fault,) = faults_of(("furnace = 1\nacted", "acted"))
    assert fault.place == "visit.1.trip.1.furnace"
    assert fault.message == 'each furnace has its own "high limit": write furnace = 1 to 2'
    (fault,) = faults_of(("furnace = 1\nseconds = 46.0", "seconds = 46.0"))
    assert fault.place == "visit.1.step.1.furnace"
    (fault,) = faults_of(("furnace = 1\nacted", "furnace = 3\nacted"))
    assert fault.message == "there is no furnace 3: write 1 to 2"


def test_a_trip_without_a_value_takes_none(faults_of: Faults) -> None:
    (fault,) = faults_of(('id = "disconnect"', 'id = "disconnect"\nvalue = "1 V"'))
    assert fault.message == 'the trip "disconnect" acts at no value: leave value out'


def test_a_test_above_the_valve_wants_the_unit_isolated(faults_of: Faults, full_text: str) -> None:
    (fault,) = faults_of(("isolated = true\n", ""))
    assert fault.place == "visit.1.decay.1.start"
    assert "above the 0.47 psi the unit's gas valve stands" in fault.message  # 13 in. w.c.
    (fault,) = faults_of(("isolated = true\n", ""), ('supply_max = "13.0 inwc"\n', ""))
    assert "above the 0.5 psi" in fault.message
    low = full_text.replace("isolated = true\n", "").replace('"1.50 psi"', '"0.45 psi"')
    assert loads(low, form="toml").visit().decays[0].isolated is False


def test_a_pressure_test_keeps_the_finest_digit_written(full_tree: Tree) -> None:
    decay = full_tree["visit"][0]["decay"][0]
    assert _decay_digit(full_tree) == pytest.approx(0.01 * 6894.757)
    decay["start"], decay["end"] = "12 kPa", "11.9 kPa"
    assert _decay_digit(full_tree) == pytest.approx(100.0)
    decay["start"], decay["end"] = "1 1/4 psi", "1 psi"
    assert _decay_digit(full_tree) == pytest.approx(0.25 * 6894.757)


def _decay_digit(tree: Tree) -> float | None:
    return parse_tree(tree).visit().decays[0].resolution


def test_a_flame_signal_is_read_in_the_plates_unit(full_tree: Tree) -> None:
    reading = {"run": "high", "point": "furnace.1.flame", "value": "1.8 V"}
    full_tree["visit"][0]["reading"] = [reading]
    with pytest.raises(JobError, match=r'"1.8 V" is a voltage, but the plate gives .* a current'):
        parse_tree(full_tree)
    reading["point"] = "furnace.2.flame"  # its plate says nothing
    assert parse_tree(full_tree).visit().readings[0].value == pytest.approx(1.8)


@pytest.mark.parametrize(
    ("point", "value"),
    [
        ("air.barometer", "0 inHg"),
        ("motor.amps.a", "-1 A"),
        ("power.volts.ab", "-460 V"),
        ("fan.rpm", "-1020 rpm"),
        ("flue.1.co", "-5 ppm"),
        ("air.outdoor.rh", "120 %"),
        ("train.1.1.signal", "200 %"),
        ("flue.1.co2", "101 %"),
        ("air.outdoor.db", "-500 degF"),
        ("duct.hood_total", "-10 cfm"),
        ("door.open", "-3 lbf"),
    ],
)
def test_no_gauge_can_show_this(full_tree: Tree, point: str, value: str) -> None:
    full_tree["visit"][0]["reading"] = [{"run": "high", "point": point, "value": value}]
    with pytest.raises(
        JobError, match=r"visit.1.reading.1.value: .*(is not possible|below absolute)"
    ):
        parse_tree(full_tree)


@pytest.mark.parametrize(
    ("point", "value"),
    [
        ("static.fan_in", "-1.2 inwc"),
        ("gas.supply", "30 inwc"),
        ("flue.1.draft", "-0.05 inwc"),
        ("air.outdoor.rh", "101 %"),
        ("train.1.1.signal", "-25 %"),
        ("flue.3.o2", "7 %"),  # a furnace this unit has not
        ("motor.amps", "18 A"),  # a point of a single-phase unit
        ("building.pressure", "-0.03 inwc"),
    ],
)
def test_what_is_only_odd_is_kept(full_tree: Tree, point: str, value: str) -> None:
    full_tree["visit"][0]["reading"] = [{"run": "high", "point": point, "value": value}]
    assert parse_tree(full_tree).visit().readings[0].point == point


def test_what_only_other_units_have_is_kept_for_a_remark(full_tree: Tree) -> None:
    del full_tree["unit"]["options"]
    full_tree["unit"]["drive"] = {"kind": "direct"}
    visit = full_tree["visit"][0]
    at = "2026-11-03T11:00:00"
    visit["trip"] = [{"id": "smoke", "acted": True}]
    visit["check"] = [{"id": "belt.tension", "outcome": "right"}]
    visit["step"] = [{"id": "stage delay", "furnace": 1, "seconds": 3}]
    visit["adjustment"] = [{"at": at, "what": "drive.fan_sheave", "to": "9 in"}]
    compiled = parse_tree(full_tree).visit()
    assert compiled.trips[0].id == "smoke"
    assert compiled.checks[0].id == "belt.tension"
    assert compiled.steps[0].furnace == 1
    assert compiled.adjustments[0].after == pytest.approx(9 * 0.0254)


def _single(tree: Tree) -> Tree:
    """The example with its first furnace only, and a blank visit."""
    del tree["unit"]["furnace"][1]
    tree["visit"] = [{}]
    return tree


def test_in_a_unit_of_one_furnace_its_number_goes_without_saying(full_tree: Tree) -> None:
    tree = _single(full_tree)
    tree["visit"][0] = {
        "reading": [
            {"run": "high.1", "point": "flue.1.o2", "value": 0.07},
            {"run": "low.1", "point": "flue.1.o2", "value": "9 %"},
        ],
        "trip": [{"id": "high limit"}, {"id": "low gas", "furnace": 1}],
        "step": [{"id": "purge"}, {"id": "fan starts", "furnace": 1}],
    }
    visit = parse_tree(tree).visit()
    assert [reading.run for reading in visit.readings] == ["high", "low"]
    assert [trip.furnace for trip in visit.trips] == [1, None]  # the unit has one gas switch
    assert [step.furnace for step in visit.steps] == [1, None]


def test_a_unit_of_one_furnace_has_no_second(full_tree: Tree) -> None:
    tree = _single(full_tree)
    tree["visit"][0]["symptom"] = [{"what": "hunts", "furnace": 2}]
    with pytest.raises(JobError, match=r"there is no furnace 2: write 1$"):
        parse_tree(tree)


def test_without_a_sound_unit_only_what_no_unit_has_is_refused(full_tree: Tree) -> None:
    del full_tree["unit"]["motor"]
    visit = full_tree["visit"][0]
    visit["reading"] = [
        {"run": "low.3", "point": "flue.1.o2", "value": "7 %"},
        {"run": "sideways", "point": "flue.1.o2", "value": "7 %"},
    ]
    del visit["trip"][0]["furnace"]
    del visit["decay"][0]["isolated"]
    visit["symptom"][0]["furnace"] = 4
    with pytest.raises(JobError) as caught:
        parse_tree(full_tree)
    assert [fault.place for fault in caught.value.faults] == [
        "unit.motor",
        "visit.1.symptom.1.furnace",
        "visit.1.reading.2.run",
    ]


def test_a_blank_is_as_good_as_nothing(full_tree: Tree) -> None:
    drive, visit = full_tree["unit"]["drive"], full_tree["visit"][0]
    full_tree["parties"] = full_tree["unit"]["serial"] = drive["vfd"] = visit["joint"] = None
    visit["trip"][0]["value"] = visit["adjustment"][0]["from"] = None
    job = parse_tree(full_tree)
    assert job.machine().unit.serial is None
    assert job.machine().drive.vfd is False
    assert job.visit().joints == ()
    assert job.visit().trips[0].value is None
    assert job.visit().adjustments[0].before is None
    assert job.tree is full_tree


def test_a_blank_where_something_is_due_is_missing(full_tree: Tree) -> None:
    full_tree["unit"]["motor"]["power"] = None
    with pytest.raises(JobError, match=r"unit.motor.power: power is missing"):
        parse_tree(full_tree)


def test_one_slip_is_one_fault(faults_of: Faults) -> None:
    for change in (
        ('point = "flue.1.o2"', 'point = "flue"'),
        ('what = "wiring"', 'what = "wires"'),
        ('id = "high limit"', 'id = "limit"'),
        ('id = "purge"', 'id = "x"'),
        ('id = "discharge"', "id = 4"),
        ('target = "manifold high"', 'target = "x"'),
        ('quantity = "pressure"', 'quantity = "x"'),
    ):
        assert len(faults_of(change)) == 1


OFFSET = timedelta(hours=-6)


def test_times_without_an_offset_take_the_visits(full_text: str) -> None:
    visit = loads(full_text, form="toml").visit()
    offsets = {reading.at.utcoffset() for reading in visit.readings if reading.at}
    assert offsets == {OFFSET}


def _times(tree: Tree, *times: object) -> list[datetime | None]:
    reading = {"run": "fan", "point": "static.duct", "value": "0.5 inwc"}
    tree["visit"][0]["reading"] = [{**reading, "at": at} for at in times]
    job: Job = parse_tree(tree)
    return [reading.at for reading in job.visit().readings]


def test_without_any_offset_times_are_utc(full_tree: Tree) -> None:
    del full_tree["visit"][0]["adjustment"]
    first, second = _times(full_tree, "2026-11-03 10:12", datetime(2026, 11, 3, 10, 13))
    assert first == datetime(2026, 11, 3, 10, 12, tzinfo=UTC)
    assert second == datetime(2026, 11, 3, 10, 13, tzinfo=UTC)


def test_all_times_of_a_visit_compare(full_tree: Tree) -> None:
    times = _times(full_tree, "2026-11-03T10:12", "2026-11-03T10:12Z", "2026-11-03T10:12+02:00")
    assert sorted(time for time in times if time) == [times[2], times[0], times[1]]


@pytest.mark.parametrize("field", ["run", "point", "value", "instrument", "at", "state", "note"])
@pytest.mark.parametrize("typed", ["\ud800", "3 \ud800", "\x1b[31m"])
def test_what_no_terminal_can_show_is_still_told(full_tree: Tree, field: str, typed: str) -> None:
    reading = {"run": "high", "point": "flue.1.o2", "value": "7 %", field: typed}
    full_tree["visit"][0]["reading"] = [reading, {"run": "nowhere"}]
    with pytest.raises(JobError) as caught:
        parse_tree(full_tree)
    assert str(caught.value).replace("\n", "").isprintable()
