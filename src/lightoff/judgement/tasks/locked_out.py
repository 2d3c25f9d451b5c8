"""Before anything is switched on: the site ready, and what is done with the power locked out."""

from lightoff.judgement.tasks.records import helping, read, seen
from lightoff.judgement.tasks.task import Work

DEAD = ("caution-lock-out",)
DEAD_AND_TURNING = ("caution-lock-out", "caution-rotating")

WORK = (
    Work(
        name="site ready",
        step=1,
        minutes=8,
        records=lambda machine, _: seen(machine, "site.ready"),
        cautions=("caution-first", "caution-roof"),
    ),
    Work(
        name="wheel and housing",
        step=2,
        minutes=8,
        records=lambda machine, _: seen(machine, "fan.turns_free", "fan.overlap"),
        needs=("site ready",),
        cautions=DEAD_AND_TURNING,
    ),
    Work(
        name="belts",
        step=2,
        minutes=10,
        records=lambda machine, _: (
            *seen(machine, "belt.tension", "belt.alignment"),
            *read(machine, ("off",), "belt.force", "belt.angle"),
            *helping(read(machine, ("off",), "belt.deflection")),
        ),
        needs=("wheel and housing",),
        cautions=DEAD_AND_TURNING,
    ),
    Work(
        name="filters and cabinet",
        step=2,
        minutes=3,
        records=lambda machine, _: seen(machine, "filters.in_place"),
        needs=("site ready",),
        cautions=DEAD,
    ),
    Work(
        name="flues and combustion air",
        step=2,
        minutes=8,
        records=lambda machine, _: seen(
            machine, "vent.complete", "vent.clearance", "combustion_air.openings"
        ),
        needs=("site ready",),
        cautions=("caution-roof", "caution-room"),
    ),
    Work(
        name="condensate trap",
        step=2,
        minutes=3,
        records=lambda machine, _: seen(machine, "condensate.trap_primed"),
        needs=("site ready",),
        cautions=DEAD,
    ),
    Work(
        name="gas and orifices",
        step=2,
        minutes=8,
        records=lambda machine, _: (
            *seen(machine, "gas.type_matches", "gas.conversion_complete"),
            *helping(
                read(
                    machine,
                    ("off",),
                    *(f"furnace.{number}.orifice" for number, _ in machine.numbered()),
                )
            ),
        ),
        needs=("site ready",),
        cautions=("caution-lock-out", "caution-gas"),
        licence="gas",
    ),
    Work(
        name="field wiring",
        step=2,
        minutes=8,
        records=lambda machine, _: seen(machine, "wiring.matches"),
        needs=("site ready",),
        cautions=DEAD,
        licence="electrical",
    ),
)
