"""What a technician would notice; nothing is refused, every value is kept as typed."""

from collections.abc import Callable
from typing import Any

import pytest

from trade.build import Tree, judge, reading, row, tree

Change = Callable[[Tree], None]


def _set(path: str, value: object) -> Change:
    def change(job: Tree) -> None:
        *steps, last = path.split("/")
        node: Any = job
        for step in steps:
            node = node[int(step)] if step.isdigit() else node[step]
        node[last] = value

    return change


def remarks(job: Tree, *readings: Any, **more: Any) -> dict[str, str]:
    return {r.message: r.place for r in judge(job, *readings, **more).remarks}


@pytest.mark.parametrize(
    ("change", "message", "place"),
    [
        (_set("unit/furnace/0/rise", ["90 degF", "120 degF"]), "rise-against-input",
         "unit.furnace.1.rise"),
        (_set("unit/furnace/1/gas", "propane"), "propane-at-natural-gas-pressure",
         "unit.furnace.2.train.1.manifold_high"),
        (_set("unit/furnace/0/train/0/manifold_high", "10 inwc"), "natural-gas-at-propane-pressure",
         "unit.furnace.1.train.1.manifold_high"),
        (_set("unit/furnace/0/derate", "orifice"), "derate-not-due", "unit.furnace.1.derate"),
        (_set("unit/furnace/1/leading", True), "two-leading", "unit.furnace.2.leading"),
        (_set("unit/furnace/0/leading", False), "none-leading", "unit.furnace"),
        (_set("unit/motor/full_load_amps", "50 A"), "amps-against-power",
         "unit.motor.full_load_amps"),
        (_set("unit/motor/volts", "230 V"), "motor-against-supply", "unit.motor.volts"),
        (_set("unit/motor/volts", "230 V"), "amps-against-power", "unit.motor.full_load_amps"),
        (_set("site", {"altitude": "5280 ft", "heating_value": "830 Btu/ft3"}),
         "heating-value-as-delivered", "site.heating_value"),
    ],
)  # fmt: skip
def test_the_declared_held_against_itself(change: Change, message: str, place: str) -> None:
    job = tree()
    change(job)
    assert remarks(job)[message] == place


def test_a_sound_plate_calls_for_no_remark() -> None:
    assert remarks(tree()) == {}


def test_sheaves_are_held_against_the_speed() -> None:
    job = tree()
    job["unit"]["motor"]["speed"] = "1760 rpm"
    job["unit"]["drive"] |= {"motor_sheave": "5.0 in", "fan_sheave": "6.0 in"}
    assert remarks(job)["sheaves-against-speed"] == "unit.drive.motor_sheave"


def test_an_altitude_counted_in_the_derate_and_in_the_gas_is_counted_twice() -> None:
    job = tree()
    job["site"] |= {"altitude": "5280 ft", "heating_value_basis": "as delivered"}
    job["unit"]["furnace"][0]["derate"] = "orifice"
    assert "derated-twice" in remarks(job)


class TestTheVisit:
    def test_a_point_this_unit_does_not_have_is_kept_and_not_judged(self) -> None:
        answer = judge(tree(), "high vfd.hz 60 Hz", "high train.3.1.manifold 3.5 inwc")
        assert [r.message for r in answer.remarks].count("not-of-this-unit") == 2
        assert not [r for r in answer.targets if r.point == "train.3.1.manifold"]

    def test_a_sea_level_barometer_on_a_mountain_is_noticed(self) -> None:
        job = tree()
        job["site"]["altitude"] = "5280 ft"
        assert "altitude-against-barometer" in remarks(job, "off air.barometer 29.92 inHg")
        assert "altitude-against-barometer" not in remarks(job, "off air.barometer 24.7 inHg")

    def test_times_that_run_backwards_are_noticed(self) -> None:
        late = reading("fan fan.rpm 930 rpm", at="2026-11-03T11:00:00-06:00")
        early = reading("fan static.duct 0.7 inwc", at="2026-11-03T10:00:00-06:00")
        assert remarks(tree(), late, early)["times-out-of-order"] == "visit.1.reading.2.at"

    def test_a_meter_is_clocked_over_whole_turns_and_a_minute(self) -> None:
        said = remarks(tree(), reading("high gas.meter.seconds 30 s @watch", revolutions=1.5))
        assert {"not-whole-turns", "clocked-briefly"} <= set(said)

    def test_a_meter_without_a_dial_says_nothing(self) -> None:
        job = tree()
        del job["site"]["meter_dial"]
        assert "no-dial" in remarks(job, "high gas.meter.seconds 75 s @watch")


class TestInstruments:
    def used(self, **claims: Any) -> dict[str, str]:
        job = tree()
        job["instrument"][0] |= claims
        return remarks(job, "off gas.supply 7 inwc @gauge", date="2026-11-03")

    def test_out_of_calibration(self) -> None:
        assert self.used(due="2026-10-01")["out-of-calibration"] == "instrument.1.due"

    def test_in_calibration(self) -> None:
        assert "out-of-calibration" not in self.used(due="2026-12-01")

    def test_outside_its_range(self) -> None:
        job = tree()
        job["instrument"][0]["channel"][0]["range"] = ["0 inwc", "5 inwc"]
        assert "outside-range" in remarks(job, "off gas.supply 7 inwc @gauge")

    def test_too_coarse_for_the_limit(self) -> None:
        assert "too-coarse" in remarks(tree(), "high.1 train.1.1.manifold 3.6 inwc @coarse")

    def test_unknown(self) -> None:
        assert "instrument-unknown" in remarks(tree(), "off gas.supply 7 inwc")
        several = remarks(tree(), "off gas.supply 7 inwc", "high gas.supply 6.8 inwc")
        assert "instruments-unknown" in several
        assert "instrument-unknown" not in several

    def test_without_a_channel_for_what_it_read(self) -> None:
        assert "no-such-channel" in remarks(tree(), "off gas.supply 7 inwc @probe")


@pytest.mark.parametrize(
    ("text", "slip"),
    [
        ("off gas.supply 7 psi @gauge", "inwc-for-psi"),
        ("high.1 train.1.1.manifold 35 inwc @gauge", "ten-times"),
        ("high.1 train.1.1.manifold 0.35 inwc @gauge", "a-tenth"),
        ("high.1 train.1.1.manifold 871 inwc @gauge", "pascal-for-inwc"),
        ("high.1 train.1.1.manifold 7.0 inwc @gauge", "double"),
    ],
)
def test_a_slip_that_would_explain_a_value_is_offered_and_the_value_kept(
    text: str, slip: str
) -> None:
    answer = judge(tree(), text)
    said = [r for r in answer.remarks if r.message == "slip"]
    assert [r.values["slip"] for r in said] == [slip]
    assert answer.verdict != "ready"  # the finding of the day stands


def test_a_230_volt_motor_on_208_is_caught() -> None:
    job = tree()
    job["unit"]["electrical"]["volts"] = "208 V"
    job["unit"]["motor"] |= {"volts": "230 V", "full_load_amps": "25 A"}
    answer = judge(job, "high power.volts.ab 203 V @meter")
    assert row(answer, "line voltage", "high", "power.volts.ab").decision == "does not conform"


def test_gas_does_not_flow_uphill() -> None:
    answer = judge(tree(), "high.1 gas.supply 0.24 inwc", "high.1 train.1.1.manifold 3.5 inwc")
    (remark,) = [each for each in answer.remarks if each.message == "gas-uphill"]
    assert (remark.values["point"], remark.values["other"]) == ("train.1.1.manifold", "gas.supply")
    fine = judge(tree(), "high.1 gas.supply 7 inwc", "high.1 train.1.1.manifold 3.5 inwc")
    assert not [each for each in fine.remarks if each.message == "gas-uphill"]


def test_a_dial_that_is_not_the_sites_is_said() -> None:
    clocked = reading("high.1 gas.meter.seconds 75 s", revolutions=3, dial="1 ft3")
    (remark,) = [r for r in judge(tree(), clocked).remarks if r.message == "another-dial"]
    assert remark.values["times"] == pytest.approx(2.0)


def test_a_stop_limit_once_past_stays_said_after_two_readings_that_agree() -> None:
    co = [f"high.1 flue.1.co {ppm} ppm @flue" for ppm in (283, 25, 27)]
    answer = judge(tree(), "high.1 flue.1.o2 7.8 % @flue", *co)
    (remark,) = [each for each in answer.remarks if each.message == "once-past"]
    assert remark.values["value"] == pytest.approx(452e-6, rel=0.01)
