"""The order of work: nothing before what it rests on, and nothing left out."""

import itertools
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from lightoff.job import load, parse_tree
from lightoff.judgement import assess
from lightoff.judgement.plan.expectation import expectation
from lightoff.judgement.plan.rehearsal import Rehearsal, rehearsal
from lightoff.judgement.tasks import Progress, Record, Task, progress, tasks
from lightoff.judgement.tasks.resting import needs_of, rests_on
from lightoff.machine import Machine, Visit, checks, firing, points, runs, trips
from lightoff.machine import visit as seen
from trade import drawn
from trade.build import Tree, tree, visit

EXAMPLES = Path(__file__).parents[2] / "examples"
FOUR_HOURS, SEVEN_HOURS = 240, 420  # minutes a full start-up of two furnaces takes


def before(every: tuple[Task, ...], task: Task) -> set[str]:
    """The ids of everything that comes before a task."""
    by_id = {each.id: each for each in every}
    found: set[str] = set()
    ahead = list(task.needs)
    while ahead:
        if (need := ahead.pop()) not in found:
            found.add(need)
            ahead += by_id[need].needs
    return found


def of(every: tuple[Task, ...], name: str, furnace: int | None = None) -> Task:
    """A task by its name and furnace."""
    return next(each for each in every if (each.name, each.furnace) == (name, furnace))


FEW = settings(max_examples=40, deadline=None)  # machines draw apart within as many


class TestOfAnyMachine:
    @FEW
    @given(drawn.jobs())
    def test_every_task_is_reached_in_the_order_of_work(self, job: Tree) -> None:
        done: set[str] = set()
        for task in tasks(drawn.machine(job)):
            assert set(task.needs) <= done, task.id  # so that nothing waits for itself either
            assert task.id not in done
            done.add(task.id)

    @FEW
    @given(drawn.jobs())
    def test_steps_run_from_one_to_twelve(self, job: Tree) -> None:
        steps = [task.step for task in tasks(drawn.machine(job))]
        assert steps == sorted(steps)
        assert set(steps) == set(range(1, 13))

    @FEW
    @given(drawn.jobs())
    def test_every_row_of_a_start_up_rests_on_something_a_task_records(self, job: Tree) -> None:
        machine = drawn.machine(job)
        needs = needs_of(machine)
        records = [record for task in tasks(machine) for record in task.records]
        for row in assess(machine, drawn.visited(job), whole=False).targets:
            its = [record for record in records if rests_on(row, record, needs)]
            assert its, row.key
            unclocked = row.id in ("input", "input limit")  # the manifold tells it as well
            if row.severity != "note" and not unclocked:
                assert any(record.due for record in its), row.key

    @FEW
    @given(drawn.jobs())
    def test_every_check_and_trip_of_the_unit_is_waited_for_once(self, job: Tree) -> None:
        machine = drawn.machine(job)
        due = [record for task in tasks(machine) for record in task.due]
        seen_to = [record.names[0] for record in due if record.kind == "check"]
        tripped = [(record.names[0], record.furnace) for record in due if record.kind == "trip"]
        assert sorted(seen_to) == sorted(checks(machine))
        assert len(tripped) == len(set(tripped))
        assert set(tripped) == {(trip.id, trip.furnace) for trip in trips(machine)}

    @FEW
    @given(drawn.jobs())
    def test_a_task_asks_only_for_what_the_unit_has(self, job: Tree) -> None:
        machine = drawn.machine(job)
        here, in_them = {point.id for point in points(machine)}, set(runs(machine))
        for task in tasks(machine):
            for record in task.records:
                if record.kind == "reading":
                    assert here.issuperset(record.names)
                    assert in_them.issuperset(record.runs)

    @FEW
    @given(drawn.jobs(furnaces=st.just(2)))
    def test_two_furnaces_take_four_to_seven_hours(self, job: Tree) -> None:
        minutes = sum(task.minutes for task in tasks(drawn.machine(job)))
        assert FOUR_HOURS <= minutes <= SEVEN_HOURS


class TestSafetyOrder:
    """What protects comes before what it protects from, on any machine."""

    @FEW
    @given(drawn.jobs())
    def test_flame_airflow_and_limit_are_proven_before_any_long_run(self, job: Tree) -> None:
        machine = drawn.machine(job)
        every = tasks(machine)
        for task in every:
            lit = {n for record in task.records for n in _fires(machine, record)}
            for furnace in lit:
                earlier = before(every, task)
                assert of(every, "first firing and flame failure", furnace).id in earlier, task.id
                assert of(every, "airflow proving").id in earlier, task.id
                assert of(every, "high limit", furnace).id in earlier, task.id

    @FEW
    @given(drawn.jobs())
    def test_a_dry_run_gas_and_air_come_before_the_first_firing(self, job: Tree) -> None:
        machine = drawn.machine(job)
        every = tasks(machine)
        for number, _ in machine.numbered():
            earlier = before(every, of(every, "first firing and flame failure", number))
            assert of(every, "dry run", number).id in earlier
            assert {"piping tested and purged", "lock-up", "airflow", "rotation",
                    "gas and orifices", "flues and combustion air"} <= earlier  # fmt: skip

    @FEW
    @given(drawn.jobs())
    def test_locked_out_work_comes_before_power(self, job: Tree) -> None:
        every = tasks(drawn.machine(job))
        dead = {task.id for task in every if task.step == 2}
        for task in every:
            live = "caution-live" in task.cautions
            assert not live or dead <= before(every, task), task.id

    @FEW
    @given(drawn.jobs())
    def test_joints_come_after_everything_that_opens_a_port(self, job: Tree) -> None:
        machine = drawn.machine(job)
        every = tasks(machine)
        opened = {task.id for task in every if "caution-gas-port" in task.cautions}
        for number, _ in machine.numbered():
            last = of(every, "joints again", number)
            of_others = {t.id for t in every if t.furnace not in (None, number)}
            assert opened - of_others <= before(every, last)
            assert last.last

    @FEW
    @given(drawn.jobs())
    def test_the_handover_is_the_end(self, job: Tree) -> None:
        every = tasks(drawn.machine(job))
        unwaited = {task.id for task in every if not task.due}
        assert before(every, every[-1]) | unwaited == {task.id for task in every[:-1]} | unwaited

    @FEW
    @given(drawn.jobs())
    def test_gas_and_live_work_name_their_licence(self, job: Tree) -> None:
        for task in tasks(drawn.machine(job)):
            if {"caution-gas-port", "caution-first-firing"} & set(task.cautions):
                assert task.licence == "gas", task.id
            if "caution-live" in task.cautions and task.step == 3:
                assert task.licence == "electrical", task.id


def _fires(machine: Machine, record: Record) -> set[int]:
    """The furnaces that burn while something is read, in the run it is meant for."""
    if record.kind != "reading" or not record.runs:
        return set()
    return set(firing(machine, record.runs[0]))


SEEN = (Phase.explicit, Phase.reuse, Phase.generate)  # made smaller it would take minutes


@settings(max_examples=3, deadline=None, phases=SEEN)
@given(drawn.jobs(furnaces=st.integers(1, 2)))
def test_whoever_does_what_is_ready_gets_everything_done(job: Tree) -> None:
    """And then nothing that a start-up asks for is left unmeasured."""
    for furnace in job["unit"]["furnace"]:  # what the model expects must not be past a limit
        furnace |= {"flue_max": "1200 degF", "max_outlet": "400 degF"}
        furnace.pop("rise", None)
    machine, doing = drawn.machine(job), drawn.visited(job)
    every = tasks(machine)
    told = rehearsal(machine, doing, every, expectation(machine, runs(machine), {}))
    for _ in every:
        standing = progress(machine, doing)
        ready = [each for each in standing if each.state == "ready" and each.task.due]
        if not ready:
            break
        for each in ready:
            doing = done(doing, each, told)
    assert [each.task.id for each in standing if each.state != "done" and each.task.due] == []
    left = [
        row.key
        for row in assess(machine, doing, whole=False).targets
        if row.decision == "not measured" and row.severity != "note"
        and row.why.message != "find-it"
    ]  # fmt: skip
    assert left == []


def done(doing: Visit, task: Progress, told: Rehearsal) -> Visit:
    """The visit with everything on record that a task still lacks."""
    for record in task.missing:
        doing = replace(doing, **_ENTRY[record.kind](doing, record, told))
    return doing


def _reading(doing: Visit, record: Record, told: Rehearsal) -> dict[str, Any]:
    run = (*record.runs, "fan")[0]
    for each in told.readings:
        if each.reading.run == run and each.reading.point in record.names:
            return {"readings": (*doing.readings, each.reading)}
    point = seen.Reading(run, record.names[0], 1.0, 1, f"unlimited.{run}.{record.names[0]}")
    return {"readings": (*doing.readings, point)}


_ENTRY: dict[str, Any] = {
    "reading": _reading,
    "check": lambda doing, record, _: {
        "checks": (*doing.checks, seen.CheckMade(record.names[0], "made", "right"))
    },
    "trip": lambda doing, record, _: {
        "trips": (*doing.trips, seen.TripProof(record.names[0], "proven", record.furnace, True,
                                               seconds=1.0, restarted=True))
    },
    "step": lambda doing, record, _: {
        "steps": (*doing.steps, seen.StepTimed(record.names[0], "timed", record.furnace,
                                               _SECONDS.get(record.names[0], 60.0)))
    },
    "joint": lambda doing, record, _: {
        "joints": (*doing.joints, seen.Joint("union", "soaped", "tight", record.furnace))
    },
    "decay": lambda doing, _record, _told: {
        "decays": (seen.Decay("upstream", "held", 1e4, 1e4, 900.0, start_temperature=288.0,
                              end_temperature=288.0),)
    },
    "handover": lambda _doing, record, _told: {record.names[0]: "off"},
}  # fmt: skip
_SECONDS = {"ignition trial": 5.0, "flame failure": 1.0}


def standing(job: Tree, **more: Any) -> dict[str, Progress]:
    """Where the tasks of a job stand, by id, after a visit with these entries."""
    read = parse_tree({**job, "visit": [visit(**more)]})
    return {each.task.id: each for each in progress(read.machine(), read.visit(1))}


class TestProgress:
    @pytest.fixture
    def sound(self) -> Tree:
        """An example in which everything was done, its visit to be changed."""
        job: Tree = load(EXAMPLES / "one-furnace-propane.toml").tree
        return job | {"visit": [dict(job["visit"][0])]}

    def after(self, job: Tree, **changes: Any) -> dict[str, Progress]:
        read = parse_tree(job | {"visit": [job["visit"][0] | changes]})
        return {each.task.id: each for each in progress(read.machine(), read.visit(1))}

    def test_before_anything_only_the_site_is_ready(self) -> None:
        told = standing(tree())
        assert [each for each in told if told[each].state == "ready"] == ["site ready"]
        assert not any(each.state == "done" for each in told.values())

    @pytest.mark.parametrize(
        "example", ["one-furnace-propane", "direct-drive-indoor", "two-furnaces-vfd"]
    )
    def test_a_finished_visit_has_everything_done(self, example: str) -> None:
        job = load(EXAMPLES / f"{example}.toml")
        told = progress(job.machine(), job.visit())
        assert {each.task.id for each in told if each.state != "done"} == set()

    def test_it_waits_for_what_is_nearest(self) -> None:
        told = standing(tree(furnaces=1))
        assert told["first firing and flame failure, furnace 1"].waits_for == (
            "dry run, furnace 1", "static pressures", "airflow", "lock-up",
        )  # fmt: skip

    def test_a_wrong_check_is_not_done(self, sound: Tree) -> None:
        looked = [c | ({"outcome": "wrong"} if c["id"] == "fan.rotation" else {})
                  for c in sound["visit"][0]["check"]]  # fmt: skip
        told = self.after(sound, check=looked)
        rotation = told["rotation"]
        assert rotation.state == "ready"
        assert rotation.wrong == (Record("check", ("fan.rotation",)),)
        assert told["handover"].state == "waiting"

    def test_a_flame_failure_that_does_not_act_holds_up_every_long_run(self, sound: Tree) -> None:
        proofs = [t | ({"acted": False} if t["id"] == "flame failure" else {})
                  for t in sound["visit"][0]["trip"]]  # fmt: skip
        unread = [r for r in sound["visit"][0]["reading"] if r["run"] in ("off", "fan")]
        told = self.after(sound, trip=proofs, reading=unread)
        held_up = told["train pressures, furnace 1"]
        assert held_up.state == "waiting"
        assert held_up.waits_for == ("first firing and flame failure, furnace 1",)

    def test_gas_past_the_plates_maximum_holds_up_the_first_firing(self) -> None:
        told = standing(tree(furnaces=1), reading=[
            {"run": "off", "point": "gas.supply", "value": "20 inwc"}])  # fmt: skip
        assert told["lock-up"].wrong == (Record("reading", ("gas.supply",), ("off",)),)
        assert "lock-up" in told["first firing and flame failure, furnace 1"].waits_for

    def test_what_is_merely_to_be_corrected_holds_up_nothing(self) -> None:
        told = standing(tree(furnaces=1), reading=[
            {"run": "fan", "point": "duct.hood_total", "value": "6000 cfm"},
            {"run": "fan", "point": "air.outdoor.db", "value": "40 degF"}])  # fmt: skip
        assert told["airflow"].state == "done"

    def test_an_adjustment_opens_what_it_makes_stale(self, sound: Tree) -> None:
        turned = {"at": "2026-12-31T23:00:00-06:00", "what": "drive.motor_sheave"}
        told = self.after(sound, adjustment=[turned])
        for task in ("volts and amps", "fan speed", "airflow", "belts", "handover"):
            assert told[task].state != "done", task

    def test_covers_put_on_early_are_not_the_end(self) -> None:
        told = standing(
            tree(furnaces=1),
            check=[{"id": name, "outcome": "right"} for name in ("covers.on", "adjusters.sealed")],
        )
        assert told["covers and seals"].state == "waiting"
        assert told["covers and seals"].missing == ()

    def test_what_is_put_off_holds_up_nothing_unless_it_must_stop_the_unit(
        self, sound: Tree
    ) -> None:
        def without(point: str, target: str, task: str) -> str:
            left = [r for r in sound["visit"][0]["reading"] if r["point"] != point]
            put_off = [{"target": target, "why": "later"}]
            return self.after(sound, reading=left, deferred=put_off)[task].state

        assert without("door.open", "door: open", "building pressure and doors") == "done"
        assert without("air.discharge.co", "CO in the discharge",
                       "discharge carbon monoxide, furnace 1") == "ready"  # fmt: skip

    def test_a_leak_found_and_one_good_test_are_not_enough(self, sound: Tree) -> None:
        good = sound["visit"][0]["decay"][0]
        leaking = good | {"end": "9.0 inwc"}

        def state(*decays: Tree) -> str:
            return self.after(sound, decay=list(decays))["piping tested and purged"].state

        assert [state(leaking), state(leaking, good), state(leaking, good, good)] == [
            "ready", "ready", "done",
        ]  # fmt: skip

    def test_a_trip_whose_restart_nobody_saw_is_not_done(self, sound: Tree) -> None:
        proofs = [dict(t) for t in sound["visit"][0]["trip"]]
        next(p for p in proofs if p["id"] == "airflow proving").pop("restarted")
        assert self.after(sound, trip=proofs)["airflow proving"].state == "ready"

    def test_a_season_asks_for_its_safeties_without_the_tasks_between(self) -> None:
        told = standing(tree(furnaces=1), purpose="seasonal")
        assert told["first firing and flame failure, furnace 1"].state == "waiting"
        assert told["lock-up"].state == "ready"
        assert told["train pressures, furnace 1"].waits_for == (
            "high limit, furnace 1", "airflow proving",
        )  # fmt: skip
        assert not {"belts", "airflow", "covers and seals", "field wiring"} & set(told)
        for each in told.values():
            assert set(each.waits_for) <= set(told)

    def test_a_service_that_touched_nothing_asks_for_nothing(self) -> None:
        assert standing(tree(furnaces=1), purpose="service") == {}

    def test_without_a_meter_nobody_waits_for_the_clock(self) -> None:
        job = tree(furnaces=1)
        del job["site"]["meter_dial"]
        told = standing(job)
        assert told["clocking, furnace 1"].task.due == ()
        waited_for = itertools.chain.from_iterable(each.task.needs for each in told.values())
        assert "clocking, furnace 1" not in set(waited_for)
