"""Flue gas and efficiency of 200,000 readings, against Cantera one by one and in its arrays."""

from collections.abc import Callable
from statistics import median
from time import perf_counter

import cantera
import numpy as np

from lightoff.physics.combustion import excess_air_from_o2
from lightoff.physics.flue_gas import dry_flue, flue_gas, water_fraction
from lightoff.physics.flue_loss import (
    combustion_efficiency,
    flue_enthalpy,
    latent_loss,
    sensible_loss,
)
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.stoichiometry import AIR_OXYGEN, flue_air_ratio, stoichiometry

MANY = 200_000
BLOCK = 10_000  # readings in one array: what numpy makes on the way then stays in the cache
FEW = 1_000  # as many as Cantera is asked in a turn; it takes as long for each of them all
TURNS = 5
AGREE = 2e-3  # relative; its nitrogen and ours are fits of different years
FLUE = ["CO2", "H2O", "N2", "O2"]
FUEL = {"CH4": 0.93, "C2H6": 0.035, "C3H8": 0.01, "N2": 0.015, "CO2": 0.01}
AIR = {"O2": AIR_OXYGEN, "N2": 1 - AIR_OXYGEN}

Array = np.ndarray
Work = Callable[[Array, Array, Array], tuple[Array, Array]]

rng = np.random.default_rng(3)
O2 = rng.uniform(0.005, 0.14, MANY)
HOT = rng.uniform(350.0, 800.0, MANY)
COLD = rng.uniform(250.0, 310.0, MANY)

MADE = stoichiometry(TYPICAL["natural gas"])
DRY = {"oxygen": MADE.oxygen, "carbon_dioxide": MADE.carbon_dioxide, "nitrogen": MADE.nitrogen}
RATIO = flue_air_ratio(**DRY)


def ours(o2: Array, hot: Array, cold: Array) -> tuple[Array, Array]:
    """Wet fractions of the flue gas, and combustion efficiency."""
    excess = excess_air_from_o2(o2, RATIO)
    flue = flue_gas(excess_air=excess, water=MADE.water, humidity_ratio=0.0, **DRY)
    dry = dry_flue(carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen)
    whole = dry / (1 - water_fraction(flue.water, dry))
    sensible = sensible_loss(
        flue_enthalpy(hot, **flue._asdict()), flue_enthalpy(cold, **flue._asdict()), heat=MADE.heat
    )
    latent = latent_loss(water=MADE.water, condensed=0.0, temperature=hot, heat=MADE.heat)
    fractions = np.array([part / whole for part in flue])
    return fractions, combustion_efficiency(sensible, latent)


def small_solution() -> cantera.Solution:
    """Of GRI-Mech 3.0 only what goes into the fire and comes out: the leanest Cantera can be."""
    species = {each.name: each for each in cantera.Species.list_from_file("gri30.yaml")}
    chosen = [species[name] for name in (*FLUE, "CH4", "C2H6", "C3H8")]
    return cantera.Solution(thermo="ideal-gas", species=chosen)


FIRE = small_solution()
LATENT = 44013.0 * MADE.water / MADE.heat


def efficiencies(sensible: Array, carbon_dioxide: Array) -> Array:
    """From enthalpies per mole of flue gas, so many of which go with a mole of fuel."""
    moles = MADE.carbon_dioxide / carbon_dioxide
    return 1 - sensible / 1000 * moles / MADE.heat - LATENT


def one_by_one(o2: Array, hot: Array, cold: Array) -> tuple[Array, Array]:
    """The mixture burnt to equilibrium at the flue's temperature, then cooled as it is."""
    air_ratio = 1 + excess_air_from_o2(o2, RATIO)
    fractions, sensible = np.empty((4, len(o2))), np.empty(len(o2))
    rows = zip(air_ratio.tolist(), hot.tolist(), cold.tolist(), strict=True)
    for i, (ratio, warm, air) in enumerate(rows):
        FIRE.TP = warm, 101325.0
        FIRE.set_equivalence_ratio(1 / ratio, FUEL, AIR)
        FIRE.equilibrate("TP")
        fractions[:, i] = FIRE.X[:4]
        held = FIRE.enthalpy_mole
        FIRE.TP = air, 101325.0
        sensible[i] = held - FIRE.enthalpy_mole
    return fractions, efficiencies(sensible, fractions[0])


def in_arrays(o2: Array, hot: Array, cold: Array) -> tuple[Array, Array]:
    """The flue gas handed over as known, for its enthalpies alone."""
    fractions, _ = ours(o2, hot, cold)
    states = cantera.SolutionArray(FIRE, len(o2))
    X = np.zeros((len(o2), FIRE.n_species))
    X[:, :4] = fractions.T
    states.TPX = hot, 101325.0, X
    held = states.enthalpy_mole
    states.TP = cold, 101325.0
    return fractions, efficiencies(held - states.enthalpy_mole, fractions[0])


def check() -> float:
    """The largest difference of a fraction or an efficiency, relative to it."""
    few = (O2[:FEW], HOT[:FEW], COLD[:FEW])
    fractions, efficiency = ours(*few)
    worst = 0.0
    for rival in (one_by_one, in_arrays):
        theirs, their_efficiency = rival(*few)
        worst = max(worst, float(np.abs(fractions / theirs - 1).max()),
                    float(np.abs(efficiency / their_efficiency - 1).max()))  # fmt: skip
    assert worst < AGREE, worst
    return worst


def seconds(work: Work, readings: int, block: int) -> float:
    """How long for all of them, going by so many."""
    start = perf_counter()
    for i in range(0, readings, block):
        work(*(each[i : i + block] for each in (O2, HOT, COLD)))
    return (perf_counter() - start) * MANY / readings


def main() -> None:
    """Check, then take turns."""
    worst = check()
    works = ((ours, MANY, BLOCK), (one_by_one, FEW, FEW), (in_arrays, FEW, FEW))
    turns = [[seconds(*work) for work in works] for _ in range(TURNS)]
    mine, alone, arrays = (median(each) for each in zip(*turns, strict=True))
    print(f"combustion, {MANY} flue readings in arrays of {BLOCK}: flue gas and efficiency "
          f"{mine:.3f} s, Cantera {alone:.0f} s, {alone / mine:.0f} times; its enthalpies alone in "
          f"SolutionArray {arrays:.1f} s, {arrays / mine:.0f} times; "
          f"largest difference {worst:.2%}")  # fmt: skip


if __name__ == "__main__":
    main()
