"""Fits made before, kept by whoever asks again: the same is not fitted twice, the next begins near.

An engine keeps nothing by itself; a surface hands these in.
"""

from collections import deque
from collections.abc import Sequence

from lightoff.inference.algebra import Algebra
from lightoff.inference.arrays import Arrays
from lightoff.inference.reconcile import Reconciled, Taken, reconcile
from lightoff.machine import Machine
from lightoff.machine.model.rated import rate

MOST = 48  # fits kept


def quick_fits() -> "Fits":
    """Fits made on arrays where numpy is there, by the standard library where it is not."""
    try:
        return Fits(Arrays())
    except ImportError:
        return Fits()


class Fits:
    """The last fits, and the algebra they are made with."""

    def __init__(self, algebra: Algebra | None = None) -> None:
        self.algebra = algebra
        self._kept: deque[Reconciled] = deque(maxlen=MOST)

    def fit(self, machine: Machine, taken: Sequence[Taken]) -> Reconciled:
        """The machine that explains these readings best."""
        wanted = _key(taken)
        mine = [each for each in self._kept if each.model.rated.machine == machine]
        for each in mine:
            if _key(each.taken) == wanted:
                return each
        near = mine[-1] if mine else None
        rated = near.model.rated if near else rate(machine)
        found = reconcile(rated, taken, algebra=self.algebra, near=near)
        self._kept.append(found)
        return found


def _key(taken: Sequence[Taken]) -> tuple[tuple[object, ...], ...]:
    """What tells these readings from any others."""
    readings = ((t.run, t.point, t.place, t.estimate.value, t.estimate.u) for t in taken)
    return tuple(sorted(readings))
