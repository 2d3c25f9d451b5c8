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

# targets of the sequence's seconds, whose limits a job may set as well
TIMED = ("flame failure time", "purge", "ignition trial", "post purge", "stage delay")

TARGET_KINDS: dict[str, str] = {t.id: t.kind for t in TARGETS} | dict.fromkeys(TIMED, "time")
