"""A small seeded share of the proofs, with room to spare; the numbers are those of `make prove`."""

from random import Random
from statistics import NormalDist

import pytest

from lightoff.inference.reconcile import Reconciled
from lightoff.judgement.answer import Row
from lightoff.judgement.message import message
from plant.plant import draw
from proof.claim import Claim, kolmogorov_smirnov, quantile, share
from proof.decided import decisions
from proof.gross import gross
from proof.independent import Seen, seen
from proof.measured import INTERVAL, STYLES
from proof.own import Own, own, visit_of

MACHINES = ("direct-drive-indoor", "30000 ordinary", "30001 thorough")


@pytest.fixture(scope="module")
def draws() -> list[Own]:
    return [own((machine, draw)) for machine in MACHINES for draw in range(8)]


@pytest.fixture(scope="module")
def visits() -> list[Seen]:
    return [seen((seed, STYLES[seed % 2])) for seed in range(41_500, 41_514)]


def test_truth_of_our_own_model_lies_where_the_answer_says(draws: list[Own]) -> None:
    off = [abs(z) for draw in draws for z in draw.off.values()]
    assert len(off) > 200
    assert share(z <= INTERVAL for z in off) > 0.85
    assert quantile(off, 0.5) == pytest.approx(0.6745, abs=0.2)


def test_every_visit_is_answered_in_numbers(draws: list[Own], visits: list[Seen]) -> None:
    assert [each.failed for each in (*draws, *visits) if each.failed] == []


def test_sound_machines_of_another_model_lie_where_the_answer_says(visits: list[Seen]) -> None:
    off = [abs(each.off) for visit in visits if visit.sound for each in visit.off]
    assert len(off) > 50
    assert share(z <= INTERVAL for z in off) > 0.85


def test_what_is_said_to_conform_seldom_lies_outside(visits: list[Seen]) -> None:
    made = [each for visit in visits for each in visit.decided]
    assert share(each.outside for each in made if each.decision == "conforms") < 0.05
    assert share(each.decision == "undecided" for each in made) < 0.10


@pytest.fixture(scope="module")
def visit() -> Reconciled:
    return visit_of("30001 thorough")


def test_an_error_twice_the_detectable_size_is_flagged_and_named(visit: Reconciled) -> None:
    tried = [gross(visit, Random(number), times=2.0) for number in range(12)]
    assert share(each is not None and each.flagged for each in tried) > 0.9
    assert share(each is not None and each.named for each in tried) > 0.7


def test_the_distance_of_a_perfect_sample_is_half_a_step() -> None:
    perfect = [NormalDist().inv_cdf((i + 0.5) / 100) for i in range(100)]
    assert kolmogorov_smirnov(perfect) == pytest.approx(0.005)
    assert kolmogorov_smirnov([z + 1 for z in perfect]) == pytest.approx(0.383 + 0.005, abs=0.005)
    assert kolmogorov_smirnov([3 * z for z in perfect]) > 0.2


def test_a_claim_without_a_number_is_not_met() -> None:
    claim = Claim(id="x", says="x", measured=share([]), high=0.05, count="none", seeds="none")
    assert not claim.met
    assert claim.aim == "at most 5 %"


@pytest.mark.parametrize(
    ("rule", "over", "past"),
    [("guarded", 1.0, "upper"), ("simple", 1.0, ""), ("simple", 3.0, "upper")],
)
def test_a_simply_accepted_target_is_violated_beyond_its_expanded_uncertainty(
    rule: str, over: float, past: str
) -> None:
    plant = draw(3, "none")
    true = plant.state("high")["gas.supply"]
    row = Row(
        id="gas pressure at high fire", point="gas.supply", run="high", decision="conforms",
        estimate=true, standard_uncertainty=1.0, upper=true - over, rule=rule, severity="correct",
        why=message("within"),
    )  # fmt: skip
    (made,) = decisions((row,), plant, {"high": plant.state("high")})
    assert made.past == past
    assert made.false == bool(past)
