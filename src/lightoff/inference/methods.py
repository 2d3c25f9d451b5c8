"""What the way of measuring adds, whatever the instrument: where the probe is, how it is read.

Each row: points it holds for, cause, standard uncertainty as a share of the reading and absolute
[SI], whether all readings at that point share it, and its origin. Figures and origins are those of
the project's table of published and judged spreads.
"""

import re
from dataclasses import dataclass

from lightoff.inference.estimate import Part

JUDGEMENT = "engineering judgement"
PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Method:
    """One effect of method."""

    points: str
    cause: str
    share: float
    absolute: float
    shared: bool
    origin: str


METHODS: tuple[Method, ...] = (
    Method(r"motor\.amps.*", "clamp position", 0.02, 0.0, False, "clamp meter instructions"),
    Method(r"vfd\.volts", "drive display", 0.017, 0.0, True, PRACTICE),
    Method(r"vfd\.amps", "drive display", 0.029, 0.0, True, PRACTICE),
    Method(r"vfd\.kw", "drive display", 0.04, 0.0, True, JUDGEMENT),
    Method(r"static\..*", "fluctuation", 0.015, 0.0, False, JUDGEMENT),
    Method(r"static\..*", "tap", 0.0, 2.0, True, JUDGEMENT),
    Method(r"static\.(fan_in|fan_out|furnaces)", "swirl at the fan", 0.0, 5.0, True, JUDGEMENT),
    Method(r"duct\.traverse", "traverse plane", 0.026, 0.0, True, "published comparison"),
    Method(r"duct\.traverse", "traverse repeat", 0.015, 0.0, False, JUDGEMENT),
    Method(r"duct\.traverse", "duct area", 0.01, 0.0, True, JUDGEMENT),
    Method(r"duct\.hood_total", "flow hood", 0.03, 0.0, True, PRACTICE),
    Method(r"exhaust\.airflow", "flow hood", 0.03, 0.0, True, PRACTICE),
    Method(r"filter\.face_total", "face traverse", 0.051, 0.0, True, "published comparison"),
    Method(r"air\.(outdoor|entering|return)\.db", "probe place", 0.0, 0.5, True, JUDGEMENT),
    Method(r"air\.outdoor\.db", "change while reading", 0.0, 0.3, False, JUDGEMENT),
    Method(r"air\.discharge\.db", "unmixed air", 0.0, 0.5, True, JUDGEMENT),
    Method(r"air\.after\.\d\.db", "unmixed air", 0.0, 1.5, True, JUDGEMENT),
    Method(r"flue\.\d\.db", "probe place", 0.0, 6.0, True, JUDGEMENT),
    Method(r"gas\.meter\.seconds", "hand timing", 0.0, 0.15, False, "NIST SP 960-12, judged"),
    Method(r"gas\.meter\.db", "pipe against gas", 0.0, 1.5, True, JUDGEMENT),
    Method(r"building\.pressure", "wind", 0.0, 1.0, False, JUDGEMENT),
    Method(r"door\..*", "by hand", 0.0, 3.6, False, JUDGEMENT),
)  # fmt: skip

DRIVE_OUTPUT = Method(r"motor\.amps.*", "clamp on a drive's output", 0.04, 0.0, False, JUDGEMENT)


def method_parts(
    point: str, value: float, *, reading: str, on_drive: bool = False
) -> dict[Part, float]:
    """The parts the method adds to one reading at `point`."""
    rows = [row for row in METHODS if re.fullmatch(row.points, point)]
    if on_drive and re.fullmatch(DRIVE_OUTPUT.points, point):
        rows = [DRIVE_OUTPUT]
    return {
        Part(row.cause, point if row.shared else reading): row.share * abs(value) + row.absolute
        for row in rows
    }
