"""Job files: the only module here that reads from a disk."""

from os import PathLike
from pathlib import Path

from lightoff.job.faults import whole
from lightoff.job.job import Job
from lightoff.job.readings_csv import Row, readings_from_csv
from lightoff.job.text import MOST_BYTES, Form, decoded, loads

_FORMS: dict[str, Form] = {".toml": "toml", ".json": "json"}


def load(path: str | PathLike[str]) -> Job:
    """The job in a .toml or .json file; a `JobError` tells every fault at once."""
    file = Path(path)
    form = _FORMS.get(file.suffix.lower())
    if file.suffix.lower() == ".csv":
        raise whole("a CSV file holds the readings of a visit: a job is a .toml or .json file")
    if form is None:
        raise whole(f"{file.name} is no job: a job is a .toml or .json file")
    return loads(decoded(_bytes(file)), form=form)


def load_readings(path: str | PathLike[str]) -> list[Row]:
    """The readings in a .csv file, in the shape a job's tree has them."""
    return readings_from_csv(decoded(_bytes(Path(path))))


def _bytes(file: Path) -> bytes:
    """The file's bytes, at most one more than a job may have."""
    try:
        with file.open("rb") as stream:
            return stream.read(MOST_BYTES + 1)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "no such name can be"
        raise whole(f"{file.name} cannot be read: {why.lower()}") from None
