"""Pins what pyproject.toml asks for: `name==version` lines that hold for every supported Python.

Run it with the oldest supported Python: a newer one may get releases that the oldest cannot use.
"""

import json
import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[1]
LOCKS = ROOT / "requirements"


def main() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())
    run = project["project"]["dependencies"]
    run += project["project"]["optional-dependencies"]["quick"]
    groups = project["dependency-groups"]
    _lock("test", run + groups["test"] + groups["check"])
    _lock("run", run, "--constraint", str(LOCKS / "test.txt"))
    _lock("assets", groups["assets"])
    _lock("node", groups["node"])


def _lock(name: str, wanted: list[str], *options: str) -> None:
    pip = [sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check", "install"]
    report = ["--dry-run", "--ignore-installed", "--report", "-"]
    answer = subprocess.run([*pip, *report, *options, *wanted], check=True, stdout=subprocess.PIPE)
    found = [package["metadata"] for package in json.loads(answer.stdout)["install"]]
    pins = sorted(f"{row['name'].lower()}=={row['version']}" for row in found)
    (LOCKS / f"{name}.txt").write_text("\n".join(pins) + "\n")


if __name__ == "__main__":
    main()
