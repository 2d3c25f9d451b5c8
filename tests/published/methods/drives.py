"""Belts, sheaves and speeds."""

from typing import Any

from lightoff.physics import (
    belt,
    motor_speed,
    sheave,
)
from lightoff.physics.fan import tip_speed
from published.cases import Given, Method


def synchronous(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pairs = zip(given["f"], given["poles"], strict=True)
    return {"N": [motor_speed.synchronous_speed(f, poles) for f, poles in pairs]}


def slip(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"slip": [motor_speed.slip(n, given["N_s"]) for n in given["N"]]}


def load(given: Given, _: dict[str, str]) -> dict[str, Any]:
    now, full = (motor_speed.slip_speed(given[n], given["N_s"]) for n in ("N", "N_full"))
    return {"load": motor_speed.load_by_speed(now, full, flux=1.0)}


def ratio(given: Given, _: dict[str, str]) -> dict[str, Any]:
    def at(creep: float) -> Any:
        return sheave.belt_fan_speed(given["N_motor"], motor_sheave=given["d_motor"],
                                   fan_sheave=given["d_fan"], slip=creep)  # fmt: skip

    return {"N_fan": at(0.0), "N_fan_creep": at(given["creep"])}


def tip(given: Given, _: dict[str, str]) -> dict[str, Any]:
    speed = tip_speed(given["d"], given["N"])
    return {"v": speed, "v_si": speed}


def geometry(given: Given, _: dict[str, str]) -> dict[str, Any]:
    sheaves = {"motor_sheave": given["d"], "fan_sheave": given["D"], "centres": given["C"]}
    return {
        "L": belt.belt_length(**sheaves),
        "L_short": belt.belt_length_in_short(**sheaves),
        "wrap": belt.wrap_angle(belt.belt_lean(**sheaves)),
        "span": belt.belt_span(**sheaves),
    }


def deflection(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"deflection": belt.belt_deflection(given["span"])}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"dr-sync", synchronous),
    (r"dr-slip", slip),
    (r"dr-slip-load", load),
    (r"dr-ratio-.*", ratio),
    (r"dr-tip-.*", tip),
    (r"dr-(belt-.*|span)", geometry),
    (r"dr-deflection", deflection),
)
