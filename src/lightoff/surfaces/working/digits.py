"""A number of a working, as every surface shows it: the same six digits, grouped alike."""

from dataclasses import dataclass

from lightoff.formula.text import figure

NARROW = "\u202f"  # between groups of three digits, where type is set
NO_BREAK = "\u00a0"  # the same in a terminal, whose fonts may lack the narrow one
MINUS = "−"
RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")


@dataclass(frozen=True)
class Digits:
    """A number taken apart: `-1.2e-07` is minus, "1.2" and -7; `exponent` is None where none is."""

    negative: bool
    mantissa: str
    exponent: int | None

    def grouped(self, gap: str = NARROW) -> str:
        """The mantissa, its whole part in threes when it has five digits or more.

        >>> digits(38.4e6).grouped(" "), digits(1013.25).grouped(" ")
        ('38 400 000', '1013.25')
        """
        whole, point, rest = self.mantissa.partition(".")
        parts = f"{int(whole):,}".replace(",", gap) if len(whole) > 4 else whole
        return parts + point + rest


def digits(value: float) -> Digits:
    """A number of a formula, to the digits a formula is written with.

    >>> digits(-1.2e-7)
    Digits(negative=True, mantissa='1.2', exponent=-7)
    """
    return read(figure(value))


def read(text: str) -> Digits:
    """The same from what a formula wrote."""
    mantissa, _, exponent = text.partition("e")
    power = int(exponent) if exponent else None
    return Digits(mantissa.startswith("-"), mantissa.lstrip("-"), power)


def plain(told: Digits, gap: str = NO_BREAK) -> str:
    """The number on one line of text.

    >>> plain(digits(-1.2e-7)), plain(digits(6356766.0), " ")
    ('−1.2e−7', '6 356 766')
    """
    sign = MINUS if told.negative else ""
    tail = "" if told.exponent is None else f"e{told.exponent}".replace("-", MINUS)
    return sign + told.grouped(gap) + tail


def printed(told: Digits) -> str:
    """The number standing alone, a power of ten raised.

    >>> printed(digits(-1.2e-7))
    '−1.2\u00a0×\u00a010⁻⁷'
    """
    sign = MINUS if told.negative else ""
    tail = "" if told.exponent is None else f" × 10{str(told.exponent).translate(RAISED)}"
    return sign + told.grouped() + tail.replace(" ", NO_BREAK)
