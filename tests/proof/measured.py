"""Every claim, measured: which seeds are asked, and what becomes of the answers."""

from collections.abc import Iterable, Iterator, Sequence

from proof.apart import each
from proof.claim import Claim, kolmogorov_smirnov, quantile, share
from proof.decided import WINTER, Decided
from proof.gross import Gross
from proof.independent import COVERED, Seen, seen
from proof.own import MAIN, SOUND, Own, own

STYLES = ("ordinary", "thorough")
INTERVAL = 1.96  # [1] standard uncertainties to each side hold 95 %
MACHINES, DRAWS = range(30_000, 30_096), range(20)
VISITS = range(40_000, 41_500)
OWN_SEEDS = f"machines {MACHINES[0]} to {MACHINES[-1]} and four examples"
SEEDS = f"seeds {VISITS[0]} to {VISITS[-1]}"


def measured() -> list[Claim]:
    """Every claim with its number; a quarter of an hour on two cores."""
    machines = (*SOUND, *(f"{seed} {STYLES[seed % 2]}" for seed in MACHINES))
    draws = each(own, [(machine, draw) for machine in machines for draw in DRAWS], len(DRAWS))
    visits = each(seen, [(seed, STYLES[seed % 2]) for seed in VISITS], 10)
    return list(claims(draws, visits))


def claims(draws: Sequence[Own], visits: Sequence[Seen]) -> Iterator[Claim]:
    yield from calibration(draws)
    yield from coverage(visits)
    yield from decision(visits)
    sound = [visit for visit in visits if visit.sound and visit.fitted]
    answered = [draw for draw in draws if not draw.failed and not draw.unanswered]
    yield from suspicion(
        "our own model", [d.gross for d in answered], [d.alarm for d in answered], OWN_SEEDS
    )
    yield from suspicion(
        "the independent machine", [v.gross for v in sound], [bool(v.suspected) for v in sound],
        SEEDS,
    )  # fmt: skip
    yield from airflow(visits)
    yield from numbers(draws, visits)


def calibration(draws: Sequence[Own]) -> Iterator[Claim]:
    """The truth under the answer, on truths of our own model."""
    for name in MAIN:
        off = [draw.off[name] for draw in draws if name in draw.off]
        yield Claim(
            id=f"calibration: {name}",
            says=f"{name}, our own model: Kolmogorov-Smirnov distance of truth under answer",
            measured=kolmogorov_smirnov(off), high=0.04, percent=False,
            count=f"{len(off)} draws", seeds=OWN_SEEDS,
        )  # fmt: skip
    stuck, lost = [draw.stuck for draw in draws], [bool(draw.unanswered) for draw in draws]
    yield Claim(
        id="fit: stuck",
        says="fits of our own model that end where the readings stay unexplained",
        measured=share(stuck), high=0.0, count=f"{sum(stuck)} of {len(stuck)}", seeds=OWN_SEEDS,
    )  # fmt: skip
    yield Claim(
        id="fit: none",
        says="visits of our own model that no fit answers",
        measured=share(lost), high=0.0, count=f"{sum(lost)} of {len(lost)}", seeds=OWN_SEEDS,
    )  # fmt: skip


def coverage(visits: Sequence[Seen]) -> Iterator[Claim]:
    """95 % intervals on the independent machine, at high fire."""
    for kind, sound in (("sound", True), ("faulty", False)):
        of_kind = [visit for visit in visits if visit.sound is sound]
        for name in COVERED:
            off = [each.off for visit in of_kind for each in visit.off if each.quantity == name]
            yield Claim(
                id=f"coverage, {kind}: {name}",
                says=f"{name} at high fire, {kind} units: 95 % intervals that hold the truth",
                measured=share(abs(z) <= INTERVAL for z in off), low=0.93, high=0.98,
                count=f"{len(off)} intervals in {len(of_kind)} visits", seeds=SEEDS,
            )  # fmt: skip


def decision(visits: Sequence[Seen]) -> Iterator[Claim]:
    """What was said to conform against what is so."""
    every = [each for visit in visits for each in visit.decided]
    today = [each for each in every if each.run != WINTER]
    foretold = [each for each in every if each.run == WINTER]
    yield from _wrong("decisions", "decisions of the day", today)
    yield from _wrong("winter", "decisions foretold for the coldest day", foretold)
    quiet = [visit for visit in visits if visit.sound and visit.style == "ordinary"]
    open_ = [
        each.decision == "undecided" for v in quiet for each in v.decided if each.run != WINTER
    ]
    yield Claim(
        id="decisions: undecided",
        says="targets measured in ordinary visits of sound units that stay undecided",
        measured=share(open_), high=0.10,
        count=f"{sum(open_)} of {len(open_)} in {len(quiet)} visits", seeds=SEEDS,
    )  # fmt: skip


def _wrong(name: str, what: str, made: Sequence[Decided]) -> Iterator[Claim]:
    """The two statistics, never mixed."""
    conform = [each.outside for each in made if each.decision == "conforms"]
    outside = [each.false for each in made if each.outside]
    count = f"{sum(outside)} false among {len(conform)} that conform and {len(outside)} violations"
    yield Claim(
        id=f"{name}: outside, said to conform",
        says=f"{what}: truly outside, of what is said to conform",
        measured=share(conform), high=0.05, count=count, seeds=SEEDS,
    )  # fmt: skip
    yield Claim(
        id=f"{name}: said to conform, outside",
        says=f"{what}: said to conform, of what is truly outside",
        measured=share(outside), high=0.05, count=count, seeds=SEEDS,
    )  # fmt: skip


def suspicion(
    where: str, tried: Iterable[Gross | None], alarms: Sequence[bool], seeds: str
) -> Iterator[Claim]:
    """Gross errors as large as a reading's own detectable bias; and alarms without any."""
    errors = [each for each in tried if each is not None]
    flagged = [each for each in errors if each.flagged]
    yield Claim(
        id=f"suspects, {where}: flagged",
        says=f"gross errors of the detectable size that are flagged, {where}",
        measured=share(each.flagged for each in errors), low=0.80,
        count=f"{len(flagged)} of {len(errors)}", seeds=seeds,
    )  # fmt: skip
    right = sum(each.first for each in flagged)
    yield Claim(
        id=f"suspects, {where}: named",
        says=f"of these the right reading, or a group with it, named as the worst, {where}",
        measured=share(each.first for each in flagged), low=0.90,
        count=f"{right} of {len(flagged)}", seeds=seeds,
    )  # fmt: skip
    yield Claim(
        id=f"suspects, {where}: false alarms",
        says=f"sound visits in which a good reading is suspected, {where}",
        measured=share(alarms), high=0.05, count=f"{sum(alarms)} of {len(alarms)}", seeds=seeds,
    )  # fmt: skip


def airflow(visits: Sequence[Seen]) -> Iterator[Claim]:
    """How well an ordinary visit to a sound unit knows the airflow at high fire."""
    ordinary = [v for v in visits if v.sound and v.style == "ordinary"]
    known = [v.spread for v in ordinary if v.spread is not None]
    for name, part in (("median", 0.5), ("90th percentile", 0.9)):
        yield Claim(
            id=f"airflow: {name}",
            says=f"standard uncertainty of the airflow, ordinary visits of sound units, {name}",
            measured=quantile(known, part), high=0.03,
            count=f"{len(known)} visits", seeds=SEEDS,
        )  # fmt: skip


def numbers(draws: Sequence[Own], visits: Sequence[Seen]) -> Iterator[Claim]:
    """Never a crash, never a number that is none; what nobody could have typed is set aside."""
    read = [visit for visit in visits if not visit.refused]
    refused = f"{len(visits) - len(read)} more refused where they were typed"
    for where, failed, beside, seeds in (
        ("the independent machine", [v.failed for v in read], [refused], SEEDS),
        ("our own model", [d.failed for d in draws], [], OWN_SEEDS),
    ):
        told = [each for each in failed if each]
        yield Claim(
            id=f"numbers: {where}",
            says=f"visits that end in an exception or in no number, {where}",
            measured=share(map(bool, failed)), high=0.0,
            count="; ".join([f"{len(told)} of {len(failed)}", *beside, *told[:3]]), seeds=seeds,
        )  # fmt: skip
