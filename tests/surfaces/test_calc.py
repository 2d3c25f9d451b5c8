"""What is typed for a calculation, what is wrong with it, and how its answer is told."""

import csv
import io
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lightoff.calculations import CALCULATIONS, Calculation, Input, Output, calculate
from lightoff.formula import describe, working
from lightoff.formula.expression import Call, Symbol
from lightoff.formula.figure import Figure
from lightoff.quantity import KINDS, UNITS, LightoffError
from lightoff.surfaces.calculating import (
    FaultsError,
    answered,
    as_data,
    blank,
    example,
    filled,
    read,
)
from lightoff.surfaces.calculating.paper import paper
from lightoff.surfaces.calculating.plain import as_text
from lightoff.surfaces.calculating.several import split, values
from lightoff.surfaces.calculating.told import input_told, result_told, si_unit
from lightoff.surfaces.cli.options import OPTIONS
from lightoff.surfaces.words import Speech, has
from lightoff.surfaces.words.plain import WIDTH

SURFACES = Path(__file__).parents[2] / "src" / "lightoff" / "surfaces"
US, SI = Speech("us"), Speech("si")
CLOCKING = CALCULATIONS["clocking"]
TYPED = {"dial": "2 ft3", "turns": "4", "seconds": "72 s"}
ALL = [pytest.param(each, id=name) for name, each in CALCULATIONS.items()]


# ---- every calculation there is


@pytest.mark.parametrize("calculation", ALL)
def test_everything_a_calculation_says_has_words(calculation: Calculation) -> None:
    lacking = [each for each in _ids(calculation) if not has(each)]
    assert lacking == []


@pytest.mark.parametrize("calculation", ALL)
def test_no_two_things_asked_for_bear_one_label(calculation: Calculation) -> None:
    sheet = blank(calculation, US)
    labels = [each.label for each in sheet.inputs]
    assert len(set(labels)) == len(labels)
    answers = [US.word(f"measure:{each.name}") for each in calculation.outputs]
    assert len(set(answers)) == len(answers)


def _ids(calculation: Calculation) -> Iterator[str]:
    yield f"calc:{calculation.name}"
    yield f"calc:{calculation.name}:about"
    for each in (*calculation.inputs, *calculation.outputs):
        yield f"measure:{each.name}"
    for asked in calculation.inputs:
        yield from (f"word:{word}" for word in asked.choices)


def test_every_note_and_refusal_is_a_sentence() -> None:
    folder = SURFACES.parent / "calculations"
    text = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    ids = set(re.findall(r'"(calc-[a-z0-9-]+)"', text))
    assert sorted(each for each in ids if not has(each)) == []


@pytest.mark.parametrize("calculation", ALL)
def test_a_calculation_is_declared_as_it_is_asked_for(calculation: Calculation) -> None:
    for each in calculation.inputs:
        assert each.kind in KINDS
        assert re.fullmatch(r"[a-z][a-z0-9_]*", each.name)
        assert each.name not in OPTIONS  # the terminal's own
        assert not (each.choices and each.default not in (None, *each.choices))
    for output in calculation.outputs:
        assert output.kind in (*KINDS, "word")
    assert re.fullmatch(r"[a-z][a-z0-9-]*", calculation.name)


@pytest.mark.parametrize("calculation", ALL)
def test_the_example_of_a_calculation_runs(calculation: Calculation) -> None:
    for speech in (US, SI):
        sheet = filled(calculation, example(calculation.name), speech)
        assert sheet.faults == ()
        assert sheet.results
        assert sheet.steps
        assert not [note for note in sheet.notes if note.message == "calc-outside"]
        text = as_text(sheet, speech, working=True)
        assert max(map(len, text.splitlines())) <= WIDTH
        assert not re.search(r"[{}]|None|\bnan\b|\binf\b|\b(?:calc|measure|word|sheet):", text)
        assert json.loads(json.dumps(as_data(sheet), allow_nan=False))["results"]
        assert paper(sheet, speech).startswith(b"%PDF")


@pytest.mark.parametrize("calculation", ALL)
def test_every_answer_has_a_working_in_the_unit_of_its_kind(calculation: Calculation) -> None:
    values = read(calculation, example(calculation.name)).values
    used = calculate(calculation, values).used
    kinds = {each.name: each.kind for each in calculation.outputs}
    found = working(calculation.work, **used).result
    assert set(found) <= set(kinds)
    for name, value in found.items():
        for each in value if isinstance(value, tuple | list) else (value,):
            if isinstance(each, Figure) and isinstance(each.expression, Call):
                call = each.expression
                told = describe(call.formula).results
                unit = next(one.unit for one in told if call.part in (None, one.name))
                assert si_unit(kinds[name]) in _same(unit), name
            else:
                assert not isinstance(each, float) or isinstance(each, Figure), name


@pytest.mark.parametrize("calculation", ALL)
def test_what_is_typed_reaches_the_formulas_in_their_own_units(calculation: Calculation) -> None:
    values = read(calculation, example(calculation.name)).values
    used = calculate(calculation, values).used
    kinds = {each.name: each.kind for each in calculation.inputs}
    for symbol, unit in _taken(working(calculation.work, **used).result):
        name = symbol if symbol in kinds else symbol.rpartition("_")[0]  # one of a list
        assert si_unit(kinds[name]) in _same(unit), symbol


def _taken(found: Any) -> Iterator[tuple[str, str]]:
    """Each input that a formula takes directly, and the unit the formula takes it in."""
    if isinstance(found, dict):
        found = tuple(found.values())
    if isinstance(found, tuple | list):
        for each in found:
            yield from _taken(each)
    elif isinstance(found, Figure):
        yield from _in_call(found.expression)


def _in_call(expression: Any) -> Iterator[tuple[str, str]]:
    for operand in getattr(expression, "operands", ()):
        yield from _in_call(operand)
    if not isinstance(expression, Call):
        return
    told = describe(expression.formula)
    for name, value in expression.arguments:
        if isinstance(value, Figure) and isinstance(value.expression, Symbol):
            yield value.expression.name, told.input(name).unit
        yield from _taken(value)


def _same(unit: str) -> tuple[str, ...]:
    """A formula's unit as the kinds write it."""
    several = tuple(unit.split(" or "))
    same = {"kg/kg": "1", "1": "deg"}  # what has no dimension
    return (*several, *(same[each] for each in several if each in same))


def test_a_name_means_the_same_kind_everywhere() -> None:
    kinds: dict[str, set[str]] = {}
    for calculation in CALCULATIONS.values():
        for each in (*calculation.inputs, *calculation.outputs):
            a_word = isinstance(each, Input) and each.choices
            kinds.setdefault(each.name, set()).add("word" if a_word else each.kind)
    assert [name for name, several in kinds.items() if len(several) > 1] == []


def test_the_surfaces_have_their_own_words() -> None:
    names = [f"option:{each}" for each in OPTIONS if each != "help"]
    names += re.findall(r"""sheet:([a-z-]+(?::help)?)['"]""", _sources())
    assert [each for each in names if not has(f"sheet:{each}")] == []
    for message in ("calc-missing", "calc-impossible", "calc-outside"):
        assert has(message)


def _sources() -> str:
    """The text of the modules that put sheets into words."""
    folders = (SURFACES / "calculating", SURFACES / "cli")
    return "".join(path.read_text() for folder in folders for path in folder.glob("*.py"))


ODD = st.one_of(
    st.text(max_size=30),
    st.sampled_from(["", "0", "-1", "1e308", "nan", "1e999 Pa", "0 s", "5 3/8 in", "½ in", "1,2",
                     "1,200", "[]", "{x}", "9" * 50, "0.05, 0.06 inwc"]),
)  # fmt: skip
NUMBERS = st.floats(-1e6, 1e6) | st.sampled_from(
    [0.0, 1e-300, -1e300, 1e300, 1e18, -1e-9, 1.0, 2.0, 3.5, 40.0, 60.0, 1000.0]
)


def texts(asked: Input) -> st.SearchStrategy[str]:
    """Numbers of every size in the input's own units, and now and then anything at all."""
    if asked.choices:
        return st.sampled_from(asked.choices) | ODD
    kind = KINDS[asked.kind]
    units = [unit.name for unit in UNITS if unit.dimension == kind.dimension] or [""]
    one = st.tuples(NUMBERS, st.sampled_from(units)).map(
        lambda told: f"{told[0]!r} {told[1] if told[1] != '1' else ''}".strip()
    )
    good = st.lists(one, min_size=1, max_size=6).map(", ".join) if asked.many else one
    return good | good | good | ODD


@settings(max_examples=25)  # a working of forty steps
@given(st.data())
@pytest.mark.parametrize("calculation", ALL)
def test_whatever_is_typed_is_answered_or_refused_in_sentences(
    calculation: Calculation, data: st.DataObject
) -> None:
    typed = dict(example(calculation.name))
    for each in calculation.inputs:
        if data.draw(st.booleans()):
            typed[each.name] = data.draw(texts(each))
    sheet = filled(calculation, typed, US)
    assert bool(sheet.faults) != bool(sheet.results)
    for fault in sheet.faults:
        assert "\n" not in fault.message
        assert "Traceback" not in fault.message
    assert not [note for note in sheet.notes if note.sentence.startswith("calc-")]
    json.dumps(as_data(sheet), allow_nan=False)
    as_text(sheet, US, working=True)


# ---- what was typed


def test_every_fault_is_told_at_once_each_at_its_input() -> None:
    sheet = filled(
        CLOCKING, {"dial": "2", "turns": "four", "dail": "2 ft3", "altitude": "5 psi"}, US
    )
    said = {fault.place: fault.message for fault in sheet.faults}
    assert set(said) == {"dial", "turns", "seconds", "dail", "altitude"}
    assert said["dial"] == (
        '"2" has no unit: write a volume as "2 ft3" or "0.0566 m3"'
    )  # as the reader of job files says it
    assert said["seconds"] == 'not given: write "72 s" or "1.2 min"'
    assert 'did you mean "dial"' in said["dail"]
    assert "pressure" in said["altitude"]
    assert sheet.inputs[0].fault == said["dial"]
    assert sheet.inputs[0].typed == "2"


def test_what_is_left_blank_is_assumed_and_said_to_be() -> None:
    sheet = filled(CLOCKING, {**TYPED, "altitude": "  "}, US)
    assumed = {each.name: each.assumed for each in sheet.inputs}
    assert assumed["altitude"]
    assert assumed["heating_value"]
    assert not assumed["dial"]
    defaults = {each.name: each.default for each in sheet.inputs}
    assert defaults["altitude"] == "0.0\u00a0ft"


WORDED = Calculation(
    "worded",
    lambda gas, readings: {"answer": CLOCKING.work},
    (
        Input("gas", choices=("natural gas", "propane")),
        Input("readings", "pressure", many=True, optional=True),
    ),
    (Output("answer"),),
)


@pytest.mark.parametrize("typed", ["propane", " Propane ", "PROPANE"])
def test_a_word_is_known_whatever_its_capitals(typed: str) -> None:
    assert read(WORDED, {"gas": typed}).values == {"gas": "propane"}


def test_an_unknown_word_is_refused_with_the_nearest() -> None:
    (fault,) = read(WORDED, {"gas": "propan"}).faults
    assert 'did you mean "propane"' in fault.message
    (fault,) = read(WORDED, {}).faults
    assert fault.message == 'not given: write "natural gas" or "propane"'


@pytest.mark.parametrize(
    ("typed", "pascals"),
    [
        ("0.05 inwc, 0.06 inwc", (12.454, 14.945)),
        ("0.05, 0.06 inwc", (12.454, 14.945)),
        ("0.05 inwc; 0.06", (12.454, 14.945)),
        ("0.05,0.06 inwc", (12.454, 14.945)),
        ("12.454 Pa\n0.06 inwc", (12.454, 14.945)),
        ("1,200 Pa, 1,300 Pa", (1200.0, 1300.0)),
        ("12 Pa", (12.0,)),
        (["12 Pa", "0.06 inwc"], (12.0, 14.945)),
    ],
)
def test_a_list_is_read_however_it_is_written(typed: object, pascals: tuple[float, ...]) -> None:
    found = read(WORDED, {"gas": "propane", "readings": typed}).values["readings"]
    assert found == pytest.approx(pascals, rel=1e-4)


def test_every_faulty_value_of_a_list_is_named_by_its_place() -> None:
    faults = read(WORDED, {"gas": "propane", "readings": "0.05 inwc, x, 0.06 inwc, 3 ft"}).faults
    assert [fault.message.partition(":")[0] for fault in faults] == ["value 2", "value 4"]


def test_what_can_be_read_in_two_ways_is_not_read() -> None:
    with pytest.raises(LightoffError, match="two ways"):
        values("100,200 Pa", "pressure")
    assert split("1,200 cfm, 1,300 cfm") == ["1,200 cfm", "1,300 cfm"]


# ---- what is told


def test_a_value_is_shown_as_typed_and_an_answer_to_three_digits_at_least() -> None:
    assert input_told(read(CLOCKING, {**TYPED, "dial": "2.345 ft3"}).values["dial"], "volume",
                      "us").number == "2.345"  # fmt: skip
    assert result_told(3.0, "pressure", "us").text == "0.0120 in. w.c."
    assert result_told(100.0, "pressure", "us").text == "0.401 in. w.c."
    assert result_told(-870.0, "pressure", "us").text == "−3.49 in. w.c."
    assert result_told(4.0, "number", "us").text == "4"
    assert result_told(0.0, "pressure", "si").text == "0 Pa"


def test_the_answer_is_in_the_readers_units_and_in_si() -> None:
    us, si = filled(CLOCKING, TYPED, US), filled(CLOCKING, TYPED, SI)
    assert us.results[0].unit == "MBH"
    assert si.results[0].unit == "kW"
    assert us.results[0].si == si.results[0].si
    # 8 ft3 in 72 s is 400 ft3/h; at 7 in. w.c. and sea level 1.0145 of it at 30 inHg and 60 degF
    # (0.9974 × 1.0172), times 1030.6 Btu/ft3
    assert float(us.results[0].number) == pytest.approx(400 * 1.0145 * 1.0306, rel=2e-4)
    assert us.results[1].number == "400.0"


def test_a_number_beyond_a_formulas_range_is_marked_with_a_word() -> None:
    sheet = filled(CLOCKING, {**TYPED, "turns": "0.6"}, US)
    (note,) = (each for each in sheet.notes if each.message == "calc-outside")
    assert note.sentence == (
        "Out of range: whole turns, 0.6. The formula holds from 1 to 1000: Volume turned by a dial."
    )
    marks = [term.mark for step in sheet.steps for term in step.terms if not term.in_range]
    assert marks == ["out of range"]
    assert "(out of range)" in as_text(sheet, US, working=True)


def test_an_equation_is_explained_once_and_then_shown_in_numbers() -> None:
    readings = {"velocity_pressures": "0.04, 0.05 inwc"}
    duct = {"duct_width": "24 in", "duct_height": "18 in"}
    sheet = filled(CALCULATIONS["traverse"], duct | readings, US)
    first, second = (step for step in sheet.steps if step.formula == "pitot_velocity")
    assert (first.like, sheet.steps[second.like - 1]) == (0, first)
    text = as_text(sheet, US, working=True)
    assert text.count(first.source.split(";")[0]) == 1
    assert text.count(f"As step {second.like}, with other numbers.") == 1
    assert second.numbers in text


def test_a_sum_without_an_answer_says_so() -> None:
    alike = {"outdoor_temperature": "20 degF", "return_temperature": "20 degF"}
    sheet = filled(CALCULATIONS["outdoor-air"], {**alike, "mixed_temperature": "20 degF"}, US)
    assert [fault.place for fault in sheet.faults] == ["return_temperature"]
    assert sheet.results == ()


@pytest.mark.parametrize("typed", ["0 s", "-3 s", "1e300 s"])
def test_what_cannot_be_is_refused_where_it_was_typed(typed: str) -> None:
    sheet = filled(CLOCKING, {**TYPED, "seconds": typed}, US)
    assert [fault.place for fault in sheet.faults] == ["seconds"]
    assert sheet.inputs[2].typed == typed


def test_the_sheet_before_anything_is_typed_asks_for_all() -> None:
    sheet = blank(CLOCKING, US)
    assert [each.name for each in sheet.inputs if each.required] == list(TYPED)
    assert all(each.hint for each in sheet.inputs)
    assert sheet.faults == sheet.results == ()


def test_the_same_sheet_prints_the_same_bytes() -> None:
    first, second = (paper(filled(CLOCKING, TYPED, US), US) for _ in range(2))
    assert first == second


# ---- a table


def table(text: str, speech: Speech = US, **common: str) -> list[dict[str, str]]:
    """The rows of the answer, by the names of their columns."""
    return list(csv.DictReader(io.StringIO(answered(CLOCKING, text.encode(), common, speech))))


def test_results_are_appended_to_the_columns_of_a_table() -> None:
    first, second = table(
        "#unit,dial [ft3],turns,seconds\nMAU-1,2,4,72 s\nMAU-2,0.0566 m3,4,1.2 min\n"
    )
    assert list(first)[:6] == ["#unit", "dial [ft3]", "turns", "seconds", "input [kBtu/h]",
                               "gas_flow [ft3/h]"]  # fmt: skip
    assert (first["#unit"], first["dial [ft3]"], first["gas_flow [ft3/h]"]) == ("MAU-1", "2", "400")
    assert first["input [kBtu/h]"] == "418.243"
    assert second["input [kBtu/h]"].startswith("417.99")
    assert second["dial [ft3]"] == "0.0566 m3"


def test_what_is_typed_beside_a_table_holds_for_every_row() -> None:
    (row,) = table("dial,turns\n2 ft3,4\n", seconds="72 s")
    assert row["input [kBtu/h]"] == "418.243"
    assert "input [kW]" in table("dial,turns\n2 ft3,4\n", SI, seconds="72 s")[0]


def test_a_note_of_a_row_stands_in_its_row() -> None:
    sound, odd = table("dial,turns,seconds\n2 ft3,4,72 s\n2 ft3,0.6,72 s\n")
    assert "Out of range" not in sound["notes"]
    assert "Out of range" in odd["notes"]


def test_every_faulty_cell_is_named_by_row_and_column_and_nothing_is_written() -> None:
    rows = "dial [ft3],turns,seconds\n2,4,72 s\nx,4,72\n2,4\n\n2,4,0 s\n"
    with pytest.raises(FaultsError) as told:
        table(rows)
    places = [fault.place for fault in told.value.faults]
    assert places == ["row 3, dial", "row 3, seconds", "row 4", "row 6, seconds"]
    assert all(fault.message for fault in told.value.faults)


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ("dail,turns\n2 ft3,4\n", 'did you mean "dial"'),
        ("dial [psi],turns\n2,4\n", 'column "dial [psi]"'),
        ("dial,dial\n2 ft3,4 ft3\n", "given twice"),
        ("dial,seconds\n2 ft3,4 s\n", "given twice"),
        ("dial\n", "no rows"),
        ("", "no rows"),
        ('dial\n"2 ft3\n', "not CSV"),
        ("dial\n\xff", "UTF-8"),
    ],
)
def test_a_table_that_cannot_be_read_is_refused_in_a_sentence(rows: str, says: str) -> None:
    with pytest.raises(FaultsError, match=re.escape(says)):
        answered(CLOCKING, rows.encode("latin-1"), {"seconds": "72 s"}, US)


def test_a_long_list_of_faults_is_cut_and_says_so() -> None:
    rows = "dial,turns,seconds\n" + "x,4,72 s\n" * 250
    with pytest.raises(FaultsError, match="and 50 more"):
        table(rows)
