"""One reading of an example made grossly wrong: what becomes of it, and of everything else."""

import tomllib
from functools import lru_cache
from pathlib import Path

import pytest

from lightoff.inference.reconcile import reconcile
from lightoff.job import Job, parse_tree
from lightoff.judgement import Assessment, Remark, Row, assess
from lightoff.judgement.foretell import as_left

EXAMPLES = Path(__file__).parents[2] / "examples"
PROPANE, VFD = "one-furnace-propane", "two-furnaces-vfd"


@lru_cache
def answered(example: str, *changes: tuple[str, str]) -> Assessment:
    """The example with one text for another, each where it stands first."""
    job = changed(example, *changes)
    return assess(job.machine(), job.visit(), whole=False)


def changed(example: str, *changes: tuple[str, str]) -> Job:
    text = (EXAMPLES / f"{example}.toml").read_text("utf-8")
    for written, instead in changes:
        assert written in text
        text = text.replace(written, instead, 1)
    return parse_tree(tomllib.loads(text))


def misfits(answer: Assessment) -> list[Remark]:
    return [each for each in answer.remarks if each.message.startswith("misfit")]


def rows(answer: Assessment, target: str) -> list[Row]:
    return [each for each in answer.targets if each.id == target]


WRONG = [
    pytest.param(PROPANE, '"0.515 inwc"', '"0.515 psi"', "static.duct", "inwc", id="psi"),
    pytest.param(PROPANE, '"0.515 inwc"', '"-0.515 inwc"', "static.duct", "other-sign", id="sign"),
    pytest.param(
        VFD, '"38.1 degF"', '"83.1 degF"', "air.outdoor.db", "swapped-digits", id="digits"
    ),
    pytest.param(VFD, '"66.4 s"', '"132.8 s"', "gas.meter.seconds", "double", id="double"),
]


@pytest.mark.parametrize(("example", "written", "instead", "point", "slip"), WRONG)
def test_a_gross_error_is_named_with_the_slip_that_explains_it(
    example: str, written: str, instead: str, point: str, slip: str
) -> None:
    (remark,) = misfits(answered(example, (written, instead)))
    assert remark.values["point"] == point
    assert slip in remark.values["slip"]
    value, foretold = remark.values["value"], remark.values["foretold"]
    assert foretold != pytest.approx(value, rel=0.05)


@pytest.mark.parametrize(("example", "written", "instead", "point", "slip"), WRONG)
def test_it_condemns_no_good_reading(
    example: str, written: str, instead: str, point: str, slip: str
) -> None:
    sound, wrong = answered(example), answered(example, (written, instead))
    bad = {row.key for row in sound.targets if row.decision == "does not conform"}
    assert {row.key for row in wrong.targets if row.decision == "does not conform"} <= bad
    assert not [each for each in wrong.remarks if each.message == "too-coarse"]


def test_a_fit_begun_at_a_machine_bent_to_a_wrong_reading_ends_where_any_other_does() -> None:
    job = changed("three-furnaces-at-altitude", ('"52.4 degF"', '"14.5 degF"'))
    bent = as_left(job.machine(), job.visit())
    assert bent is not None
    (misfit,) = bent.misfits
    rated, rest = bent.whole.model.rated, bent.found.taken
    warm, cold = reconcile(rated, rest, near=bent.whole), reconcile(rated, rest)
    assert warm.solution.converged
    assert warm.solution.objective == pytest.approx(cold.solution.objective, rel=1e-6)
    assert warm.widened == 1.0
    assert misfit.foretold == pytest.approx(284.0, abs=0.5)  # 51.5 degF


@pytest.mark.parametrize("discharge", ["121.5", "125.0", "130.0", "140.0"])
def test_a_rise_read_past_the_plate_never_conforms(discharge: str) -> None:
    """Whatever all other readings make of it: 48.3 in, and the plate allows 70 degF."""
    hot = (
        ('"96.9 degF"', f'"{discharge} degF"'),
        ('"97.5 degF"', f'"{float(discharge) + 0.6} degF"'),
    )
    answer = answered(PROPANE, *hot)
    for row in rows(answer, "temperature rise"):
        assert row.decision != "conforms"
        assert row.measured is not None
        assert row.upper is not None
        assert row.measured > row.upper


def test_three_leads_that_are_wrong_together_are_looked_at_as_one() -> None:
    doubled = (
        ('run = "fan", point = "motor.amps.a", value = "4.82 A"',
         'run = "fan", point = "motor.amps.a", value = "9.64 A"'),
        ('run = "fan", point = "motor.amps.b", value = "4.73 A"',
         'run = "fan", point = "motor.amps.b", value = "9.46 A"'),
        ('run = "fan", point = "motor.amps.c", value = "4.80 A"',
         'run = "fan", point = "motor.amps.c", value = "9.60 A"'),
    )  # fmt: skip
    answer = answered(PROPANE, *doubled)
    (remark,) = misfits(answer)
    assert remark.message == "misfits"
    assert remark.values["point"].startswith("motor.amps.")
    assert len(remark.values["others"]) == 2


def test_of_two_readings_of_which_one_is_wrong_the_sound_one_is_acquitted() -> None:
    """Both runs' amps of one lead check each other and little else does: 4.82 typed 8.42."""
    wrong = ('run = "fan", point = "motor.amps.a", value = "4.82 A"',
             'run = "fan", point = "motor.amps.a", value = "8.42 A"')  # fmt: skip
    (remark,) = misfits(answered(PROPANE, wrong))
    assert (remark.values["point"], remark.values["run"]) == ("motor.amps.a", "fan")
    assert remark.values["slip"] == "swapped-digits"
    assert "motor.amps.a high" not in remark.values["others"]
    assert remark.values["foretold"] == pytest.approx(4.8, abs=0.3)


def test_two_leads_tell_the_third() -> None:
    """Without it the model falls back to what is usual of uneven leads, and not to nothing."""
    wrong = (
        'run = "fan", point = "motor.amps.c", value = "',
        'run = "fan", point = "motor.amps.c", value = "1',
    )
    job = changed(PROPANE, wrong)
    found = as_left(job.machine(), job.visit())
    assert found is not None
    told = found.told(("motor.amps.c", "fan"))
    assert told is not None
    assert told.u < 0.08 * told.value
