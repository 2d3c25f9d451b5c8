"""The unknowns of a machine, as tables: mean, spread, wander, and where they come from."""

from lightoff.machine.gas import TOGETHER
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns.airside import airside, building, probes
from lightoff.machine.model.unknowns.furnace import furnace
from lightoff.machine.model.unknowns.site import gas, weather
from lightoff.machine.model.unknowns.turning import electrical, turning

# which unknowns are known together, and their correlation: GRI-92/0123 (from memory), worked out
CORRELATED = {
    "gas.relative_density": ("gas.heating_value", TOGETHER),
    # so that the third, which makes up for both, is as uncertain as they are
    "power.volts.bc": ("power.volts.ab", -0.5),
    "motor.amps.b": ("motor.amps.a", -0.5),
}


def unknowns(rated: Rated) -> tuple[Unknown, ...]:
    """Every unknown of this machine.

    Of two that nobody can tell apart by what was read, the first one listed is found.
    """
    return (
        *weather(rated.machine),
        *gas(rated.machine),
        *airside(rated),
        *turning(rated),
        *electrical(rated.machine),
        *(each for number, _ in rated.machine.numbered() for each in furnace(rated, number)),
        *probes(rated),
        *building(rated.machine),
    )
