"""Readings that do not fit the others: which, how far off, and the slip that would explain it."""

from collections.abc import Iterator

from lightoff.inference.reconcile import Taken
from lightoff.inference.reliability import critical
from lightoff.inference.suspects import Suspect
from lightoff.judgement.message import Remark
from lightoff.judgement.remarks.slips import candidates
from lightoff.judgement.together import Together
from lightoff.machine import kind_of

PLAIN = 0.05  # [1] chance that a slip explains what only chance did
LIKELIER = 0.25  # [1] a slip must leave at most this part of what stands off


def misfits(together: Together) -> Iterator[Remark]:
    """A remark for each suspect reading, or group of which one is wrong."""
    for suspect in together.found.suspects:
        taken = [together.found.taken[i] for i in suspect.readings]
        first, *others = taken
        point = together.point_of(first)
        values = {
            "point": point, "run": first.run, "kind": kind_of(point),
            "value": first.estimate.value, "foretold": first.estimate.value - suspect.off,
            "others": [f"{together.point_of(each)} {each.run}" for each in others],
            "slip": slip(first, suspect, kind_of(point)),
        }  # fmt: skip
        yield Remark(f"{first.place}.value", "misfit-group" if others else "misfit", values)


def slip(taken: Taken, suspect: Suspect, kind: str | None) -> str | None:
    """The slip after which the reading would fit: by far better, and well."""
    value = taken.estimate.value
    u = abs(suspect.off) / suspect.statistic
    foretold = value - suspect.off
    off = {name: abs(meant(value) - foretold) for name, meant in candidates(kind).items()}
    best = min(off, key=lambda name: off[name])
    fits = off[best] < critical(PLAIN) * u and off[best] < LIKELIER * abs(suspect.off)
    return best if fits else None
