"""A working is what was computed, step by step, and nothing else."""

from typing import NamedTuple

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.formula import Number, describe, formula, working
from lightoff.formula.description import UndescribedError
from lightoff.formula.elementary import clip, exp, log, maximum, where
from lightoff.formula.expression import Symbol
from lightoff.formula.figure import Figure, expression_of
from lightoff.formula.text import figure, with_numbers, written


@formula
def doubled(amount: Number) -> Number:
    """Twice as much.

    y = 2 x

    Parameters
    ----------
    amount : x, how much, 0 to 10 [m]

    Returns
    -------
    y, twice that [m]

    Source: this test.
    """
    return 2 * amount


@formula
def difference(first: Number, second: Number) -> Number:
    """Twice one less twice the other.

    z = y - y'

    Parameters
    ----------
    first : a, one, 0 to 10 [m]
    second : b, other, 0 to 10 [m]

    Returns
    -------
    z, the difference [m]

    Source: this test.
    """
    return doubled(first) - doubled(second)


class Both(NamedTuple):
    more: Number
    less: Number


@formula
def both(amount: Number) -> Both:
    """One more and one less.

    m = x + 1; l = x - 1

    Parameters
    ----------
    amount : x, how much, 0 to 10 [1]

    Returns
    -------
    more : m, one more [1]
    less : l, one less [1]

    Source: this test.
    """
    return Both(amount + 1, amount - 1)


def x(value: float) -> Figure:
    return Figure(value, Symbol("x", value))


def text(value: Figure) -> tuple[str, str]:
    return written(expression_of(value)), with_numbers(expression_of(value))


@pytest.mark.parametrize(
    ("found", "symbols", "numbers"),
    [
        (x(3.0) * (x(3.0) + 1) / 2, "x (x + 1) / 2", "3 × (3 + 1) / 2"),
        (1 - (x(3.0) - 1), "1 - (x - 1)", "1 - (3 - 1)"),
        (1 / (x(4.0) / 2), "1 / (x / 2)", "1 / (4 / 2)"),
        ((-x(3.0)) ** 2, "(-x)^2", "(-3)^2"),
        ((x(4.0) ** 0.5) ** 2, "(x^0.5)^2", "(4^0.5)^2"),
        (2 * x(4.0) * 3, "2 x × 3", "2 × 4 × 3"),
        (exp(-x(0.0)), "exp(-x)", "exp(-0)"),
        (log(x(1.0)) - -2.0 * x(1.0), "log(x) - (-2 x)", "log(1) - (-2 × 1)"),
        (where(x(1.0) > 2, x(1.0), 7.0 * x(1.0)), "x if x > 2 else 7 x", "7 × 1"),
        (clip(x(5.0), 0.0, 1.0), "min(max(x, 0), 1)", "min(max(5, 0), 1)"),
    ],
)
def test_an_expression_reads_as_it_was_computed(found: Figure, symbols: str, numbers: str) -> None:
    assert text(found) == (symbols, numbers)


@given(st.floats(0.1, 9), st.floats(0.1, 9))
def test_an_equation_with_its_numbers_in_gives_the_number(a: float, b: float) -> None:
    """What is printed can be computed again, to the digits printed."""
    found = maximum(x(a), b) / (x(a) + b) - x(a) ** 2
    again = eval(with_numbers(found.expression).replace("×", "*").replace("^", "**"))
    assert again == pytest.approx(float(found), rel=1e-4, abs=1e-4)


def test_a_formula_inside_another_is_a_step_of_its_own() -> None:
    found = working(difference, first=3.0, second=1.0)
    assert [step.formula.name for step in found.steps] == ["doubled", "doubled", "difference"]
    assert [step.value for step in found.steps] == [6.0, 2.0, 4.0]
    last = found.steps[-1].expression
    assert last is not None
    assert (written(last), with_numbers(last)) == ("y - y'", "6 - 2")


def test_what_is_worked_out_once_is_shown_once() -> None:
    found = working(difference, first=3.0, second=3.0)
    assert [step.formula.name for step in found.steps] == ["doubled", "difference"]


def test_several_results_are_opened_one_by_one() -> None:
    found = working(both, amount=3.0)
    assert [(step.result.symbol, step.value) for step in found.steps] == [("m", 4.0), ("l", 2.0)]


def test_a_list_is_worked_out_item_by_item() -> None:
    found = working(lambda amounts: [doubled(each) for each in amounts], amounts=(1.0, 2.0))
    assert [step.value for step in found.steps] == [2.0, 4.0]


def test_plain_numbers_and_arrays_pass_through_unmarked() -> None:
    assert type(difference(3.0, 1.0)) is float
    assert list(difference(np.array([3.0, 4.0]), 1.0)) == [4.0, 6.0]


def test_a_term_outside_its_range_says_so() -> None:
    (step,) = working(doubled, amount=11.0).steps
    assert not step.terms[0].in_range


def test_no_figure_is_made_of_a_root_of_a_negative_number() -> None:
    with pytest.raises(ValueError, match="negative"):
        x(-1.0) ** 0.5


def test_a_formula_that_does_not_describe_itself_is_found_out() -> None:
    def silent(amount: Number) -> Number:
        """Says nothing of its input."""
        return amount

    with pytest.raises(UndescribedError, match="silent does not say its inputs"):
        describe(silent)


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_printed_number_is_within_its_digits(value: float) -> None:
    assert float(figure(value)) == pytest.approx(value, rel=1e-5)
