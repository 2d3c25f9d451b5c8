"""The pictures of the calculations: each drawn from the numbers of its own answer."""

from collections.abc import Callable

from lightoff.physics.fan_curve import BACKWARD_INCLINED, fan_pressure, standard_pressures
from lightoff.surfaces.calculating import Sheet
from lightoff.surfaces.drawing.decay import Decay, End, decay
from lightoff.surfaces.drawing.fan_curve import FanCurve, Running, fan_curve
from lightoff.surfaces.drawing.pipe_drop import Level, PipeDrop, pipe_drop
from lightoff.surfaces.drawing.traverse import Place, Traverse, traverse
from lightoff.surfaces.web.contexts.pictured import Picture, Told, Value
from lightoff.surfaces.words import Speech

CURVE = [0.45 + 0.85 * i / 24 for i in range(25)]  # of the flow, the part of a fan curve drawn
MINUTE = 60.0  # [s]


def pictured(sheet: Sheet, speech: Speech) -> Picture | None:
    """The picture of a sheet's answer; None where the answer lacks what it would show."""
    draw = DRAWN.get(sheet.picture or "")
    return draw(Told(sheet, speech)) if draw else None


def _traverse(told: Told) -> Picture | None:
    """The duct in section, with the probe's depths."""
    across, down = told.find("positions_across"), told.find("positions_down")
    sides = told.all("duct_width", "duct_height") if down else told.all("duct_diameter")
    if across is None or sides is None:
        return None
    wide, high = sides[0], sides[-1]
    lines, form = 0 if down else int(_si(told, "diameters")), "sides" if down else "round"
    size = told.speech.word(f"picture:traverse:{form}", width=wide.number, height=told.text(high))
    what = Traverse(
        told.shown(wide.si, wide.kind),
        told.shown(high.si, high.kind),
        _places(told, across),
        size,
        told.axis(f"traverse:across:{form}", across.kind),
        _places(told, down) if down else (),
        told.axis("traverse:down", across.kind),
        lines,
    )
    return told.picture(traverse, what, size=size, across=across.number, down=_number(down))


def _places(told: Told, depths: Value) -> tuple[Place, ...]:
    texts = depths.number.split(", ")
    return tuple(
        Place(told.shown(depth, depths.kind), text)
        for depth, text in zip(depths.si, texts, strict=True)
    )


def _fan(told: Told) -> Picture | None:
    """The fan before and after, where flow and pressure are known."""
    values = told.all("fan_airflow", "fan_static", "airflow_after", "static_after")
    if values is None or not all(each.si > 0 for each in values):
        return None
    flow, pressure, new_flow, new_pressure = values
    what = FanCurve(
        _running(told, "now", flow, pressure, told.find("fan_speed")),
        _running(told, "then", new_flow, new_pressure, told.find("fan_speed_after")),
        told.axis("airflow", flow.kind),
        told.axis("fan-pressure", pressure.kind),
        told.speech.word("picture:system"),
    )
    names = ("flow", "pressure", "new_flow", "new_pressure")
    return told.picture(fan_curve, what, **dict(zip(names, map(told.text, values), strict=True)))


def _running(told: Told, name: str, flow: Value, pressure: Value, speed: Value | None) -> Running:
    points = standard_pressures(BACKWARD_INCLINED, airflow=flow.si, pressure=pressure.si)
    curve = [
        (told.shown(share * flow.si, flow.kind),
         told.shown(fan_pressure(share * flow.si, points), pressure.kind))
        for share in CURVE
    ]  # fmt: skip
    head = f"{told.speech.word(f'picture:{name}')} {told.text(speed) if speed else ''}".strip()
    lines = (head, told.text(flow), told.text(pressure))
    place = told.shown(flow.si, flow.kind), told.shown(pressure.si, pressure.kind)
    return Running(*place, curve, lines)


def _pipe(told: Told) -> Picture | None:
    """The pressure along the pipe."""
    values = told.all("pressures", "equivalent_length", "outlet_pressure")
    start = told.find("regulated_pressure") or told.find("inlet_pressure")
    if values is None or start is None:
        return None
    pressures, length, end = values
    least = told.find("unit_least")
    step = told.shown(length.si, length.kind) / (len(pressures.si) - 1)
    what = PipeDrop(
        [(step * i, told.shown(each, pressures.kind)) for i, each in enumerate(pressures.si)],
        _level(told, "pipe:start", start, pressures.kind),
        _level(told, "pipe:end", end, pressures.kind),
        told.axis("pipe-length", length.kind),
        told.axis("gauge-pressure", pressures.kind),
        _level(told, "pipe:least", least, pressures.kind) if least else None,
    )
    return told.picture(
        pipe_drop, what, start=told.text(start), end=told.text(end), length=told.text(length)
    )


def _level(told: Told, name: str, value: Value, kind: str) -> Level:
    """A pressure on the picture's axis, whose label stays in the unit it was told in."""
    text = told.speech.word(f"picture:{name}", pressure=told.text(value))
    return Level(told.shown(value.si, kind), text)


def _decay(told: Told) -> Picture | None:
    """The two ends of a test: what was read, and what a tight pipe would show."""
    values = told.all("test_start", "test_end", "tight_end")
    if values is None:
        return None
    start, read, tight = values
    seconds = told.find("test_time")
    what = Decay(
        seconds.si / MINUTE if seconds else 0.0,
        told.shown(start.si, start.kind),
        _end(told, "read", read),
        _end(told, "tight", tight),
        told.speech.word("picture:minutes" if seconds else "picture:from-start-to-end"),
        told.axis("gauge-pressure", start.kind),
    )
    return told.picture(decay, what, start=told.text(start), read=told.text(read),
                        tight=told.text(tight))  # fmt: skip


def _end(told: Told, name: str, value: Value) -> End:
    text = told.speech.word(f"picture:decay:{name}", pressure=told.text(value))
    return End(told.shown(value.si, value.kind), value.number, text)


def _si(told: Told, name: str) -> float:
    value = told.find(name)
    return float(value.si) if value else 0.0


def _number(value: Value | None) -> str:
    return value.number if value else ""


DRAWN: dict[str, Callable[[Told], Picture | None]] = {
    "traverse": _traverse,
    "fan": _fan,
    "pipe": _pipe,
    "decay": _decay,
}
