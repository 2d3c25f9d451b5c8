"""The instruments: out of calibration, outside their range, too coarse for the limit."""

from collections.abc import Iterator, Sequence

from lightoff.inference.instruments import channel_for, quantity_read
from lightoff.judgement.answer import Row
from lightoff.judgement.message import Remark
from lightoff.judgement.together import Together
from lightoff.machine import Machine, Visit, canonical, kind_of
from lightoff.machine.visit import Instrument, Reading


def instruments(
    machine: Machine, visit: Visit, rows: Sequence[Row], together: Together | None
) -> Iterator[Remark]:
    """Remarks on what the readings were taken with.

    A gauge is not to blame for what readings that do not go together leave open.
    """
    at_odds = together is not None and (together.misfits or together.found.widened > 1)
    blamed = [] if at_odds else [row for row in rows if row.why.message == "straddles"]
    carried = {instrument.id: instrument for instrument in visit.instruments}
    used = {reading.instrument for reading in visit.readings}
    for instrument in visit.instruments:
        if instrument.id in used:
            yield from _calibration(visit, instrument)
    yield from _unknown([r for r in visit.readings if r.value is not None and not r.instrument])
    for reading in visit.readings:
        yield from _reading(machine, reading, carried, blamed)


def _unknown(readings: Sequence[Reading]) -> Iterator[Remark]:
    """One remark on all readings of which nobody knows what they were taken with."""
    if len(readings) == 1:
        yield Remark(f"{readings[0].place}.instrument", "instrument-unknown", {})
    elif readings:
        first = f"{readings[0].place}.instrument"
        yield Remark(first, "instruments-unknown", {"count": len(readings)})


def _calibration(visit: Visit, instrument: Instrument) -> Iterator[Remark]:
    place = f"instrument.{visit.instruments.index(instrument) + 1}"
    if visit.date is None:
        return
    if instrument.due is not None and instrument.due < visit.date:
        values = {"instrument": instrument.id, "due": instrument.due.isoformat()}
        yield Remark(f"{place}.due", "out-of-calibration", values)
    if instrument.calibrated is not None and instrument.calibrated > visit.date:
        values = {"instrument": instrument.id, "calibrated": instrument.calibrated.isoformat()}
        yield Remark(f"{place}.calibrated", "calibrated-later", values)


def _reading(
    machine: Machine, reading: Reading, carried: dict[str, Instrument], blamed: Sequence[Row]
) -> Iterator[Remark]:
    instrument = carried.get(reading.instrument or "")
    if reading.value is None or instrument is None:
        return
    quantity = quantity_read(reading.point, kind_of(reading.point) or "number")
    channel = channel_for(instrument, quantity)
    values = {"instrument": instrument.id, "quantity": quantity, "point": reading.point}
    if channel is None:
        yield Remark(f"{reading.place}.instrument", "no-such-channel", values)
        return
    if channel.range is not None and not channel.range[0] <= reading.value <= channel.range[1]:
        yield Remark(f"{reading.place}.value", "outside-range", values)
    for row in blamed:
        same = (row.point, row.run) == (reading.point, canonical(machine, reading.run))
        if same and row.decision == "undecided":
            yield Remark(f"{reading.place}.instrument", "too-coarse", values | {"target": row.id})
