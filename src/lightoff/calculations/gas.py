"""Heating value, relative density and Wobbe number of a gas that was analysed."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics.gas_properties import REFERENCE_STATES, properties

# inputs by the names of the components they stand for, as a laboratory lists them
PARTS = {
    "methane": "methane",
    "ethane": "ethane",
    "propane": "propane",
    "isobutane": "isobutane",
    "n_butane": "n-butane",
    "isopentane": "isopentane",
    "n_pentane": "n-pentane",
    "hexanes": "n-hexane",
    "propylene": "propylene",
    "hydrogen": "hydrogen",
    "carbon_monoxide": "carbon monoxide",
    "nitrogen": "nitrogen",
    "carbon_dioxide": "carbon dioxide",
    "oxygen": "oxygen",
    "helium": "helium",
}
WHOLE_WITHIN = 0.005  # [1] an analysis is rounded, more is a part left out; engineering judgement
IDEAL_WITHIN = 0.005  # [1] natural gas is; beyond it tables of ideal gas mislead; the same


def of_analysis(*, reference: str, **parts: Number | None) -> dict[str, Any]:
    """What the parts come to at a reference state."""
    gas = {PARTS[name]: share for name, share in parts.items() if share is not None}
    for name, share in parts.items():
        if share is not None and share < 0:
            raise CannotCalculateError("calc-part-negative", name)
    whole = _whole(parts)
    if abs(whole - 1) > WHOLE_WITHIN:
        raise CannotCalculateError("calc-parts-sum", "methane", sum=whole)
    found = properties(gas, REFERENCE_STATES[reference])
    return {
        "heating_value": found.heating_value,
        "net_heating_value": found.net_heating_value,
        "relative_density": found.relative_density,
        "wobbe": found.wobbe,
        "gas_density": found.density,
        "compressibility": found.compressibility,
    }


def _whole(parts: Mapping[str, Any]) -> float:
    """What the parts add up to."""
    return sum(float(parts[name]) for name in PARTS if parts[name] is not None)


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What the figures are per volume of, and how far a table of ideal gas would be off."""
    notes = [Note("calc-gas-dry", {}, advice=True)]
    whole, real = _whole(used), 1 / results["compressibility"] - 1
    if abs(whole - 1) > 1e-6:
        notes.append(Note("calc-parts-rounded", {"sum": whole}, advice=True))
    if real > IDEAL_WITHIN:
        notes.append(Note("calc-gas-real", {"more": real}, advice=True))
    return tuple(notes)


GAS = Calculation(
    name="gas",
    work=of_analysis,
    inputs=(
        *(Input(name, "fraction", optional=True) for name in PARTS),
        Input("reference", choices=tuple(REFERENCE_STATES), default="us-trade"),
    ),
    outputs=(
        Output("heating_value", "heating value"),
        Output("net_heating_value", "heating value"),
        Output("relative_density"),
        Output("wobbe", "heating value"),
        Output("gas_density", "density"),
        Output("compressibility"),
    ),
    remark=remark,
)
