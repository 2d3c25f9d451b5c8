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

    `below` is what stands under the letter, part by part; `species` where the letter is a substance
    and the first part its own number, as in CO2; `primes` tell a second quantity of the same letter
    from the first.
    """

    base: str
    below: tuple[str, ...] = ()
    primes: int = 0
    difference: bool = False
    species: bool = False


def letter(symbol: str) -> Letter:
    """Take a symbol apart.

    >>> letter("Delta_p_ws")
    Letter(base='p', below=('ws',), primes=0, difference=True, species=False)
    >>> letter("CO2_max").below
    ('2', 'max')
    """
    name = symbol.rstrip("'")
    base, *below = name.split("_")
    difference = base == "Delta" and bool(below)
    if difference:
        base, *below = below
    species = _SPECIES.fullmatch(base)
    if species:
        base, below = species[1], [species[2], *below]
    parts = tuple(GREEK.get(part, part) for part in below)
    primes = len(symbol) - len(name)
    return Letter(GREEK.get(base, base), parts, primes, difference, bool(species))


def plain(symbol: str) -> str:
    """The letter on one line of text.

    >>> plain("rho_1"), plain("Delta_p_ws"), plain("CO2_max"), plain("T'")
    ('ρ_1', 'Δp_ws', 'CO2_max', "T'")
    """
    told = letter(symbol)
    glue = "" if told.species else "_"
    whole = glue.join((told.base, "_".join(told.below))) if told.below else told.base
    return ("Δ" if told.difference else "") + whole + "'" * told.primes
