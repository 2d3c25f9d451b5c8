"""A quantity as a person writes it, to SI.

>>> parse("3.5 inwc", "pressure").value
871.811185
>>> round(parse("4 ft 6 in", "length").value, 9)
1.3716
>>> parse("5 3/8 in", "size").value
0.136525
>>> parse("40 degF", "temperature difference").value
22.22222222222222
"""

import difflib
import math
import re
from dataclasses import dataclass

from lightoff.quantity.errors import QuantityError
from lightoff.quantity.kinds import EXAMPLES, KINDS, LARGEST, Kind
from lightoff.quantity.units import BY_NAME, Unit, find, spellings

LONGEST = 80  # characters; no quantity needs more

_VULGAR = dict(
    zip("½⅓⅔¼¾⅛⅜⅝⅞", ("1/2", "1/3", "2/3", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8"), strict=True)
)
_FRACTION = r"\d+/\d+"
_DECIMAL = r"(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?"
_NUMBER = rf"[+-]?(?:\d+[ -]{_FRACTION}|{_FRACTION}|{_DECIMAL})"
_WHOLE = re.compile(rf"\s*({_NUMBER})\s*(.*?)\s*", re.ASCII | re.DOTALL)
_FEET_INCHES = re.compile(
    rf"\s*([+-]?\d+)\s*(?:ft|feet|foot|')\s*-?\s*({_NUMBER})\s*(?:in|inch|inches|\")\.?\s*",
    re.ASCII,
)


_BOTTOM = re.compile(r"\d/(\d+)")
_LAST = re.compile(r"\d[\d,]*(?:\.(\d*))?(?:[eE]([-+]?\d+))?")


@dataclass(frozen=True)
class Quantity:
    """A value in SI, the unit it was written in, and the dimension of both.

    `step` is the size of the last digit written [SI].
    """

    value: float
    unit: str
    dimension: str
    step: float


def parse(text: object, kind: str) -> Quantity:
    """Read `text` as a quantity of `kind` (a name in `KINDS`).

    Raises `QuantityError` with one sentence that names two right ways to write it.
    """
    what = KINDS[kind]
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        return _bare(_float(text), what)
    if not isinstance(text, str):
        raise QuantityError(f"{_shown(text)} is not text: write {_article(what)} as {ways(kind)}")
    if len(text) > LONGEST:
        raise QuantityError(f"{_shown(text)} is too long: write {_article(what)} as {ways(kind)}")
    number, unit_text = _split(text, what)
    if not unit_text:
        return _bare(number, what, text)
    return _convert(number, _unit(unit_text, text, what), text, what)


def ways(kind: str) -> str:
    """Two right ways to write this kind, for a sentence."""
    first, second = EXAMPLES[kind]
    return f'"{first}" or "{second}"'


def _split(text: str, what: Kind) -> tuple[float, str]:
    """The number and the unit in `text`."""
    tidy = _tidy(text)
    if feet := _FEET_INCHES.fullmatch(tidy):
        whole, inches = _number(feet[1]), _number(feet[2])
        return whole * 12 + math.copysign(inches, -1 if feet[1].startswith("-") else 1), "in"
    if what.dimension == "energy price":
        tidy = tidy.replace("$", "", 1)
    match = _WHOLE.fullmatch(tidy)
    if match is None:
        raise QuantityError(
            f"{_shown(text)} does not begin with a number: write {_article(what)} as "
            f"{ways(what.name)}"
        )
    rest = match[2]
    if re.match(r"[,.\d]", rest):
        raise QuantityError(
            f"the number in {_shown(text)} can be read in two ways: use a point for decimals, "
            f"as in {ways(what.name)}"
        )
    return _number(match[1]), rest


def _float(number: float) -> float:
    """A whole number may be too large for a float; it is then no more finite than one."""
    try:
        return float(number)
    except OverflowError:
        return math.inf


def _tidy(text: str) -> str:
    text = text.replace("−", "-").replace("–", "-").replace("\u00a0", " ").replace("\u202f", " ")
    for sign, plain in _VULGAR.items():
        text = text.replace(sign, f" {plain}")
    return text.strip()


def _number(text: str) -> float:
    sign = -1.0 if text.startswith("-") else 1.0
    body = text.lstrip("+-").replace(",", "")
    if "/" not in body:
        return sign * float(body)
    whole, _, fraction = body.replace("-", " ").rpartition(" ")
    top, bottom = fraction.split("/")
    if int(bottom) == 0:
        raise QuantityError(f'the fraction "{fraction}" divides by zero')
    return sign * (float(whole or 0) + int(top) / int(bottom))


def _unit(unit_text: str, text: str, what: Kind) -> Unit:
    unit = find(unit_text)
    if unit is None:
        near = difflib.get_close_matches(unit_text, spellings(), 1, 0.6)
        hint = f' (did you mean "{near[0]}"?)' if near else ""
        raise QuantityError(
            f'"{unit_text[:20]}" in {_shown(text)} is not a known unit{hint}: write '
            f"{_article(what)} as {ways(what.name)}"
        )
    if unit.dimension not in (what.dimension, *what.also):
        raise QuantityError(
            f"{_shown(text)} is {_a(unit.dimension)}; here {_article(what)} is due, such as "
            f"{ways(what.name)}"
        )
    return unit


def _bare(number: float, what: Kind, text: str | None = None) -> Quantity:
    if what.dimension not in ("fraction", "number"):
        shown = _shown(text) if text is not None else f"{number:g}"
        raise QuantityError(f"{shown} has no unit: write {_article(what)} as {ways(what.name)}")
    return _convert(number, BY_NAME["1"], text if text is not None else f"{number:g}", what)


def _convert(number: float, unit: Unit, text: str, what: Kind) -> Quantity:
    value = number * unit.factor + (0.0 if what.difference else unit.offset)
    if not math.isfinite(value):
        raise QuantityError(
            f"{_shown(text)} is not a finite number: write {_article(what)} as {ways(what.name)}"
        )
    if what.dimension == "temperature" and not what.difference and value < 0:
        raise QuantityError(f"{_shown(text)} is below absolute zero (-459.67 degF, -273.15 degC)")
    if abs(value) > LARGEST[unit.dimension if unit.name != "1" else what.dimension]:
        raise QuantityError(
            f"{_shown(text)} is more than there is anywhere near such a unit: write "
            f"{_article(what)} as {ways(what.name)}"
        )
    dimension = what.dimension if unit.name == "1" else unit.dimension
    return Quantity(value, unit.name, dimension, last_digit(text) * unit.factor)


def last_digit(text: str) -> float:
    """The size of the last digit of the number in a text.

    >>> last_digit("3.50 inwc"), last_digit("160 degF"), last_digit("5 3/8 in")
    (0.01, 1.0, 0.125)
    """
    if fraction := _BOTTOM.search(_tidy(text)):
        return 1 / max(int(fraction[1]), 1)
    number = _LAST.search(text)
    if number is None:
        return 1.0
    return 10.0 ** (int(number[2] or 0) - len(number[1] or ""))


def _shown(text: object) -> str:
    """What was typed, short enough for a sentence and without line breaks."""
    if isinstance(text, str):
        flat = " ".join(text.split())
        return f'"{flat}"' if len(flat) <= 40 else f'"{flat[:37]}..."'
    return f"a {_PYTHON_WORDS.get(type(text).__name__, type(text).__name__)}"


_PYTHON_WORDS = {"bool": "true or false", "list": "list", "dict": "table", "NoneType": "blank"}


def _article(what: Kind) -> str:
    return _a(what.name)


def _a(noun: str) -> str:
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"
