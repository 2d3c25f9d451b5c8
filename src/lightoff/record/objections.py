"""What speaks against a command before its entry is even read."""

from collections.abc import Iterator
from typing import Any

from lightoff.job import Fault
from lightoff.job.job import Tree
from lightoff.job.nearest import shown, unknown
from lightoff.record.commands import (
    CloseVisit,
    Command,
    Correct,
    CorrectPlate,
    DeclareUnit,
    Note,
    OpenVisit,
    Withdraw,
)
from lightoff.record.events import NOTED
from lightoff.record.fold import CLOSING, OPENING, Entry, State


def misplaced(state: State, command: Command) -> Iterator[Fault]:
    """Why there is no place to write it to, so that its entry cannot be read either."""
    if isinstance(command, DeclareUnit):
        if state.version:
            yield _because("unit", "a unit is declared here already: correct its plate instead")
    elif not state.version:
        yield _because("unit", "no unit is declared here yet")
    if isinstance(command, (Note, CloseVisit)) and not 1 <= command.visit <= state.visits:
        yield _because("visit", f"there is no visit {shown(command.visit)}: {_held(state)}")
    if isinstance(command, Note) and command.kind not in NOTED:
        yield _because("kind", unknown(command.kind, "a table of a visit", NOTED))
    if isinstance(command, (Correct, Withdraw)) and state.entry(command.entry_id) is None:
        yield _because("entry", f"no entry here has the id {shown(command.entry_id)}")
    if not isinstance(_brought(command), dict):
        yield _because("entry", f"{shown(_brought(command))} is not a table")


def objections(state: State, command: Command, by: str) -> Iterator[Fault]:
    """Why it may not be written, though it has its place."""
    if not by.strip():
        yield _because("by", "nobody signs this: say who writes it")
    if isinstance(command, (Correct, Withdraw)):
        if not command.reason.strip():
            yield _because("reason", "no reason is given: say what was wrong")
        if entry := state.entry(command.entry_id):
            yield from _against_changing(entry, command)
    if isinstance(command, (Note, CloseVisit)) and state.closing(command.visit):
        yield _because("visit", "this visit is closed: withdraw its closing first")
    if isinstance(command, CorrectPlate) and _table(command).get("visit"):
        yield _because("visit", "the plate holds no visits: leave them out")


def _against_changing(entry: Entry, command: Correct | Withdraw) -> Iterator[Fault]:
    if entry.withdrawn:
        yield _because("entry", "this entry was withdrawn: write it anew")
    if isinstance(command, Withdraw):
        if entry.kind == OPENING:
            yield _because("entry", "a visit, once opened, stays: correct its fields instead")
    elif entry.kind == OPENING:
        yield from _against_fields(_table(command))
    elif entry.kind == CLOSING:
        yield from _against_leaving(_table(command))


def _against_fields(now: Tree) -> Iterator[Fault]:
    """A visit's own fields hold neither its entries nor its end, which have rules of their own."""
    for table in NOTED:
        if now.get(table):
            yield _because(table, "entries are corrected one by one: leave them out")
    if now.get("left") is not None:
        yield _because("left", "how the unit was left is told by closing the visit")


def _against_leaving(now: Tree) -> Iterator[Fault]:
    if now.get("left") is None:
        yield _because("left", "a visit is closed by telling how the unit was left")
    for key in now.keys() - {"left", "told"}:
        yield _because(str(key), "a closing tells how the unit was left, and to whom: no more")


def _table(command: Command) -> Tree:
    tree = _brought(command)
    return tree if isinstance(tree, dict) else {}


def _brought(command: Command) -> Any:
    """The tree a command brings: a table, unless somebody sent another kind of JSON."""
    match command:
        case DeclareUnit(tree) | CorrectPlate(tree) | OpenVisit(tree):
            return tree
        case Note(entry=tree) | Correct(now=tree):
            return tree
    return {}


def _held(state: State) -> str:
    count = state.visits
    return {0: "none was opened", 1: "there is one"}.get(count, f"there are visits 1 to {count}")


def _because(place: str, sentence: str) -> Fault:
    return Fault(place, None, sentence)
