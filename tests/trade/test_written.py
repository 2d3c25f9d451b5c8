"""How finely a number was read shows in the numbers themselves."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.judgement.written import rounding
from lightoff.machine.visit import Reading

INCH = 249.08891  # [Pa]


def readings(*inches: str) -> list[Reading]:
    """Of one gauge at one point, typed so many times."""
    return [
        Reading(run="high", point="gas.supply", value=float(text) * INCH, line=i, place=str(i),
                instrument="gauge", step=10.0 ** -len(text.partition(".")[2]) * INCH)
        for i, text in enumerate(inches)
    ]  # fmt: skip


def step_of(*inches: str) -> float | None:
    """In inches of water, of the first."""
    found = rounding(readings(*inches)).get("0")
    return None if found is None else found / INCH


def test_the_finest_digit_written_is_how_finely_it_is_read() -> None:
    assert step_of("7.31", "6.98", "7.12") == pytest.approx(0.01)
    assert step_of("7.3", "6.98", "7.1") == pytest.approx(0.01)


def test_who_only_ever_writes_halves_reads_to_halves() -> None:
    assert step_of("8.5", "6.5", "7.0", "6.5") == pytest.approx(0.5)
    assert step_of("8.50", "6.50", "7.00", "6.50") == pytest.approx(0.5)


def test_short_numbers_are_written_to_their_last_digit_where_long_ones_are_rounded() -> None:
    assert step_of("3.50", "3.40", "0.83", "0.91") == pytest.approx(0.1)
    assert step_of("0.83", "0.91", "3.50", "3.40") == pytest.approx(0.01)


def test_a_few_numbers_show_nothing() -> None:
    assert step_of("8.5", "7.0") is None


@given(st.lists(st.integers(100, 999), min_size=3, max_size=8))
def test_a_step_is_never_finer_than_what_was_written(counts: list[int]) -> None:
    found = step_of(*(f"{n / 100:.2f}" for n in counts))
    assert found is not None
    assert found >= 0.01 - 1e-12
    assert all(round(n / 100 / found, 6).is_integer() for n in counts)
