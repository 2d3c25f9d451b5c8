"""The plan in words: everything named, nothing left unfilled, on a terminal and on a page."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from lightoff.job import load
from lightoff.job.instrument import KINDS_CARRIED
from lightoff.judgement.plan import plan
from lightoff.judgement.plan.windows import _FROM
from lightoff.judgement.tasks import WORK, tasks
from lightoff.surfaces.planning import plan_sheet
from lightoff.surfaces.planning.plain import as_lines
from lightoff.surfaces.words import Speech, has
from lightoff.surfaces.words.bound import PageSpeech
from trade import drawn
from trade.build import Tree, tree

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
UNFILLED = re.compile(
    r"[{}]|\bNone\b|(?:task|plan|caution|licence|record|instrument-kind)[:-][a-z]"
)


def lightoff(*words: str | Path) -> subprocess.CompletedProcess[str]:
    """Run the command as a person does."""
    command = [sys.executable, "-c", "from lightoff.surfaces.cli.main import main; main()"]
    return subprocess.run(
        [*command, *map(str, words)], capture_output=True, text=True, cwd=ROOT, check=False
    )


@pytest.mark.parametrize("work", WORK, ids=lambda work: work.name)
def test_every_task_has_a_name_a_sentence_and_its_cautions(work) -> None:
    for message in (f"task:{work.name}", f"task-about:{work.name}", f"task-step:{work.step}",
                    *work.cautions):  # fmt: skip
        assert has(message), message
    assert work.licence is None or has(f"licence:{work.licence}")


def test_every_kind_of_instrument_a_task_takes_has_a_name_and_is_one_of_the_jobs() -> None:
    kinds = {k for task in tasks(drawn.machine(tree(furnaces=3))) for k in task.instruments}
    assert kinds <= set(KINDS_CARRIED)
    assert all(has(f"instrument-kind:{kind}") for kind in kinds)


def test_every_source_of_a_window_has_a_sentence() -> None:
    assert all(has(message) for message in _FROM.values())


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_an_example_fits_80_columns(path: Path) -> None:
    job = load(path)
    speech = Speech(job.display.units)
    sheet = plan_sheet(plan(job.machine(), job.visit()), job.machine(), speech)
    assert max(len(line.text) for line in as_lines(sheet, sheet.sentence, speech)) <= 80


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(drawn.jobs())
def test_nothing_is_left_unfilled_on_any_machine(job: Tree) -> None:
    machine = drawn.machine(job)
    made = plan(machine, drawn.visited(job))
    for speech in (Speech("us"), PageSpeech("si")):
        sheet = plan_sheet(made, machine, speech)
        lines = [line.text for line in as_lines(sheet, "head", speech)]
        assert [line for line in lines if UNFILLED.search(line)] == []
        assert max(map(len, lines)) <= 80


class TestTerminal:
    def test_an_example_is_plain_text_on_stdout(self) -> None:
        done = lightoff("plan", ROOT / "examples" / "two-furnaces-vfd.toml")
        assert (done.returncode, done.stderr) == (0, "")
        lines = done.stdout.splitlines()
        assert lines[0].startswith("MAU-2, plan of visit 1: ")
        for title in ("What to carry", "Ready now", "What it should read: Power"):
            assert title in lines
        assert "\x1b" not in done.stdout  # no colour into a pipe

    def test_before_the_first_visit_the_site_is_ready_and_all_else_waits(self) -> None:
        text = lightoff("plan", ROOT / "examples" / "plate-only.toml").stdout
        ready = text[text.index("Ready now") : text.index("What waits")]
        assert "Site ready (8 min)" in ready
        assert "! Roof edge" in ready
        assert "Belts: waits for Wheel and housing" in text

    def test_a_coarse_gauge_is_named_with_what_would_do(self) -> None:
        text = lightoff("plan", ROOT / "examples" / "two-furnaces-with-findings.toml").stdout
        dial = text[text.index("dial-1") : text.index("therm-1")]
        assert "out of date since 1 Oct 2025" in dial
        row = next(line for line in dial.splitlines() if "Manifold, low, furnace 1" in line)
        assert re.search(r"± 0\.3\d in\. w\.c\. +± 0\.01\d in\. w\.c\. +gauge-2$", row), row

    def test_a_finished_visit_has_nothing_left(self) -> None:
        text = lightoff("plan", ROOT / "examples" / "one-furnace-propane.toml").stdout
        assert "Everything this visit asks for is done." in text
        assert "What waits" not in text

    def test_json_is_the_whole_plan_in_si(self) -> None:
        done = lightoff("plan", ROOT / "examples" / "plate-only.toml", "--json")
        told = json.loads(done.stdout)
        assert list(told)[:5] == ["format", "unit", "visit", "engine", "purpose"]
        assert {"carry", "gauges", "windows", "tasks", "remarks", "minutes", "weather"} <= set(told)
        first = told["tasks"][0]
        assert (first["task"]["id"], first["state"]) == ("site ready", "ready")
        assert first["missing"][0] == {
            "kind": "check", "names": ["site.ready"], "runs": [], "furnace": None, "due": True,
        }  # fmt: skip

    def test_the_days_weather_moves_what_it_should_read(self) -> None:
        example = ROOT / "examples" / "plate-only.toml"
        cold = lightoff("plan", example, "--outdoor", "-10 degF").stdout
        assert "outdoors −10.0 °F" in cold
        assert cold != lightoff("plan", example).stdout
        assert "for any weather" in lightoff("plan", example).stdout

    @pytest.mark.parametrize(
        ("words", "says"),
        [
            (("--outdoor", "38"), "38"),
            (("--outdoor", "5 ft"), "5 ft"),
            (("--outdoor", "900 degF"), "900 degF"),
            (("--visit", "7"), "there is no visit 7"),
        ],
    )
    def test_bad_input_is_one_sentence_and_exit_2(self, words: tuple[str, ...], says: str) -> None:
        done = lightoff("plan", ROOT / "examples" / "one-furnace-propane.toml", *words)
        assert (done.returncode, done.stdout) == (2, "")
        assert says in done.stderr
        assert len(done.stderr.strip().splitlines()) == 1


def test_an_instrument_with_a_long_name_breaks_no_line() -> None:
    job = tree(furnaces=1)
    job["instrument"][0]["id"] = "the-one-borrowed-from-the-other-van"
    machine = drawn.machine(job)
    sheet = plan_sheet(plan(machine, drawn.visited(job)), machine, Speech())
    lines = [line.text for line in as_lines(sheet, "head", Speech())]
    assert any(line.endswith("the-one-borrowed-from-the-other-van") for line in lines)
    assert max(map(len, lines)) <= 80


class TestSentence:
    """The short answer at the top."""

    def said(self, job: Tree) -> str:
        machine = drawn.machine(job)
        return plan_sheet(plan(machine, drawn.visited(job)), machine, Speech()).sentence

    def test_nothing_declared(self) -> None:
        assert self.said(tree() | {"instrument": []}).startswith("No instrument is declared")

    def test_something_lacking(self) -> None:
        assert "tachometer" in self.said(tree())

    def test_one_gauge_too_coarse(self) -> None:
        job = load(ROOT / "examples" / "one-furnace-propane.toml")
        machine = job.machine()
        said = plan_sheet(plan(machine, job.visit()), machine, Speech()).sentence
        assert said == "scale-1 is coarse for belt tension: near the limits it would not decide."
