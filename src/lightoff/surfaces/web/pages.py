"""Pages: a template prints a context, and nothing else; what a template lacks is an error."""

from dataclasses import dataclass

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape
from markupsafe import Markup
from starlette.responses import HTMLResponse

from lightoff.surfaces.drawing import MARKS
from lightoff.surfaces.web.assets import Assets
from lightoff.surfaces.words import Speech


@dataclass(frozen=True)
class Pages:
    """The templates, compiled once and kept."""

    environment: Environment

    def text(self, template: str, page: object, speech: Speech) -> str:
        """A template filled with its context."""
        found = self.environment.get_template(f"{template}.html")
        return found.render(page=page, word=speech.word)

    def show(
        self, template: str, page: object, speech: Speech, *, status: int = 200
    ) -> HTMLResponse:
        """The answer to a request for a page; it may have changed by the next."""
        headers = {"Cache-Control": "no-store"}
        return HTMLResponse(self.text(template, page, speech), status, headers)


def load_pages(assets: Assets) -> Pages:
    """The templates of this package, which name assets by their content; compiled at once."""
    made = environment(assets)
    for name in made.list_templates():
        made.get_template(name)
    return Pages(made)


def environment(assets: Assets) -> Environment:
    """Templates that escape everything, and refuse to print what is not there."""
    made = Environment(
        loader=PackageLoader("lightoff.surfaces.web"),
        autoescape=select_autoescape(default=True, default_for_string=True),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.globals.update(asset=assets.url, symbols=_symbols())
    return made


def _symbols() -> Markup:
    """Every mark once, to be used by name."""
    parts = (f'<symbol id="m-{name}" viewBox="0 0 20 20">{d}</symbol>' for name, d in MARKS.items())
    return Markup("".join(parts))  # constants of the drawing
