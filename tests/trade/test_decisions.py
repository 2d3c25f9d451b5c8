"""How a limit is decided: guarded, simple, and a dangerous reading that stands."""

import pytest

from trade.build import decision, judge, reading, row, tree

MANIFOLD = "high.1 train.1.1.manifold {} inwc @gauge"


def at(minute: int) -> str:
    return f"2026-11-03T10:{minute:02d}:00-06:00"


class TestRules:
    def test_a_fine_gauge_lets_the_best_estimate_decide(self) -> None:
        found = row(judge(tree(), MANIFOLD.format(3.66)), "manifold high", "high.1")
        assert (found.decision, found.rule) == ("conforms", "simple")

    def test_a_coarse_gauge_near_the_limit_is_undecided(self) -> None:
        text = "high.1 train.1.1.manifold 3.6 inwc @coarse"
        found = row(judge(tree(), text), "manifold high", "high.1")
        assert (found.decision, found.rule) == ("undecided", "guarded")
        assert found.probability is not None
        assert 0.05 < found.probability < 0.95

    def test_a_job_may_ask_for_guarded_decisions_everywhere(self) -> None:
        job = tree() | {"decision": {"rule": "guarded"}}
        assert row(judge(job, MANIFOLD.format(3.67)), "manifold high", "high.1").rule == "guarded"

    def test_a_stop_target_is_guarded_even_where_all_else_is_simple(self) -> None:
        job = tree() | {"decision": {"rule": "simple"}}
        answer = judge(job, "high.1 train.1.1.manifold 3.8 inwc @coarse")
        assert row(answer, "manifold high", "high.1").rule == "simple"
        assert row(answer, "manifold high limit", "high.1").rule == "guarded"
        assert decision(answer, "manifold high limit", "high.1") == "undecided"


class TestADangerousReadingStands:
    """3.85 in. w.c. is 110 % of this plate."""

    def test_a_bare_reading_past_a_stop_limit_does_not_conform(self) -> None:
        answer = judge(tree(), MANIFOLD.format(3.86))
        assert decision(answer, "manifold high limit", "high.1") == "does not conform"
        assert answer.verdict == "not to be left running"

    def test_taken_again_without_adjustment_it_is_undecided(self) -> None:
        answer = judge(tree(), MANIFOLD.format(3.9), MANIFOLD.format(3.5))
        found = row(answer, "manifold high limit", "high.1")
        assert (found.decision, found.why.message) == ("undecided", "retaken")

    def test_two_later_steady_readings_settle_it(self) -> None:
        answer = judge(tree(), *map(MANIFOLD.format, (3.9, 3.5, 3.5)))
        assert decision(answer, "manifold high limit", "high.1") == "conforms"

    def test_two_later_readings_that_differ_do_not(self) -> None:
        answer = judge(tree(), *map(MANIFOLD.format, (3.9, 3.4, 3.6)))
        assert decision(answer, "manifold high limit", "high.1") == "undecided"

    def test_once_adjusted_it_is_judged_anew(self) -> None:
        answer = judge(
            tree(),
            reading(MANIFOLD.format(3.9), at=at(10)),
            reading(MANIFOLD.format(3.5), at=at(30)),
            adjustment=[{"at": at(20), "what": "train.1.1.manifold", "run": "high.1"}],
        )
        assert decision(answer, "manifold high limit", "high.1") == "conforms"
        found = next(
            r for r in answer.as_found if r.id == "manifold high limit" and r.run == "high.1"
        )
        assert found.decision == "does not conform"

    def test_adjusted_and_not_read_again_it_stays_and_is_stale(self) -> None:
        answer = judge(
            tree(),
            reading(MANIFOLD.format(3.9), at=at(10)),
            adjustment=[{"at": at(20), "what": "train.1.1.manifold", "run": "high.1"}],
        )
        found = row(answer, "manifold high limit", "high.1")
        assert (found.decision, found.stale) == ("does not conform", True)
        assert answer.verdict == "not to be left running"


class TestCarbonMonoxide:
    def test_it_is_reckoned_without_the_excess_air(self) -> None:
        answer = judge(tree(), "high.1 flue.1.co 100 ppm @flue", "high.1 flue.1.o2 9 % @flue")
        found = row(answer, "CO air-free", "high.1")
        assert found.estimate is not None
        # 175.63 ppm: published case co-airfree-100-9
        assert abs(found.estimate - 175.63025e-6) < 0.003 * 175.63e-6
        assert found.decision == "does not conform"
        assert decision(answer, "CO air-free limit", "high.1") == "conforms"

    def test_a_sample_of_mostly_air_says_nothing(self) -> None:
        answer = judge(tree(), "high.1 flue.1.co 50 ppm @flue", "high.1 flue.1.o2 16 % @flue")
        found = row(answer, "CO air-free limit", "high.1")
        assert (found.decision, found.why.message) == ("not measured", "diluted")

    def test_raw_co_past_the_limit_is_past_it_whatever_the_oxygen(self) -> None:
        answer = judge(tree(), "high.1 flue.1.co 450 ppm @flue", "high.1 flue.1.o2 18 % @flue")
        assert decision(answer, "CO air-free limit", "high.1") == "does not conform"

    def test_climbing_co_is_to_be_looked_into(self) -> None:
        answer = judge(
            tree(),
            "high.1 flue.1.o2 7 % @flue",
            "high.1 flue.1.co 20 ppm @flue",
            "high.1 flue.1.co 50 ppm @flue",
        )
        found = row(answer, "CO air-free", "high.1")
        assert (found.decision, found.why.message) == ("does not conform", "climbing")

    def test_high_and_low_fire_of_every_furnace_are_asked_for(self) -> None:
        rows = [r for r in judge(tree()).targets if r.id == "CO air-free limit"]
        assert [(r.furnace, r.run) for r in rows] == [
            (1, "high"), (1, "low"), (2, "high"), (2, "low.2"),
        ]  # fmt: skip

    def test_more_co_leaving_than_entering_is_flue_gas_in_the_air(self) -> None:
        answer = judge(
            tree(), "high air.intake.co 1 ppm @flue", "high air.discharge.co 9 ppm @flue"
        )
        assert decision(answer, "CO in the discharge", "high") == "does not conform"

    def test_clean_air_finely_measured_conforms(self) -> None:
        answer = judge(
            tree(), "high air.intake.co 1 ppm @flue", "high air.discharge.co 1 ppm @flue"
        )
        assert decision(answer, "CO in the discharge", "high") == "conforms"

    def test_clean_air_coarsely_measured_is_undecided(self) -> None:
        answer = judge(tree(), "high air.intake.co 1 ppm", "high air.discharge.co 1 ppm")
        assert decision(answer, "CO in the discharge", "high") == "undecided"

    def test_flue_gas_once_found_is_settled_only_by_two_readings_that_agree(self) -> None:
        intake = "high air.intake.co 1 ppm @flue"
        readings = [f"high air.discharge.co {ppm} ppm @flue" for ppm in (9, 1, 1)]
        once = judge(tree(), intake, *readings[:2])
        assert row(once, "CO in the discharge", "high").why.message == "retaken"
        assert decision(once, "CO in the discharge", "high") == "undecided"
        twice = judge(tree(), intake, *readings)
        assert decision(twice, "CO in the discharge", "high") == "conforms"

    def test_without_the_intake_it_is_not_measured(self) -> None:
        answer = judge(tree(), "high air.discharge.co 1 ppm @flue")
        assert decision(answer, "CO in the discharge", "high") == "not measured"

    def test_more_than_an_intake_could_have_stops_the_unit_whether_it_was_read_or_not(self) -> None:
        answer = judge(tree(), "high air.discharge.co 200 ppm @flue")
        assert decision(answer, "CO in the discharge", "high") == "does not conform"
        assert answer.verdict == "not to be left running"

    @pytest.mark.parametrize(("o2", "decided"), [(7.8, "does not conform"), (0.78, "undecided")])
    def test_an_o2_the_plate_does_not_allow_makes_no_co_harmless(
        self, o2: float, decided: str
    ) -> None:
        readings = ("high.1 flue.1.co 283 ppm @flue", f"high.1 flue.1.o2 {o2} % @flue")
        answer = judge(tree(), *readings)
        assert decision(answer, "CO air-free limit", "high.1") == decided


class TestInput:
    """Furnace 1 of 300 kBtu/h; 2 ft3 of 1030 Btu/ft3 in 24.7 s is about 300 kBtu/h."""

    COMMON = ("high.1 gas.supply 7 inwc @gauge", "off air.barometer 29.92 inHg")

    def clocked(self, seconds: float, turns: int = 3) -> dict[str, object]:
        text = f"high.1 gas.meter.seconds {seconds} s @watch"
        return reading(text, revolutions=turns)

    def test_clocked_at_the_plate_it_conforms(self) -> None:
        warm = "high.1 gas.meter.db 60 degF @probe"
        answer = judge(tree(), *self.COMMON, warm, self.clocked(75.5), MANIFOLD.format(3.5))
        found = row(answer, "input", "high.1")
        assert found.estimate is not None
        assert abs(found.estimate / 87921.3 - 1) < 0.02
        assert (found.decision, found.unchecked) == ("conforms", False)

    def test_provably_above_is_to_be_corrected_even_with_the_manifold_at_plate(self) -> None:
        answer = judge(tree(), *self.COMMON, self.clocked(68.0), MANIFOLD.format(3.5))
        assert row(answer, "input", "high.1").why.message == "provably-above"
        assert decision(answer, "input limit", "high.1") == "does not conform"
        assert answer.verdict == "not to be left running"

    def test_without_a_meter_the_root_law_speaks_and_says_so(self) -> None:
        answer = judge(tree(), MANIFOLD.format(3.5))
        found = row(answer, "input limit", "high.1")
        assert (found.decision, found.unchecked) == ("conforms", True)
        assert found.why.message == "root-law-only"

    def test_all_burners_share_what_the_meter_saw_as_their_orifices_say(self) -> None:
        clock = reading("high gas.meter.seconds 75 s @watch", revolutions=6)
        answer = judge(
            tree(),
            "high train.1.1.manifold 3.5 inwc @gauge",
            "high train.2.1.manifold 3.5 inwc @gauge",
            clock,
        )
        one = row(answer, "input", "high", "input.1")
        two = row(answer, "input", "high", "input.2")
        assert one.estimate == two.estimate
        assert not one.unchecked

    def test_one_gauge_for_both_ends_of_a_turndown_lends_no_false_confidence(self) -> None:
        answer = judge(tree(), MANIFOLD.format(3.5), "low train.1.1.manifold 0.5 inwc @gauge")
        found = row(answer, "turndown", "low")
        assert found.estimate is not None
        assert abs(found.estimate - (3.5 / 0.5) ** 0.5) < 1e-9
        assert found.decision == "conforms"


def test_a_gauge_shared_by_both_ends_of_a_rise_cancels() -> None:
    answer = judge(
        tree(),
        "high air.entering.db 40 degF @probe",
        "high air.discharge.db 100 degF @probe",
        whole=True,
    )
    budget = row(answer, "temperature rise", "high", "rise.unit").budget
    assert not [
        line for line in budget if line.cause == "zero" and line.standard_uncertainty > 1e-9
    ]


def test_the_hottest_of_several_positions_speaks_for_the_discharge_limit() -> None:
    answer = judge(
        tree(),
        reading("high air.discharge.db 120 degF @probe", position="left"),
        reading("high air.discharge.db 160 degF @probe", position="right"),
    )
    assert decision(answer, "discharge temperature", "high") == "does not conform"


def test_a_lost_phase_is_not_a_number() -> None:
    answer = judge(tree(), *(f"high motor.amps.{leg} 0 A" for leg in "abc"))
    assert row(answer, "current unbalance", "high").why.message == "no-current"


def test_the_same_amps_at_fewer_hertz_are_less_power() -> None:
    """At constant flux amps stand for torque; power goes with torque and speed."""

    def power(hertz: int, volts: int) -> float:
        job = tree()
        job["unit"]["drive"]["vfd"] = True
        amps = (f"high motor.amps.{leg} 12.5 A @meter" for leg in "abc")
        answer = judge(job, f"high vfd.hz {hertz} Hz", f"high vfd.volts {volts} V", *amps)
        found = row(answer, "shaft power", "high").estimate
        assert found is not None
        return found

    assert abs(power(45, 345) / power(60, 460) - 0.75) < 0.01
