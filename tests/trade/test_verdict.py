"""The short answer, what each purpose asks for, and what may be put off."""

from pathlib import Path
from typing import Any

import pytest

from lightoff.job import load, parse_tree
from lightoff.judgement import assess
from trade.build import judge, row, tree, visit

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize(
    ("example", "verdict"),
    [
        ("one-furnace-propane", "ready"),
        ("direct-drive-indoor", "ready"),
        ("two-furnaces-vfd", "ready, undecided points"),
        ("three-furnaces-at-altitude", "not ready"),
        ("two-furnaces-with-findings", "not to be left running"),
        ("plate-only", "not ready"),
    ],
)
def test_an_example(example: str, verdict: str) -> None:
    job = load(EXAMPLES / f"{example}.toml")
    assert assess(job.machine(), job.visit(), whole=False).verdict == verdict


class TestOneThingFromASoundVisit:
    """The sound example, with one thing changed."""

    @pytest.fixture
    def sound(self) -> dict[str, Any]:
        job: dict[str, Any] = load(EXAMPLES / "one-furnace-propane.toml").tree
        return job | {"visit": [dict(job["visit"][0])]}

    def judged(self, job: dict[str, Any]) -> str:
        read = parse_tree(job)
        return assess(read.machine(), read.visit(1), whole=False).verdict

    def test_a_trip_that_does_not_act_must_not_be_left_running(self, sound: dict[str, Any]) -> None:
        trips = [dict(t) for t in sound["visit"][0]["trip"]]
        trips[0]["acted"] = False
        sound["visit"][0]["trip"] = trips
        assert self.judged(sound) == "not to be left running"

    def test_a_trip_not_proven_is_not_ready(self, sound: dict[str, Any]) -> None:
        sound["visit"][0]["trip"] = sound["visit"][0]["trip"][1:]
        assert self.judged(sound) == "not ready"

    def test_a_wrong_rotation_must_not_be_left_running(self, sound: dict[str, Any]) -> None:
        checks = [c | ({"outcome": "wrong"} if c["id"] == "fan.rotation" else {})
                  for c in sound["visit"][0]["check"]]  # fmt: skip
        sound["visit"][0]["check"] = checks
        assert self.judged(sound) == "not to be left running"

    def test_covers_off_is_not_ready(self, sound: dict[str, Any]) -> None:
        checks = [c | ({"outcome": "wrong"} if c["id"] == "covers.on" else {})
                  for c in sound["visit"][0]["check"]]  # fmt: skip
        sound["visit"][0]["check"] = checks
        assert self.judged(sound) == "not ready"

    def test_a_missing_check_leaves_undecided_points(self, sound: dict[str, Any]) -> None:
        sound["visit"][0]["check"] = [
            c for c in sound["visit"][0]["check"] if c["id"] != "covers.on"
        ]
        assert self.judged(sound) == "ready, undecided points"

    def test_a_leak_must_not_be_left_running(self, sound: dict[str, Any]) -> None:
        leak = {"id": "manifold plug", "furnace": 1, "outcome": "leaks"}
        sound["visit"][0]["joint"] = [*sound["visit"][0]["joint"], leak]
        assert self.judged(sound) == "not to be left running"

    def test_a_leak_made_tight_and_tested_again_is_closed(self, sound: dict[str, Any]) -> None:
        leak = {"id": "manifold plug", "furnace": 1, "outcome": "leaks"}
        again = leak | {"outcome": "tight"}
        sound["visit"][0]["joint"] = [*sound["visit"][0]["joint"], leak, again]
        assert self.judged(sound) == "ready"

    def test_a_stop_row_put_off_is_not_ready(self, sound: dict[str, Any]) -> None:
        sound["visit"][0]["decay"] = []
        sound["visit"][0]["deferred"] = [{"target": "tightness: decay", "why": "gas not on"}]
        assert self.judged(sound) == "not ready"

    def test_a_row_to_be_corrected_put_off_leaves_undecided_points(
        self, sound: dict[str, Any]
    ) -> None:
        readings = [r for r in sound["visit"][0]["reading"] if r["point"] != "door.open"]
        sound["visit"][0]["reading"] = readings
        sound["visit"][0]["deferred"] = [{"target": "door: open", "why": "not hung"}]
        assert self.judged(sound) == "ready, undecided points"

    def test_a_note_never_blocks(self, sound: dict[str, Any]) -> None:
        sound["unit"] = sound["unit"] | {"fan": sound["unit"]["fan"] | {"speed": "800 rpm"}}
        assert self.judged(sound) == "ready"


def test_a_deferral_never_replaces_a_reading() -> None:
    answer = judge(
        tree(furnaces=1),
        "high door.open 40 lbf",
        deferred=[{"target": "door: open", "why": "later"}],
    )
    assert row(answer, "door: open").decision == "does not conform"


class TestPurposes:
    def test_a_season_asks_for_the_safeties_and_not_for_the_airflow(self) -> None:
        answer = judge(tree(furnaces=1), purpose="seasonal")
        asked = {r.id for r in answer.targets if r.required}
        assert {"trip: flame failure", "trip: high limit", "CO air-free limit", "manifold high",
                "gas pressure all off", "tightness: joints"} <= asked  # fmt: skip
        assert not asked & {"airflow", "line voltage", "door: open", "check: covers.on"}

    def test_a_service_asks_for_what_it_touched(self) -> None:
        answer = judge(
            tree(furnaces=1),
            purpose="service",
            symptom=[{"what": "cold discharge"}],
            adjustment=[{"at": "2026-11-03T10:00:00-06:00", "what": "drive.motor_sheave"}],
        )
        asked = {r.id for r in answer.targets if r.required}
        assert {"temperature rise", "manifold high"} <= asked
        assert "building pressure" in asked  # moved by another airflow
        assert "check: covers.on" not in asked

    def test_something_dangerous_counts_whether_it_was_asked_for_or_not(self) -> None:
        answer = judge(tree(furnaces=1), "fan fan.rpm 1400 rpm", purpose="seasonal")
        assert row(answer, "fan speed maximum").required
        assert answer.verdict == "not to be left running"

    def test_what_is_not_asked_for_is_carried_from_the_visit_before(self) -> None:
        job = parse_tree(
            tree(furnaces=1)
            | {
                "visit": [
                    visit("fan fan.rpm 930 rpm", date="2025-10-01"),
                    visit(purpose="seasonal", date="2026-10-01"),
                ]
            }
        )
        answer = assess(job.machine(), job.visit(2), before=job.visit(1), whole=False)
        carried = [r for r in answer.remarks if r.message == "carried"]
        assert {r.values["target"] for r in carried} >= {"fan speed"}
        assert {r.values["day"] for r in carried} == {"2025-10-01"}


def test_left_running_is_refused_while_it_must_not_run() -> None:
    answer = judge(tree(furnaces=1), "fan fan.rpm 1400 rpm", left="running")
    assert "left-running-refused" in [r.message for r in answer.remarks]


class TestSeconds:
    def timed(self, step: str, seconds: float) -> Any:
        return judge(tree(furnaces=1), step=[{"id": step, "furnace": 1, "seconds": seconds}])

    @pytest.mark.parametrize(
        ("step", "target", "seconds", "decision"),
        [
            ("purge", "purge", 45.5, "conforms"),
            ("purge", "purge", 30.0, "does not conform"),
            ("ignition trial", "ignition trial", 6.0, "conforms"),
            ("ignition trial", "ignition trial", 10.0, "does not conform"),
            ("flame failure", "flame failure time", 1.5, "conforms"),
            ("flame failure", "flame failure time", 3.2, "does not conform"),
            ("flame failure", "flame failure time", 2.9, "undecided"),
        ],
    )
    def test_a_step(self, step: str, target: str, seconds: float, decision: str) -> None:
        assert row(self.timed(step, seconds), target).decision == decision

    def test_a_proven_flame_failure_is_timed_as_well(self) -> None:
        answer = judge(
            tree(furnaces=1),
            trip=[{"id": "flame failure", "furnace": 1, "acted": True, "seconds": 1.2}],
        )
        assert row(answer, "flame failure time").decision == "conforms"

    def test_a_flame_that_once_failed_too_slowly_is_not_forgotten_by_one_good_time(self) -> None:
        def after(*seconds: float) -> str:
            steps = [{"id": "flame failure", "furnace": 1, "seconds": s} for s in seconds]
            return row(judge(tree(furnaces=1), step=steps), "flame failure time").decision

        assert after(5.0) == "does not conform"
        assert after(5.0, 1.5) == "undecided"
        assert after(5.0, 1.5, 1.6) == "conforms"

    def test_where_the_plate_is_silent_four_seconds_are_allowed(self) -> None:
        job = tree(furnaces=1)
        del job["unit"]["furnace"][0]["flame_failure"]
        found = row(judge(job), "flame failure time")
        assert (found.upper, found.limit_from) == (4.0, "common practice")


class TestDecay:
    TEST = {"section": "upstream", "start": "1.50 psi", "start_temperature": "61.0 degF",
            "end_temperature": "60.0 degF", "minutes": 15, "isolated": True}  # fmt: skip

    def found(self, end: str, **more: Any) -> Any:
        answer = judge(tree(furnaces=1), decay=[self.TEST | {"end": end} | more])
        return row(answer, "tightness: decay")

    def test_temperature_explains_a_drop(self) -> None:
        # one degree moves a closed pipe at 16.2 psia by 0.031 psi (gas law)
        assert self.found("1.47 psi").decision == "conforms"

    def test_a_drop_beyond_it_is_a_leak(self) -> None:
        assert self.found("1.40 psi").decision == "does not conform"

    def test_a_warmer_pipe_must_not_hide_a_leak(self) -> None:
        assert self.found("1.50 psi", end_temperature="66.0 degF").decision == "does not conform"

    def test_a_leak_found_stands_until_two_later_tests_hold(self) -> None:
        def after(*ends: str) -> str:
            tests = [self.TEST | {"end": end} for end in ends]
            return row(judge(tree(furnaces=1), decay=tests), "tightness: decay").decision

        assert after("1.40 psi", "1.47 psi") == "undecided"
        assert after("1.40 psi", "1.47 psi", "1.47 psi") == "conforms"

    def test_the_authority_may_allow_a_drop(self) -> None:
        job = tree(furnaces=1)
        job["limit"] = [{"target": "tightness: decay", "upper": "0.2 psi", "source": "authority"}]
        answer = judge(job, decay=[self.TEST | {"end": "1.40 psi"}])
        assert row(answer, "tightness: decay").decision == "conforms"


def test_a_high_limit_that_opens_far_above_its_setting_does_not_conform() -> None:
    def found(value: str) -> str:
        proof = {"id": "high limit", "furnace": 1, "acted": True, "restarted": True, "value": value}
        return row(judge(tree(furnaces=1), trip=[proof]), "trip: high limit").decision

    assert found("176 degF") == "conforms"
    assert found("195 degF") == "does not conform"
