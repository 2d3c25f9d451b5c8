"""`lightoff predict`: what every point would show in a run, on any day."""

import json
from pathlib import Path

from lightoff.job import load
from lightoff.surfaces.cli.print import print_lines
from lightoff.surfaces.library import predict
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.foretold import as_lines


def print_prediction(
    path: Path, run: str, visit: int | None, *, outdoor: str | None, as_json: bool
) -> None:
    """Print one run, foretold."""
    job = load(path)
    told = predict(job, run, visit, outdoor=outdoor)
    if as_json:
        print(json.dumps(told.to_dict(), ensure_ascii=False, indent=2))
        return
    print_lines(as_lines(told, job.machine(), Speech(job.display.units)))
