"""What every page has around its own content."""

from dataclasses import dataclass

from lightoff.machine import Machine
from lightoff.surfaces.words import Speech


@dataclass(frozen=True)
class Link:
    """Somewhere to go; `here` where one already is."""

    text: str
    href: str
    here: bool = False


@dataclass(frozen=True)
class Shell:
    """The line above a page: what is looked at, and where else one can go."""

    title: str
    tag: str
    serves: str
    nav: tuple[Link, ...]


def outside(speech: Speech, title: str, here: str) -> Shell:
    """Around the pages that are of no unit."""
    pages = (("units", "/"), ("new", "/new"), ("calculations", "/calc"))
    nav = tuple(Link(speech.word(f"nav:{name}"), href, name == here) for name, href in pages)
    return Shell(title, speech.word("nav:all-units"), "", nav)


def around_unit(
    speech: Speech, machine: Machine, stream: str, visit: int | None, here: str, title: str
) -> Shell:
    """Around the pages of one unit; `visit` is the number of the one looked at."""
    pages = [("units", "/"), ("plan", plan_url(stream, visit)), ("visit", unit_url(stream, visit))]
    if visit is not None:
        pages.append(("report", f"{unit_url(stream, visit)}/report"))
    pages.append(("calculations", "/calc"))
    nav = tuple(Link(speech.word(f"nav:{name}"), href, name == here) for name, href in pages)
    tag = machine.unit.tag
    return Shell(f"{title} · {tag}", tag, machine.unit.serves or "", nav)


def plan_url(stream: str, visit: int | None = None) -> str:
    """The address of the plan of a visit; of the first one before there is any."""
    return f"{unit_url(stream, visit)}/plan"


def unit_url(stream: str, visit: int | None = None) -> str:
    """The address of a unit, or of one visit to it."""
    return f"/units/{stream}" if visit is None else f"/units/{stream}/visits/{visit}"
