"""The sentence catalogue: one gettext file a language, read when a surface starts."""

import gettext
import io
from functools import cache
from importlib import resources

from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

DOMAIN = "lightoff"


@cache
def catalogue(language: str = "en") -> gettext.NullTranslations:
    """The sentences of one language, compiled in memory so that no built file is committed."""
    source = resources.files(__package__) / "locale" / language / "LC_MESSAGES" / f"{DOMAIN}.po"
    compiled = io.BytesIO()
    write_mo(compiled, read_po(io.BytesIO(source.read_bytes())))
    compiled.seek(0)
    return gettext.GNUTranslations(compiled)


def has(message_id: str, language: str = "en") -> bool:
    """Whether the catalogue knows this id."""
    return catalogue(language).gettext(message_id) != message_id
