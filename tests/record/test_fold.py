"""What stands is a job's tree; a job file goes in and comes out equal."""

import tomllib
from pathlib import Path

import pytest

from lightoff.job import parse_tree
from lightoff.record import (
    CloseVisit,
    Correct,
    DeclareUnit,
    Note,
    OpenVisit,
    RecordError,
    State,
    Withdraw,
    fold,
)
from lightoff.record.canonical import canonical, from_canonical, plain
from lightoff.record.events import WITHDRAWN, Event
from record.world import BEGAN, ENTRIES, UNIT, Tree, decided, numbered

ROOT = Path(__file__).parents[2]
FILES = sorted((ROOT / "examples").glob("*.toml"))


def after(*commands: object, state: State | None = None) -> State:
    """What stands after commands; the event of command n has id n."""
    state = state or State()
    for number, command in enumerate(commands, start=1):
        state = fold(decided(state, command, number), state)
    return state


def visit(state: State) -> Tree:
    found: Tree = state.tree["visit"][0]
    return found


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_job_file_comes_out_as_it_went_in(file: Path) -> None:
    tree = tomllib.loads(file.read_text("utf-8"))
    state = after(DeclareUnit(tree))
    assert state.tree == plain(tree)
    kept, typed = parse_tree(from_canonical(canonical(state.tree))), parse_tree(tree)
    assert kept.machine() == typed.machine()
    assert kept.visit() == typed.visit()


def test_every_table_of_a_visit_comes_out_as_it_went_in() -> None:
    full = {kind: list(entries) for kind, entries in ENTRIES.items()}
    tree = {**UNIT, "visit": [{"by": "R. Quill", **full, "told": "T. Marrow", "left": "off"}, {}]}
    assert after(DeclareUnit(tree)).tree == tree


def test_empty_tables_come_out_too() -> None:
    tree = {**UNIT, "visit": [{"told": "nobody yet", "reading": []}]}
    state = after(DeclareUnit(tree))
    assert state.tree == tree
    noted = fold(decided(state, Note(1, "reading", ENTRIES["reading"][0]), 9), state)
    assert len(visit(noted)["reading"]) == 1
    assert state.tree == tree  # folding on leaves what stood before alone


def test_a_unit_without_visits_comes_out_too() -> None:
    for tree in (UNIT, {**UNIT, "visit": []}):
        assert after(DeclareUnit(tree)).tree == tree


def test_a_correction_shows_in_the_same_place_and_the_first_stays_in_the_record() -> None:
    first, second, _ = ENTRIES["reading"]
    right = {**first, "value": "3.6 inwc"}
    state = after(
        DeclareUnit(UNIT),
        OpenVisit({}),
        Note(1, "reading", first),
        Note(1, "reading", second),
        Correct(numbered(3), right, "misread the gauge"),
    )
    assert visit(state)["reading"] == [right, second]
    entry = state.places["visit.1.reading.1"]
    assert entry.id == numbered(3)
    assert [event.name for event in entry.events] == ["reading taken", "entry corrected"]
    assert entry.events[0].body["entry"] == first
    assert entry.events[1].body["reason"] == "misread the gauge"


def test_what_is_withdrawn_leaves_its_place_and_stays_in_the_record() -> None:
    first, second, _ = ENTRIES["reading"]
    state = after(
        DeclareUnit(UNIT),
        OpenVisit({}),
        Note(1, "reading", first),
        Note(1, "reading", second),
        Withdraw(numbered(3), "of another unit"),
    )
    assert visit(state)["reading"] == [second]
    assert state.places["visit.1.reading.1"].id == numbered(4)
    gone = state.entry(numbered(3))
    assert gone is not None
    assert gone.withdrawn
    assert gone.tree == first


def test_withdrawing_the_closing_opens_the_visit_again() -> None:
    state = after(
        DeclareUnit(UNIT), OpenVisit({"by": "R. Quill"}), CloseVisit(1, "off", "the cook")
    )
    assert visit(state) == {"by": "R. Quill", "told": "the cook", "left": "off"}
    again = fold(decided(state, Withdraw(numbered(3), "a joint is left to test"), 4), state)
    assert visit(again) == {"by": "R. Quill"}
    assert again.closing(1) is None


def test_places_are_those_of_the_job_reader() -> None:
    state = after(
        DeclareUnit({**UNIT, "visit": [{}, {kind: list(all_) for kind, all_ in ENTRIES.items()}]})
    )
    assert state.places.keys() == {
        "visit.1",
        "visit.2",
        *(f"visit.2.{kind}.{n + 1}" for kind, all_ in ENTRIES.items() for n in range(len(all_))),
    }


def test_folding_in_two_parts_is_folding_at_once() -> None:
    events = list(
        decided(State(), DeclareUnit({**UNIT, "visit": [{"reading": [*ENTRIES["reading"]]}]}))
    )
    for cut in range(len(events) + 1):
        assert fold(events[cut:], fold(events[:cut])) == fold(events)


def test_an_event_about_nothing_is_told_in_a_sentence() -> None:
    lost = Event(
        numbered(1), WITHDRAWN, BEGAN, "R. Quill", {"entry_id": numbered(2), "reason": "-"}
    )
    with pytest.raises(RecordError, match="not in the record"):
        fold([lost])
