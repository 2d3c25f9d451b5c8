"""Quantities: what is typed is what is meant, and what is shown can be typed again."""

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.quantity import (
    BY_NAME,
    EXAMPLES,
    KINDS,
    UNITS,
    QuantityError,
    decimals,
    in_unit,
    parse,
    shown,
    typed,
)

kinds = st.sampled_from(sorted(KINDS))
systems = st.sampled_from(["us", "si"])
# nothing near a make-up air unit is larger, in whatever unit
sizes = st.floats(min_value=-1e4, max_value=1e4, allow_nan=False).filter(lambda x: abs(x) > 1e-3)


def _value(kind: str, number: float) -> float:
    """A plausible SI value of a kind: so many of its shown units."""
    what = KINDS[kind]
    unit = BY_NAME[what.us]
    number = abs(number) % 5000 if what.dimension == "temperature" else number
    return number * unit.factor + (0.0 if what.difference else unit.offset)


@given(kinds, sizes, systems)
def test_what_is_shown_can_be_typed_again_within_the_shown_digits(
    kind: str, number: float, system: str
) -> None:
    value = _value(kind, number)
    text = typed(value, kind, system)
    unit = KINDS[kind].unit(system)
    places = decimals(kind, unit, system)
    back = parse(text, kind).value
    half = 0.5 * 10**-places * BY_NAME[unit].factor
    assert abs(back - value) <= half * (1 + 1e-9) + 1e-9 * abs(value)


@given(kinds, sizes, systems, st.integers(min_value=-4, max_value=2))
def test_a_gauge_that_resolves_less_shows_fewer_digits(
    kind: str, number: float, system: str, power: int
) -> None:
    value = _value(kind, number)
    unit = KINDS[kind].unit(system)
    resolution = 10.0**power * BY_NAME[unit].factor
    text = typed(value, kind, system, resolution=resolution)
    assert abs(parse(text, kind).value - value) <= resolution / 2 * (1 + 1e-6) + 1e-9 * abs(value)
    number_text = text.split(" ")[0]
    assert len(number_text.partition(".")[2]) == max(0, -power)


@pytest.mark.parametrize("kind", sorted(EXAMPLES))
def test_both_ways_a_sentence_offers_are_right(kind: str) -> None:
    for way in EXAMPLES[kind]:
        assert math.isfinite(parse(way, kind).value)


@pytest.mark.parametrize(("first", "second"), [EXAMPLES["pressure"], EXAMPLES["temperature"]])
def test_two_ways_mean_nearly_the_same(first: str, second: str) -> None:
    kind = "pressure" if "inwc" in first else "temperature"
    assert parse(first, kind).value == pytest.approx(parse(second, kind).value, rel=0.005)


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.name)
def test_every_spelling_is_the_same_unit(unit: object) -> None:
    from lightoff.quantity import Unit

    assert isinstance(unit, Unit)
    kind = next(
        (k for k, v in KINDS.items() if v.dimension == unit.dimension and not v.difference), None
    )
    if kind is None or unit.name == "1":  # nothing asks for it yet; a bare number has no unit
        return
    for spelling in (unit.name, *unit.spellings):
        assert parse(f"12 {spelling}", kind).value == parse(f"12 {unit.name}", kind).value


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        # definitions of the units, not our own results
        ("1 inwc", "pressure", 249.08891),
        ("1 in. w.c.", "pressure", 249.08891),
        ("1 inH2O", "pressure", 249.08891),
        ('1 "wc', "pressure", 249.08891),
        ("1 psi", "pressure", 6894.757293168361),
        ("16 oz/in2", "pressure", 6894.757293168361),
        ("1 inHg", "absolute pressure", 3386.389),
        ("1 MBH", "heat", 293.0710701722222),
        ("1 kBtu/h", "heat", 293.0710701722222),
        ("1 therm/h", "heat", 29307.10701722222),
        ("1 hp", "shaft power", 745.6998715822702),
        ("1 cfm", "airflow", 0.3048**3 / 60),
        ("1 L/s", "airflow", 0.001),
        ("32 °F", "temperature", 273.15),
        ("-40 degC", "temperature", 233.15),
        ("9 degF", "temperature difference", 5.0),
        ("5 3/8 in", "size", 5.375 * 0.0254),
        ("5⅜ in", "size", 5.375 * 0.0254),
        ("4 ft 6 in", "length", 4.5 * 0.3048),
        ("4'6\"", "length", 4.5 * 0.3048),
        ("9,000 cfm", "airflow", 9000 * 0.3048**3 / 60),
        ("−12 degF", "temperature", (459.67 - 12) * 5 / 9),
        ("7.2 %", "fraction", 0.072),
        ("54 ppm", "fraction", 54e-6),
        (0.072, "fraction", 0.072),
        ("1.10 /therm", "energy price", 1.10 / 105505585.262),
    ],
)
def test_a_definition(text: object, kind: str, value: float) -> None:
    assert parse(text, kind).value == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "kind", "says"),
    [
        ("3.5", "pressure", "has no unit"),
        (3.5, "pressure", "has no unit"),
        (True, "pressure", "is not text"),
        (["3.5 Pa"], "pressure", "is not text"),
        ("3.5 kW", "pressure", "is a power; here a pressure is due"),
        ("3.5 inwcc", "pressure", 'did you mean "inwc"?'),
        ("about 3 Pa", "pressure", "does not begin with a number"),
        ("3,5 inwc", "pressure", "can be read in two ways"),
        ("nan Pa", "pressure", "does not begin with a number"),
        ("inf Pa", "pressure", "does not begin with a number"),
        ("1e999 Pa", "pressure", "is not a finite number"),
        ("1e300 rpm", "rotational speed", "more than there is"),
        ("-1e30 psi", "pressure", "more than there is"),
        ("5 3/0 in", "size", "divides by zero"),
        ("-500 degF", "temperature", "below absolute zero"),
        ("3.5 " + "x" * 100, "pressure", "is too long"),
    ],
)
def test_what_cannot_be_read_is_answered_in_one_sentence(
    text: object, kind: str, says: str
) -> None:
    with pytest.raises(QuantityError) as error:
        parse(text, kind)
    sentence = str(error.value)
    assert says in sentence
    assert "\n" not in sentence


@given(st.one_of(st.text(max_size=60), st.integers(), st.floats(), st.none()), kinds)
def test_no_text_ever_breaks_the_reader(text: object, kind: str) -> None:
    with contextlib.suppress(QuantityError):
        assert math.isfinite(parse(text, kind).value)


@given(kinds, sizes)
def test_a_value_shown_in_either_system_is_the_same_value(kind: str, number: float) -> None:
    value = _value(kind, number)
    for system in ("us", "si"):
        unit = KINDS[kind].unit(system)
        back = in_unit(value, kind, unit) * BY_NAME[unit].factor
        back += 0.0 if KINDS[kind].difference else BY_NAME[unit].offset
        assert back == pytest.approx(value, rel=1e-9, abs=1e-12)


def test_a_number_is_printed_with_a_true_minus_and_its_unit_never_breaks_off() -> None:
    minus = shown(-5.0, "pressure", "si")
    assert minus.text == "−5 Pa"
    assert shown(-0.001, "pressure", "us").number == "0.00"
