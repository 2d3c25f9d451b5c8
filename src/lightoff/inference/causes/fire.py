"""What can be wrong with a fire, its flue and its exchanger. Sizes are engineering judgement."""

from collections.abc import Iterator, Mapping

from lightoff.inference.causes.effect import Cause, Effect, shares
from lightoff.inference.pushes import Size, between
from lightoff.machine.model.burner import RatedBurner
from lightoff.machine.plate import Furnace

# CO of a fire short of air, by the logarithm of what is usual: three to a hundred times as much
RICH = between(1.0, 4.6)
# CO that comes into the air [1]: a little, much
LEAKED = (Size(0.5, 10e-6, 6e-6), Size(0.5, 60e-6, 40e-6))


def fire(burner: RatedBurner, furnace: Furnace) -> Iterator[Cause]:
    """Of one furnace."""
    n = burner.number
    air = dict.fromkeys((burner.air("high"), burner.air("low")), 1.0)
    yield Cause("excess combustion air", (Effect(between(0.02, 0.09), air),), n)
    blocked = (Effect(between(-0.07, -0.015, 2), air),)
    rich = {f"flue.{n}.co": RICH, **_out_of(f"flue.{n}.draft", furnace.flue_draft)}
    yield Cause("blocked vent", blocked, n, aside=rich)
    drained = _out_of(f"furnace.{n}.proving_pressure", furnace.proving_pressure)
    yield Cause("blocked drain or tube", blocked, n, aside=drained)
    fouled = Effect(between(-0.6, -0.1), {f"furnace.{n}.exchanger": 1.0})
    sooty = (Size(0.5, 0.0, 0.5), *shares(0.5, RICH))  # soot narrows the way of the air, too
    yield Cause("fouled heat exchanger", (fouled,), n, aside={f"flue.{n}.co": sooty})
    sampled = {f"flue.{n}.false_air": 1.0}
    yield Cause("diluted flue sample", (Effect(between(0.05, 0.5, 4), sampled),), n)
    yield Cause(
        "leaking heat exchanger",
        (Effect(between(0.02, 0.25, 2), sampled),),
        n,
        aside={"air.discharge.co": LEAKED},
    )
    if furnace.flame_signal is not None:
        weak = between(-3.0 * furnace.flame_signal, -1.2 * furnace.flame_signal, 2)
        yield Cause("weak flame signal", (), n, aside={f"furnace.{n}.flame": weak})
    else:
        yield Cause("weak flame signal", (), n)


def drawn_in_again(burners: tuple[RatedBurner, ...]) -> Cause:
    """Flue gas drawn into the intake: every fire gets air with less oxygen."""
    air = {burner.air(level): 1.0 for burner in burners for level in ("high", "low")}
    effects = (Effect(between(-0.04, -0.005, 2), air),)
    aside = {"air.intake.co": LEAKED, "air.discharge.co": LEAKED}
    return Cause("flue gas re-entrained", effects, aside=aside)


def _out_of(point: str, allowed: tuple[float, float] | None) -> Mapping[str, tuple[Size, ...]]:
    """A point out of what the plate allows, to the higher side; nothing where it says nothing."""
    if allowed is None:
        return {}
    width = abs(allowed[1] - allowed[0])
    return {point: between(0.7 * width, 3.0 * width, 2)}
