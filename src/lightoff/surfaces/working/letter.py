"""The letter of a quantity, taken apart: `Delta_p_ws` is a difference, p, with ws below it."""

import re
from dataclasses import dataclass

GREEK = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "eps": "ε",
    "zeta": "ζ", "eta": "η", "theta": "θ", "kappa": "κ", "lambda": "λ", "lam": "λ", "mu": "μ",
    "nu": "ν", "xi": "ξ", "pi": "π", "rho": "ρ", "sigma": "σ", "tau": "τ", "phi": "φ",
    "chi": "χ", "psi": "ψ", "omega": "ω", "Gamma": "Γ", "Delta": "Δ", "Theta": "Θ",
    "Lambda": "Λ", "Xi": "Ξ", "Pi": "Π", "Sigma": "Σ", "Phi": "Φ", "Psi": "Ψ", "Omega": "Ω",
}  # fmt: skip

_SPECIES = re.compile(r"([A-Z][A-Za-z]*)(\d+)")


@dataclass(frozen=True)
class Letter:
    """What a symbol is made of.

    `number` is a species' own, the 2 of CO2; `below` what stands under the letter, part by part;
    `primes` tells a second quantity of the same letter from the first.
    """

    base: str
    number: str = ""
    below: tuple[str, ...] = ()
    primes: int = 0
    difference: bool = False


def letter(symbol: str) -> Letter:
    """Take a symbol apart.

    >>> letter("Delta_p_ws")
    Letter(base='p', number='', below=('ws',), primes=0, difference=True)
    """
    name = symbol.rstrip("'")
    base, *below = name.split("_")
    difference = base == "Delta" and bool(below)
    if difference:
        base, *below = below
    species = _SPECIES.fullmatch(base)
    base, number = species.groups() if species else (base, "")
    return Letter(
        GREEK.get(base, base),
        number,
        tuple(GREEK.get(part, part) for part in below),
        len(symbol) - len(name),
        difference,
    )


def plain(symbol: str) -> str:
    """The letter on one line of text.

    >>> plain("rho_1"), plain("Delta_p_ws"), plain("T'")
    ('ρ_1', 'Δp_ws', "T'")
    """
    told = letter(symbol)
    whole = "_".join((told.base + told.number, *told.below)) + "'" * told.primes
    return f"Δ{whole}" if told.difference else whole
