"""Which of the instruments carried reads a point best."""

from dataclasses import dataclass

from lightoff.inference.estimate import Estimate
from lightoff.inference.instruments import UNKNOWN, channel_for, instrument_parts, quantity_read
from lightoff.judgement.airside import AIRFLOW_POINTS
from lightoff.judgement.tasks.instruments import readers
from lightoff.machine import Visit, kind_of
from lightoff.machine.visit import Channel, Instrument

# an airflow is read through what its instrument feels
_FELT = {"pitot": "pressure", "manometer": "pressure", "hot wire": "velocity", "flow hood": "flow"}


@dataclass(frozen=True)
class Gauge:
    """What reads a point: an instrument, or one nobody declared, and what it claims."""

    instrument: Instrument | None
    channel: Channel

    @property
    def name(self) -> str | None:
        return None if self.instrument is None else self.instrument.id

    def uncertainty(self, value: float) -> float:
        """Standard uncertainty of one reading, of the instrument alone [SI]."""
        return Estimate(value, instrument_parts(value, self.channel, name="", reading="it")).u

    def reaches(self, value: float) -> bool:
        """Whether a value lies within its range."""
        low, high = self.channel.range or (value, value)
        return low <= value <= high


def quantity_of(point: str, kind: str) -> str:
    """What an instrument of a kind feels at a point."""
    if point in AIRFLOW_POINTS:
        return _FELT.get(kind, "flow")
    return quantity_read(point, kind_of(point) or "number")


def gauges_for(visit: Visit, point: str) -> list[Gauge]:
    """Every instrument carried that reads a point; one that claims nothing is taken as unknown."""
    found, kinds = [], readers(point)
    for instrument in (each for each in visit.instruments if each.kind in kinds):
        quantity = quantity_of(point, instrument.kind)
        channel = channel_for(instrument, quantity)
        if channel is not None or not instrument.channels:
            found.append(Gauge(instrument, channel or UNKNOWN[quantity]))
    return found


def best_gauge(visit: Visit, point: str, value: float, feels: str = "") -> Gauge:
    """The finest of those whose range reaches; where nothing is carried, one nobody declared.

    `feels` names the quantity where a point may be read by several.
    """
    there = [each for each in gauges_for(visit, point) if feels in ("", each.channel.quantity)]
    within = [gauge for gauge in there if gauge.reaches(value)] or there
    if not within:
        usual = quantity_of(point, (*readers(point), "")[0])
        return Gauge(None, UNKNOWN[feels or usual])
    return min(within, key=lambda gauge: gauge.uncertainty(value))


def felt_at(visit: Visit, point: str) -> str:
    """The quantity by which a point is read with what is carried: the usual one that is there."""
    usual = [quantity_of(point, kind) for kind in readers(point)]
    there = {gauge.channel.quantity for gauge in gauges_for(visit, point)}
    return next((quantity for quantity in usual if quantity in there), usual[0])
