"""Dates and times, as TOML has them or as ISO 8601 text."""

from datetime import date, datetime
from typing import Annotated, Any

from lightoff.job.nearest import shown
from lightoff.job.table import Written

_MOMENT = "2026-11-03T10:12:00-06:00"
_DAY = "2026-11-03"


class _Moment(Written):
    """A date with a time of day; without an offset it is local to the visit."""

    def read(self, value: object) -> datetime:
        if isinstance(value, datetime):
            return value
        if isinstance(value, date) or _day(value):
            raise ValueError(f"{shown(value)} is a day without a time: write it as {_MOMENT}")
        if moment := _moment(value):
            return moment
        raise ValueError(f"{shown(value)} is not a date with a time: write it as {_MOMENT}")

    def schema(self) -> dict[str, Any]:
        return {
            "type": "string",
            "description": "a date with a time, best with its offset",
            "examples": [_MOMENT, "2026-11-03 10:12:00"],
        }


class _Day(Written):
    """A day of the calendar."""

    def read(self, value: object) -> date:
        if isinstance(value, date) and not isinstance(value, datetime):
            return value
        if day := _day(value):
            return day
        raise ValueError(f"{shown(value)} is not a date: write it as {_DAY}")

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "description": "a date", "examples": [_DAY]}


def _moment(value: object) -> datetime | None:
    try:
        return datetime.fromisoformat(value) if isinstance(value, str) else None
    except ValueError:
        return None


def _day(value: object) -> date | None:
    """The day a text names, with nothing beyond it."""
    try:
        return date.fromisoformat(value) if isinstance(value, str) else None
    except ValueError:
        return None


Moment = Annotated[datetime, _Moment()]
Day = Annotated[date, _Day()]
