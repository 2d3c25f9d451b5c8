"""Which kinds of instrument read a point, the usual one first."""

import re

# of the kinds the job format knows; the first is the one to carry
_READERS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"power\.volts.*|power\.control_volts.*", ("voltmeter", "clamp")),
    (r"motor\.amps.*", ("clamp", "power meter")),
    (r"motor\.kw", ("power meter",)),
    (r"vfd\..*", ("the unit itself", "power meter")),
    (r"(fan|motor)\.rpm|furnace\.\d\.combustion_fan\.rpm", ("tachometer",)),
    (r"flue\.\d\.draft", ("manometer", "analyser")),
    (r"static\..*|gas\.supply|gas\.meter\.pressure|train\.\d\.\d\.(outlet|manifold)",
     ("manometer",)),
    (r"building\.pressure|furnace\.\d\.proving_pressure", ("manometer",)),
    (r"duct\.traverse|filter\.face_total", ("pitot", "hot wire", "flow hood", "manometer")),
    (r"duct\.hood_total|exhaust\.airflow", ("flow hood", "hot wire", "pitot")),
    (r"belt\..*|door\..*", ("spring scale",)),
    (r"air\.barometer", ("barometer",)),
    (r"air\.outdoor\.(rh|wb)", ("hygrometer",)),
    (r"air\.discharge\.sensor|train\.\d\.\d\.signal", ("the unit itself",)),
    (r"flue\.\d\.(o2|co2|co)|air\.(intake|discharge)\.co", ("analyser",)),
    (r"flue\.\d\.db", ("analyser", "thermometer")),
    (r"air\..*\.db|gas\.meter\.db|flue\.\d\.combustion_air\.db", ("thermometer",)),
    (r"gas\.meter\.seconds", ("stopwatch",)),
    (r"gas\.meter\.other_flow", ("gas meter",)),
    (r"furnace\.\d\.flame", ("clamp", "the unit itself")),
    (r"furnace\.\d\.orifice", ()),
)  # fmt: skip


def readers(point: str) -> tuple[str, ...]:
    """The kinds that read a point; none where eyes and a drill index do.

    >>> readers("train.1.1.manifold"), readers("flue.1.db")
    (('manometer',), ('analyser', 'thermometer'))
    """
    return next((kinds for pattern, kinds in _READERS if re.fullmatch(pattern, point)), ())
