"""What every table of a job has in common, and its fields that are not quantities."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    model_validator,
)
from pydantic_core import PydanticCustomError, core_schema

from lightoff.job.faults import one_line

UNKNOWN_WORD = "unknown_word"
LONGEST = 80  # characters of a word that are looked at


class Table(BaseModel):
    """A table of the job: nothing unknown in it, nothing coerced, nothing changed later."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True, allow_inf_nan=False)

    @model_validator(mode="before")
    @classmethod
    def _leave_blanks_out(cls, table: object) -> object:
        # JSON may say null where TOML says nothing
        if not isinstance(table, dict):
            return table
        return {key: value for key, value in table.items() if value is not None}


class Written:
    """How a field is written: `read` turns the text into what is kept, `schema` describes it."""

    def read(self, value: object) -> Any:
        """What is kept of `value`; a ValueError says in one sentence why it cannot be read."""
        raise NotImplementedError

    def schema(self) -> dict[str, Any]:
        """The field as JSON Schema."""
        raise NotImplementedError

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return self.schema()


def unknown_word(word: object, noun: str, known: Collection[str]) -> PydanticCustomError:
    """The error of a word that is not among the known ones.

    To look for the nearest takes time, so the sentence is made only when the fault is listed.
    """
    typed = one_line(word[:LONGEST]) if isinstance(word, str) else word
    told = {"word": typed, "noun": noun, "known": known}
    return PydanticCustomError(UNKNOWN_WORD, "unknown", told)


@dataclass(frozen=True)
class OneOf(Written):
    """One of a list of words known only when the program runs."""

    noun: str
    words: Collection[str]

    def read(self, value: object) -> str:
        if isinstance(value, str) and value in self.words:
            return value
        raise unknown_word(value, self.noun, self.words)

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "description": self.noun, "enum": list(self.words)}


@dataclass(frozen=True)
class Note:
    """A word about a field, for whoever reads the schema; it joins what the type says itself."""

    text: str

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        field = handler(schema)
        own = "" if "$ref" in field else field.get("description", "")
        return {**field, "description": "; ".join(filter(None, (own, self.text)))}


def _not_blank(text: str) -> str:
    if not text.strip():
        raise ValueError("a blank says nothing: write what it is")
    return text


Text = Annotated[str, Field(max_length=4000), Note("free text")]
Name = Annotated[Text, AfterValidator(_not_blank)]
Count = Annotated[int, Field(ge=1), Note("a whole number from 1")]
