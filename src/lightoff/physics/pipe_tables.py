"""What codes print of gas pipes: inside diameters, fittings, and the two gases they size for."""

from dataclasses import dataclass

from lightoff.formula import Number, formula
from lightoff.quantity import si

# inside diameter [m] of schedule 40 steel pipe by nominal size [in.], the smallest first;
# ASME B36.10M, as heads the sizing tables of IFGC 402.4; 5, 6 and 8 in. from memory
SCHEDULE_40: dict[str, float] = {
    "1/2 in": si(0.622, "in"),
    "3/4 in": si(0.824, "in"),
    "1 in": si(1.049, "in"),
    "1 1/4 in": si(1.380, "in"),
    "1 1/2 in": si(1.610, "in"),
    "2 in": si(2.067, "in"),
    "2 1/2 in": si(2.469, "in"),
    "3 in": si(3.068, "in"),
    "4 in": si(4.026, "in"),
    "5 in": si(5.047, "in"),
    "6 in": si(6.065, "in"),
    "8 in": si(7.981, "in"),
}

# pipe that takes as much pressure as a screwed fitting, in inside diameters; IFGC and NFPA 54
# Annex B, after Crocker, Piping Handbook (1945)
ELBOW = 30.0  # [1] 90 degrees
TEE = 60.0  # [1] through its branch
GATE = 7.0  # [1] gate valve, and a full-bore ball valve with it, open


@dataclass(frozen=True)
class CodeGas:
    """A gas as the codes size pipes for it.

    relative density [1], viscosity [Pa s], superexpansibility Y [1], gross heating value [J/m3].
    """

    relative_density: float
    viscosity: float
    expansion: float
    heating_value: float


# IFGC 402.4 and A.4. Heating values are not the code's: for natural gas the mean of the states, for
# propane what reproduces its tables
CODE_GASES: dict[str, CodeGas] = {
    "natural gas": CodeGas(0.60, 1.2e-5, 0.9992, 38.4e6),
    "propane": CodeGas(1.50, 0.8e-5, 0.9910, si(2500, "Btu/ft3")),
}
CODE_TEMPERATURE = 520 / 1.8  # [K] 60 degF as the codes round it


@formula
def fitting_diameters(elbows: Number, tees: Number, *, valves: Number) -> Number:
    """Pipe that fittings count for, in diameters.

    n = 30 n_e + 60 n_t + 7 n_v

    Parameters
    ----------
    elbows : n_e, number of elbows of 90 degrees, 0 to 100 [1]
    tees : n_t, number of tees passed through the branch, 0 to 100 [1]
    valves : n_v, number of open gate or ball valves, 0 to 100 [1]

    Returns
    -------
    n, length over diameter [1]

    Source: IFGC and NFPA 54 Annex B, table of equivalent lengths, screwed fittings.

    >>> fitting_diameters(4.0, 1.0, valves=2.0)
    194.0
    """
    return ELBOW * elbows + TEE * tees + GATE * valves


@formula
def equivalent_length(length: Number, *, diameter: Number, fittings: Number) -> Number:
    """Length of a pipe with what its fittings count for.

    L = L_0 + n D

    Parameters
    ----------
    length : L_0, of the pipe itself, 0.1 to 1000 [m]
    diameter : D, inside diameter, 0.005 to 0.3 [m]
    fittings : n, what they count for, over the diameter, 0 to 10 000 [1]

    Returns
    -------
    L, equivalent length [m]

    Source: IFGC and NFPA 54 Annex B, equivalent lengths.

    >>> equivalent_length(10.0, diameter=0.05, fittings=100.0)
    15.0
    """
    return length + fittings * diameter
