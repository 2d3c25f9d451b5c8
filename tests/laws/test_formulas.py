"""What every formula promises: it says what it computes, in units that agree, for one or many."""

import doctest
import importlib
import inspect
import pkgutil

import numpy as np
import pytest

import lightoff
from laws.dimensions import factor
from laws.own_units import OWN_UNITS
from laws.sampling import FORMULAS, NUMERIC, Formula, drawn, middle, name_of, parts
from lightoff.formula import describe, working
from lightoff.formula.figure import Figure, Symbol, expression_of
from lightoff.formula.text import written

PURE = ("quantity", "formula", "physics", "machine", "inference", "judgement")


@pytest.mark.parametrize("formula", FORMULAS, ids=name_of)
def test_a_formula_describes_exactly_its_parameters(formula: Formula) -> None:
    told = describe(formula)
    assert [each.name for each in told.inputs] == list(inspect.signature(formula).parameters)
    assert told.sentence.endswith(".")
    assert told.equation
    assert ">>>" in (formula.__doc__ or "")


@pytest.mark.parametrize("formula", NUMERIC, ids=name_of)
def test_the_equation_a_formula_states_is_the_one_it_carries_out(formula: Formula) -> None:
    told = describe(formula)
    if told.solved:
        return
    symbols = {each.name: each.symbol for each in told.inputs}
    values = middle(told)
    figures = {name: Figure(value, Symbol(symbols[name], value)) for name, value in values.items()}
    found = parts(formula.__wrapped__(**figures))
    pairs = zip(told.results, found, strict=True)
    stated = "; ".join(f"{each.symbol} = {written(expression_of(x))}" for each, x in pairs)
    assert told.equation == stated


@pytest.mark.parametrize("formula", NUMERIC, ids=name_of)
def test_a_float_and_an_array_agree(formula: Formula) -> None:
    arrays = drawn(describe(formula), 200)
    together = parts(formula(**arrays))
    rows = [dict(zip(arrays, map(float, row), strict=True))
            for row in zip(*arrays.values(), strict=True)]  # fmt: skip
    alone = [parts(formula(**row)) for row in rows]
    for position, array in enumerate(together):
        expected = np.array([row[position] for row in alone], dtype=float)
        assert np.isfinite(expected).all()
        np.testing.assert_allclose(np.broadcast_to(array, 200), expected, rtol=1e-12, atol=1e-300)


@pytest.mark.parametrize("formula", NUMERIC, ids=name_of)
def test_showing_the_working_changes_no_digit(formula: Formula) -> None:
    values = middle(describe(formula))
    shown = working(formula, **values)
    assert parts(shown.result) == parts(formula(**values))
    assert shown.steps[-1].formula.name == formula.__name__
    assert shown.steps[-1].value == parts(shown.result)[-1]


# four sets of metre, kilogram, second, kelvin and ampere
SCALES = [
    dict(zip(("m", "kg", "s", "K", "A"), scale, strict=True))
    for scale in np.random.default_rng(5).uniform(0.3, 3, (4, 5)).tolist()
]


@pytest.mark.parametrize("formula", NUMERIC, ids=name_of)
def test_the_units_of_a_formula_agree(formula: Formula) -> None:
    """Measured with another metre, kilogram, second, kelvin and ampere the same thing comes out."""
    if formula.__name__ not in OWN_UNITS:
        assert all(agrees(formula, scale, seed) for seed, scale in enumerate(SCALES))


@pytest.mark.parametrize("formula", [f for f in NUMERIC if f.__name__ in OWN_UNITS], ids=name_of)
def test_what_is_excused_from_that_holds_in_si_alone(formula: Formula) -> None:
    """Somewhere: a rule in steps agrees wherever both stand on one step."""
    scale = {"m": 1.1, "kg": 1.2, "s": 1.3, "K": 1.4, "A": 1.5}
    assert not all(agrees(formula, scale, seed) for seed in range(5, 35))


def agrees(formula: Formula, scale: dict[str, float], seed: int = 5) -> bool:
    told = describe(formula)
    values = {name: float(array[0]) for name, array in drawn(told, 1, seed).items()}
    other = {q.name: values[q.name] * factor(q.unit, scale) for q in told.inputs}
    ours, theirs = parts(formula(**values)), parts(formula(**other))
    expected = [x * factor(q.unit, scale) for q, x in zip(told.results, ours, strict=True)]
    return bool(np.allclose(theirs, expected, rtol=1e-9, atol=0))


def modules() -> list[str]:
    return [
        found.name
        for folder in PURE
        for found in pkgutil.walk_packages(
            importlib.import_module(f"lightoff.{folder}").__path__, f"{lightoff.__name__}.{folder}."
        )
    ]


@pytest.mark.parametrize("name", modules())
def test_every_example_in_a_docstring_is_true(name: str) -> None:
    module = importlib.import_module(name)
    finder = doctest.DocTestFinder()
    runner = doctest.DocTestRunner(verbose=False)
    for example in finder.find(module):
        runner.run(example)
    assert runner.failures == 0
