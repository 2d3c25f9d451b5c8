"""Whatever a file holds, what comes out is a job or faults in sentences."""

import json
from pathlib import Path
from typing import Any

import pytest

from lightoff.job import Fault, JobError, load, loads
from lightoff.job.text import MOST_BYTES, Form, decoded


def _fault(text: str, form: Form = "toml") -> Fault:
    with pytest.raises(JobError) as caught:
        loads(text, form=form)
    (fault,) = caught.value.faults
    return fault


def _refused(path: Path) -> str:
    with pytest.raises(JobError) as caught:
        load(path)
    return str(caught.value)


@pytest.mark.parametrize("form", ["toml", "json"])
@pytest.mark.parametrize("text", ["", " \n\t ", "\ufeff"])
def test_an_empty_file_is_told_how_a_job_begins(text: str, form: Form) -> None:
    assert _fault(text, form) == Fault(
        "job", None, "empty: a job begins with format = 1 and a [unit]"
    )


@pytest.mark.parametrize(
    ("text", "line", "gist"),
    [
        ("format = 1\nunit", 2, "expected '=' after a key"),
        ("format = 1\n[unit", 2, "not TOML: "),
        ("a = [1,\n2", 2, "unclosed array at the end"),
        ("[unit]\n[unit]", 2, "cannot declare unit twice"),
        ("[unit.motor]\n[unit.motor]", 2, "cannot declare unit.motor twice"),
        ("a = 1\na = 2", 2, "cannot overwrite a value"),
        ("at = 2026-02-30", 1, "invalid date or datetime"),
        ("\x00\x01\x02", 1, "not TOML: "),
    ],
)
def test_a_slip_in_toml_is_one_fault_with_its_line(text: str, line: int, gist: str) -> None:
    fault = _fault(text)
    assert (fault.place, fault.line) == ("job", line)
    assert gist in fault.message


@pytest.mark.parametrize(
    ("text", "line", "gist"),
    [
        ('{"format": 1,\n}', 2, "not JSON: "),
        ('{"format"', 1, "not JSON: expecting ':' delimiter (column 10)"),
        ('{"a": NaN}', None, "NaN is not a number"),
        ('{"a": -Infinity}', None, "-Infinity is not a number"),
        ('{"unit": {"tag": "A", "tag": "B"}}', None, 'the key "tag" stands twice in one object'),
        ("[]", None, "a list is not a job"),
        ("3", None, "3 is not a job"),
        ('"x"', None, '"x" is not a job'),
        ("null", None, "a blank is not a job"),
        (f"[{'9' * 5000}]", None, "thousands of digits"),
    ],
)
def test_a_slip_in_json_is_one_fault(text: str, line: int | None, gist: str) -> None:
    fault = _fault(text, "json")
    assert (fault.place, fault.line) == ("job", line)
    assert gist in fault.message


@pytest.mark.parametrize(
    ("form", "text"),
    [
        ("json", "[" * 100_000),
        ("json", '{"a":' * 100_000),
        ("toml", "a = " + "[" * 100_000),
        ("toml", "a = " + "{a = " * 100_000),
    ],
)
def test_bottomless_brackets_are_a_sentence(form: Form, text: str) -> None:
    assert "nested deeper than any job needs" in _fault(text, form).message


def test_a_number_of_thousands_of_digits_is_a_sentence() -> None:
    assert "thousands of digits" in _fault(f"format = {'1' * 5000}").message


def test_numbers_beyond_any_float_are_faults_of_their_field() -> None:
    with pytest.raises(JobError) as caught:
        loads(f'{{"site": {{"altitude": 1e999, "relative_density": {"9" * 400}}}}}', form="json")
    sentences = {fault.place: fault.message for fault in caught.value.faults}
    assert sentences["site.altitude"].startswith("inf has no unit")
    assert "not a finite number" in sentences["site.relative_density"]


def test_the_same_job_reads_alike_as_toml_and_as_json(full_text: str, full_tree: Any) -> None:
    as_json = json.dumps(full_tree, default=lambda moment: moment.isoformat())
    from_json, from_toml = loads(as_json, form="json"), loads(full_text, form="toml")
    assert from_json.machine() == from_toml.machine()
    assert from_json.visit() == from_toml.visit()


def test_faults_of_json_have_a_place_and_no_line(full_tree: Any) -> None:
    full_tree["site"]["altitude"] = 980
    text = json.dumps(full_tree, default=str)
    fault = _fault(text, "json")
    assert (fault.place, fault.line) == ("site.altitude", None)


def test_a_file_is_read_by_its_ending(tmp_path: Path, full_text: str, full_tree: Any) -> None:
    (tmp_path / "a.toml").write_text(full_text, encoding="utf-8")
    (tmp_path / "b.JSON").write_text(json.dumps(full_tree, default=str), encoding="utf-8-sig")
    assert load(tmp_path / "a.toml").machine() == load(str(tmp_path / "b.JSON")).machine()


def test_a_byte_order_mark_is_no_matter(tmp_path: Path, full_text: str) -> None:
    (tmp_path / "a.toml").write_text(full_text, encoding="utf-8-sig")
    assert load(tmp_path / "a.toml").unit.tag == "MAU-2"
    assert loads("\ufeff" + full_text, form="toml").unit.tag == "MAU-2"


def test_files_that_are_no_job_are_told_so(tmp_path: Path) -> None:
    (tmp_path / "photo.toml").write_bytes(b"format = 1\n\xff\xd8\xff\xe0")
    (tmp_path / "huge.toml").write_bytes(b"# " + b"x" * MOST_BYTES)
    (tmp_path / "folder.toml").mkdir()
    assert _refused(tmp_path / "photo.toml") == (
        "job (line 2): not text in UTF-8: save the file as UTF-8"
    )
    assert _refused(tmp_path / "huge.toml") == "job: larger than 5 MB: no job needs that"
    assert _refused(tmp_path / "folder.toml").startswith("job: folder.toml cannot be read: ")
    assert _refused(tmp_path / "gone.toml") == (
        "job: gone.toml cannot be read: no such file or directory"
    )
    assert "cannot be read" in _refused(Path("a\0b.toml"))
    assert "holds the readings of a visit" in _refused(tmp_path / "readings.csv")
    assert (
        _refused(tmp_path / "job.txt") == "job: job.txt is no job: a job is a .toml or .json file"
    )


def test_a_text_too_long_is_refused_before_it_is_read() -> None:
    assert "larger than 5 MB" in _fault("#" * (MOST_BYTES + 1)).message
    assert decoded("größer".encode()) == "größer"


def test_a_sentence_stays_on_one_line_whatever_was_typed() -> None:
    bad = {"format": 1, "un\nit\x07\ud800": {}, "site": {"altitude": "3 fu\nrlongs\x1b[31m"}}
    with pytest.raises(JobError) as caught:
        loads(json.dumps(bad), form="json")
    text = str(caught.value)
    text.encode()
    assert len(text.splitlines()) == len(caught.value.faults)
    assert text.replace("\n", "").isprintable()


def test_no_word_of_the_machinery_leaks(full_tree: Any) -> None:
    broken = json.dumps(_everything_replaced_by(full_tree, [{"x": 0.5}]), default=str)
    with pytest.raises(JobError) as caught:
        loads(broken, form="json")
    for leak in ("Input", "Value error", "required", "permitted", "pydantic", "None", "dict"):
        assert leak not in str(caught.value)


def _everything_replaced_by(tree: Any, other: Any) -> Any:
    """The tree with every leaf put in other's place."""
    if isinstance(tree, dict):
        return {key: _everything_replaced_by(part, other) for key, part in tree.items()}
    if isinstance(tree, list) and tree and isinstance(tree[0], dict):
        return [_everything_replaced_by(part, other) for part in tree]
    return other
