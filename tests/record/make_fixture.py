"""Makes `fixtures/store-v1.sqlite`: a record as the first version of this code keeps it.

Run once, and committed: `.venv/bin/python tests/record/make_fixture.py`. A later version that
keeps records otherwise adds its own fixture beside it and leaves this one as it is.
"""

import sqlite3
import sys
from contextlib import closing
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from lightoff.job import tree_to_toml
from lightoff.record import (
    CloseVisit,
    Correct,
    CorrectPlate,
    OpenVisit,
    Register,
    SqliteStore,
    Withdraw,
)
from record.world import ENTRIES, UNIT, register

FIXTURES = Path(__file__).with_name("fixtures")
FILE = FIXTURES / "store-v1.sqlite"


def fill(record: Register) -> str:
    """Write events of every name; the stream of the unit they are about."""
    every = {kind: list(entries) for kind, entries in ENTRIES.items()}
    stream = record.add_job({**UNIT, "visit": [every]}, by="R. Quill")
    taller = {**UNIT, "site": {"altitude": "1200 ft", "gas_composition": {"methane": 1.0}}}
    places = record.state(stream).places
    wrong, again = (places[f"visit.1.reading.{n}"].id for n in (1, 3))
    right = {**ENTRIES["reading"][0], "value": "3.4 inwc", "note": "étalonné, 20 °C"}
    for command in (
        CorrectPlate(taller, "the survey says so"),
        Correct(wrong, right, "misread the gauge"),
        Withdraw(again, "taken on another unit"),
        CloseVisit(1, "gas shut and tagged", "the dyer on duty"),
        OpenVisit({"purpose": "service", "date": "2027-02-14"}),
    ):
        record.do(stream, command, by="T. Marrow")
    record.add_job(UNIT, by="R. Quill")
    return stream


def main() -> None:
    FIXTURES.mkdir(exist_ok=True)
    FILE.unlink(missing_ok=True)
    with SqliteStore(FILE) as store:
        record = register(store)
        tree = record.state(fill(record)).tree
    with closing(sqlite3.connect(FILE)) as file:  # one file, without its write-ahead log
        file.execute("VACUUM")
    FILE.with_suffix(".toml").write_text(tree_to_toml(tree), "utf-8")


if __name__ == "__main__":
    main()
