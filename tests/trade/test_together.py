"""All readings of a visit put to the model together, on the example visits."""

import itertools
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from lightoff.inference.arrays import Arrays
from lightoff.inference.estimate import Estimate, Part
from lightoff.inference.reconcile import GAIN, HARDLY, Reconciled, reconcile
from lightoff.inference.suspects import suspects
from lightoff.inference.told import Told
from lightoff.job import load
from lightoff.judgement.evidence import evidence
from lightoff.judgement.fits import Fits
from lightoff.judgement.history import history
from lightoff.judgement.rulings import rule
from lightoff.judgement.target import Bounds, Case
from lightoff.judgement.targets import TARGETS
from lightoff.judgement.together import Together, together

EXAMPLES = Path(__file__).parents[2] / "examples"
SOUND = ("one-furnace-propane", "two-furnaces-vfd", "three-furnaces-at-altitude")


def of_example(name: str) -> Together:
    job = load(EXAMPLES / f"{name}.toml")
    machine, visit = job.machine(), job.visit()
    found = together(evidence(machine, visit, history(machine, visit)))
    assert found is not None
    return found


@pytest.fixture(scope="module", params=SOUND)
def sound(request: pytest.FixtureRequest) -> Together:
    return of_example(request.param)


def test_a_sound_visit_is_explained(sound: Together) -> None:
    found = sound.found.solution
    assert found.converged
    assert 1 <= sound.found.posterior.condition < 100
    assert found.objective < 2 * len(sound.found.taken)
    assert suspects(sound.found.posterior) == ()


def test_airflow_is_known_within_three_percent(sound: Together) -> None:
    for run in ("fan", "high"):
        airflow = sound.told(("airflow.standard", run))
        assert airflow is not None
        assert airflow.u / airflow.value < 0.03


def test_what_was_not_read_is_told_too(sound: Together) -> None:
    read = {(each.run, each.point) for each in sound.found.taken}
    told = sound.found.names("high")
    assert "efficiency.1" in told
    assert any(("high", name) not in read for name in told)
    estimate = sound.told(("efficiency.1", "high"))
    assert estimate is not None
    assert 0.7 < estimate.value < 0.9
    assert sound.told(("efficiency.1", "no such run")) is None


def test_an_uncertainty_is_the_root_of_its_parts(sound: Together) -> None:
    for name in ("airflow.standard", "input.1", "rise.unit", "motor_power"):
        told = sound.told((name, "high"))
        assert told is not None
        root = sum(size**2 for size in told.parts().values()) ** 0.5
        assert told.u == pytest.approx(root, rel=1e-6)


def test_numpy_and_the_standard_library_agree(sound: Together) -> None:
    """To 1e-9 of each unknown's spread, or of itself."""
    mine = sound.found
    theirs = reconcile(mine.model.rated, mine.taken, algebra=Arrays())
    one, two = mine.solution.state, theirs.solution.state
    assert list(one.free) == pytest.approx(list(two.free), rel=1e-9, abs=1e-9)
    assert list(one.common) == pytest.approx(list(two.common), abs=1e-9)


def test_a_gross_error_is_named() -> None:
    """A discharge probe 8 K off, where a rise, a sensor and the burner's heat speak against it."""
    name = "three-furnaces-at-altitude"
    job = load(EXAMPLES / f"{name}.toml")
    machine, visit = job.machine(), job.visit()
    told = evidence(machine, visit, history(machine, visit))
    whole = together(told)
    assert whole is not None
    taken = [
        each._replace(estimate=type(each.estimate)(each.estimate.value + 8.0, each.estimate.parts))
        if (each.run, each.point) == ("high", "air.discharge.db")
        else each
        for each in whole.found.taken
    ]
    found = reconcile(whole.found.model.rated, taken)
    named = {found.taken[i].point for each in suspects(found.posterior) for i in each.readings}
    assert "air.discharge.db" in named


@pytest.fixture(scope="module")
def torn() -> Reconciled:
    """Every reading at high fire off, one up and the next down: no one machine reads like that."""
    whole = of_example("two-furnaces-vfd").found
    ways = itertools.cycle((6, -6))
    return reconcile(whole.model.rated, [
        each._replace(estimate=Estimate(
            each.estimate.value + next(ways) * each.estimate.u, each.estimate.parts))
        if each.run == "high" else each
        for each in whole.taken
    ])  # fmt: skip


def test_what_no_one_machine_explains_widens_every_uncertainty(
    sound: Together, torn: Reconciled
) -> None:
    assert sound.found.widened == 1.0
    assert torn.chance < HARDLY
    assert torn.widened**2 == pytest.approx(torn.solution.objective / torn.degrees_of_freedom)
    for name in ("airflow.standard", "input.1"):
        told = torn.told((name, "high"))
        assert told is not None
        assert told.u == pytest.approx(torn.widened * told.plain)
        root = sum(size**2 for size in told.parts().values()) ** 0.5
        assert told.u == pytest.approx(root, rel=1e-6)


def test_doubt_acquits_nobody() -> None:
    """Provably past its limit, and no longer so once the uncertainty is widened: still past it."""
    told = Told(1.12, 0.2, dict, 0.02)
    bounds = Bounds(None, 1.0, "plate", "unit plate")
    assert rule_of(told, bounds) == "does not conform"
    assert rule_of(Told(0.88, 0.2, dict, 0.02), bounds) == "undecided"


def rule_of(told: Told, bounds: Bounds) -> str:
    """The decision of a target to correct, on what all readings say and one that says the same."""
    case = next(cases(of_example("two-furnaces-vfd")))
    target = next(each for each in TARGETS if each.id == "temperature rise")
    found = [Estimate(told.value, {Part("gain", "gauge"): told.plain})]
    ruling, _ = rule(target, replace(case, together=None), bounds, found, told)
    return ruling.decision


def cases(model: Together) -> Iterator[Case]:
    machine = model.evidence.machine
    for target in TARGETS:
        for instance in target.instances(machine):
            yield Case(machine, instance, instance.runs[0], model.evidence, model)


def test_one_more_reading_from_a_start_that_is_near_ends_where_a_cold_start_does(
    sound: Together,
) -> None:
    whole = sound.found
    fewer = reconcile(whole.model.rated, whole.taken[:-1])
    warm = reconcile(whole.model.rated, whole.taken, near=fewer)
    assert warm.solution.steps < whole.solution.steps
    cold, near = whole.solution.state, warm.solution.state
    apart = [abs(a - b) for a, b in zip(cold.common, near.common, strict=True)]
    apart += [
        abs(a - b) / unknown.spread
        for unknown, a, b in zip(whole.model.free, cold.free, near.free, strict=True)
    ]
    assert max(apart) < 2 * GAIN**0.5  # of a spread: each ends so near


def test_the_same_is_not_fitted_twice(sound: Together) -> None:
    fits, machine = Fits(), sound.evidence.machine
    found = fits.fit(machine, sound.found.taken)
    assert fits.fit(machine, sound.found.taken) is found
