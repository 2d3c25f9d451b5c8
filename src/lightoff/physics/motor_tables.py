"""What codes print of motors: full-load amps, starting power by letter, least efficiency.

They are there to tell whether a plate was read right. The plate itself comes first.
"""

from lightoff.quantity import si

Rows = dict[float, tuple[float, ...]]

HORSEPOWER = si(1, "hp")  # [W]
NEAR = 0.03  # [1] a power this near to a row of a table is that row: kW plates are rounded

# amps at full load by horsepower; NFPA 70 (2023), table 430.250; 1/2, 5 and 30 hp from memory
THREE_PHASE_VOLTS = (200, 208, 230, 460, 575)
THREE_PHASE_AMPS: Rows = {
    0.5: (2.5, 2.4, 2.2, 1.1, 0.9),
    0.75: (3.7, 3.5, 3.2, 1.6, 1.3),
    1: (4.8, 4.6, 4.2, 2.1, 1.7),
    1.5: (6.9, 6.6, 6.0, 3.0, 2.4),
    2: (7.8, 7.5, 6.8, 3.4, 2.7),
    3: (11, 10.6, 9.6, 4.8, 3.9),
    5: (17.5, 16.7, 15.2, 7.6, 6.1),
    7.5: (25.3, 24.2, 22, 11, 9),
    10: (32.2, 30.8, 28, 14, 11),
    15: (48.3, 46.2, 42, 21, 17),
    20: (62.1, 59.4, 54, 27, 22),
    25: (78.2, 74.8, 68, 34, 27),
    30: (92, 88, 80, 40, 32),
    40: (120, 114, 104, 52, 41),
    50: (150, 143, 130, 65, 52),
}

# the same of single-phase motors; NFPA 70 (2023), table 430.248; 1/2 and 5 hp from memory
SINGLE_PHASE_VOLTS = (115, 200, 208, 230)
SINGLE_PHASE_AMPS: Rows = {
    1 / 6: (4.4, 2.5, 2.4, 2.2),
    0.25: (5.8, 3.3, 3.2, 2.9),
    1 / 3: (7.2, 4.1, 4, 3.6),
    0.5: (9.8, 5.6, 5.4, 4.9),
    0.75: (13.8, 7.9, 7.6, 6.9),
    1: (16, 9.2, 8.8, 8),
    1.5: (20, 11.5, 11, 10),
    2: (24, 13.8, 13.2, 12),
    3: (34, 19.6, 18.7, 17),
    5: (56, 32.2, 30.8, 28),
    7.5: (80, 46, 44, 40),
    10: (100, 57.5, 55, 50),
}

# least nominal efficiency at full load [percent] by horsepower, of motors with 6, 4 and 2 poles;
# US DOE, 10 CFR 431.25, table 1 (made from 2010 on; older ones are worse)
POLES = (6, 4, 2)
OPEN_EFFICIENCY: Rows = {
    1: (82.5, 85.5, 77.0),
    1.5: (86.5, 86.5, 84.0),
    2: (87.5, 86.5, 85.5),
    3: (88.5, 89.5, 85.5),
    5: (89.5, 89.5, 86.5),
    7.5: (90.2, 91.0, 88.5),
    10: (91.7, 91.7, 89.5),
    15: (91.7, 93.0, 90.2),
    20: (92.4, 93.0, 91.0),
    25: (93.0, 93.6, 91.7),
    30: (93.6, 94.1, 91.7),
    40: (94.1, 94.1, 92.4),
    50: (94.1, 94.5, 93.0),
}
ENCLOSED_EFFICIENCY: Rows = {
    1: (82.5, 85.5, 77.0),
    1.5: (87.5, 86.5, 84.0),
    2: (88.5, 86.5, 85.5),
    3: (89.5, 89.5, 86.5),
    5: (89.5, 89.5, 88.5),
    7.5: (91.0, 91.7, 89.5),
    10: (91.0, 91.7, 90.2),
    15: (91.7, 92.4, 91.0),
    20: (91.7, 93.0, 91.0),
    25: (93.0, 93.6, 91.7),
    30: (93.0, 93.6, 91.7),
    40: (94.1, 94.1, 92.4),
    50: (94.1, 94.5, 93.0),
}

# least average efficiency [percent] of small open motors, by the same poles, 0 where there is none;
# US DOE, 10 CFR 431.446 (made from 2015 on): three-phase, and single-phase run by a capacitor
SMALL_THREE_PHASE_EFFICIENCY: Rows = {
    0.25: (67.5, 69.5, 65.6),
    1 / 3: (71.4, 73.4, 69.5),
    0.5: (75.3, 78.2, 73.4),
    0.75: (81.7, 81.1, 76.8),
}
SINGLE_PHASE_EFFICIENCY: Rows = {
    0.25: (62.2, 68.5, 66.6),
    1 / 3: (66.6, 72.4, 70.5),
    0.5: (76.2, 76.2, 72.4),
    0.75: (80.2, 81.8, 76.2),
    1: (81.1, 82.6, 80.4),
    1.5: (0, 83.8, 81.5),
    2: (0, 84.5, 82.9),
    3: (0, 0, 84.1),
}

# kVA per horsepower at standstill, from this letter's figure up to just under the next one's;
# NFPA 70 (2023), table 430.7(B); V has no upper end
CODE_LETTERS = {
    "A": (0.0, 3.14),
    "B": (3.15, 3.54),
    "C": (3.55, 3.99),
    "D": (4.0, 4.49),
    "E": (4.5, 4.99),
    "F": (5.0, 5.59),
    "G": (5.6, 6.29),
    "H": (6.3, 7.09),
    "J": (7.1, 7.99),
    "K": (8.0, 8.99),
    "L": (9.0, 9.99),
    "M": (10.0, 11.19),
    "N": (11.2, 12.49),
    "P": (12.5, 13.99),
    "R": (14.0, 15.99),
    "S": (16.0, 17.99),
    "T": (18.0, 19.99),
    "U": (20.0, 22.39),
}


def code_amps(power: float, volts: float, phases: int) -> float | None:
    """The code's full-load amps of a motor of this power [W] and volts; None where it has none."""
    columns, rows = (
        (THREE_PHASE_VOLTS, THREE_PHASE_AMPS)
        if phases == 3
        else (SINGLE_PHASE_VOLTS, SINGLE_PHASE_AMPS)
    )
    column = min(range(len(columns)), key=lambda i: abs(columns[i] - volts))
    row = _row(rows, power)
    return None if row is None or abs(columns[column] / volts - 1) > 0.1 else row[column]


def least_efficiency(
    power: float, poles: int, *, phases: int = 3, enclosed: bool = True
) -> float | None:
    """The least efficiency the law allows at this power [W]; None where it has none."""
    large = ENCLOSED_EFFICIENCY if enclosed else OPEN_EFFICIENCY
    rows = SMALL_THREE_PHASE_EFFICIENCY | large if phases == 3 else SINGLE_PHASE_EFFICIENCY
    row = _row(rows, power)
    if row is None or poles not in POLES:
        return None
    return row[POLES.index(poles)] / 100 or None


def locked_rotor_range(letter: str) -> tuple[float, float]:
    """Apparent power at standstill over rated power, between what and what [VA/W]."""
    low, high = CODE_LETTERS[letter]
    return low * 1000 / HORSEPOWER, high * 1000 / HORSEPOWER


def _row(rows: Rows, power: float) -> tuple[float, ...] | None:
    horsepower = min(rows, key=lambda row: abs(row * HORSEPOWER / power - 1))
    return rows[horsepower] if abs(horsepower * HORSEPOWER / power - 1) < NEAR else None
