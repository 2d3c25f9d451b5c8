"""The list of calculations, by topic, in the order of the work."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from lightoff.calculations import CALCULATIONS
from lightoff.surfaces.web.contexts.shell import Shell, outside
from lightoff.surfaces.words import Speech

# which calculations belong to a topic, in the order a start-up comes to need them
TOPICS: dict[str, tuple[str, ...]] = {
    "power": ("unbalance", "motor-load", "control-circuit"),
    "airside": (
        "air-density", "humid-air", "traverse-points", "traverse", "airflow-from-rise", "mixed-air",
        "outdoor-air", "fan-law", "sheave", "belt",
    ),
    "gas": ("gas", "clocking", "manifold", "orifice", "pipe-drop", "pipe-size"),
    "flue": ("flue", "co-air-free"),
    "tightness": ("pressure-decay",),
    "building": ("building-pressure", "door-force"),
}  # fmt: skip


@dataclass(frozen=True)
class Way:
    """One calculation to open: its title, and the question it answers."""

    title: str
    about: str
    href: str


@dataclass(frozen=True)
class Topic:
    """The calculations of one topic."""

    title: str
    ways: tuple[Way, ...]


@dataclass(frozen=True)
class CalculationsPage:
    """Everything on the page."""

    shell: Shell
    topics: tuple[Topic, ...]


def calculations_page(speech: Speech) -> CalculationsPage:
    """Every calculation there is; what no topic names stands at the end."""
    title = speech.word("title:calculations")
    named = {name for names in TOPICS.values() for name in names}
    rest = tuple(name for name in CALCULATIONS if name not in named)
    topics = tuple(
        Topic(speech.word(f"topic:{topic}"), tuple(_way(name, speech) for name in there))
        for topic, names in {**TOPICS, "other": rest}.items()
        if (there := [name for name in names if name in CALCULATIONS])
    )
    return CalculationsPage(outside(speech, title, "calculations"), topics)


def _way(name: str, speech: Speech) -> Way:
    href = calculation_url(name, {}, speech)
    return Way(speech.word(f"calc:{name}"), speech.word(f"calc:{name}:about"), href)


def list_url(speech: Speech) -> str:
    """The address of the list."""
    return "/calc" + ("" if speech.system == "us" else f"?units={speech.system}")


def calculation_url(
    name: str, typed: Mapping[str, str], speech: Speech, *, ending: str = ""
) -> str:
    """The address of a calculation: it carries what was typed, and units that are not the usual."""
    pairs = {**typed, **({"units": speech.system} if speech.system != "us" else {})}
    return f"/calc/{name}{ending}" + (f"?{urlencode(pairs)}" if pairs else "")
