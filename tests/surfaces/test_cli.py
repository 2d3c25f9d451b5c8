"""The terminal: data on stdout, talk on stderr, 0 whatever is decided, 2 for bad input."""

import json
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

ROOT = Path(__file__).parents[2]
SOUND = ROOT / "examples" / "one-furnace-propane.toml"
FAULTY = ROOT / "examples" / "two-furnaces-with-findings.toml"


def lightoff(*words: str | Path) -> subprocess.CompletedProcess[str]:
    """Run the command as a person does."""
    command = [sys.executable, "-c", "from lightoff.surfaces.cli.main import main; main()"]
    return subprocess.run(
        [*command, *map(str, words)], capture_output=True, text=True, cwd=ROOT, check=False
    )


def test_a_dangerous_finding_is_data_and_not_an_error() -> None:
    done = lightoff("judge", FAULTY)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("MAU-9, visit 1: Not to be left running")
    assert "\x1b" not in done.stdout  # no colour into a pipe
    assert max(len(line) for line in done.stdout.splitlines()) <= 80


def test_json_is_the_answer_of_the_contract() -> None:
    done = lightoff("judge", FAULTY, "--json")
    answer = json.loads(done.stdout)
    assert list(answer)[:5] == ["format", "unit", "visit", "engine", "verdict"]
    for key in ("next", "advice", "season"):
        assert answer[key] is None  # never invented
    assert {"id", "furnace", "point", "probability", "for", "against"} <= set(answer["causes"][0])
    assert sum(cause["probability"] for cause in answer["causes"]) == pytest.approx(1.0)
    assert {"none", "other"} <= {cause["id"] for cause in answer["causes"]}
    assert answer["fit"]["converged"]
    assert {"id", "prior", "prior_sigma", "estimate", "standard_uncertainty"} <= set(
        answer["unknowns"][0]
    )
    assert {"id", "run", "measured", "estimate", "standard_uncertainty", "predicted_before",
            "standardised_residual", "redundancy", "detectable_bias", "checked_by",
            "suspect"} <= set(answer["points"][0])  # fmt: skip
    manifold = next(r for r in answer["targets"] if r["id"] == "manifold high limit")
    assert {"point", "run", "decision", "estimate", "standard_uncertainty", "lower", "upper",
            "probability", "rule", "severity", "limit_from", "source", "stale", "why"} <= set(
        manifold
    )  # fmt: skip


def test_what_conforms_is_listed_when_asked_for() -> None:
    assert "Line volts a–b" not in lightoff("judge", SOUND).stdout
    assert "Line volts a–b" in lightoff("judge", SOUND, "--all").stdout


def test_a_number_opens_to_its_budget_and_its_equations() -> None:
    told = lightoff("judge", SOUND, "--why", "input.1 high").stdout
    assert "What the uncertainty is made of" in told
    assert "assumed, heating value" in told
    assert "Q = H V f / t" in told
    assert max(len(line) for line in told.splitlines()) <= 80


def test_what_is_no_number_is_answered_with_one_that_is() -> None:
    done = lightoff("judge", SOUND, "--why", "input.9")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.strip() == (
        '"input.9" is no number of this visit: write a point and its run, as "power.volts.ab fan"'
    )


def test_a_number_foretold_opens_to_its_budget_and_its_equations() -> None:
    told = lightoff("predict", SOUND, "--why", "airflow", "--outdoor", "0 degF").stdout
    assert "assumed, pressure the fan gives" in told
    assert "fan and system agree" in told
    assert "Pressure a part of the airstream takes" in told
    assert max(len(line) for line in told.splitlines()) <= 80


def test_a_number_planned_opens_before_anything_is_read() -> None:
    plate = ROOT / "examples" / "plate-only.toml"
    told = lightoff("plan", plate, "--why", "input.1 high").stdout
    assert told.startswith("Input, furnace 1, high fire: ")
    assert "Source: Bernoulli" in told


@pytest.mark.parametrize("command", ["predict", "plan"])
def test_what_the_model_does_not_know_is_refused_in_a_sentence(command: str) -> None:
    done = lightoff(command, SOUND, "--why", "furnace.1.flame")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.strip() == (
        '"furnace.1.flame" is no number the model has of this unit at high fire: write a point, as '
        '"motor.amps.a", or what is worked out, as "input.1"'
    )


def test_readings_that_come_as_csv_are_judged_with_the_job(tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("run,point,value,unit\nfan,fan.rpm,1400,rpm\noff,gas.supply,7,inwc\n")
    plate = ROOT / "examples" / "plate-only.toml"
    done = lightoff("judge", plate, "--readings", rows)
    assert done.stdout.startswith("MAU-3, visit 1: Not to be left running")  # past the wheel's most
    rows.write_text("run,point,value,unit\nfan,fan.rpm,1400,\nhigh.7,gas.supply,7,inwc\n")
    broken = lightoff("judge", plate, "--readings", rows)
    assert broken.returncode == 2
    assert "row 2, value" in broken.stderr


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(lightoff("schema").stdout))


def test_a_report_is_written_where_it_is_asked_for(tmp_path: Path) -> None:
    target = tmp_path / "report.html"
    done = lightoff("report", FAULTY, "-o", target)
    assert (done.returncode, done.stdout) == (0, "")
    assert "Not to be left running" in target.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("judge", "nowhere.toml"), "nowhere.toml"),
        (("judge", "."), ""),
        (("judge", SOUND, "--visit", "7"), "there is no visit 7"),
        (("judge", SOUND, "--visit", "x"), "x"),
        (("judge",), "job"),
        (("jugde", SOUND), "judge"),
        (("report", SOUND, "-o", "/nowhere/at/all.html"), "/nowhere/at/all.html"),
    ],
)
def test_bad_input_is_one_sentence_and_exit_2(words: tuple[str | Path, ...], says: str) -> None:
    done = lightoff(*words)
    assert done.returncode == 2
    assert done.stdout == ""
    assert says in done.stderr
    assert len(done.stderr.strip().splitlines()) == 1
    assert "Traceback" not in done.stderr


def test_every_fault_of_a_job_is_one_line_with_its_place(tmp_path: Path) -> None:
    text = SOUND.read_text(encoding="utf-8")
    broken = text.replace('volts = "208 V"', 'volts = "208"', 1).replace("altitude", "altitued", 1)
    path = tmp_path / "broken.toml"
    path.write_text(broken, encoding="utf-8")
    done = lightoff("judge", path)
    lines = done.stderr.strip().splitlines()
    assert done.returncode == 2
    assert len(lines) == 3  # the volts, the misspelt key, and the key that is now missing
    assert all("(line " in line for line in lines if "missing" not in line)


def test_a_run_is_foretold_for_any_day() -> None:
    done = lightoff("predict", "examples/two-furnaces-vfd.toml", "--outdoor", "-10 degF")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("MAU-2, high fire, \u221210.0 \u00b0F outdoors")
    assert max(len(line) for line in done.stdout.splitlines()) <= 80
    assert "point:" not in done.stdout


def test_what_is_foretold_is_data_too() -> None:
    done = lightoff("predict", "examples/plate-only.toml", "--run", "low", "--json")
    told = json.loads(done.stdout)
    assert (told["run"], told["by_readings"], told["outcome"]) == ("low", False, "as it should")
    assert {"id", "kind", "value", "standard_uncertainty"} == set(told["rows"][0])


def test_a_run_there_is_not_is_one_line_on_stderr() -> None:
    done = lightoff("predict", "examples/plate-only.toml", "--run", "full")
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "is not a run of this unit" in done.stderr
