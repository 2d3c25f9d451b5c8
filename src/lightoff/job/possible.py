"""What a value of each kind can be at all, when it is read, set or proven."""

import re
from functools import lru_cache

from lightoff.job.quantities import OUTDOORS, Of
from lightoff.machine import kind_of, setting_kind

_BOUNDS: dict[str, tuple[float | None, float | None, float | None]] = {  # above, least, most [SI]
    "absolute pressure": (0.0, None, None),
    "time": (0.0, None, None),
    "voltage": (None, 0.0, None),
    "current": (None, 0.0, None),
    "electric power": (None, 0.0, None),
    "frequency": (None, 0.0, None),
    "rotational speed": (None, 0.0, None),
    "airflow": (None, 0.0, None),
    "gas flow": (None, 0.0, None),
    "size": (None, 0.0, None),
    "force": (None, 0.0, None),
    "concentration": (None, 0.0, 1.0),
}
_OXYGEN = Of("fraction", least=0.0, most=0.215)  # air holds 20.9 %; an analyser shows a bit more
_PART = Of("fraction", least=0.0, most=1.0)
_HUMIDITY = Of("fraction", least=0.0, most=1.05)  # a wet sensor shows a little over 100 %
_SIGNAL = Of("fraction", least=-0.25, most=1.25)  # 0 mA on a 4 to 20 mA loop is -25 %

# what a trip is seen to act at; None: it acts, and there is nothing to read
_TRIPS = {
    "flame failure": "flame signal",
    "high limit": "temperature",
    "airflow proving": "pressure",
    "combustion air proving": "pressure",
    "low gas": "pressure",
    "high gas": "pressure",
    "freeze": "temperature",
    "exhaust interlock": "pressure",
}


def of_kind(kind: str) -> Of:
    """A value of `kind`, within what is possible."""
    above, least, most = _BOUNDS.get(kind, (None, None, None))
    return Of(kind, above, least, most)


@lru_cache(maxsize=1024)
def of_point(point_id: str) -> Of | None:
    """A value read at a point, or None where no unit has such a point."""
    kind = kind_of(point_id)
    if kind is None:
        return None
    if point_id in ("air.outdoor.db", "air.outdoor.wb"):
        return OUTDOORS
    if kind != "fraction":
        return of_kind(kind)
    if re.fullmatch(r"flue\.\d\.o2", point_id):
        return _OXYGEN
    if point_id.endswith(".rh"):
        return _HUMIDITY
    return _SIGNAL if point_id.endswith(".signal") else _PART


def of_setting(setting: str) -> Of | None:
    """A value of a setting, or None where it is described in words."""
    kind = setting_kind(setting)
    if kind == "fraction":
        return _PART
    return None if kind is None else of_kind(kind)


def of_trip(trip: str) -> Of | None:
    """The value a trip acts at, or None where it has none."""
    kind = _TRIPS.get(trip)
    return None if kind is None else of_kind(kind)
