"""What a part of an uncertainty belongs to, in words."""

import re

from lightoff.machine import Visit
from lightoff.surfaces.words.catalogue import has
from lightoff.surfaces.words.speech import Speech

MOST = 8  # parts listed; the rest are small, and told as one
_READING = re.compile(r"visit\.\d+\.reading\.\d+")


def belongs_to(of: str, visit: Visit, speech: Speech) -> str:
    """A reading, an unknown of the machine, an instrument."""
    if _READING.fullmatch(of):
        return _reading(of, visit, speech)
    unknown, _, run = of.partition(" ")
    name = speech.unknown(unknown)
    if name:
        in_run = speech.run(run) if run else ""
        return speech.word("budget:of-run", name=name, run=in_run) if run else name
    return speech.word(f"budget-of:{of}") if has(f"budget-of:{of}") else of


def _reading(place: str, visit: Visit, speech: Speech) -> str:
    """A reading by its point, and when it was taken."""
    reading = next((r for r in visit.readings if r.place == place), None)
    if reading is None:
        return ""
    name = speech.point(reading.point)
    if reading.at is None:
        return name
    return speech.word("budget:reading", name=name, time=f"{reading.at:%H:%M}")
