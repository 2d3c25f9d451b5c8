"""What was typed for a calculation, read into SI; every fault at once, each in one sentence."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from lightoff.calculations import Calculation, Input
from lightoff.job.faults import one_line
from lightoff.job.nearest import unknown
from lightoff.job.quantities import Of
from lightoff.quantity import EXAMPLES, LightoffError, in_unit, parse, ways
from lightoff.surfaces.calculating import several
from lightoff.surfaces.calculating.examples import example_of
from lightoff.surfaces.calculating.faults import Fault

# kinds with values below zero, and kinds of which there is never none
EITHER_WAY = frozenset({"temperature", "temperature difference", "angle"})
NEVER_NONE = frozenset({
    "absolute pressure", "time", "size", "volume", "area", "density", "heating value",
})  # fmt: skip

Typed = Mapping[str, object]  # texts, or numbers and lists where they come as JSON


@dataclass(frozen=True)
class Read:
    """The values by name, SI, and what is wrong with the rest."""

    values: Mapping[str, Any]
    faults: tuple[Fault, ...]


def read(calculation: Calculation, typed: Typed) -> Read:
    """Read every input; what is left blank is left out."""
    names = [each.name for each in calculation.inputs]
    faults = [Fault(name, unknown(name, f"an input of {calculation.name}", names))
              for name in typed if name not in names]  # fmt: skip
    values: dict[str, Any] = {}
    for each in calculation.inputs:
        try:
            value = read_one(each, typed.get(each.name), hint(calculation, each))
            values |= {} if value is None else {each.name: value}
        except several.ListError as error:
            faults += [Fault(each.name, one_line(message)) for message in error.messages]
        except LightoffError as error:
            faults.append(Fault(each.name, one_line(str(error))))
    return Read(values, tuple(faults))


def read_one(asked: Input, typed: object, right: str) -> Any:
    """One input in SI, None where it may be left out and is."""
    if is_blank(typed):
        if asked.required:
            raise LightoffError(f"not given: write {right}")
        return None
    if asked.choices:
        return choice(asked.choices, typed)
    if asked.many:
        return several.values(typed, asked.kind)
    try:
        return _possible(asked).quantity(typed).value
    except ValueError as error:
        raise LightoffError(str(error)) from None


def _possible(asked: Input) -> Of:
    """A value of an input, within what is possible at all."""
    if asked.signed or asked.kind in EITHER_WAY:
        return Of(asked.kind)
    if asked.kind in NEVER_NONE:
        return Of(asked.kind, above=0.0, most=asked.most)
    return Of(asked.kind, least=0.0, most=asked.most)


def is_blank(typed: object) -> bool:
    """Whether nothing was typed."""
    return typed is None or (
        isinstance(typed, str | list | tuple) and not str(typed).strip(" []()")
    )


def choice(words: Sequence[str], typed: object) -> str:
    """The word that was meant, whatever its capitals."""
    folded = {word.casefold(): word for word in words}
    text = " ".join(str(typed).split())
    if text.casefold() in folded:
        return folded[text.casefold()]
    raise LightoffError(unknown(text, "one of the words due", words))


def hint(calculation: Calculation, asked: Input) -> str:
    """How an input is rightly written, for a sentence: as in the example, and in another unit."""
    if asked.choices:
        return " or ".join(f'"{word}"' for word in asked.choices)
    own = example_of(calculation.name, asked.name)
    if own is None and asked.kind == "number" and asked.default is not None:
        own = f"{asked.default:g}"
    if own is None:
        return ways(asked.kind)
    if asked.kind == "number" or asked.many:
        return f'"{own}"'
    return f'"{own}" or "{_in_another_unit(own, asked.kind)}"'


def _in_another_unit(typed: str, kind: str) -> str:
    """The same in another unit, to three digits.

    >>> _in_another_unit("1200 ft", "length"), _in_another_unit("18 degF", "temperature")
    ('366 m', '-7.78 degC')
    """
    quantity = parse(typed, kind)
    units = [parse(example, kind).unit for example in reversed(EXAMPLES[kind])]
    unit = next((each for each in units if each != quantity.unit), quantity.unit)
    value = in_unit(quantity.value, kind, unit)
    places = max(0, 2 - math.floor(math.log10(abs(value)))) if value else 0
    return f"{round(value, places):g} {unit}"
