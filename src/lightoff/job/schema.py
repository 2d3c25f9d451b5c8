"""The job as JSON Schema, for editors and for those who write jobs by program."""

from functools import cache
from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from lightoff.job.job import Job
from lightoff.job.table import Table

DIALECT = "https://json-schema.org/draft/2020-12/schema"


class _Generator(GenerateJsonSchema):
    """A field that may be left out is described by what it is when it is there.

    Of the defaults only words and flags are told; an empty list or table says nothing.
    """

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        if not isinstance(schema.get("default"), (bool, str)):
            return self.generate_inner(schema["schema"])
        return super().default_schema(schema)


def schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a job's tree."""
    return {"$schema": DIALECT, **table_schema(Job), "title": "A job of lightoff"}


@cache
def table_schema(table: type[Table]) -> dict[str, Any]:
    """JSON Schema of one table."""
    return table.model_json_schema(schema_generator=_Generator)
