"""The combustion fan: its own curve against burner, tubes and vent, at the densities there are."""

from dataclasses import dataclass

COLD = 1.204  # [kg/m3]
GRAVITY = 9.81


@dataclass(frozen=True)
class Blower:
    """Pressures at the rating are in the resistances; everything goes with flow and density."""

    head: float  # [Pa] at full speed, no flow, cold air
    droop: float  # [m-4 Pa/(kg/m3)] fall of head by density with the volume flow squared
    inlet: float  # resistances [Pa (kg/m3) / (kg/s)^2]
    tubes: float
    vent: float
    rise: float  # [m] of the vent
    speed: float  # [rpm] at full speed
    low: float  # relative speed at low fire


@dataclass(frozen=True)
class Draught:
    """What the combustion fan does in a run."""

    flow: float  # [kg/s] through the blower
    box: float  # [Pa] burner compartment, gauge
    proving: float  # [Pa] at the blower's inlet, gauge
    draft: float  # [Pa] where the flue is read, gauge


def draw(
    blower: Blower, speed: float, outdoor: float, mean: float, flue: float, wind: float
) -> Draught:
    """At a relative speed and the densities of outdoor air, tubes and flue [kg/m3]."""
    lift = GRAVITY * blower.rise * (outdoor - flue)
    head = blower.head * flue / COLD * speed**2 + lift - wind
    into, through = blower.inlet / outdoor, blower.tubes / mean
    out = blower.vent / flue
    square = max(head, 0.5) / (into + through + out + blower.droop / flue)
    return Draught(square**0.5, -into * square, -(into + through) * square, out * square - lift)


def fitted(
    flow: float,
    outdoor: float,
    mean: float,
    flue: float,
    *,
    head: float,
    shares: tuple[float, float, float],
    droop: float,
    rise: float,
    speed: float,
    low: float,
) -> Blower:
    """A blower that moves `flow` at the rating, its head spent in these shares."""
    available = head * flue / COLD
    left = available * (1.0 - droop)
    into, through, out = (share * left / flow**2 for share in shares)
    # the vent's own lift is left out of the rating: it helps in the cold, as it does on a roof
    return Blower(
        head, droop * available * flue / flow**2, into * outdoor, through * mean, out * flue,
        rise, speed, low,
    )  # fmt: skip
