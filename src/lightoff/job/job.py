"""The whole job: one unit at one site, its instruments, its limits and its visits."""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    BeforeValidator,
    Field,
    ModelWrapValidatorHandler,
    PrivateAttr,
    ValidationInfo,
    model_validator,
)

from lightoff.job import compile_machine, compile_visit
from lightoff.job.instrument import Instrument
from lightoff.job.nearest import shown
from lightoff.job.scope import scope_of
from lightoff.job.site import Design, Parties, Site
from lightoff.job.table import Note, Table
from lightoff.job.target import Limit
from lightoff.job.unit import Unit
from lightoff.job.visit import Visit
from lightoff.machine import Machine
from lightoff.machine import visit as seen
from lightoff.machine.visit import Rule
from lightoff.quantity import LightoffError, System

FORMAT = 1
Tree = dict[str, Any]


class Display(Table):
    """How numbers are shown."""

    units: Annotated[System, Note("us or si")] = "us"


class Decision(Table):
    """How a limit is judged."""

    rule: Annotated[Rule, Note("for every target but those that stop the unit")] = "default"


def _known_format(number: object) -> object:
    if number != FORMAT or isinstance(number, bool):
        raise ValueError(f"format {shown(number)} is not known here: write format = {FORMAT}")
    return number


def _declare(unit: Unit, info: ValidationInfo[Any]) -> Unit:
    scope_of(info).declare(unit)
    return unit


class Job(Table):
    """One unit at one site, and every visit to it."""

    format: Annotated[
        Literal[1],
        BeforeValidator(_known_format),
        Note("of this file, so that it can be told apart"),
    ]
    display: Display = Display()
    decision: Decision = Decision()
    unit: Annotated[Unit, AfterValidator(_declare)]
    parties: Parties = Parties()
    design: Design
    site: Site
    instruments: Annotated[
        list[Instrument], Field(alias="instrument"), Note("the instruments carried")
    ] = []
    limits: Annotated[list[Limit], Field(alias="limit"), Note("in place of the usual ones")] = []
    visits: Annotated[list[Visit], Field(alias="visit"), Note("in order of time")] = []
    _tree: Tree = PrivateAttr(default_factory=dict)

    @model_validator(mode="wrap")
    @classmethod
    def _keep_what_was_typed(cls, tree: Any, read: ModelWrapValidatorHandler[Self]) -> Self:
        job = read(tree)
        job._tree = tree
        return job

    @property
    def tree(self) -> Tree:
        """The job as it was typed: text and units, nothing converted. Not a copy."""
        return self._tree

    def machine(self) -> Machine:
        """The unit at its site, as the engine sees it."""
        return compile_machine.machine(self.unit, self.design, self.site, self.parties)

    def visit(self, number: int | None = None) -> seen.Visit:
        """Visit `number`, by default the latest; before the first visit, a blank one."""
        count = len(self.visits)
        if number is None:
            return compile_visit.visit(self, max(count, 1))
        if not 1 <= number <= count:
            held = {0: "no visits", 1: "one visit"}.get(count, f"visits 1 to {count}")
            raise LightoffError(f"there is no visit {number}: this job has {held}")
        return compile_visit.visit(self, number)
