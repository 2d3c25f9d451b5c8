"""What is allowed, and where each limit comes from."""

import pytest

from lightoff.inference.reconcile import GAIN
from trade.build import judge, reading, row, tree

INCH = 249.08891
KBTU = 1055.05585262 / 3.6
KELVIN = 5 / 9


@pytest.mark.parametrize(
    ("text", "target", "run", "lower", "upper", "source"),
    [
        ("high power.volts.ab 460 V", "line voltage", "high", 414.0, 506.0, "standard"),
        ("high power.control_volts 25 V", "control voltage", "high", 21.0, 28.0, "common practice"),
        ("high motor.amps.a 11 A", "motor current", "high", None, 12.5, "plate"),
        ("high motor.amps.a 11 A", "motor current limit", "high", None, 12.5 * 1.15, "plate"),
        ("fan fan.rpm 930 rpm", "fan speed", "fan", 930 * 0.95, 930 * 1.05, "design"),
        ("fan fan.rpm 930 rpm", "fan speed maximum", "fan", None, 1300.0, "plate"),
        ("fan static.duct 0.7 inwc", "external static", "fan", 0.63 * INCH, 0.77 * INCH, "design"),
        ("off gas.supply 7 inwc", "gas pressure all off", "off", None, 13 * INCH, "plate"),
        ("high gas.supply 7 inwc", "gas pressure at high fire", "high", 5.5 * INCH, 13 * INCH,
         "plate"),
        ("all gas.supply 7 inwc", "gas pressure with everything on", "all", 5.5 * INCH, 13 * INCH,
         "plate"),
        ("high.2 train.2.1.outlet 4.6 inwc", "valve outlet", "high.2", 4.3 * INCH, 4.9 * INCH,
         "plate"),
        ("high.2 train.2.1.manifold 3.5 inwc", "manifold high", "high.2", 3.325 * INCH,
         3.675 * INCH, "plate"),
        ("high.2 train.2.1.manifold 3.5 inwc", "manifold high limit", "high.2", None, 3.85 * INCH,
         "plate"),
        ("low train.1.1.manifold 0.5 inwc", "manifold low", "low", 0.45 * INCH, 0.55 * INCH,
         "plate"),
        ("high.1 train.1.1.manifold 3.5 inwc", "input", "high.1", 285 * KBTU, 300 * KBTU, "plate"),
        ("high.1 train.1.1.manifold 3.5 inwc", "input limit", "high.1", None, 315 * KBTU,
         "common practice"),
        ("high.1 flue.1.o2 7 %", "O2", "high.1", 0.05, 0.09, "plate"),
        ("high.1 flue.1.co 20 ppm", "CO air-free", "high.1", None, 100e-6, "common practice"),
        ("high.1 flue.1.co 20 ppm", "CO air-free limit", "high.1", None, 400e-6, "standard"),
        ("high.1 flue.1.db 400 degF", "flue temperature maximum", "high.1", None,
         (550 + 459.67) * KELVIN, "plate"),
        ("high air.discharge.db 100 degF", "discharge temperature", "high", None,
         (150 + 459.67) * KELVIN, "plate"),
        ("high building.pressure 0.01 inwc", "building pressure", "high", -0.02 * INCH,
         0.05 * INCH, "code"),
        ("high door.start 20 lbf", "door: start", "high", None, 133.446648, "code"),
        ("off belt.angle 0.2 deg", "belt alignment", "off", None, 0.5, "common practice"),
    ],
)  # fmt: skip
def test_a_limit_of_the_trade(
    text: str, target: str, run: str, lower: float | None, upper: float | None, source: str
) -> None:
    point = None if target.startswith(("input", "CO", "O2")) else text.split(" ")[1]
    found = row(judge(tree(), text), target, run, point)
    assert found.lower == pytest.approx(lower) if lower is not None else found.lower is None
    assert found.upper == pytest.approx(upper) if upper is not None else found.upper is None
    assert found.limit_from == source
    assert found.source


def test_the_rise_of_the_unit_is_the_sum_of_its_furnaces() -> None:
    answer = judge(tree(), "high air.discharge.db 100 degF", "high air.entering.db 40 degF")
    found = row(answer, "temperature rise", "high", "rise.unit")
    assert (found.lower, found.upper) == pytest.approx((40 * KELVIN, 120 * KELVIN))
    assert found.standard_uncertainty is not None
    off = GAIN**0.5 * found.standard_uncertainty  # where a fit ends
    assert found.estimate == pytest.approx(60 * KELVIN, abs=off)


def test_control_volts_may_not_sag_a_tenth_under_the_unloaded_ones() -> None:
    answer = judge(
        tree(), "off power.control_volts.unloaded 28 V", "high power.control_volts 24.0 V @meter"
    )
    found = row(answer, "control voltage", "high")
    assert found.lower == pytest.approx(25.2)
    assert found.decision == "does not conform"


def test_a_motor_on_a_drive_may_draw_a_tenth_over_its_plate_whatever_its_service_factor() -> None:
    job = tree()
    job["unit"]["drive"]["vfd"] = True
    assert row(
        judge(job, "high motor.amps.a 11 A"), "motor current limit", "high", "motor.amps.a"
    ).upper == pytest.approx(12.5 * 1.10)


def test_propane_comes_at_eleven_to_fourteen_inches_where_the_plate_is_silent() -> None:
    job = tree(furnaces=1)
    job["unit"]["furnace"][0]["gas"] = "propane"
    for key in ("supply_min", "supply_max"):
        del job["unit"]["furnace"][0][key]
    found = row(judge(job, "high gas.supply 12 inwc"), "gas pressure at high fire")
    assert (found.lower, found.upper) == pytest.approx((11 * INCH, 14 * INCH))


class TestAltitude:
    """An untouched orifice loses 1.8 % per 1000 ft by itself; 4 % is a derate to be made."""

    def found(self, derate: str) -> tuple[float, float]:
        job = tree(furnaces=1)
        job["site"]["altitude"] = "5000 ft"
        job["unit"]["furnace"][0]["derate"] = derate
        answer = row(judge(job, "high train.1.1.manifold 3.5 inwc"), "input")
        assert answer.lower is not None
        assert answer.upper is not None
        return answer.lower / KBTU, answer.upper / KBTU

    def test_nothing_derated_allows_the_plate_and_asks_for_what_physics_gives(self) -> None:
        lower, upper = self.found("none")
        assert upper == pytest.approx(300)
        # 0.91219: published loss of a fixed orifice at 5000 ft (or-alt-physics)
        assert lower == pytest.approx(300 * 0.95 * 0.91218717, rel=1e-3)

    @pytest.mark.parametrize("derate", ["orifice", "manifold"])
    def test_a_derate_made_allows_four_percent_less_per_thousand_feet(self, derate: str) -> None:
        lower, upper = self.found(derate)
        assert upper == pytest.approx(300 * 0.80)
        assert lower == pytest.approx(300 * 0.80 * 0.95)

    def test_a_plate_for_this_altitude_is_taken_as_it_stands(self) -> None:
        assert self.found("plate") == pytest.approx((285, 300))

    def test_a_derate_made_by_the_manifold_lowers_the_manifold(self) -> None:
        job = tree(furnaces=1)
        job["site"]["altitude"] = "5000 ft"
        job["unit"]["furnace"][0]["derate"] = "manifold"
        found = row(judge(job, "high train.1.1.manifold 2.7 inwc"), "manifold high")
        assert found.lower is not None
        assert found.upper is not None
        middle = (found.lower + found.upper) / 2
        # the root law, with the published loss of density: 3.5 (0.80 / 0.91219)^2
        assert middle / INCH == pytest.approx(3.5 * (0.80 / 0.91218717) ** 2, rel=2e-3)


class TestOverrides:
    def limited(self, **limit: str) -> dict[str, object]:
        job = tree(furnaces=1)
        job["limit"] = [limit]
        return job

    def test_a_job_may_tighten_a_limit(self) -> None:
        job = self.limited(target="manifold high", lower="3.45 inwc", upper="3.55 inwc",
                           source="project specification")  # fmt: skip
        found = row(judge(job, "high train.1.1.manifold 3.6 inwc @gauge"), "manifold high")
        assert found.upper == pytest.approx(3.55 * INCH)
        assert (found.decision, found.limit_from) == ("does not conform", "specification")

    def test_a_stop_limit_is_not_loosened_by_a_specification(self) -> None:
        job = self.limited(target="fan speed maximum", upper="1500 rpm",
                           source="project specification")  # fmt: skip
        answer = judge(job, "fan fan.rpm 1400 rpm")
        assert row(answer, "fan speed maximum").upper == 1300
        assert "stop-limit-not-loosened" in [r.message for r in answer.remarks]

    def test_a_stop_limit_is_loosened_by_the_plate(self) -> None:
        job = self.limited(
            target="fan speed maximum", upper="1500 rpm", source="fan plate, revised"
        )
        found = row(judge(job, "fan fan.rpm 1400 rpm"), "fan speed maximum")
        assert (found.upper, found.decision, found.limit_from) == (1500, "conforms", "plate")

    @pytest.mark.parametrize("source", ["template 3", "contemplated", "local code", "permit 77"])
    def test_only_plate_and_authority_themselves_loosen_a_stop_limit(self, source: str) -> None:
        job = self.limited(target="fan speed maximum", upper="1500 rpm", source=source)
        assert row(judge(job, "fan fan.rpm 1400 rpm"), "fan speed maximum").upper == 1300

    def test_a_side_of_a_stop_limit_that_is_not_named_stays(self) -> None:
        job = self.limited(target="flue temperature maximum", lower="300 degF", source="the plate")
        found = row(judge(job, "high flue.1.db 400 degF"), "flue temperature maximum", "high")
        assert found.upper == pytest.approx((550 + 459.67) * KELVIN)

    def test_a_time_that_must_not_be_exceeded_is_a_stop_limit_like_any_other(self) -> None:
        job = self.limited(target="flame failure time", upper="9 s", source="specification")
        answer = judge(job, step=[{"id": "flame failure", "seconds": 5.0, "furnace": 1}])
        found = row(answer, "flame failure time")
        assert (found.upper, found.decision) == (3.0, "does not conform")
        assert "stop-limit-not-loosened" in [r.message for r in answer.remarks]

    def test_a_specification_may_not_allow_a_drop_where_none_is_allowed(self) -> None:
        job = self.limited(target="tightness: decay", upper="2 inwc", source="specification")
        lost = {"section": "riser", "start": "14.0 inwc", "end": "13.0 inwc", "minutes": 10,
                "isolated": True,
                "start_temperature": "60 degF", "end_temperature": "60 degF"}  # fmt: skip
        answer = judge(job, decay=[lost])
        assert row(answer, "tightness: decay").decision == "does not conform"

    def test_a_limit_holds_only_for_the_run_it_names(self) -> None:
        job = self.limited(target="external static", upper="0.65 inwc", run="fan", source="spec")
        answer = judge(job, "fan static.duct 0.7 inwc @gauge", "high static.duct 0.7 inwc @gauge")
        assert row(answer, "external static", "fan").decision == "does not conform"
        assert row(answer, "external static", "high").decision == "conforms"


def test_nothing_declared_nothing_demanded() -> None:
    job = tree(furnaces=1)
    train = job["unit"]["furnace"][0]["train"][0]
    del train["valve_outlet"], train["manifold_high"]
    answer = judge(job, "high train.1.1.outlet 4.6 inwc", "high train.1.1.manifold 3.5 inwc")
    for target in ("valve outlet", "manifold high", "manifold high limit"):
        found = row(answer, target)
        assert (found.decision, found.why.message) == ("not measured", "find-it")
        assert found.severity == "correct"  # and never stop


def test_draft_is_asked_for_only_where_it_is_declared_or_read() -> None:
    silent = judge(tree(furnaces=1))
    assert not [r for r in silent.targets if r.id == "draft"]
    job = tree(furnaces=1)
    job["unit"]["furnace"][0]["flue_draft"] = ["-0.10 inwc", "-0.02 inwc"]
    assert row(judge(job), "draft").decision == "not measured"
    read = judge(job, reading("high flue.1.draft -0.05 inwc @gauge"))
    assert row(read, "draft").decision == "conforms"
