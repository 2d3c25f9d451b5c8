"""`lightoff predict`: what every point would show in a run, on any day."""

import json
from pathlib import Path

from lightoff.job import load
from lightoff.judgement.foretell import as_left
from lightoff.surfaces.cli.opened import number_lines
from lightoff.surfaces.cli.print import print_lines
from lightoff.surfaces.library import known_run, predict, visit_of
from lightoff.surfaces.planning import expected_weather
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.foretold import as_lines


def print_prediction(
    path: Path,
    run: str,
    visit: int | None,
    *,
    outdoor: str | None,
    as_json: bool,
    why: str | None,
) -> None:
    """Print one run, foretold, or one number of it opened."""
    job = load(path)
    if why is not None:
        now = visit_of(job, visit)
        model = as_left(job.machine(), now) if now else None
        day = expected_weather(outdoor)
        print_lines(number_lines(job, model, now, why, known_run(job.machine(), run), day))
        return
    told = predict(job, run, visit, outdoor=outdoor)
    if as_json:
        print(json.dumps(told.to_dict(), ensure_ascii=False, indent=2))
        return
    print_lines(as_lines(told, job.machine(), Speech(job.display.units)))
