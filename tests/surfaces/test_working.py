"""A working is shown as it was carried out: no number changed, nothing to be read in two ways."""

import dataclasses
import math
import re
from xml.etree import ElementTree

import pytest
import typst as press
from hypothesis import assume, given
from hypothesis import strategies as st

from laws.sampling import FORMULAS, Formula, middle, name_of
from lightoff.formula import Step, describe, working
from lightoff.formula.elementary import ceil, exp, log, maximum, minimum, where
from lightoff.formula.expression import Constant, Expression, Operation
from lightoff.formula.figure import Figure, Symbol, expression_of
from lightoff.formula.text import figure, with_numbers
from lightoff.surfaces.working import (
    as_sentence,
    equation,
    equation_lines,
    has_numbers,
    mathml,
    mathml_letter,
    numbers,
    stands_on,
    typst,
    typst_letter,
    unit_text,
)
from lightoff.surfaces.working.mathml import MathML
from lightoff.surfaces.working.typst import Typst, quoted
from lightoff.surfaces.working.writer import in_numbers, in_symbols, is_a
from surfaces.equations import seen

PARTS = {"methane": 0.9, "ethane": 0.06, "nitrogen": 0.04}
ROWS = {"points": ((2.0, 800.0), (4.0, 600.0)), "system": ((700.0, 3.0, 2.0),)}
CORE = {
    "math", "mtable", "mtr", "mtd", "mrow", "mstyle", "mi", "mn", "mo", "mtext", "mspace", "mfrac",
    "msqrt", "msup", "msub", "msubsup",
}  # fmt: skip


def last_step(formula: Formula) -> Step:
    """The formula's own step, in the middle of its ranges."""
    told = describe(formula)
    several = {q.name: ROWS.get(q.name, PARTS) for q in told.inputs if q.range is None}
    return working(formula, **middle(told), **several).steps[-1]


STEPS = [pytest.param(formula, id=name_of(formula)) for formula in FORMULAS]


# ---- every formula there is


@pytest.mark.parametrize("formula", STEPS)
def test_mathml_is_well_formed_and_of_the_core(formula: Formula) -> None:
    step = last_step(formula)
    root = ElementTree.fromstring(mathml(step))
    names = {each.tag.partition("}")[2] for each in root.iter()}
    assert names <= CORE
    assert root.get("alttext") == as_sentence(step)
    for each in root.iter():  # a fraction or a power of three parts is drawn wrong, not refused
        if each.tag.partition("}")[2] in ("mfrac", "msup", "msub"):
            assert len(each) == 2


@pytest.mark.parametrize("formula", STEPS)
def test_typst_sets_it(formula: Formula) -> None:
    step = last_step(formula)
    letters = " ".join(f"${typst_letter(each.symbol)}$" for each in stands_on(step))
    page = f"#set page(width: auto, height: auto)\n$ {typst(step)} $\n{letters}"
    assert press.compile(page.encode(), format="svg", ignore_system_fonts=True)


@pytest.mark.parametrize("formula", STEPS)
def test_no_surface_changes_a_number(formula: Formula) -> None:
    step = last_step(formula)
    if step.expression is None:
        return
    due = [figure(abs(each)) for each in carried_out(step.expression)]
    assert numbers_in_mathml(in_numbers(step.expression, MathML())) == due
    assert numbers_in_typst(in_numbers(step.expression, Typst())) == due
    due = due if has_numbers(step) else []
    if has_numbers(step):
        assert numbers_in_text(numbers(step)) == numbers_in_text(with_numbers(step.expression))
    value = figure(step.value)
    assert numbers_in_mathml(mathml(step))[-1] == value.lstrip("-")
    assert numbers_in_typst(typst(step).rpartition("&=")[2]) == [value.lstrip("-")]
    again = [*due, value.lstrip("-")]
    assert numbers_in_mathml(mathml(step, again=True))[-len(again) :] == again
    assert numbers_in_typst(typst(step, again=True).partition("&=")[2]) == again
    assert as_sentence(step).endswith(f"= {value} {unit_text(step.result.unit)}".rstrip())


@pytest.mark.parametrize("formula", STEPS)
def test_every_letter_of_an_equation_is_told(formula: Formula) -> None:
    step = last_step(formula)
    told = stands_on(step)
    assert len({each.symbol for each in told}) == len(told)
    terms = {term.quantity.symbol: term for term in step.terms}
    for each in told:
        if not each.above and each.taken and each.symbol in terms:
            term = terms[each.symbol]
            assert (each.value, each.words) == (term.value, term.quantity.words)
    if step.expression is not None and not branches(step.expression):
        shown = numbers_in_text(with_numbers(step.expression))
        assert all(figure(each.value).lstrip("-") in shown for each in told if each.in_range)


@pytest.mark.parametrize("formula", STEPS)
def test_text_keeps_to_the_screen(formula: Formula) -> None:
    lines = list(equation_lines(last_step(formula), 60))
    assert max(map(len, lines)) <= 60
    assert sum(" = " in line for line in lines) >= 1


# ---- any expression at all, read again by eye

LEAVES = st.one_of(
    st.sampled_from([0.5, 2.0, -3.0, 1.2e-7, 38.4e6, 101325.0, -0.0065]).map(
        lambda x: Figure(x, Constant(x))
    ),
    st.tuples(st.sampled_from("abxyzT"), st.sampled_from([0.6, 4.0, -2.5, 3.2e-9])).map(
        lambda told: Figure(told[1], Symbol(*told))
    ),
)


def grown(children: st.SearchStrategy[Figure]) -> st.SearchStrategy[Figure]:
    two = st.tuples(children, children)
    powers = st.sampled_from([2.0, 0.5, -1.0, 1.5])
    return st.one_of(
        two.map(lambda ab: ab[0] + ab[1]),
        two.map(lambda ab: ab[0] - ab[1]),
        two.map(lambda ab: ab[0] * ab[1]),
        two.map(lambda ab: tried(lambda: ab[0] / ab[1])),
        st.tuples(children, powers).map(lambda ab: tried(lambda: ab[0] ** ab[1])),
        children.map(lambda a: -a),
        children.map(abs),
        children.map(lambda a: tried(lambda: exp(a))),
        children.map(lambda a: tried(lambda: log(a))),
        two.map(lambda ab: minimum(*ab)),
        two.map(lambda ab: maximum(*ab)),
        st.tuples(children, children, children).map(lambda t: where(t[0] < t[1], t[2], t[0] * 2)),
    )


def tried(work: object) -> Figure:
    """What cannot be worked out becomes a plain one."""
    try:
        found = work()  # type: ignore[operator]
    except (ZeroDivisionError, OverflowError, ValueError):
        return Figure(1.0, Constant(1.0))
    return found if math.isfinite(found) else Figure(1.0, Constant(1.0))


EXPRESSIONS = st.recursive(LEAVES, grown, max_leaves=8)


@given(EXPRESSIONS)
def test_what_mathml_shows_is_what_was_worked_out(told: Figure) -> None:
    expression, letters = told.expression, values(told.expression)
    assume(letters is not None and is_steady(expression))
    due = pytest.approx(told, rel=1e-9, abs=1e-9 * largest(expression))
    assert seen(in_numbers(expression, MathML()), {}) == due
    assert seen(in_symbols(expression, MathML()), letters or {}) == due


@given(EXPRESSIONS)
def test_what_a_terminal_shows_is_what_was_worked_out(told: Figure) -> None:
    line = with_numbers(told.expression).replace("×", "*").replace("^", "**")
    again = eval(line, {"exp": math.exp, "log": math.log, "min": min, "max": max, "abs": abs})
    assert again == pytest.approx(told, rel=1e-9, abs=1e-9 * largest(told.expression))


@given(EXPRESSIONS)
def test_typst_is_made_of_quoted_names_and_digits(told: Figure) -> None:
    source = in_symbols(told.expression, Typst()) + in_numbers(told.expression, Typst())
    assert not re.search(r"[#$\\@`]", source)
    assert source.count("(") == source.count(")")


def parts_of(expression: Expression) -> list[Expression]:
    """An expression and everything in it."""
    inner = expression.operands if isinstance(expression, Operation) else ()
    return [expression, *(part for each in inner for part in parts_of(each))]


def largest(expression: Expression) -> float:
    """The largest number on the way: what is summed in another order differs by a part of it."""
    return max(abs(each.value) for each in parts_of(expression))


def is_steady(expression: Expression) -> bool:
    """Whether no choice hangs on the last digit."""
    pairs = [each.operands for each in parts_of(expression) if is_a(each, "<", ">")]
    return not any(a.value != b.value and math.isclose(a.value, b.value, rel_tol=1e-6)
                   for a, b in pairs)  # fmt: skip


def values(expression: Expression) -> dict[str, float] | None:
    """The value of each letter; None where one letter stands for two values."""
    found: dict[str, float] = {}
    for each in parts_of(expression):
        if isinstance(each, Symbol) and found.setdefault(each.name, each.value) != each.value:
            return None
    return found


# ---- letters, units, and what somebody might slip in


@pytest.mark.parametrize(
    ("symbol", "markup"),
    [
        ("p_ws", "<msub><mi>p</mi><mi>ws</mi></msub>"),
        ("rho", "<mi>ρ</mi>"),
        ("Delta_p", '<mrow><mi mathvariant="normal">Δ</mi><mi>p</mi></mrow>'),
        ("T_1", "<msub><mi>T</mi><mn>1</mn></msub>"),
        ("CO2", '<msub><mi mathvariant="normal">CO</mi><mn>2</mn></msub>'),
        ("CO2_max", "<mrow><mn>2</mn><mo>,</mo><mi>max</mi></mrow>"),
        ("T'", "<msup><mi>T</mi><mo>′</mo></msup>"),
        ("p_1'", "<msubsup><mi>p</mi><mn>1</mn><mo>′</mo></msubsup>"),
    ],
)
def test_a_letter_is_set_as_its_source_sets_it(symbol: str, markup: str) -> None:
    assert markup in mathml_letter(symbol)


def test_a_small_number_is_a_power_of_ten() -> None:
    assert MathML().number(-1.2e-7).count("<mn>") == 3
    assert Typst().number(-1.2e-7) == '-"1.2" times 10^(-7)'
    assert numbers_in_text(numbers(step_of(Figure(1.2e-7, Symbol("x", 1.2e-7)) * 2))) == [
        "1.2e-07",
        "2",
    ]


def test_what_is_rounded_up_stands_between_its_own_brackets() -> None:
    expression = (ceil(Figure(2.3, Symbol("x", 2.3))) * 2).expression
    assert seen(in_numbers(expression, MathML()), {}) == 6
    assert "⌈" in in_symbols(expression, MathML())
    assert in_numbers(expression, Typst()) == 'ceil("2.3") times "2"'


def test_markup_in_a_description_stays_text() -> None:
    sentence = '<script>alert("x")</script> & #image("x"), solved for y'
    step = step_of(Figure(2.0, Symbol("x", 2.0)) * 3)
    hostile = dataclasses.replace(
        step, expression=None, formula=dataclasses.replace(step.formula, equation=sentence)
    )
    assert "<script" not in mathml(hostile)
    assert ElementTree.fromstring(mathml(hostile)).get("alttext", "").startswith("<script>")
    source = f"$ x_({quoted(sentence)}) $".encode()
    assert press.compile(source, format="svg", ignore_system_fonts=True)


def step_of(found: Figure) -> Step:
    """A step around any arithmetic."""
    likeness = last_step(FORMULAS[0])
    return dataclasses.replace(likeness, expression=expression_of(found), value=float(found))


def test_a_branch_not_taken_is_shown_in_symbols_alone() -> None:
    x = Figure(2.0, Symbol("x", 2.0))
    step = step_of(where(x > 1, x * 7, x * 9))
    assert "otherwise" in mathml(step)
    assert "9" in equation(step)
    assert numbers_in_text(numbers(step)) == ["2", "7"]


# ---- numbers, found again in each notation


def carried_out(expression: Expression) -> list[float]:
    """The numbers of an expression in the order of reading; a root shows no half."""
    if not isinstance(expression, Operation):
        return [expression.value]
    operands = expression.operands
    if expression.operator == "where":
        condition, yes, no = operands
        return carried_out(yes if condition.value else no)
    if is_a(expression, "^") and operands[1] == Constant(0.5):
        return carried_out(operands[0])
    if is_a(expression, "+") and operands[0] == Constant(0.0):
        return carried_out(operands[1])
    return [each for operand in operands for each in carried_out(operand)]


def branches(expression: Expression) -> bool:
    """Whether anything is shown in symbols that the numbers leave out."""
    inner = expression.operands if isinstance(expression, Operation) else ()
    return is_a(expression, "where") or any(map(branches, inner))


def numbers_in_text(line: str) -> list[str]:
    flat = line.replace("\u00a0", "").replace("−", "-")
    return [figure(float(each)) if "e" not in each else f"{float(each):.6g}" for each in re.findall(
        r"(?<![\w.])\d+(?:\.\d+)?(?:e-?\+?\d+)?", flat)]  # fmt: skip


_TEN = r'"(?P<ten>[^"]*)" times 10\^\((?P<power>-?\d+)\)'


def numbers_in_typst(source: str) -> list[str]:
    text = source.replace("\u202f", "")
    pattern = rf'(?:{_TEN}|"(?P<plain>[\d.]+)")'
    return [written(each) for each in re.finditer(pattern, text)]


def numbers_in_mathml(markup: str) -> list[str]:
    text = re.sub(
        r"</?(?:mrow|mstyle|math|mtable|mtr|mtd)\b[^>]*>", "", markup.replace("\u202f", "")
    )
    minus = '<mo form="prefix">−</mo>'
    ten = (
        rf"<mn>(?P<ten>[\d.]+)</mn><mo>×</mo><msup><mn>10</mn>"
        rf"(?P<power>(?:{minus})?<mn>\d+</mn>)</msup>"
    )
    pattern = rf"{ten}|<mn>(?P<plain>[\d.]+)</mn>"
    return [written(each) for each in re.finditer(pattern, text)]


def written(match: re.Match[str]) -> str:
    """A found number as a formula writes it, without its sign."""
    if match["ten"] is None:
        return match["plain"]
    power = int(re.sub("<mo.*?</mo>", "-", match["power"]).replace("<mn>", "").replace("</mn>", ""))
    return f"{match['ten']}e{power:+03d}"
