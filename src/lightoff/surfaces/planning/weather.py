"""The weather a plan is made for, as a person types it."""

from lightoff.judgement.plan import is_weather
from lightoff.quantity import QuantityError, parse

OUTDOORS = "air.outdoor.db"


def expected_weather(outdoor: str | None) -> dict[str, float]:
    """The outdoor temperature by its point [K]; nothing where none was typed.

    Raises `QuantityError` with one sentence.
    """
    if not outdoor:
        return {}
    temperature = parse(outdoor, "temperature").value
    if not is_weather(OUTDOORS, temperature):
        raise QuantityError(f'"{outdoor}" has never been met with outdoors')
    return {OUTDOORS: temperature}
