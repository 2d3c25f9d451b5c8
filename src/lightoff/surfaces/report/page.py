"""The report as one HTML page that needs nothing beside it."""

import base64
from importlib import resources

from jinja2 import Environment, PackageLoader, StrictUndefined

from lightoff.job import Job
from lightoff.judgement import assess
from lightoff.surfaces.report.context import report_context
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import PageSpeech

WEIGHTS = (400, 600, 700)


def page(
    job: Job, visit: int | None = None, *, speech: Speech | None = None, css: str | None = None
) -> str:
    """One visit of a job, made for paper; the latest visit where none is named.

    `css` is the address of the style sheet; without one the page carries it, and the file stands
    alone.
    """
    now = job.visit(visit)
    before = job.visit(now.number - 1) if now.number > 1 else None
    spoken = speech or PageSpeech(job.display.units)
    answer = assess(job.machine(), now, before=before, whole=False)
    environment = Environment(
        loader=PackageLoader("lightoff.surfaces.report"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return environment.get_template("report.html").render(
        report=report_context(job, answer, now, spoken),
        word=spoken.word,
        css_address=css,
        css="" if css else style(),
    )


def style() -> str:
    """The report's style sheet, with the fonts in it where they have been built."""
    sheet = (resources.files(__package__) / "report.css").read_text(encoding="utf-8")
    fonts = resources.files("lightoff.surfaces") / "web" / "static" / "vendor" / "fonts"
    faces = []
    for weight in WEIGHTS:
        file = fonts / f"lightoff-sans-{weight}.woff2"
        if file.is_file():
            data = base64.b64encode(file.read_bytes()).decode("ascii")
            faces.append(
                f'@font-face{{font-family:"Lightoff Sans";font-weight:{weight};'
                f'src:url(data:font/woff2;base64,{data}) format("woff2")}}'
            )
    return "\n".join([*faces, sheet])
