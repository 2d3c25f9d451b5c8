"""A picture for a wide and for a narrow screen, and the values of a sheet that it shows."""

from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.quantity import KINDS, in_unit, printed_unit
from lightoff.surfaces.calculating import Sheet
from lightoff.surfaces.calculating.sheet import InputShown, ResultShown
from lightoff.surfaces.drawing.picture import Said
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import NO_BREAK

WIDE, NARROW = 640.0, 324.0  # px
Value = InputShown | ResultShown


@dataclass(frozen=True)
class Picture:
    """One picture in two widths, and what is to be said below it."""

    title: str
    wide: Markup
    narrow: Markup
    caption: str


@dataclass(frozen=True)
class Told:
    """A sheet's values by name, in the reader's units."""

    sheet: Sheet
    speech: Speech

    def find(self, name: str) -> Value | None:
        """A value by its name; None where it was not typed or not answered."""
        there: tuple[Value, ...] = (*self.sheet.results, *self.sheet.inputs)
        return next((each for each in there if each.name == name and each.si is not None), None)

    def all(self, *names: str) -> list[Value] | None:
        """Several values; None where one of them is missing."""
        found = [value for name in names if (value := self.find(name))]
        return found if len(found) == len(names) else None

    def text(self, value: Value) -> str:
        """A value with its unit."""
        return NO_BREAK.join(filter(None, (value.number, value.unit)))

    def shown(self, value: float, kind: str) -> float:
        """A value [SI] as a bare number in the reader's unit."""
        return in_unit(value, kind, KINDS[kind].unit(self.speech.system))

    def axis(self, name: str, kind: str) -> str:
        """The name of an axis, with its unit."""
        unit = printed_unit(KINDS[kind].unit(self.speech.system))
        return f"{self.speech.word(f'picture:{name}')}, {unit}"

    def picture(self, draw: Callable[..., Markup], what: object, **values: str) -> Picture:
        """Both widths, with title, description and caption of the sheet's picture."""
        name = self.sheet.picture
        said = Said(self.speech.word(f"picture:{name}"),
                    self.speech.word(f"picture:{name}:said", **values))  # fmt: skip
        return Picture(
            said.title,
            draw(what, said, width=WIDE),
            draw(what, said, width=NARROW),
            self.speech.word(f"picture:{name}:caption"),
        )
