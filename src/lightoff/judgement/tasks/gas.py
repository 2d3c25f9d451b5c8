"""Gas as far as the unit: tested and purged by those licensed to, and what it rises to at rest."""

from collections.abc import Iterator

from lightoff.judgement.tasks.records import read, seen
from lightoff.judgement.tasks.task import Record, Work
from lightoff.machine import Machine


def _upstream(machine: Machine, _: int) -> Iterator[Record]:
    yield from seen(machine, "gas.upstream_tested")
    yield Record("decay", ())
    yield Record("joint", (), due=False)


WORK = (
    Work(
        name="piping tested and purged",
        step=5,
        minutes=20,
        records=_upstream,
        needs=("gas and orifices",),
        cautions=("caution-test", "caution-gas", "caution-first"),
        licence="gas",
        tools=("leak detector",),
    ),
    Work(
        name="lock-up",
        step=5,
        minutes=7,
        records=lambda machine, _: read(machine, ("off",), "gas.supply"),
        needs=("piping tested and purged",),
        cautions=("caution-gas", "caution-gas-port"),
        licence="gas",
    ),
)
