"""A command is written, or refused with every reason at once."""

import math
from typing import Any

import pytest

from lightoff.record import (
    CloseVisit,
    Command,
    Correct,
    CorrectPlate,
    DeclareUnit,
    Note,
    OpenVisit,
    RecordError,
    Refused,
    State,
    Withdraw,
    decide,
    fold,
)
from record.world import BEGAN, ENTRIES, TOO_HIGH, UNIT, Tree, decided, numbered

FIRST = ENTRIES["reading"][0]
NOTHING = State()


def standing(*visits: Tree) -> State:
    return fold(decided(NOTHING, DeclareUnit({**UNIT, "visit": list(visits)}), 100))


def entry_at(state: State, place: str) -> str:
    return state.places[place].id


def closing_of(state: State) -> str:
    closing = state.closing(1)
    assert closing is not None
    return closing.id


def reasons(state: State, command: Command, by: str = "R. Quill") -> dict[str, str]:
    with pytest.raises(Refused) as refused:
        decide(state, command, by=by, at=BEGAN, event_id=numbered(999))
    return {reason.place: reason.message for reason in refused.value.reasons}


@pytest.mark.parametrize(("kind", "entry"), [(k, e) for k, all_ in ENTRIES.items() for e in all_])
def test_every_kind_of_entry_is_written_as_it_was_typed(kind: str, entry: Tree) -> None:
    state = standing({})
    (event,) = decided(state, Note(1, kind, entry))
    assert event.body == {"visit": 1, "entry": entry}
    assert fold([event], state).tree["visit"] == [{kind: [entry]}]


def test_the_author_the_time_and_the_id_are_those_given() -> None:
    (event,) = decided(NOTHING, DeclareUnit(UNIT))
    assert (event.by, event.at, event.id) == ("R. Quill", BEGAN, numbered(1))


def test_a_whole_job_is_one_batch_whose_ids_follow_from_the_first() -> None:
    job = DeclareUnit({**UNIT, "visit": [{"reading": [FIRST], "left": "off"}]})
    once, again = (decided(NOTHING, job) for _ in range(2))
    assert [event.name for event in once] == [
        "unit declared",
        "visit opened",
        "reading taken",
        "visit closed",
    ]
    assert once == again
    assert len({event.id for event in once}) == len(once)


def test_what_a_caller_changes_later_does_not_change_the_event() -> None:
    entry = {**FIRST}
    (event,) = decided(standing({}), Note(1, "reading", entry))
    entry["value"] = "9 inwc"
    assert event.body["entry"] == FIRST


def test_every_fault_of_an_entry_is_told_at_its_place_within_the_entry() -> None:
    wrong = {"run": "hihg", "point": "fan.rpm", "value": 978, "instrument": "gauge-9", "why": "-"}
    found = reasons(standing({"reading": [FIRST]}), Note(1, "reading", wrong))
    assert found.keys() == {"run", "value", "instrument", "why"}
    assert '"high"' in found["run"]


def test_a_fault_of_the_entry_as_a_whole_has_the_entry_as_its_place() -> None:
    assert reasons(standing({}), Note(1, "reading", {**FIRST, "value": None})).keys() == {"entry"}
    assert reasons(standing({}), Note(1, "reading", 7)).keys() == {"entry"}


def test_reasons_of_all_sorts_are_told_together() -> None:
    state = standing({"reading": [FIRST], "left": "off"})
    note = Note(1, "reading", {**FIRST, "run": "hihg"})
    assert reasons(state, note, by=" ").keys() == {"by", "visit", "run"}
    change = Correct(entry_at(state, "visit.1.reading.1"), {**FIRST, "value": "3"}, reason="\t")
    assert reasons(state, change).keys() == {"reason", "value"}


def test_an_older_entry_that_is_no_longer_read_does_not_stop_a_new_one() -> None:
    old = Note(1, "reading", FIRST)
    state = standing({})
    (event,) = decided(state, old)
    event.body["entry"]["value"] = "3.5 furlongs"  # as an older reader may have let pass
    state = fold([event], state)
    assert decided(state, Note(1, "check", ENTRIES["check"][0]), 2)
    assert reasons(state, CloseVisit(1, "running")).keys() == {"reading.1.value"}
    assert decided(state, CloseVisit(1, "off"), 2)


def test_where_not_every_fault_is_listed_nothing_is_taken_on_trust() -> None:
    state = standing({"reading": [FIRST] * 250})
    for entry in state.standing[1:]:
        entry.tree["value"] = "3.5 furlongs"
    wrong = Note(1, "check", {"id": "covers.on", "outcome": "wrogn"})
    assert len(reasons(state, wrong)) == 200


def test_more_faults_than_are_listed_still_refuse() -> None:
    wrong = {"shape": "round", "diameter": "20 in", "pressures": ["?"] * 500}
    note = Note(1, "reading", {"run": "fan", "point": "duct.traverse", "traverse": wrong})
    assert len(reasons(standing({}), note)) == 200


@pytest.mark.parametrize(
    ("command", "place"),
    [
        (OpenVisit({}), "unit"),
        (CorrectPlate(UNIT), "unit"),
        (Note(1, "reading", FIRST), "unit"),
        (Withdraw(numbered(9), "-"), "unit"),
    ],
)
def test_before_a_unit_is_declared_nothing_is_written(command: Command, place: str) -> None:
    assert place in reasons(NOTHING, command)


@pytest.mark.parametrize(
    ("command", "place", "said"),
    [
        (DeclareUnit(UNIT), "unit", "already"),
        (DeclareUnit(7), "entry", "not a table"),
        (CorrectPlate([]), "entry", "not a table"),
        (Note(0, "reading", FIRST), "visit", "there is one"),
        (Note(2, "reading", FIRST), "visit", "there is one"),
        (CloseVisit(2, "off"), "visit", "there is one"),
        (Note(1, "raeding", FIRST), "kind", "reading"),
        (Correct(numbered(9), FIRST, "-"), "entry", "no entry"),
        (Withdraw(numbered(9), "-"), "entry", "no entry"),
        (Note(1, "reading", {**FIRST, "value": math.nan}), "value", "."),
        (Note(1, "reading", {**FIRST, "note": "\ud800"}), "note", "characters"),
        (Note(1, "step", {"id": "purge", "seconds": 2**60}), "seconds", "more than"),
        (OpenVisit({"purpose": "picnic", "reading": [{**FIRST, "run": "?"}]}), "purpose", "picnic"),
        (OpenVisit({"reading": [{**FIRST, "run": "?"}]}), "reading.1.run", "run"),
        (OpenVisit({"reading": [FIRST, 7]}), "reading.2", "table"),
        (OpenVisit({"reading": "none"}), "reading", "list"),
        (CloseVisit(1, "asleep"), "left", "gas shut and tagged"),
        (CorrectPlate({**UNIT, "visit": [{}]}), "visit", "leave them out"),
    ],
)
def test_what_has_no_place_or_cannot_be_read_is_refused(
    command: Command, place: str, said: str
) -> None:
    assert said in reasons(standing({}), command)[place]


@pytest.mark.parametrize("visits", ["x", [7], [{}, 7], {"by": "x"}])
def test_what_only_looks_like_a_job_is_told_by_the_job_reader(visits: Any) -> None:
    assert any(
        place.startswith("visit")
        for place in reasons(NOTHING, DeclareUnit({**UNIT, "visit": visits}))
    )


def test_a_bad_event_id_is_told_in_a_sentence() -> None:
    with pytest.raises(RecordError, match="UUID"):
        decide(NOTHING, DeclareUnit(UNIT), by="R. Quill", at=BEGAN, event_id="../7")


def test_a_plate_is_corrected_only_to_one_that_fits_what_was_written_under_it() -> None:
    state = standing({"reading": [ENTRIES["reading"][1]]})
    without_gauge = {key: part for key, part in UNIT.items() if key != "instrument"}
    found = reasons(state, CorrectPlate(without_gauge))
    assert found.keys() == {"visit.1.reading.1.instrument"}
    taller = {**UNIT, "site": {"altitude": "1200 ft"}}
    (event,) = decided(state, CorrectPlate(taller, "the survey says so"))
    assert event.body["reason"] == "the survey says so"
    assert fold([event], state).tree == {**taller, "visit": state.tree["visit"]}


def test_an_opening_is_corrected_without_touching_entries_or_end() -> None:
    state = standing({"by": "R. Quil", "reading": [FIRST]})
    opening = entry_at(state, "visit.1")
    event = decided(state, Correct(opening, {"by": "R. Quill"}, "name"))
    assert fold(event, state).tree["visit"] == [{"by": "R. Quill", "reading": [FIRST]}]
    smuggled = Correct(opening, {"reading": [TOO_HIGH], "left": "running", "by": 7}, "name")
    assert reasons(state, smuggled).keys() >= {"reading", "left", "by"}
    assert "entry" in reasons(state, Withdraw(opening, "-"))


def test_a_closed_visit_takes_corrections_but_no_new_entries() -> None:
    state = standing({"reading": [FIRST], "left": "off"})
    reading = entry_at(state, "visit.1.reading.1")
    assert "visit" in reasons(state, Note(1, "reading", FIRST))
    assert "visit" in reasons(state, CloseVisit(1, "off"))
    assert decided(state, Correct(reading, {**FIRST, "value": "3.4 inwc"}, "misread"))
    assert decided(state, Withdraw(reading, "of another unit"))
    assert decided(state, OpenVisit({}))


def test_a_closing_is_corrected_as_a_closing() -> None:
    state = standing({"left": "off", "told": "the cook"})
    closing = closing_of(state)
    event = decided(state, Correct(closing, {"left": "gas shut and tagged"}, "tagged after all"))
    assert fold(event, state).tree["visit"] == [{"left": "gas shut and tagged"}]
    assert reasons(state, Correct(closing, {"by": "R. Quill"}, "-")).keys() == {"left", "by"}


def test_what_was_withdrawn_is_neither_corrected_nor_withdrawn_again() -> None:
    state = standing({"reading": [FIRST]})
    reading = entry_at(state, "visit.1.reading.1")
    state = fold(decided(state, Withdraw(reading, "of another unit")), state)
    assert "withdrawn" in reasons(state, Withdraw(reading, "-"))["entry"]
    assert "withdrawn" in reasons(state, Correct(reading, FIRST, "-"))["entry"]


def test_a_unit_not_to_be_left_running_may_only_be_left_otherwise() -> None:
    state = standing({"reading": [TOO_HIGH]})
    assert "not to be left running" in reasons(state, CloseVisit(1, "running"))["left"]
    for left in ("off", "gas shut and tagged"):
        assert decided(state, CloseVisit(1, left, "the cook"))
    assert decided(standing({"reading": [FIRST]}), CloseVisit(1, "running"))


def test_no_other_way_leaves_it_running_either() -> None:
    visit = {"reading": [TOO_HIGH], "left": "running"}
    assert reasons(NOTHING, DeclareUnit({**UNIT, "visit": [visit]})).keys() == {"visit.1.left"}
    assert reasons(standing({}), OpenVisit(visit)).keys() == {"left"}
    closed = standing({**visit, "left": "off"})
    corrected = Correct(closing_of(closed), {"left": "running"}, "-")
    assert reasons(closed, corrected).keys() == {"left"}
