"""Three hundred broken job files: each is answered in sentences, exit 2, and no traceback."""

import random
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from lightoff.surfaces.cli.main import main

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
QUANTITY = re.compile(r'"-?[\d.]+ (?:inwc|degF|cfm|kBtu/h|hp|V|A|rpm|ft|in|s|psi|lbf)"')
REQUIRED = (
    *("format", "tag", "arrangement", "volts", "phases", "power", "full_load_amps", "kind", "gas"),
    *("control", "input", "airflow", "discharge", "winter_outdoor", "altitude"),
)
BROKEN_VALUES = ('"3.5"', "3.5", '"1 furlong"', '"nan inwc"', '"1e999 Pa"', "nan", "inf", "true",
                 "[1, 2]", '""', '"12 kPa kPa"', "{ a = 1 }", '"- V"')  # fmt: skip
EACH = 50


def broken(text: str, seed: int) -> Iterator[tuple[str, bytes]]:
    """Broken copies of one job, of every sort, without end."""
    rng = random.Random(seed)
    places = list(QUANTITY.finditer(text))
    while True:
        place = rng.choice(places)
        value = rng.choice(BROKEN_VALUES)
        yield f"value {value}", (text[: place.start()] + value + text[place.end() :]).encode()
        key = rng.choice(REQUIRED)
        yield f"without {key}", re.sub(rf"(?m)^{key} = .*\n", "", text, count=1).encode()
        yield f"misspelt {key}", re.sub(rf"(?m)^{key} =", f"{key}x =", text, count=1).encode()
        negative = re.sub(r'(?m)^(power|airflow|input) = "', r'\1 = "-', text, count=1)
        yield "negative", negative.encode()
        huge = text.replace('altitude = "', 'altitude = "9999', 1)
        yield "huge", huge.encode()
        cut = rng.randrange(10, 400)
        yield "truncated", text.encode()[:cut]
        noise = bytearray(text.encode())
        noise[rng.randrange(len(noise))] = 0xFF
        yield "binary", bytes(noise)
        typed = text.replace("[unit.motor]", "[[unit.motor]]", 1)
        yield "wrong type", typed.encode()
        doubled = text.replace("[site]", "[design]", 1)
        yield "doubled table", doubled.encode()
        nested = rng.choice((200, 5000))
        yield "deep nesting", f"format = 1\nx = {'[' * nested}{']' * nested}\n".encode()


def run(path: Path) -> int:
    with pytest.raises(SystemExit) as stop:
        main()
    return int(str(stop.value.code))


@pytest.mark.parametrize("example", EXAMPLES, ids=[path.stem for path in EXAMPLES])
@pytest.mark.parametrize("copies", [EACH, pytest.param(2000, marks=pytest.mark.prove)])
def test_every_broken_copy_is_answered_in_sentences(
    copies: int,
    example: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = example.read_text(encoding="utf-8")
    kinds = set()
    for number, (kind, content) in zip(range(copies), broken(text, seed=7), strict=False):
        path = tmp_path / f"{number}.toml"
        path.write_bytes(content)
        monkeypatch.setattr("sys.argv", ["lightoff", "judge", str(path)])
        code = run(path)
        out, err = capsys.readouterr()
        assert code == 2, (kind, out[:200])
        assert out == ""
        lines = err.strip().splitlines()
        assert lines
        assert all(len(line) > 15 and "Traceback" not in line for line in lines), (kind, err)
        kinds.add(kind.split(" ")[0])
    assert len(kinds) >= 9


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("large.toml", b"# " + b"x" * 20_000_000),
        ("large.json", b'{"format": 1, "x": "' + b"x" * 20_000_000 + b'"}'),
        ("deep.json", b'{"a":' * 100_000 + b"1" + b"}" * 100_000),
        ("nan.json", b'{"format": NaN}'),
        ("twice.json", b'{"format": 1, "format": 1}'),
        ("list.json", b"[1, 2]"),
        ("empty.toml", b""),
        ("empty.json", b""),
        ("binary.toml", bytes(range(256))),
        ("readings.csv", b"run,point\n"),
        ("job.txt", b"format = 1"),
    ],
)
def test_what_is_no_job_at_all_is_one_sentence(
    name: str,
    content: bytes,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    monkeypatch.setattr("sys.argv", ["lightoff", "judge", str(path)])
    assert run(path) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert 0 < len(err.strip().splitlines()) <= 4
    assert "Traceback" not in err
