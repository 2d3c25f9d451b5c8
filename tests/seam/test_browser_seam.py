"""A browser's Python, where numpy is absent, gives the answers that this one gives."""

from typing import Any

from seam.browser import FOLDERS, ROOT, differences, here, in_browser

EXAMPLES = {path.stem: path.read_text("utf-8") for path in (ROOT / "examples").glob("*.toml")}


def read_quantities() -> Any:
    """Each kind as the program itself tells people to write it, and the odd ways."""
    from dataclasses import astuple

    from lightoff.quantity import EXAMPLES, parse

    written = [(way, kind) for kind, ways in EXAMPLES.items() for way in ways]
    odd = [("4 ft 6 in", "length"), ("5 3/8 in", "size"), ("−12 °F", "temperature")]
    return [astuple(parse(*pair)) for pair in written + odd]


def judge(jobs: dict[str, str]) -> Any:
    """Every visit of every job."""
    from lightoff.job import loads
    from lightoff.judgement import assess

    answers = {}
    for name, text in jobs.items():
        job = loads(text, form="toml")
        for number in range(1, len(job.visits) + 1):
            answers[f"{name} {number}"] = assess(job.machine(), job.visit(number)).to_dict()
    return answers


def imported_from_outside(folders: list[str]) -> Any:
    """What importing every module of these folders brings in besides the standard library."""
    import pkgutil
    import sys
    from importlib import import_module

    before = set(sys.modules)
    for folder in folders:
        package = import_module(f"lightoff.{folder}")
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            import_module(module.name)
    names = {name.partition(".")[0] for name in set(sys.modules) - before}
    return sorted(names - sys.stdlib_module_names - {"lightoff"})


def found(names: list[str]) -> Any:
    from importlib.util import find_spec

    return [name for name in names if find_spec(name)]


def test_quantities_are_read_alike() -> None:
    read = here(read_quantities)
    assert len(read) > 30
    differ = list(differences(read, in_browser(read_quantities)))
    assert not differ


def test_examples_are_judged_alike() -> None:
    assert EXAMPLES
    differ = list(differences(here(judge, EXAMPLES), in_browser(judge, EXAMPLES)))
    assert not differ


def test_computing_needs_the_standard_library_alone() -> None:
    pure = [folder for folder in FOLDERS if folder != "job"]
    assert in_browser(imported_from_outside, pure) == []


def test_numpy_is_absent_there() -> None:
    assert in_browser(found, ["lightoff", "numpy"]) == ["lightoff"]
