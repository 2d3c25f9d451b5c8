"""What stands behind `lightoff calc`: a name, options, and inputs called by their own names.

A value runs to the next `--`, so it needs no quotes: `--heating-value 1030 Btu/ft3`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from lightoff.calculations import Calculation
from lightoff.job.nearest import shown, unknown
from lightoff.surfaces.calculating import Fault, FaultsError

SWITCHES = ("json", "working", "help")
OPTIONS = (*SWITCHES, "units", "table", "pdf")


@dataclass(frozen=True)
class Words:
    """The calculation's name, and every option with what was given to it, once or more."""

    name: str | None
    options: Mapping[str, list[str]]

    def has(self, switch: str) -> bool:
        return switch in self.options

    def value(self, option: str) -> str | None:
        """What was given to an option; None where it was not asked for."""
        given = self.options.get(option)
        return given[-1] if given else None


def read_words(words: Iterable[str]) -> Words:
    """Sort the words of a command line; a `FaultsError` names what belongs nowhere."""
    name, current = None, ""
    options: dict[str, list[str]] = {}
    faults = []
    for word in words:
        if word.startswith("--") or word == "-h":
            option, _, value = ("help" if word == "-h" else word[2:]).partition("=")
            current = option.replace("-", "_")
            options.setdefault(current, []).append(value)
        elif current and current not in SWITCHES:
            options[current][-1] = f"{options[current][-1]} {word}".strip()
        elif name is None:
            name = word
        else:
            faults.append(Fault("", f"{shown(word)} belongs to no input: write --input value"))
    if faults:
        raise FaultsError(faults)
    return Words(name, options)


def typed_inputs(words: Words, calculation: Calculation) -> tuple[dict[str, str], list[Fault]]:
    """What was typed for the inputs, a list perhaps in pieces, and which options are none."""
    known = [as_option(name) for name in (*(each.name for each in calculation.inputs), *OPTIONS)]
    typed, faults = {}, []
    for option, given in words.options.items():
        asked = calculation.input(option)
        if asked is not None:
            typed[option] = ", ".join(given) if asked.many else given[-1]
            if len(given) > 1 and not asked.many:
                faults.append(Fault(as_option(option), f"given {len(given)} times: keep one"))
        elif option not in OPTIONS:
            noun = f"an input of {calculation.name}"
            faults.append(Fault("", unknown(as_option(option), noun, known)))
    return typed, faults


def as_option(name: str) -> str:
    """An input as it is typed on the command line."""
    return f"--{name.replace('_', '-')}"
