"""Every cause that can befall a unit."""

from collections.abc import Sequence

from lightoff.inference.causes.air import air
from lightoff.inference.causes.control import controls, readings
from lightoff.inference.causes.effect import Cause
from lightoff.inference.causes.fire import drawn_in_again, fire
from lightoff.inference.causes.gas import stages, supply, trains
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown


def causes(
    rated: Rated, table: Sequence[Unknown], runs: Sequence[str], gauges: Sequence[str]
) -> tuple[Cause, ...]:
    """The causes of a unit; `runs` were read, pressures with `gauges`."""
    machine = rated.machine
    found = [*air(rated), *supply(rated, table), *stages(rated.burners, table)]
    for burner in rated.burners:
        found += trains(rated, burner, table, runs)
        found += fire(burner, machine.furnace(burner.number))
    found.append(drawn_in_again(rated.burners))
    found += [*controls(), *readings(gauges)]
    return tuple(found)
