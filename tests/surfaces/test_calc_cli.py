"""`lightoff calc`: the answer on stdout, 0; what is wrong, every fault a line on stderr, 2."""

import io
import json
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from lightoff.calculations import CALCULATIONS
from lightoff.surfaces.cli.main import main

ROOT = Path(__file__).parents[2]
CLOCKING = ("clocking", "--dial", "2 ft3", "--turns", "4", "--seconds", "72 s")


@dataclass(frozen=True)
class Done:
    """What a command answered."""

    returncode: int
    stdout: str
    stderr: str


Calc = Callable[..., Done]


@pytest.fixture
def calc(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Calc:
    """Run `lightoff calc` in this process: what it takes to start a thousand times is no claim."""

    def run(*words: str | Path, stdin: str = "") -> Done:
        monkeypatch.setattr(sys, "argv", ["lightoff", "calc", *map(str, words)])
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin.encode())))
        with pytest.raises(SystemExit) as end:
            main()
        told = capsys.readouterr()
        return Done(int(end.value.code or 0), told.out, told.err)

    return run


def test_every_calculation_is_listed_with_what_it_is(calc: Calc) -> None:
    done = calc()
    assert (done.returncode, done.stderr) == (0, "")
    for name in CALCULATIONS:
        assert f"  {name} " in done.stdout
    assert calc("--help").stdout == done.stdout


def test_the_answer_comes_first_and_the_working_when_asked_for(calc: Calc) -> None:
    done = calc(*CLOCKING)
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert "418.2 MBH" in lines[3]
    assert "(assumed)" in done.stdout
    assert "\x1b" not in done.stdout  # no colour into a pipe
    assert "q = V / t" not in done.stdout
    worked = calc(*CLOCKING, "--working").stdout
    assert worked.startswith(done.stdout)
    assert "q = V / t" in worked
    assert "Source: ISO 2533:1975, 2.3." in worked
    assert max(map(len, worked.splitlines())) <= 80


def test_a_value_needs_no_quotes_and_may_be_negative(calc: Calc) -> None:
    plain = calc("clocking", "--dial", "2", "ft3", "--turns=4", "--seconds", "72", "s",
                 "--gas-temperature", "-5", "degC")  # fmt: skip
    assert plain.returncode == 0
    assert "23 °F  (-5 degC)" in plain.stdout


def test_units_are_the_readers(calc: Calc) -> None:
    assert "122.6 kW" in calc(*CLOCKING, "--units", "si").stdout


def test_json_holds_si_values_steps_and_notes(calc: Calc) -> None:
    answer = json.loads(calc(*CLOCKING, "--json").stdout)
    assert answer["results"]["input"]["unit"] == "W"
    assert answer["results"]["input"]["value"] == pytest.approx(122575, rel=1e-4)
    assert answer["inputs"]["altitude"]["assumed"]
    assert answer["steps"][-1]["terms"][0].keys() >= {"symbol", "words", "value", "unit"}
    assert all(note["sentence"] for note in answer["notes"])


def test_help_names_inputs_defaults_and_an_example_that_runs(calc: Calc) -> None:
    told = calc("clocking", "--help").stdout
    flat = " ".join(told.split())
    for name in ("--dial", "--heating-value", "--table", "60.0 °F where nothing is given"):
        assert name in flat
    command = told.partition("For example\n")[2].replace("\\\n", " ").replace("lightoff", "", 1)
    done = subprocess.run(
        ["bash", "-c", f'"$@" {command}', "-", sys.executable, "-c",
         "from lightoff.surfaces.cli.main import main; main()"],
        capture_output=True, text=True, cwd=ROOT, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")


def test_a_table_comes_from_a_file_or_a_pipe(calc: Calc, tmp_path: Path) -> None:
    rows = "dial,turns,seconds\n2 ft3,4,72 s\n"
    file = tmp_path / "rows.csv"
    file.write_text(rows)
    done = calc("clocking", "--table", file)
    assert done.stdout.splitlines()[1].startswith("2 ft3,4,72 s,418.243,400,1.01454")
    assert calc("clocking", "--table", "-", stdin=rows).stdout == done.stdout
    broken = calc("clocking", "--table", "-", stdin=rows + "2 ft3,4,72\n")
    assert (broken.returncode, broken.stdout) == (2, "")
    assert broken.stderr.startswith("row 3, seconds: ")


def test_paper_is_written_where_it_is_asked_for(calc: Calc, tmp_path: Path) -> None:
    target = tmp_path / "answer.pdf"
    done = calc(*CLOCKING, "--pdf", target)
    assert (done.returncode, done.stdout) == (0, "")
    assert target.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("clockin",), ['did you mean "clocking"']),
        (("clocking", "--dail", "2 ft3", "--turns", "4", "--seconds", "9 s"),
         ['did you mean "--dial"', "--dial: not given"]),
        (("clocking", "--dial", "2", "--turns", "x"),
         ["--dial: ", "--turns: ", "--seconds: not given"]),
        (("clocking", "--dial", "2 ft3", "--dial", "3 ft3", "--turns", "1", "--seconds", "9 s"),
         ["--dial: given 2 times"]),
        (("clocking", "2 ft3"), ['"2 ft3" belongs to no input']),
        (("--dial", "2 ft3"), ["--dial stands before any calculation"]),
        ((*CLOCKING, "--units", "metric"), ['write "us" or "si"']),
        ((*CLOCKING, "--pdf"), ["--pdf names no file"]),
        ((*CLOCKING, "--pdf", "/nowhere/at/all.pdf"), ["/nowhere/at/all.pdf"]),
        (("clocking", "--table", "nowhere.csv"), ["nowhere.csv"]),
        (("clocking", "--table", "-", "--json"), ["leave --json out"]),
        (("clocking", "--dial", "2 ft3", "--turns", "4", "--seconds", "0 s"), ["above zero"]),
    ],
)  # fmt: skip
def test_bad_input_is_sentences_and_exit_2(
    calc: Calc, words: tuple[str, ...], says: list[str]
) -> None:
    done = calc(*words)
    assert (done.returncode, done.stdout) == (2, "")
    lines = done.stderr.strip().splitlines()
    assert len(lines) == len(says)
    for line, part in zip(lines, says, strict=True):
        assert part in line
