"""A record through any life at all: what was acknowledged stays, and stands as a plain model says.

Two writers share each record. The model is a job's tree kept by hand.
"""

import tempfile
from contextlib import ExitStack
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from lightoff.record import (
    Clash,
    CloseVisit,
    Command,
    Correct,
    CorrectPlate,
    DeclareUnit,
    Note,
    OpenVisit,
    Refused,
    Register,
    Stored,
    TakenError,
    Withdraw,
    fold,
    verify,
)
from record.stores import STORES
from record.world import ENTRIES, UNIT, Tree, clock, ids

NOTES = [(kind, entry) for kind, entries in ENTRIES.items() for entry in entries]
writers = st.integers(0, 1)


def unit_at(feet: int) -> Tree:
    return {**UNIT, "site": {"altitude": f"{feet} ft"}}


class Life(RuleBasedStateMachine):
    """Commands in any order, some sent twice, some late, some by the other writer."""

    store_name = ""

    def __init__(self) -> None:
        super().__init__()
        self.exits = ExitStack()
        folder = Path(self.exits.enter_context(tempfile.TemporaryDirectory()))
        self.another = self.exits.enter_context(STORES[self.store_name](folder))
        self.next_id = ids(1)
        self.registers = [self.register(), self.register()]
        self.stream = ""
        self.acknowledged: list[Stored] = []
        self.sent: list[tuple[Command, tuple[Stored, ...]]] = []
        self.model: Tree = {}
        self.entries: list[tuple[int, str, str, Tree]] = []  # standing: visit, kind, id, as typed

    def register(self) -> Register:
        return Register(self.another(), clock=clock(), new_id=self.next_id)

    def teardown(self) -> None:
        self.exits.close()

    def do(self, writer: int, command: Command) -> str:
        """Send a command that must be written, and remember it; its first event's id."""
        stored = self.registers[writer].do(self.stream, command, by="R. Quill")
        self.acknowledged += stored
        self.sent.append((command, stored))
        return stored[0].event.id

    @initialize(feet=st.integers(0, 3000))
    def declare(self, feet: int) -> None:
        self.stream = self.next_id()
        self.model = {"plate": unit_at(feet), "visits": [], "closed": {}}
        self.do(0, DeclareUnit(unit_at(feet)))

    @rule(writer=writers, by=st.sampled_from(["R. Quill", "T. Marrow"]))
    def open_visit(self, writer: int, by: str) -> None:
        self.do(writer, OpenVisit({"by": by}))
        self.model["visits"].append({"by": by})

    @precondition(lambda self: self.open)
    @rule(writer=writers, note=st.sampled_from(NOTES), data=st.data())
    def note(self, writer: int, note: tuple[str, Tree], data: st.DataObject) -> None:
        kind, entry = note
        visit = data.draw(st.sampled_from(self.open))
        entry_id = self.do(writer, Note(visit, kind, deepcopy(entry)))
        self.entries.append((visit, kind, entry_id, entry))

    @precondition(lambda self: self.entries)
    @rule(writer=writers, data=st.data())
    def correct(self, writer: int, data: st.DataObject) -> None:
        at = data.draw(st.integers(0, len(self.entries) - 1))
        visit, kind, entry_id, _ = self.entries[at]
        now = data.draw(st.sampled_from(ENTRIES[kind]))
        self.do(writer, Correct(entry_id, now, "misread"))
        self.entries[at] = (visit, kind, entry_id, now)

    @precondition(lambda self: self.entries)
    @rule(writer=writers, data=st.data())
    def withdraw(self, writer: int, data: st.DataObject) -> None:
        at = data.draw(st.integers(0, len(self.entries) - 1))
        self.do(writer, Withdraw(self.entries.pop(at)[2], "of another unit"))

    @precondition(lambda self: self.open)
    @rule(writer=writers, data=st.data())
    def close_visit(self, writer: int, data: st.DataObject) -> None:
        visit = data.draw(st.sampled_from(self.open))
        self.model["closed"][visit] = self.do(writer, CloseVisit(visit, "off", "the cook"))

    @precondition(lambda self: self.model["closed"])
    @rule(writer=writers, data=st.data())
    def open_again(self, writer: int, data: st.DataObject) -> None:
        visit = data.draw(st.sampled_from(sorted(self.model["closed"])))
        self.do(writer, Withdraw(self.model["closed"].pop(visit), "not done yet"))

    @rule(writer=writers, feet=st.integers(0, 3000))
    def correct_plate(self, writer: int, feet: int) -> None:
        self.do(writer, CorrectPlate(unit_at(feet)))
        self.model["plate"] = unit_at(feet)

    @rule(writer=writers, data=st.data())
    def send_again(self, writer: int, data: st.DataObject) -> None:
        command, stored = data.draw(st.sampled_from(self.sent))
        event_id = stored[0].event.id
        again = self.registers[writer].do(self.stream, command, by="R. Quill", event_id=event_id)
        assert again == stored

    @rule(writer=writers, data=st.data())
    def send_another_under_the_same_id(self, writer: int, data: st.DataObject) -> None:
        _, stored = data.draw(st.sampled_from(self.sent))
        other, event_id = CorrectPlate(unit_at(3001)), stored[0].event.id
        with pytest.raises((TakenError, Refused)):
            self.registers[writer].do(self.stream, other, by="R. Quill", event_id=event_id)

    @rule(writer=writers, data=st.data())
    def write_on_what_was_seen_before(self, writer: int, data: st.DataObject) -> None:
        seen = data.draw(st.integers(1, len(self.acknowledged)))
        command = CorrectPlate(unit_at(500))
        send = self.registers[writer].do
        if seen == len(self.acknowledged):
            self.acknowledged += send(self.stream, command, by="R. Quill", expected_version=seen)
            self.model["plate"] = unit_at(500)
        else:
            with pytest.raises(Clash) as clash:
                send(self.stream, command, by="R. Quill", expected_version=seen)
            assert list(clash.value.events) == self.acknowledged[seen:]

    @rule(
        writer=writers,
        command=st.sampled_from(
            [
                Note(99, "reading", ENTRIES["reading"][0]),
                CloseVisit(99, "off"),
                OpenVisit({"purpose": "picnic"}),
                CorrectPlate({}),
                DeclareUnit(UNIT),
                Withdraw("nothing", "-"),
            ]
        ),
    )
    def send_what_cannot_be(self, writer: int, command: Command) -> None:
        with pytest.raises(Refused):
            self.registers[writer].do(self.stream, command, by="R. Quill")

    @rule(writer=writers)
    def open_the_record_anew(self, writer: int) -> None:
        self.registers[writer] = self.register()

    @property
    def open(self) -> list[int]:
        visits = range(1, len(self.model["visits"]) + 1)
        return [visit for visit in visits if visit not in self.model["closed"]]

    def expected(self) -> Tree:
        visits: list[dict[str, Any]] = deepcopy(self.model["visits"])
        for visit, kind, _, entry in self.entries:
            visits[visit - 1].setdefault(kind, []).append(entry)
        for visit in self.model["closed"]:
            visits[visit - 1] |= {"left": "off", "told": "the cook"}
        return {**self.model["plate"], "visit": visits} if visits else self.model["plate"]

    @invariant()
    def what_was_acknowledged_stands(self) -> None:
        for register in self.registers:
            stored = register.history(self.stream) if self.stream else ()
            assert list(stored) == self.acknowledged
            assert verify(stored) is None

    @invariant()
    def what_stands_is_what_the_model_says(self) -> None:
        state = fold(stored.event for stored in self.acknowledged)
        assert state.tree == (self.expected() if self.model else {})
        standing = [entry.id for place, entry in state.places.items() if place.count(".") == 3]
        assert sorted(standing) == sorted(entry_id for _, _, entry_id, _ in self.entries)

    @invariant()
    def the_list_says_what_stands(self) -> None:
        if self.acknowledged:
            (unit,) = self.registers[0].units()
            assert (unit.stream, unit.tag) == (self.stream, "MAU-5")
            assert unit.visits == len(self.model["visits"])
            assert unit.version == len(self.acknowledged)
            assert unit.at == self.acknowledged[-1].event.at


class InMemory(Life):
    store_name = "memory"


class InSqlite(Life):
    store_name = "sqlite"


TestInMemory = InMemory.TestCase
TestInSqlite = InSqlite.TestCase
TestInMemory.settings = settings(max_examples=40, stateful_step_count=30)
TestInSqlite.settings = settings(max_examples=40, stateful_step_count=30)
