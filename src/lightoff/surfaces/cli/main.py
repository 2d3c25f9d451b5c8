"""`lightoff`: plan, judge and report a visit, do a sum, show the schema, open the workbench."""

import json
import sys
from pathlib import Path
from typing import Annotated, NoReturn

import typer

from lightoff.quantity import LightoffError
from lightoff.surfaces.cli.print import print_answer, print_lines

BAD_INPUT = 2

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Start-up of indirect gas-fired make-up air units: every reading judged, and kept.",
)

JobFile = Annotated[Path, typer.Argument(help="A job file, .toml or .json.", show_default=False)]


def _visit_number(text: str) -> int:
    """A visit's number as typed."""
    if not text.isdecimal():
        raise typer.BadParameter(f'"{text}" is not the number of a visit: write 1, 2 and so on')
    return int(text)


VisitNumber = Annotated[
    int | None,
    typer.Option(
        "--visit", parser=_visit_number, help="Number of the visit; the latest where none is given."
    ),
]


@app.command()
def judge(
    job: JobFile,
    visit: VisitNumber = None,
    readings: Annotated[
        Path | None, typer.Option("--readings", help="A CSV file of readings to add to the visit.")
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the answer as JSON, SI.")] = False,
    everything: Annotated[bool, typer.Option("--all", help="List what conforms as well.")] = False,
    why: Annotated[
        str | None, typer.Option("--why", help='Open one number, such as "input.1 high".')
    ] = None,
) -> None:
    """Judge one visit of a job, point by point."""
    from lightoff.job import load_readings, with_readings
    from lightoff.surfaces.library import assess, load

    declared = load(job)
    if readings is not None:
        declared = with_readings(declared, load_readings(readings), visit)
    answer = assess(declared, visit, whole=as_json or why is not None)
    if why is not None:
        from lightoff.surfaces.cli.why import opened

        print_lines(opened(declared, declared.visit(visit), answer, why))
    elif as_json:
        print(json.dumps(answer.to_dict(), ensure_ascii=False, indent=2, default=str))
    else:
        print_answer(answer, declared.display.units, everything=everything)


@app.command()
def plan(
    job: JobFile,
    visit: VisitNumber = None,
    outdoor: Annotated[
        str | None,
        typer.Option("--outdoor", help='Outdoor temperature on the day, such as "38 degF".'),
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the plan as JSON, SI.")] = False,
    why: Annotated[
        str | None,
        typer.Option("--why", help='Open a number it expects, such as "motor.amps.a fan".'),
    ] = None,
) -> None:
    """Plan a visit: what to carry, what is ready, what waits, what it should read."""
    from lightoff.surfaces.cli.plan import print_plan

    print_plan(job, visit, outdoor=outdoor, as_json=as_json, why=why)


@app.command()
def predict(
    job: JobFile,
    run: Annotated[str, typer.Option("--run", help="Such as fan, high, low or high.2.")] = "high",
    visit: VisitNumber = None,
    outdoor: Annotated[
        str | None, typer.Option("--outdoor", help='Outdoor temperature, such as "-10 degF".')
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the values as JSON, SI.")] = False,
    why: Annotated[
        str | None, typer.Option("--why", help='Open one of its numbers, such as "input.1".')
    ] = None,
) -> None:
    """Foretell a run on any day: what every point would show, and how sure that is."""
    from lightoff.surfaces.cli.predict import print_prediction

    print_prediction(job, run, visit, outdoor=outdoor, as_json=as_json, why=why)


@app.command()
def report(
    job: JobFile,
    visit: VisitNumber = None,
    output: Annotated[
        Path | None, typer.Option("--output", "-o", help="Write here instead of to stdout.")
    ] = None,
) -> None:
    """Print one visit as a page made for paper (HTML)."""
    from lightoff.surfaces.library import load
    from lightoff.surfaces.report import page

    text = page(load(job), visit)
    if output is None:
        print(text)
        return
    output.write_text(text, encoding="utf-8")
    print(f"Report written to {output}", file=sys.stderr)


@app.command()
def schema() -> None:
    """Print the JSON Schema of a job file."""
    from lightoff.job import schema as job_schema

    print(json.dumps(job_schema(), ensure_ascii=False, indent=2))


# the inputs of a calculation are its own options, read behind its name
@app.command(
    add_help_option=False,
    context_settings={"ignore_unknown_options": True, "allow_interspersed_args": False},
)
def calc(
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[NAME] [--input VALUE] ...", show_default=False),
    ] = None,
) -> None:
    """Work out one of the trade's sums; without a name, list them."""
    from lightoff.surfaces.cli.calc import calc as work_out

    work_out(words or ())


@app.command()
def serve(
    store: Annotated[
        Path | None, typer.Option("--store", help="The store's file; var/lightoff.sqlite if none.")
    ] = None,
    port: Annotated[
        int | None,
        typer.Option("--port", min=0, max=65535, help="0 takes any free port; 8765 if none."),
    ] = None,
    examples: Annotated[
        bool, typer.Option("--examples", help="Put the example jobs into an empty store.")
    ] = False,
) -> None:
    """Open the workbench on 127.0.0.1."""
    from lightoff.surfaces.cli.serve import serve as open_workbench

    open_workbench(store or Path("var") / "lightoff.sqlite", port=port, examples=examples)


def main() -> NoReturn:
    """Run the command; every fault is one line on stderr, and no traceback reaches a person."""
    try:
        app(standalone_mode=False)
    except LightoffError as error:
        _fail(str(error))
    except OSError as error:
        _fail(f"{error.filename or 'file'}: {error.strerror or error}")
    except typer.Exit as stop:
        sys.exit(stop.exit_code)
    except Exception as error:  # what the command line itself refuses (usage)
        if not hasattr(error, "format_message"):
            raise
        _fail(error.format_message())
    sys.exit(0)


def _fail(message: str) -> NoReturn:
    print(message, file=sys.stderr)
    sys.exit(BAD_INPUT)
