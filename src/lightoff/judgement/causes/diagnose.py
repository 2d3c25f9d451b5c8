"""What is wrong: every cause with its probability, what speaks for it and what against."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from lightoff.inference.causes import Cause, causes
from lightoff.inference.diagnosis import Aside, Diagnosis, Spoken
from lightoff.inference.pushes import log_sum
from lightoff.judgement.answer import CauseRow
from lightoff.judgement.causes.asides import asides
from lightoff.judgement.causes.odds import OTHER, odds
from lightoff.judgement.causes.signs import spoken
from lightoff.judgement.together import Together
from lightoff.machine import Machine, Visit

SAYS = 0.5  # of a logarithm of odds: a reading that says less is not named
MOST = 6  # readings named for a cause, and as many against


def diagnose(machine: Machine, visit: Visit, model: Together) -> tuple[CauseRow, ...]:
    """The causes of what was read, the likeliest first; their probabilities add up to 1.

    `none`, a machine that is as usual, and `other`, a reading that is simply wrong, always stand
    among them.
    """
    fit = model.whole
    known = causes(fit.model.rated, fit.model.table, fit.runs, _gauges(model))
    alike = Counter(each.id for each in known)
    beside = _asides(model)
    looked = Diagnosis(fit, beside)
    weighed = []
    for each in looked.spoken(known):
        said = spoken(each.cause, visit)
        prior = math.log(odds(each.cause, machine, visit, alike[each.cause.id]))
        weighed.append((prior + each.log_odds + sum(said.values()), each, said))
    plain = [("none", 0.0), ("other", math.log(OTHER) + looked.slip)]
    whole = log_sum([weight for weight, *_ in weighed] + [weight for _, weight in plain])
    rows = [
        *(CauseRow(name, None, None, math.exp(weight - whole)) for name, weight in plain),
        *(_row(model, each, said, math.exp(weight - whole)) for weight, each, said in weighed),
    ]
    # rounded, so that no last digit puts one before another
    return tuple(sorted(rows, key=lambda row: (-round(row.probability, 9), row.id)))


def _asides(model: Together) -> tuple[Aside, ...]:
    line = model.found.values()["power.volts"] / model.evidence.machine.electrical.volts
    return tuple(asides(model.evidence, line))


def _gauges(model: Together) -> tuple[str, ...]:
    """The instruments that pressures were read with, each by the name its zero goes by."""
    parts = (part for taken in model.whole.taken for part in taken.estimate.parts)
    return tuple(
        sorted({part.of for part in parts if part.cause == "zero" and part.of.endswith("pressure")})
    )


def _row(model: Together, each: Spoken, said: Mapping[str, float], probability: float) -> CauseRow:
    shares = {
        f"{model.point_of(taken)} {taken.run}": share
        for taken, share in zip(model.whole.taken, each.shares, strict=False)
    }
    for aside, share in zip(_asides(model), each.aside, strict=True):
        shares[f"{aside.point} {aside.run}"] = share
    shares |= said
    cause: Cause = each.cause
    return CauseRow(
        cause.id,
        cause.furnace,
        cause.point,
        probability,
        tuple(_named(shares.items())),
        tuple(_named((name, -share) for name, share in shares.items())),
        each.size if each.effect is not None else None,
    )


def _named(shares: Iterable[tuple[str, float]]) -> Iterator[str]:
    says = [(share, name) for name, share in shares if share > SAYS]
    for _, name in sorted(says, key=lambda pair: (-round(pair[0], 6), pair[1]))[:MOST]:
        yield name
