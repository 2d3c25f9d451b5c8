"""Machines drawn at random from everything a unit may be, for claims that hold for every one."""

from typing import Any

from hypothesis import strategies as st

from lightoff.job import parse_tree
from lightoff.machine import Machine
from lightoff.machine.trips import OPTIONS
from trade.build import Tree, tree, visit

CONTROLS = ("modulating", "two-stage", "single-stage")
SILENT = ("purge", "ignition_trial", "flame_failure", "high_limit", "flue_max", "flue_o2", "rise",
          "max_outlet", "supply_min", "supply_max", "efficiency")  # fmt: skip


ANY = st.integers(1, 3)


@st.composite
def jobs(draw: st.DrawFn, *, furnaces: st.SearchStrategy[int] = ANY) -> Tree:
    """A job of any configuration, some of its plate perhaps silent, without a visit."""
    job = tree(furnaces=draw(furnaces))
    unit = job["unit"]
    unit["arrangement"] = draw(st.sampled_from(["blow-through", "draw-through"]))
    unit["mounting"] = draw(st.sampled_from(["rooftop", "indoor"]))
    unit["options"] = draw(st.lists(st.sampled_from(OPTIONS), unique=True))
    unit["drive"] = {"kind": draw(st.sampled_from(["belt", "direct"])), "vfd": draw(st.booleans())}
    if unit["drive"]["kind"] == "direct":
        unit["motor"]["speed"] = unit["fan"]["speed"] = "1170 rpm"
    if draw(st.booleans()):
        unit["electrical"]["phases"] = 1
        unit["motor"]["full_load_amps"] = "22 A"  # what 10 hp take of 460 V on one phase
    unit["airside"]["recirculation"] = draw(st.sampled_from([0.0, 0.2]))
    leading = draw(st.integers(0, len(unit["furnace"]) - 1))
    for number, furnace in enumerate(unit["furnace"]):
        furnace["leading"] = number == leading
        unit["furnace"][number] = _furnace(draw, furnace)
    if draw(st.booleans()):
        del job["site"]["meter_dial"]
    return job


def _furnace(draw: st.DrawFn, furnace: Tree) -> Tree:
    furnace["control"] = draw(st.sampled_from(CONTROLS))
    furnace["condensing"] = draw(st.booleans())
    train = furnace["train"][0]
    if furnace["control"] == "single-stage":
        train.pop("manifold_low")
    if draw(st.booleans()):
        furnace["train"] = [dict(train, share=0.5), dict(train, share=0.5)]
    if draw(st.booleans()):
        furnace |= {"stage_delay": "30 s", "post_purge": "20 s"}
    if draw(st.booleans()):
        furnace |= {"flue_draft": ["-0.1 inwc", "-0.01 inwc"], "flame_signal": "1.5 uA"}
    for name in draw(st.lists(st.sampled_from(SILENT), unique=True, max_size=3)):
        furnace.pop(name)
    return furnace


def machine(job: Tree) -> Machine:
    """The unit of a job."""
    return parse_tree(job).machine()


def visited(job: Tree, **more: Any) -> Any:
    """The job's blank visit, or one with these entries."""
    return parse_tree(job | {"visit": [visit(**more)]}).visit(1)
