"""Every target with a number, in the order they are shown."""

from lightoff.judgement.target import Target
from lightoff.judgement.targets import air, airside, building, electrical, flue, gas

TARGETS: tuple[Target, ...] = (
    *electrical.TARGETS,
    *airside.TARGETS,
    *gas.TARGETS,
    *flue.TARGETS,
    *air.TARGETS,
    *building.TARGETS,
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
# targets of the job format that need the model of the machine; a job may limit them already
_PREDICTED = {"flue temperature": "temperature", "set point reached": "temperature"}

# every target whose limits are numbers, and the kind each limit is given in
TARGET_KINDS: dict[str, str] = {t.id: t.kind for t in TARGETS} | _PROVEN | _PREDICTED
