"""The published JSON Schema says what the reader accepts."""

import json
from collections.abc import Iterator
from typing import Any

import jsonschema
import pytest

from lightoff.job import schema
from lightoff.quantity import EXAMPLES, parse


@pytest.fixture(scope="module")
def published() -> dict[str, Any]:
    return schema()


@pytest.fixture
def plain_tree(full_tree: dict[str, Any]) -> Any:
    """The example as JSON has it: moments and days as text."""
    return json.loads(json.dumps(full_tree, default=lambda moment: moment.isoformat()))


def _tables(published: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    yield "Job", published
    yield from published["$defs"].items()


def _errors(published: dict[str, Any], tree: Any) -> list[str]:
    validator = jsonschema.Draft202012Validator(published)
    return [error.json_path for error in validator.iter_errors(tree)]


def test_it_is_a_schema_of_draft_2020_12(published: dict[str, Any]) -> None:
    jsonschema.Draft202012Validator.check_schema(published)
    assert published["$schema"].endswith("2020-12/schema")
    assert "$id" not in json.dumps(published)


def test_the_example_is_valid(published: dict[str, Any], plain_tree: Any) -> None:
    assert _errors(published, plain_tree) == []


def test_a_wrong_tree_is_not(published: dict[str, Any], plain_tree: Any) -> None:
    plain_tree["unit"]["motor"]["power"] = 15
    plain_tree["unit"]["furnace"][0]["gass"] = "propane"
    del plain_tree["site"]["altitude"]
    assert set(_errors(published, plain_tree)) == {
        "$.unit.motor.power",
        "$.unit.furnace[0]",
        "$.site",
    }


def test_every_table_and_every_field_is_described(published: dict[str, Any]) -> None:
    for name, table in _tables(published):
        assert table["title"]
        assert table["description"], name
        for key, field in table["properties"].items():
            assert field.get("description") or "$ref" in field, f"{name}.{key}"


def test_a_quantity_is_text_with_its_kind_and_two_examples(published: dict[str, Any]) -> None:
    power = published["$defs"]["Motor"]["properties"]["power"]
    assert power["type"] == "string"
    assert power["description"] == "a shaft power: number and unit; output"
    assert power["examples"] == list(EXAMPLES["shaft power"])
    volts = published["$defs"]["Motor"]["properties"]["volts"]  # one that may be left out
    assert (volts["type"], volts["examples"]) == ("string", list(EXAMPLES["voltage"]))


def test_a_ratio_is_a_number_or_text(published: dict[str, Any]) -> None:
    efficiency = published["$defs"]["Motor"]["properties"]["efficiency"]
    assert efficiency["type"] == ["number", "string"]
    assert efficiency["examples"] == ["0.072", "7.2 %"]


def test_whatever_must_be_there_has_a_right_way_to_write_it(published: dict[str, Any]) -> None:
    for name, table in _tables(published):
        for key in table.get("required", []):
            field = table["properties"][key]
            right = {"examples", "enum", "const", "$ref"} & set(field)
            assert right or "$ref" in field.get("items", {}), f"{name}.{key}"


def test_the_examples_of_the_contracts_kinds_can_be_read() -> None:
    for kind, examples in EXAMPLES.items():
        for example in examples:
            parse(example, kind)
