"""What to carry, how fine it must be, what it should read: before anybody has travelled."""

import copy
import datetime as dt
import json
import math
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from lightoff.inference.conformity import acceptance
from lightoff.job import load, parse_tree
from lightoff.judgement import assess
from lightoff.judgement.plan import GaugeUse, Plan, Window, plan
from lightoff.judgement.plan import expectation as expectations
from lightoff.machine import runs
from lightoff.machine.model.expect import expect
from lightoff.machine.model.predict import NoBalanceError
from lightoff.quantity import si
from trade import drawn
from trade.build import Tree, tree, visit
from trade.test_any_visit import visits

EXAMPLES = Path(__file__).parents[2] / "examples"
DAY = dt.date(2026, 11, 3)
SEEN = (Phase.explicit, Phase.reuse, Phase.generate)  # made smaller it would take minutes


def made(job: Tree, *, on: dt.date | None = None, weather: Any = None, **more: Any) -> Plan:
    """The plan of a job with one visit of these entries."""
    read = parse_tree({**job, "visit": [visit(**more)]})
    return plan(read.machine(), read.visit(1), on=on, weather=weather)


def carrying(*instruments: Tree, furnaces: int = 1) -> Tree:
    """A job with these instruments and no others."""
    return tree(furnaces=furnaces) | {"instrument": list(instruments)}


def gauge(id_: str = "gauge", kind: str = "manometer", quantity: str = "pressure",
          **claims: Any) -> Tree:  # fmt: skip
    """An instrument of one channel."""
    return {"id": id_, "kind": kind, "channel": [{"quantity": quantity, **claims}]}


def use(told: Plan, target: str, instrument: str | None = "gauge", quantity: str = "") -> GaugeUse:
    """What a plan says of an instrument in the first row of a target."""
    return next(
        each
        for each in told.gauges
        if (each.target, each.instrument) == (target, instrument)
        and quantity in ("", each.quantity)
    )


def window(told: Plan, point: str, run: str, target: str | None = None) -> Window:
    """One window."""
    return next(
        each
        for each in told.windows
        if (each.point, each.run) == (point, run) and target in (None, each.target)
    )


class TestCarry:
    def test_what_the_job_has_is_named_and_what_it_lacks_as_well(self) -> None:
        told = {row.kind: row for row in made(carrying(gauge())).carry}
        assert [each.id for each in told["manometer"].at_hand] == ["gauge"]
        assert told["manometer"].lacking == ()
        assert told["tachometer"].at_hand == ()
        assert told["tachometer"].lacking == ("fan.rpm",)
        assert "train pressures, furnace 1" in told["manometer"].tasks

    def test_a_clamp_serves_for_a_voltmeter(self) -> None:
        told = {row.kind: row for row in made(tree()).carry}
        assert [each.id for each in told["voltmeter"].at_hand] == ["meter"]
        assert told["voltmeter"].lacking == ()

    def test_an_instrument_of_the_kind_without_the_channel_does_not_serve(self) -> None:
        flue = {"id": "flue", "kind": "analyser", "channel": [{"quantity": "O2"}]}
        told = {row.kind: row for row in made(carrying(flue)).carry}
        assert set(told["analyser"].lacking) == {
            "flue.1.co", "flue.1.db", "air.intake.co", "air.discharge.co",
        }  # fmt: skip

    def test_what_only_helps_is_listed_where_it_is_at_hand(self) -> None:
        barometer = gauge("baro", "barometer")
        assert not any(row.kind == "barometer" for row in made(carrying(gauge())).carry)
        row = next(r for r in made(carrying(barometer)).carry if r.kind == "barometer")
        assert not row.due

    def test_nobody_carries_the_unit_itself(self) -> None:
        job = tree()
        job["unit"]["drive"]["vfd"] = True
        assert not any(row.kind == "the unit itself" for row in made(job).carry)

    @pytest.mark.parametrize(
        ("due", "held"),
        [("2026-11-03", "in date"), ("2026-11-02", "out of date"), (None, "not told")],
    )
    def test_calibration_is_looked_at_on_the_day(self, due: str | None, held: str) -> None:
        own = gauge() | ({"due": due} if due else {})
        row = next(r for r in made(carrying(own), on=DAY).carry if r.kind == "manometer")
        assert row.at_hand[0].calibration == held

    def test_the_visits_own_day_counts_before_todays(self) -> None:
        own = gauge() | {"due": "2026-11-03"}
        told = made(carrying(own), on=dt.date(2030, 1, 1), date="2026-11-03")
        row = next(r for r in told.carry if r.kind == "manometer")
        assert row.at_hand[0].calibration == "in date"

    def test_a_season_takes_less(self) -> None:
        kinds = {row.kind for row in made(tree(), purpose="seasonal").carry}
        assert "manometer" in kinds
        assert not kinds & {"tachometer", "spring scale", "pitot"}


class TestGauges:
    def test_a_fine_gauge_decides_and_a_coarse_one_does_not(self) -> None:
        fine = made(carrying(gauge(plus_minus="0.01 inwc")))
        coarse = made(carrying(gauge(plus_minus="0.3 inwc")))
        assert use(fine, "manifold high").fitness == "fine enough"
        assert use(coarse, "manifold high").fitness == "too coarse"

    def test_the_need_is_a_third_of_the_window(self) -> None:
        row = use(made(carrying(gauge(plus_minus="0.01 inwc"))), "manifold low")
        assert row.needed == pytest.approx(0.2 * si(0.5, "inwc") / 3)  # window: 10 % either way

    @pytest.mark.parametrize("target", ["manifold high", "manifold low", "valve outlet",
                                        "external static", "building pressure"])  # fmt: skip
    def test_the_coarsest_that_would_do_does_and_a_coarser_one_does_not(self, target: str) -> None:
        row = use(made(carrying(gauge(plus_minus="2 inwc"))), target)
        assert row.fitness == "too coarse"
        assert row.coarsest is not None
        for times, fitness in ((0.999, "fine enough"), (1.01, "too coarse")):
            just = gauge(plus_minus=f"{times * row.coarsest} Pa")
            assert use(made(carrying(just)), target).fitness == fitness

    def test_what_is_already_fine_may_be_as_coarse_as_it_says(self) -> None:
        row = use(made(carrying(gauge(plus_minus="0.001 inwc"))), "manifold high")
        assert row.fitness == "fine enough"
        assert row.coarsest is not None
        assert row.coarsest > row.claim
        just = gauge(plus_minus=f"{0.999 * row.coarsest} Pa")
        assert use(made(carrying(just)), "manifold high").fitness == "fine enough"

    def test_of_a_difference_the_zero_does_not_count(self) -> None:
        """Both sides of the filters are read with one gauge: only its gain and last digit do."""
        row = use(made(carrying(gauge(plus_minus="5 inwc"))), "filter drop")
        assert row.fitness == "fine enough"

    def test_the_gauge_that_spoils_it_is_named_and_not_the_other(self) -> None:
        flue = {
            "id": "flue",
            "kind": "analyser",
            "channel": [
                {"quantity": "O2", "plus_minus": "0.1 %"},
                {"quantity": "CO", "plus_minus": "90 ppm"},
            ],
        }
        told = made(carrying(flue))
        assert use(told, "CO air-free", "flue", "CO").fitness == "too coarse"
        assert use(told, "CO air-free", "flue", "O2").fitness == "fine enough"

    def test_where_the_method_is_too_uncertain_no_gauge_will_do(self) -> None:
        job = tree(furnaces=1)
        job["instrument"] = [gauge(of_reading=0.0), gauge("t", "thermometer", "temperature")]
        job["limit"] = [{"target": "airflow", "lower": "7900 cfm", "upper": "8100 cfm",
                         "source": "project specification"}]  # fmt: skip
        row = next(each for each in made(job).gauges if each.target == "airflow")
        assert row.fitness == "method too coarse"
        assert row.coarsest is None
        assert row.why.values["cause"] == "traverse plane"

    def test_clean_air_takes_five_ppm(self) -> None:
        def fitness(ppm: float) -> str:
            own = gauge("co", "analyser", "CO", resolution=f"{ppm} ppm")
            return use(made(carrying(own)), "CO in the discharge", "co").fitness

        # two readings: each half of the last digit, rectangular; expanded 0.82 of the digit
        assert fitness(5.0) == "fine enough"
        assert fitness(7.0) == "too coarse"

    def test_the_finest_whose_range_reaches_is_taken(self) -> None:
        rough = gauge("rough", plus_minus="0.1 inwc", range=["0 inwc", "20 inwc"])
        fine = gauge("fine", plus_minus="0.001 inwc", range=["-1 inwc", "2 inwc"])
        told = made(carrying(rough, fine))
        assert use(told, "manifold low", "fine").finest
        assert not use(told, "manifold low", "rough").finest
        assert use(told, "manifold high", "rough").finest
        assert not any(each.instrument == "fine" and each.target == "manifold high"
                       for each in told.gauges)  # fmt: skip

    def test_an_airflow_is_read_by_the_usual_instrument_that_is_there(self) -> None:
        hood = gauge("hood", "flow hood", "flow", of_reading=0.03)
        wire = gauge("wire", "hot wire", "velocity", of_reading=0.03)
        tube = gauge("tube", plus_minus="0.001 inwc")

        def read(*carried: Tree) -> tuple[str | None, str]:
            row = next(each for each in made(carrying(*carried)).gauges
                       if each.target == "airflow" and each.finest)  # fmt: skip
            return row.instrument, row.quantity

        assert read(hood) == ("hood", "flow")
        assert read(hood, wire) == ("wire", "velocity")
        assert read(hood, wire, tube) == ("tube", "pressure")

    def test_nobodys_gauge_is_assumed_and_said_so(self) -> None:
        row = use(made(carrying()), "manifold low", None)
        assert row.fitness == "too coarse"  # an ordinary one, ± 0.05 in. w.c. and more
        assert row.claim > si(0.05, "inwc")

    def test_an_input_asks_for_no_finer_gauge_than_its_manifold(self) -> None:
        """It conforms unless it is provably off: the meter is never fine enough for a third."""
        assert not any(each.target in ("input", "input limit") for each in made(tree()).gauges)

    @settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.too_slow])
    @given(drawn.jobs())
    def test_fine_enough_is_what_the_decision_calls_simple(self, job: Tree) -> None:
        told = plan(drawn.machine(job), drawn.visited(job))
        limits = {
            (each.target, one.point, one.run): each
            for one in told.windows
            for each in one.limits
        }  # fmt: skip
        looked = 0
        for each in told.gauges:
            its = limits[each.target, each.point, each.run]
            if its.severity == "stop" or not each.finest:
                continue
            simple = acceptance(each.expanded, its.lower, its.upper) == "simple"
            others = [o for o in told.gauges if o.target == each.target and o.finest
                      and (o.point, o.run) == (each.point, each.run)]  # fmt: skip
            assert simple == all(o.fitness == "fine enough" for o in others), each
            looked += 1
        assert looked


class TestWindows:
    def test_the_limits_are_those_that_will_be_judged_by(self) -> None:
        job = tree()
        read = parse_tree(job)
        rows = assess(read.machine(), read.visit(), whole=False).targets
        judged = {(r.id, r.point): (r.lower, r.upper, r.limit_from) for r in rows}
        told = made(job)
        compared = [
            (each.target, one.point)
            for one in told.windows
            for each in one.limits
            if judged[each.target, one.point] == (each.lower, each.upper, each.limit_from)
        ]
        # control volts may sag by a tenth of what they are unloaded, which nobody has read yet
        assert len(compared) == sum(len(one.limits) for one in told.windows) - 1 > 40

    def test_a_limit_of_the_job_takes_the_usual_ones_place(self) -> None:
        job = tree(furnaces=1)
        job["limit"] = [{"target": "manifold high", "lower": "3.45 inwc", "upper": "3.55 inwc",
                         "source": "project specification, section 23"}]  # fmt: skip
        one = window(made(job), "train.1.1.manifold", "high")
        assert one.limits[0].upper == pytest.approx(si(3.55, "inwc"))
        assert (one.why.message, one.why.values["source"]) == (
            "window-specification", "project specification, section 23",
        )  # fmt: skip

    def test_what_is_expected_is_what_the_model_says(self) -> None:
        job = tree(furnaces=1)
        told, shown = made(job), expect(drawn.machine(job), "high")
        for point in ("train.1.1.manifold", "flue.1.o2", "input.1", "efficiency.1", "gas.supply"):
            one = window(told, point, "high")
            model = shown[point]
            assert (one.expected, one.spread) == (model.value, model.u), point
        assert window(told, "airflow", "fan").expected == pytest.approx(
            expect(drawn.machine(job), "fan")["airflow.standard"].value
        )

    def test_what_the_model_does_not_know_is_not_made_up(self) -> None:
        told = made(tree(furnaces=1))
        for point, run in (("train.1.1.outlet", "high"), ("co_air_free.1", "high"),
                           ("door.open", "high"), ("power.control_volts", "fan"),
                           ("air.discharge.co", "high")):  # fmt: skip
            one = window(told, point, run)
            assert (one.expected, one.spread) == (None, None), point
            assert one.limits

    def test_a_hard_limit_stands_beside_its_window(self) -> None:
        one = window(made(tree(furnaces=1)), "train.1.1.manifold", "high")
        assert [(each.target, each.severity) for each in one.limits] == [
            ("manifold high", "correct"), ("manifold high limit", "stop"),
        ]  # fmt: skip

    def test_a_drop_across_the_filters_is_not_the_pressure_after_them(self) -> None:
        told = made(tree(furnaces=1))
        drop = window(told, "static.filters", "fan", "filter drop")
        after, before = (
            next(w for w in told.windows if (w.point, w.run, w.target) == (point, "fan", None))
            for point in ("static.filters", "static.intake")
        )
        assert drop.expected == pytest.approx(before.expected - after.expected)
        assert after.limits == ()

    def test_the_meter_is_timed_over_whole_turns_and_a_minute(self) -> None:
        job = tree(furnaces=1)
        one = window(made(job), "gas.meter.seconds", "high")
        turn = expect(drawn.machine(job), "high")["gas.meter.seconds"].value
        assert one.turns is not None
        assert one.turns == int(one.turns)
        assert one.expected == pytest.approx(one.turns * turn)
        assert one.expected >= 60 > one.expected - turn

    def test_where_only_the_maker_can_say_it_says_so(self) -> None:
        job = tree(furnaces=1)
        del job["unit"]["furnace"][0]["rise"]
        one = window(made(job), "rise.1", "high")
        assert (one.limits, one.why.message) == ((), "window-unknown")
        assert one.expected is not None

    def test_the_days_weather_is_taken_and_then_what_was_read(self) -> None:
        def discharge(**more: Any) -> float:
            found = window(made(tree(furnaces=1), **more), "air.discharge.db", "high").expected
            assert found is not None
            return found

        cold = {"weather": {"air.outdoor.db": 255.4}}
        read = {"reading": [{"run": "fan", "point": "air.outdoor.db", "value": "90 degF"}]}
        assert discharge(**cold) < discharge() < discharge(**read)
        assert discharge(**cold, **read) == pytest.approx(discharge(**read))

    def test_weather_such_as_never_was_is_nothing_to_expect_from(self) -> None:
        hot = {"reading": [{"run": "fan", "point": "air.outdoor.db", "value": "160 degF"}]}
        assert made(tree(furnaces=1), **hot).weather == {}
        assert made(tree(furnaces=1), weather={"air.outdoor.db": 0.0}).weather == {}


def test_a_machine_that_cannot_work_is_still_planned(monkeypatch: pytest.MonkeyPatch) -> None:
    def never(*_: Any) -> Any:
        raise NoBalanceError("fan and system never agree")

    monkeypatch.setattr(expectations, "expect", never)
    told = made(tree(furnaces=1))
    assert [r.message for r in told.remarks].count("plan-no-balance") == len(
        runs(drawn.machine(tree(furnaces=1)))
    )
    assert told.tasks
    one = window(told, "train.1.1.manifold", "high")
    assert (one.expected, len(one.limits)) == (None, 2)
    assert use(told, "manifold high").fitness == "fine enough"


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(drawn.jobs())
def test_any_machine_is_planned_in_numbers(job: Tree) -> None:
    machine = drawn.machine(job)
    told = plan(machine, drawn.visited(job))
    text = json.dumps(told.to_dict(), allow_nan=False)
    assert json.loads(text)["unit"] == "MAU-T"
    shown = {(one.point, one.run) for one in told.windows}
    judged = {one.point for one in told.windows if one.limits}
    for each in told.tasks:
        for record in each.task.due:
            if record.kind == "reading" and record.names[0].startswith(("flue", "train", "gas")):
                there = {(n, r) for n in record.names for r in record.runs}
                derived = record.names[0].endswith(".co") and judged
                assert there & shown or derived, record


@settings(max_examples=10, deadline=None, phases=SEEN)
@given(visits())
def test_any_visit_is_planned(job: Tree) -> None:
    kept = copy.deepcopy(job)
    readings = []
    for entry in kept["visit"][0]["reading"]:
        try:
            parse_tree(kept | {"visit": [visit(entry)]})
            readings.append(entry)
        except ValueError:
            continue
    read = parse_tree(kept | {"visit": [kept["visit"][0] | {"reading": readings}]})
    told = plan(read.machine(), read.visit(1))
    assert all(math.isfinite(one.expected) for one in told.windows if one.expected is not None)
    json.dumps(told.to_dict(), allow_nan=False)


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_an_example_is_planned_the_same_every_time(path: Path) -> None:
    job = load(path)
    machine, first = job.machine(), job.visit()
    told = plan(machine, first)
    assert told == plan(machine, first)
    assert told.minutes == sum(e.task.minutes for e in told.tasks if e.state != "done")
    assert {one.run for one in told.windows} <= set(runs(machine))
