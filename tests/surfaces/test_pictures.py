"""The pictures of the calculations: whatever the numbers, no label meets another or is cut off."""

import re
from html import unescape
from itertools import combinations, pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.surfaces.drawing.decay import Decay, End, decay
from lightoff.surfaces.drawing.fan_curve import FanCurve, Running, fan_curve
from lightoff.surfaces.drawing.label import ASCENT, DESCENT, SIZE, Label, spread
from lightoff.surfaces.drawing.picture import Said
from lightoff.surfaces.drawing.pipe_drop import Level, PipeDrop, pipe_drop
from lightoff.surfaces.drawing.traverse import Place, Traverse, traverse

SAID = Said("A picture", "what it <shows> & says")
WIDTHS = st.sampled_from([324.0, 640.0])
SHAPE = ((0.45, 1.08), (0.8, 1.03), (1.0, 1.0), (1.3, 0.74))


def labels(svg: str) -> list[Label]:
    """Every text of a picture."""
    found = re.findall(r'<text x="(.*?)" y="(.*?)" text-anchor="(.*?)" .*?>(.*?)</text>', svg)
    return [Label(float(x), float(y), unescape(text), anchor) for x, y, anchor, text in found]


def astray(svg: str, width: float) -> list[str]:
    """Labels that meet one another, or leave the sheet."""
    there = labels(svg)
    height = float(re.search(r'viewBox="0 0 \S+ (\S+)"', svg)[1])
    cut = [
        each.text
        for each in there
        if each.left < -1 or each.right > width + 1
        or each.y - SIZE * ASCENT < -1 or each.y + SIZE * DESCENT > height + 1
    ]  # fmt: skip
    return cut + [f"{a.text} | {b.text}" for a, b in combinations(there, 2) if meet(a, b)]


def meet(a: Label, b: Label) -> bool:
    apart = abs(a.y - b.y) >= SIZE * (ASCENT + DESCENT) - 0.1
    return not apart and a.left < b.right and b.left < a.right


def running(flow: float, pressure: float, name: str) -> Running:
    curve = tuple((x * flow, p * pressure) for x, p in SHAPE)
    return Running(flow, pressure, curve, (name, f"{flow:,.0f} cfm", f"{pressure:.2f} in. w.c."))


@given(WIDTHS, st.floats(500, 40_000), st.floats(0.2, 6), st.floats(0.25, 1.6), st.floats(0.8, 1.2))
def test_the_fan_before_and_after(width, flow, pressure, ratio, density) -> None:
    old = running(flow, pressure, "now 1,032 rpm")
    new = running(flow * ratio, pressure * ratio**2 * density, "then 1,140 rpm")
    what = FanCurve(old, new, "airflow, cfm", "fan pressure, in. w.c.", "system")
    assert astray(fan_curve(what, SAID, width=width), width) == []


@given(
    WIDTHS, st.floats(5, 2000), st.floats(0.5, 100), st.floats(0.001, 0.99), st.floats(0.3, 1.2),
    st.booleans(),
)  # fmt: skip
def test_the_pressure_along_a_pipe(width, length, start, lost, least, limited) -> None:
    end = start * (1 - lost)
    along = tuple((length * i / 8, start + (end - start) * i / 8) for i in range(9))
    limit = Level(least * start, f"at least {least * start:.2f} in. w.c.") if limited else None
    what = PipeDrop(
        along, Level(start, f"{start:.2f} in. w.c. at the start"),
        Level(end, f"{end:.2f} in. w.c. left"), "length of pipe, ft", "gauge pressure, in. w.c.",
        limit,
    )  # fmt: skip
    assert astray(pipe_drop(what, SAID, width=width), width) == []


@given(
    WIDTHS, st.just(0.0) | st.floats(1, 1500), st.floats(0.5, 700), st.floats(-0.3, 0.3),
    st.floats(-0.1, 0.1),
)  # fmt: skip
def test_a_pressure_test(width, minutes, start, change, by_temperature) -> None:
    ends = [start * (1 + part) for part in (change, by_temperature)]
    read, explained = (End(end, f"{end:.2f}", f"at the end {end:.2f} kPa") for end in ends)
    what = Decay(minutes, start, read, explained, "time, min", "gauge pressure, kPa")
    assert astray(decay(what, SAID, width=width), width) == []


@given(WIDTHS, st.floats(6, 120), st.floats(6, 120), st.integers(3, 10), st.integers(3, 8))
def test_a_traverse_of_a_rectangle(width, wide, high, columns, rows) -> None:
    what = Traverse(
        wide, high, places(wide, columns), f"{wide:.0f} × {high:.0f} in., to scale",
        "from the left wall, in.", places(high, rows), "from the top, in.",
    )  # fmt: skip
    svg = traverse(what, SAID, width=width)
    assert astray(svg, width) == []
    assert svg.count('class="dot') == columns * rows


@given(WIDTHS, st.floats(4, 90), st.integers(4, 10), st.sampled_from([2, 3]))
def test_a_traverse_of_a_circle(width, diameter, points, lines) -> None:
    what = Traverse(
        diameter, diameter, places(diameter, points), f"{diameter:.0f} in. round, to scale",
        "from the wall, in., the same on every line", lines=lines,
    )  # fmt: skip
    svg = traverse(what, SAID, width=width)
    assert astray(svg, width) == []
    assert svg.count('class="dot') == points * lines


def places(size: float, count: int) -> tuple[Place, ...]:
    at = [size * (i + 0.5) / count for i in range(count)]
    return tuple(Place(x, f"{x:.2f}") for x in at)


@pytest.mark.parametrize("width", [324.0, 640.0])
def test_a_duct_is_drawn_to_scale(width) -> None:
    what = Traverse(40, 20, places(40, 5), "40 × 20", "left", places(20, 5), "top")
    box = re.search(r'width="(\S+)" height="(\S+)" class="duct"', traverse(what, SAID, width=width))
    assert float(box[1]) / float(box[2]) == pytest.approx(2, rel=2e-3)


def test_a_picture_says_in_words_what_it_shows() -> None:
    what = Traverse(40, 20, places(40, 5), "<40>", "left", places(20, 5), "top")
    root = ElementTree.fromstring(traverse(what, SAID, width=640.0))
    assert root.findtext("title") == "A picture"
    assert root.findtext("desc") == "what it <shows> & says"
    assert root.get("aria-label") == "A picture: what it <shows> & says"


@given(st.lists(st.floats(0, 100), min_size=1, max_size=8), st.floats(1, 12))
def test_what_is_spread_stands_apart_in_order_and_within(places_, pitch) -> None:
    spaced = spread(sorted(places_), pitch, 0, 100)
    assert all(b - a >= pitch - 1e-9 for a, b in pairwise(spaced))
    assert min(spaced) >= -1e-9
    assert max(spaced) <= 100 + 1e-9
