"""Readings that do not fit the others: which, how far off, and the slip that would explain it."""

from collections.abc import Iterator
from math import inf

from lightoff.inference.reliability import critical
from lightoff.judgement.message import Remark
from lightoff.judgement.remarks.slips import candidates, swapped
from lightoff.judgement.together import Misfit, Together
from lightoff.machine import kind_of
from lightoff.machine.visit import Reading

PLAIN = 0.05  # [1] chance that a slip explains what only chance did
CLOSE = 0.1  # [1] digits can be swapped in several ways: one of them fits by chance more easily
LIKELIER = 0.25  # [1] a slip must leave at most this part of what stands off


def misfits(together: Together) -> Iterator[Remark]:
    """A remark for each suspect reading, or group of which one is wrong."""
    for misfit in together.misfits:
        first, *others = misfit.taken
        point = together.point_of(first)
        turns = together.turns(point, first.run)
        values = {
            "point": point, "run": first.run, "kind": kind_of(point),
            "value": turns * first.estimate.value, "foretold": turns * misfit.foretold,
            "others": [f"{together.point_of(each)} {each.run}" for each in others],
            "slip": slip(misfit, together.reading_of(first)),
        }  # fmt: skip
        kind = "misfits" if misfit.suspect.every else "misfit-group" if others else "misfit"
        yield Remark(f"{first.place}.value", kind, values)


def slip(misfit: Misfit, reading: Reading) -> str | None:
    """The slip after which the reading would fit: by far better, and well."""
    value = misfit.taken[0].estimate.value
    kind = kind_of(reading.point)
    meant = {name: by(value) - misfit.foretold for name, by in candidates(kind).items()}
    if kind == "pressure":
        meant["other-sign"] = -value - misfit.foretold
    if reading.value == value:
        off = min((each - misfit.foretold for each in swapped(reading)), key=abs, default=inf)
        meant |= {"swapped-digits": off} if abs(off) < CLOSE * abs(misfit.off) else {}
    if reading.revolutions:
        turns = reading.revolutions
        meant["a-turn-more"] = value * turns / (turns + 1) - misfit.foretold
        meant["a-turn-less"] = value * turns / max(turns - 1, 1) - misfit.foretold
    best = min(meant, key=lambda name: abs(meant[name]))
    fits = abs(meant[best]) < critical(PLAIN) * misfit.u
    return best if fits and abs(meant[best]) < LIKELIER * abs(misfit.off) else None
