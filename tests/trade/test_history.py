"""As found, as left and stale: which reading speaks for which state of the machine."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.job import parse_tree
from lightoff.judgement import Assessment, assess
from lightoff.judgement.stale import moves
from lightoff.machine import WINTER, points, runs
from trade.build import judge, reading, row, tree, visit

DAY = "2026-11-03T{:02d}:{:02d}:00-06:00"


def at(minute: int) -> str:
    return DAY.format(10 + minute // 60, minute % 60)


def turned(what: str, minute: int, run: str | None = None) -> dict[str, Any]:
    return {"at": at(minute), "what": what} | ({"run": run} if run else {})


def point(answer: Assessment, name: str, run: str) -> Any:
    return next(p for p in answer.points if (p.id, p.run) == (name, run))


class TestWhatAnAdjustmentMakesStale:
    """The table of the trade, as it stands in the plan."""

    MACHINE = parse_tree(tree() | {"visit": [visit()]}).machine()

    @pytest.mark.parametrize(
        ("what", "run", "point", "read_in"),
        [
            ("train.1.1.manifold", "high.1", "flue.1.o2", "high.1"),
            ("train.1.1.manifold", "high.1", "flue.1.co", "low"),
            ("train.1.1.manifold", "high.1", "gas.meter.seconds", "high"),
            ("train.1.1.manifold", "high.1", "air.discharge.db", "high"),
            ("train.1.1.manifold", "high.1", "air.discharge.co", "high"),
            ("train.1.1.manifold", "high.1", "air.after.1.db", "high"),
            ("train.1.1.manifold", "high.1", "gas.supply", "high"),
            ("train.1.1.manifold", "high.1", "train.1.1.manifold", "high"),
            ("train.1.1.outlet", "high.1", "train.1.1.manifold", "low"),
            ("furnace.2.orifice", None, "flue.2.co", "low.2"),
            ("gas.regulator", None, "gas.supply", "off"),
            ("gas.regulator", None, "train.2.1.manifold", "high.2"),
            ("wiring", None, "flue.2.o2", "high"),
            ("vfd.hz", None, "static.duct", "fan"),
            ("vfd.hz", None, "motor.amps.a", "high"),
            ("vfd.hz", None, "air.discharge.db", "high"),
            ("drive.motor_sheave", None, "flue.1.db", "high"),
            ("drive.motor_sheave", None, "belt.force", "off"),
            ("damper.position", None, "duct.traverse", "fan"),
            ("filters", None, "static.filters", "fan"),
            ("fan.rotation", None, "motor.amps.a", "fan"),
            ("fan.rotation", None, "gas.meter.seconds", "high"),
        ],
    )
    def test_moves(self, what: str, run: str | None, point: str, read_in: str) -> None:
        assert moves(self.MACHINE, what, run, point, read_in)

    @pytest.mark.parametrize(
        ("what", "run", "point", "read_in"),
        [
            ("train.1.1.manifold", "high.1", "flue.2.o2", "high.2"),
            ("train.1.1.manifold", "high.1", "train.2.1.manifold", "high"),
            ("train.1.1.manifold", "high.1", "train.1.1.manifold", "low"),
            ("train.1.1.manifold", "high.1", "gas.supply", "off"),
            ("train.1.1.manifold", "high.1", "fan.rpm", "high"),
            ("train.2.1.manifold", "high.2", "air.after.1.db", "high"),
            ("vfd.hz", None, "gas.supply", "high"),
            ("vfd.hz", None, "train.1.1.manifold", "high"),
            ("vfd.hz", None, "power.control_volts", "fan"),
            ("vfd.hz", None, "belt.force", "off"),
            ("control.discharge", None, "air.discharge.db", "high"),
        ],
    )
    def test_moves_not(self, what: str, run: str | None, point: str, read_in: str) -> None:
        assert not moves(self.MACHINE, what, run, point, read_in)

    @given(st.data())
    def test_nothing_turned_at_the_burner_moves_a_reading_with_all_off(self, data: Any) -> None:
        what = data.draw(st.sampled_from(["train.1.1.manifold", "furnace.1.orifice", "wiring"]))
        name = data.draw(st.sampled_from([p.id for p in points(self.MACHINE)]))
        in_train = name.startswith("train.1.1.manifold")
        assert in_train or not moves(self.MACHINE, what, None, name, "off")


class TestStates:
    def test_found_is_the_last_before_and_left_the_last_of_all(self) -> None:
        answer = judge(
            tree(),
            reading("high.1 train.1.1.manifold 3.0 inwc", at=at(1)),
            reading("high.1 train.1.1.manifold 3.1 inwc", at=at(2)),
            reading("high.1 train.1.1.manifold 3.4 inwc", at=at(9)),
            reading("high.1 train.1.1.manifold 3.5 inwc", at=at(12)),
            adjustment=[turned("train.1.1.manifold", 5, "high.1"),
                        turned("train.1.1.manifold", 10, "high.1")],
        )  # fmt: skip
        left = row(answer, "manifold high", "high.1")
        found = next(r for r in answer.as_found if r.id == "manifold high" and r.run == "high.1")
        assert left.estimate == pytest.approx(3.5 * 249.08891)
        assert found.measured == pytest.approx(3.1 * 249.08891)
        # taken twice, it speaks twice
        assert found.estimate == pytest.approx(3.05 * 249.08891, rel=2e-3)
        assert not left.stale

    def test_without_an_adjustment_found_and_left_are_the_same(self) -> None:
        answer = judge(tree(), "fan fan.rpm 930 rpm", "fan fan.rpm 935 rpm")
        found = next(r for r in answer.as_found if r.id == "fan speed")
        assert row(answer, "fan speed").measured == found.measured == 935
        assert row(answer, "fan speed").estimate == found.estimate == pytest.approx(932.5, abs=0.5)

    def test_an_untimed_reading_beside_an_adjustment_that_moves_it_is_as_found(self) -> None:
        answer = judge(
            tree(), "high.1 train.1.1.manifold 3.5 inwc",
            adjustment=[turned("train.1.1.manifold", 5, "high.1")],
        )  # fmt: skip
        assert row(answer, "manifold high", "high.1").stale

    def test_a_state_said_outright_is_believed(self) -> None:
        answer = judge(
            tree(),
            reading("high.1 train.1.1.manifold 3.0 inwc", state="as found"),
            reading("high.1 train.1.1.manifold 3.5 inwc", state="as left"),
            adjustment=[turned("train.1.1.manifold", 5, "high.1")],
        )
        left = row(answer, "manifold high", "high.1")
        assert (left.estimate, left.stale) == (pytest.approx(3.5 * 249.08891), False)

    def test_a_stale_reading_is_marked_at_its_point_and_at_its_rows(self) -> None:
        answer = judge(
            tree(),
            reading("high.1 flue.1.o2 7 %", at=at(1)),
            adjustment=[turned("train.1.1.manifold", 5, "high.1")],
        )
        assert point(answer, "flue.1.o2", "high.1").stale
        assert row(answer, "O2", "high.1").stale
        assert not answer.verdict.startswith("ready")

    def test_a_row_stays_stale_until_every_reading_it_needs_is_taken_again(self) -> None:
        clock = reading("high.1 gas.meter.seconds 75 s", at=at(1), revolutions=3)
        answer = judge(
            tree(),
            clock,
            reading("high.1 train.1.1.manifold 3.4 inwc", at=at(2)),
            reading("high.1 train.1.1.manifold 3.5 inwc", at=at(8)),
            adjustment=[turned("train.1.1.manifold", 5, "high.1")],
        )
        assert row(answer, "input", "high.1").stale
        assert not row(answer, "manifold high", "high.1").stale

    def test_times_with_and_without_an_offset_can_stand_beside_each_other(self) -> None:
        answer = judge(
            tree(),
            reading("high.1 train.1.1.manifold 3.0 inwc", at="2026-11-03T10:01:00"),
            reading("high.1 train.1.1.manifold 3.5 inwc", at=at(8)),
            adjustment=[turned("train.1.1.manifold", 5, "high.1")],
        )
        assert not row(answer, "manifold high", "high.1").stale


@given(st.lists(st.tuples(st.sampled_from(["r", "a"]), st.integers(0, 90)), min_size=1, max_size=8))
def test_a_reading_after_every_adjustment_is_never_stale_and_one_before_always_is(
    events: list[tuple[str, int]],
) -> None:
    readings = [reading("high.1 flue.1.o2 7 %", at=at(m)) for kind, m in events if kind == "r"]
    adjustments = [turned("train.1.1.manifold", m, "high.1") for kind, m in events if kind == "a"]
    job = parse_tree(tree() | {"visit": [visit(*readings, adjustment=adjustments)]})
    answer = assess(job.machine(), job.visit(1), whole=False)
    rows = [r for r in answer.targets if r.id == "O2" and r.run == "high.1"]
    if not readings:
        assert not rows
        return
    last_read = max(m for kind, m in events if kind == "r")
    last_turned = max((m for kind, m in events if kind == "a"), default=-1)
    assert rows[0].stale == (last_turned > last_read)


def test_every_row_is_told_from_every_other() -> None:
    job = parse_tree(tree(furnaces=3) | {"visit": [visit()]})
    answer = assess(job.machine(), job.visit(1), whole=False)
    keys = [r.key for r in answer.targets]
    assert len(keys) == len(set(keys))
    assert {r.run for r in answer.targets if r.run} <= {*runs(job.machine()), WINTER}
