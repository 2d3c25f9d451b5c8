"""What is right at any place of a job: its keys, its words, its examples.

The JSON Schema knows all of it, so the sentences about faults are made from the schema.
"""

from __future__ import annotations

from typing import Any

from lightoff.job.faults import Path
from lightoff.job.nearest import shown


class Guide:
    """Reads what the schema says about a path."""

    def __init__(self, schema: dict[str, Any]) -> None:
        self._schema = schema

    def at(self, path: Path) -> Entry:
        """The field at `path`; a field that says nothing where there is none."""
        node = self._resolved(self._schema)
        for step in path:
            part = node.get("items") if isinstance(step, int) else self._member(node, step)
            node = self._resolved(part if isinstance(part, dict) else {})
        return Entry(node)

    def _member(self, node: dict[str, Any], key: str) -> Any:
        return node.get("properties", {}).get(key, node.get("additionalProperties"))

    def _resolved(self, node: dict[str, Any]) -> dict[str, Any]:
        if "$ref" not in node:
            return node
        return {**self._schema["$defs"][node["$ref"].removeprefix("#/$defs/")], **node}


class Entry:
    """One field as the schema describes it."""

    def __init__(self, node: dict[str, Any]) -> None:
        self._node = node

    @property
    def keys(self) -> list[str]:
        """The keys of a table."""
        return list(self._node.get("properties", {}))

    @property
    def words(self) -> list[object]:
        """The only values a field may have, where they are listed."""
        if "const" in self._node:
            return [self._node["const"]]
        return list(self._node.get("enum", []))

    @property
    def ways(self) -> list[str]:
        """Right ways to write the value, as they stand in a TOML file."""
        examples = self.words or self._node.get("examples", [])
        return [str(value) if isinstance(value, list) else shown(value) for value in examples]

    @property
    def lengths(self) -> tuple[int, int | None]:
        """The least and the most entries of a list, or characters of a text."""
        node = self._node
        return (
            node.get("minItems", node.get("minLength", 0)),
            node.get("maxItems", node.get("maxLength")),
        )

    @property
    def is_table(self) -> bool:
        return self._node.get("type") == "object"

    @property
    def is_list_of_tables(self) -> bool:
        items = self._node.get("items", {})
        return "$ref" in items or items.get("type") == "object"
