"""Every target with a number, in the order they are shown."""

from lightoff.judgement.target import Target
from lightoff.judgement.targets import air, airside, building, electrical, flue, gas, winter

TARGETS: tuple[Target, ...] = (
    *electrical.TARGETS,
    *airside.TARGETS,
    *gas.TARGETS,
    *flue.TARGETS,
    *air.TARGETS,
    *building.TARGETS,
    *winter.TARGETS,
)

# targets decided without a `Target` row of their own: the sequence's seconds, pressure decay
_PROVEN = {
    "flame failure time": "time",
    "purge": "time",
    "ignition trial": "time",
    "post purge": "time",
    "stage delay": "time",
    "tightness: decay": "test pressure",
}
# every target whose limits are numbers, and the kind each limit is given in
TARGET_KINDS: dict[str, str] = {t.id: t.kind for t in TARGETS} | _PROVEN
