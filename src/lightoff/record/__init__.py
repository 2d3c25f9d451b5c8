"""What happened: an append-only record of each unit, from which its job is folded."""

from lightoff.record.chain import Broken, Stored, verify
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
from lightoff.record.decide import Refused, decide
from lightoff.record.events import NOTED, Event, RecordError
from lightoff.record.fold import Entry, State, fold
from lightoff.record.memory import MemoryStore
from lightoff.record.register import Register, UnknownUnitError
from lightoff.record.sqlite import SqliteStore
from lightoff.record.store import Clash, Store, StoreError, TakenError, UnitSummary

__all__ = [
    "NOTED",
    "Broken",
    "Clash",
    "CloseVisit",
    "Command",
    "Correct",
    "CorrectPlate",
    "DeclareUnit",
    "Entry",
    "Event",
    "MemoryStore",
    "Note",
    "OpenVisit",
    "RecordError",
    "Refused",
    "Register",
    "SqliteStore",
    "State",
    "Store",
    "StoreError",
    "Stored",
    "TakenError",
    "UnitSummary",
    "UnknownUnitError",
    "Withdraw",
    "decide",
    "fold",
    "verify",
]
