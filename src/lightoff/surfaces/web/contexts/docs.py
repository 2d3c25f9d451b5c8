"""The page that describes the API."""

from dataclasses import dataclass

from lightoff.surfaces.web.contexts.shell import Shell, outside
from lightoff.surfaces.words import Speech


@dataclass(frozen=True)
class DocsPage:
    """Everything on the page: swagger-ui draws the rest from the description."""

    shell: Shell


def docs_page(speech: Speech) -> DocsPage:
    """The page around swagger-ui."""
    return DocsPage(outside(speech, speech.word("title:docs"), "docs"))
