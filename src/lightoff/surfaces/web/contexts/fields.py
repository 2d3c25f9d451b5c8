"""What a form offers: choices, hints, and what was typed before."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from lightoff.quantity import BY_NAME, EXAMPLES, KINDS, System, printed_unit
from lightoff.surfaces.words import Speech

# units a gauge may show besides the two that a kind is shown in
_ALSO: dict[str, tuple[str, ...]] = {
    "pressure": ("mbar", "psi"),
    "test pressure": ("inwc",),
    "absolute pressure": ("mbar", "psi"),
    "airflow": ("scfm", "L/s"),
    "gas flow": (),
    "time": ("min",),
    "size": ("mm",),
    "flame signal": ("V",),
    "electric power": ("W",),
    "concentration": ("%",),
}


@dataclass(frozen=True)
class Option:
    """One choice."""

    value: str
    text: str
    chosen: bool = False


@dataclass(frozen=True)
class Options:
    """Choices under one head."""

    title: str
    options: tuple[Option, ...]


@dataclass(frozen=True)
class Typed:
    """What a person typed into a form, and what was wrong with it, both by field.

    A page has many forms; `form` names the one that was sent.
    """

    values: Mapping[str, str] = field(default_factory=dict)
    faults: Mapping[str, str] = field(default_factory=dict)
    form: str = ""

    def value(self, name: str, default: str = "") -> str:
        return self.values.get(name, default)

    def of(self, form: str) -> "Typed":
        """This, if it belongs to that form; else nothing typed."""
        return self if self.form == form else Typed()

    def besides(self, *fields: str) -> tuple[str, ...]:
        """What was wrong with none of these fields: it is told above the form."""
        return tuple(text for name, text in self.faults.items() if name not in fields)


@dataclass(frozen=True)
class Field:
    """One text field: what it asks for, what stands in it, what is wrong with it."""

    name: str
    label: str
    value: str = ""
    hint: str = ""
    fault: str = ""
    unit: str = ""
    mode: str = "text"  # the keyboard a phone brings up


def field_of(name: str, speech: Speech, typed: Typed, *, kind: str = "", label: str = "") -> Field:
    """A field as it was typed; a quantity says in which unit a bare number is taken."""
    return Field(
        name=name,
        label=speech.word(label or f"field:{name}"),
        value=typed.value(name),
        hint=speech.word("hint:such-as", ways=hint(kind)) if kind else "",
        fault=typed.faults.get(name, ""),
        unit=printed_unit(unit_of(kind, speech.system)) if kind else "",
        mode="decimal" if kind else "text",
    )


def options(pairs: Iterable[tuple[str, str]], chosen: str) -> tuple[Option, ...]:
    """Choices, one of them chosen."""
    return tuple(Option(value, text, value == chosen) for value, text in pairs)


def unit_of(kind: str, system: System) -> str:
    """The unit in which a bare number of this kind is taken.

    >>> unit_of("pressure", "us")
    'inwc'
    """
    return KINDS[kind].unit(system)


def units_of(kind: str, system: System) -> tuple[str, ...]:
    """The units a reading of this kind may be typed in by one tap, the usual one first."""
    first = unit_of(kind, system)
    other: System = "si" if system == "us" else "us"
    names = (first, unit_of(kind, other), *_ALSO.get(kind, ()))
    return tuple(dict.fromkeys(name for name in names if name in BY_NAME))


def hint(kind: str) -> str:
    """Right ways to write this kind."""
    first, second = EXAMPLES[kind]
    if kind == "fraction":  # a bare number is taken in percent where the unit stands beside it
        return second
    return f"{first}, {second}"
