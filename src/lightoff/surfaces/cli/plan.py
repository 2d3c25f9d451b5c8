"""`lightoff plan`: what to carry, what each point should read, what is ready and what waits."""

import datetime as dt
import json
from pathlib import Path

from lightoff.job import load
from lightoff.surfaces.cli.opened import number_lines
from lightoff.surfaces.cli.print import print_lines
from lightoff.surfaces.library import known_run, plan
from lightoff.surfaces.planning import expected_weather, plan_sheet
from lightoff.surfaces.planning.plain import as_lines
from lightoff.surfaces.words import Speech


def print_plan(
    path: Path, visit: int | None, *, outdoor: str | None, as_json: bool, why: str | None
) -> None:
    """Print the plan of one visit, or one number that it expects, opened."""
    job = load(path)
    made = plan(job, visit, on=dt.date.today(), weather=expected_weather(outdoor))
    if as_json:
        print(json.dumps(made.to_dict(), ensure_ascii=False, indent=2))
        return
    if why is not None:
        name, _, run = why.strip().partition(" ")
        run = known_run(job.machine(), run.strip() or "high")
        print_lines(number_lines(job, None, None, name, run, made.weather))
        return
    speech = Speech(job.display.units)
    sheet = plan_sheet(made, job.machine(), speech)
    head = speech.word("text:plan-head", unit=made.unit, visit=made.visit, sentence=sheet.sentence)
    print_lines(as_lines(sheet, head, speech))
