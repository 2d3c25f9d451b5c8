"""What was typed for a calculation, read into SI; every fault at once, each in one sentence."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from lightoff.calculations import Calculation, Input
from lightoff.job.faults import one_line
from lightoff.job.nearest import unknown
from lightoff.quantity import EXAMPLES, LightoffError, parse, ways
from lightoff.surfaces.calculating import several
from lightoff.surfaces.calculating.examples import example_of
from lightoff.surfaces.calculating.faults import Fault

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
    return several.values(typed, asked.kind) if asked.many else parse(typed, asked.kind).value


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
    other = EXAMPLES[asked.kind][1]
    return f'"{own}"' if asked.kind == "number" or asked.many else f'"{own}" or "{other}"'
