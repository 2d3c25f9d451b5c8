"""Settings: what a hand can turn, with the kind of quantity each is given in."""

import re

from lightoff.machine.machine import Machine

# None: described in words, not in numbers
_KINDS: dict[str, str | None] = {
    "train.{n}.{m}.outlet": "pressure",
    "train.{n}.{m}.manifold": "pressure",
    "furnace.{n}.orifice": "size",
    "vfd.hz": "frequency",
    "drive.motor_sheave": "size",
    "drive.fan_sheave": "size",
    "damper.position": "fraction",
    "fan.rotation": None,
    "control.discharge": "temperature",
    "gas.regulator": "pressure",
    "wiring": None,
    "filters": None,
}


def settings(machine: Machine) -> dict[str, str | None]:
    """Every setting of this unit and its kind."""
    out: dict[str, str | None] = {}
    for number, furnace in machine.numbered():
        for train in range(1, len(furnace.trains) + 1):
            out |= _expand("train.", number, train)
        out |= _expand("furnace.", number, 1)
    belt = machine.drive.kind == "belt"
    for setting, kind in _KINDS.items():
        if "{n}" in setting:
            continue
        if setting == "vfd.hz" and not machine.drive.vfd:
            continue
        if setting.startswith("drive.") and not belt:
            continue
        out[setting] = kind
    return out


def _expand(prefix: str, furnace: int, train: int) -> dict[str, str | None]:
    return {
        pattern.format(n=furnace, m=train): kind
        for pattern, kind in _KINDS.items()
        if pattern.startswith(prefix)
    }


def setting_kind(setting: str) -> str | None:
    """The kind of a setting any unit could have; KeyError when no unit has such a setting."""
    if "{" in setting:  # a pattern of the table, not an id
        raise KeyError(setting)
    generic = re.sub(r"^train\.[1-9]\.[1-9]\.", "train.{n}.{m}.", setting)
    generic = re.sub(r"^furnace\.[1-9]\.", "furnace.{n}.", generic)
    return _KINDS[generic]


def known_settings() -> list[str]:
    """Every setting id, for a nearest-name search."""
    return [
        pattern.format(n=n, m=m)
        for pattern in _KINDS
        for n in ((1, 2, 3) if "{n}" in pattern else (1,))
        for m in ((1, 2) if "{m}" in pattern else (1,))
    ]
