"""Airflow, rise and the heat they carry, from readings."""

from lightoff.inference.estimate import (
    RECTANGULAR,
    Estimate,
    NoSuchStateError,
    Part,
    combine,
    with_part,
)
from lightoff.inference.instruments import instrument_parts
from lightoff.inference.methods import method_parts
from lightoff.judgement.evidence import Evidence, Missing, channel_of, owner_of
from lightoff.machine.visit import Reading, Traverse
from lightoff.physics.airstream import sensible_heat, standard_airflow
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.physics.moist_air import humidity_ratio, moist_air_density
from lightoff.physics.traverse import pitot_velocity

AIRFLOW_POINTS = ("duct.traverse", "duct.hood_total", "filter.face_total")
ROOM_TEMPERATURE = 293.15  # [K] assumed of air whose temperature was not read ...
ROOM_TEMPERATURE_SPREAD = 10.0  # [K] ... and how far off that may be; engineering judgement
UNKNOWN_HUMIDITY = 0.5  # [1] relative humidity assumed of outdoor air ...
UNKNOWN_HUMIDITY_SPREAD = 0.5 * RECTANGULAR  # ... anywhere from dry to saturated
FAN_HEAT_SPREAD = 0.8  # [K] outdoor air taken for air entering the furnaces; engineering judgement
UNMIXED = 0.03  # [1] of the rise; one probe where furnace air has not mixed; engineering judgement


def outdoor_temperature(evidence: Evidence, run: str) -> Estimate:
    """Outdoor dry bulb: read in this run, else in any, else a guess with its spread [K]."""
    read = evidence.get("air.outdoor.db", run) or evidence.anywhere("air.outdoor.db")
    guess = {Part("temperature not read", "air.outdoor.db"): ROOM_TEMPERATURE_SPREAD}
    return read or Estimate(ROOM_TEMPERATURE, guess)


def moisture(evidence: Evidence, run: str) -> Estimate:
    """Humidity ratio of the outdoor air [kg/kg]."""
    humidity = evidence.get("air.outdoor.rh", run) or evidence.anywhere("air.outdoor.rh")
    if humidity is None:
        guess = {Part("humidity not read", "air.outdoor.rh"): UNKNOWN_HUMIDITY_SPREAD}
        humidity = Estimate(UNKNOWN_HUMIDITY, guess)
    ratio = combine(
        lambda t, rh, p: humidity_ratio(t, relative_humidity=rh, pressure=p),
        outdoor_temperature(evidence, run),
        humidity,
        evidence.barometer(),
    )
    if ratio.value < 0:  # more vapour than there is pressure
        raise NoSuchStateError("no such air")
    return ratio


def density_at(evidence: Evidence, point: str, run: str) -> Estimate:
    """Density of the air where an airflow was measured [kg/m3]."""
    in_duct = point.startswith("duct.")
    temperature = evidence.get("air.discharge.db", run) if in_duct else None
    return combine(
        lambda t, w, p: moist_air_density(t, humidity_ratio=w, pressure=p),
        temperature or outdoor_temperature(evidence, run),
        moisture(evidence, run),
        evidence.barometer(),
    )


def airflow(evidence: Evidence, run: str) -> Estimate | Missing:
    """Airflow at 1.204 kg/m3 [m3/s], from the best measurement there is."""
    for point in AIRFLOW_POINTS:
        readings = evidence.latest(point, run)
        if readings:
            return measured_airflow(evidence, readings[-1], run)
    return Missing(AIRFLOW_POINTS[:1])


def measured_airflow(evidence: Evidence, reading: Reading, run: str) -> Estimate:
    """One airflow reading at standard density [m3/s]."""
    density = density_at(evidence, reading.point, run)
    if reading.traverse is None:
        actual = evidence.of(reading)
        if reading.standard:
            return actual
        return combine(standard_airflow, actual, density)
    flow = _traverse(evidence, reading, reading.traverse, density)
    extra = method_parts(reading.point, flow.value, reading=reading.place)
    return Estimate(flow.value, {**flow.parts, **extra})


def _traverse(
    evidence: Evidence, reading: Reading, traverse: Traverse, density: Estimate
) -> Estimate:
    """Standard airflow of a traverse; a negative velocity pressure counts as none."""
    name = owner_of(reading)
    if traverse.velocities:
        speed = sum(traverse.velocities) / len(traverse.velocities)
        channel = channel_of(evidence.visit, reading, "velocity")
        parts = instrument_parts(speed, channel, name=f"{name} velocity", reading=reading.place)
        return combine(
            lambda v, rho: v * traverse.area * rho / STANDARD_AIR_DENSITY,
            Estimate(speed, parts),
            density,
        )
    roots = [max(p, 0.0) ** 0.5 for p in traverse.pressures]
    pressure = (sum(roots) / len(roots)) ** 2
    channel = channel_of(evidence.visit, reading, "pressure")
    parts = instrument_parts(pressure, channel, name=f"{name} pressure", reading=reading.place)
    return combine(
        lambda p, rho: (
            pitot_velocity(max(p, 0.0), rho) * traverse.area * rho / STANDARD_AIR_DENSITY
        ),
        Estimate(pressure, parts),
        density,
    )


def actual_airflow(evidence: Evidence, reading: Reading, run: str) -> Estimate:
    """One airflow reading as it flows where it was measured [m3/s]."""
    return combine(
        lambda q, rho: q * STANDARD_AIR_DENSITY / rho,
        measured_airflow(evidence, reading, run),
        density_at(evidence, reading.point, run),
    )


def entering(evidence: Evidence, run: str) -> Estimate | None:
    """Air just before the first furnace: read there, else the outdoor reading of the same run."""
    read = evidence.get("air.entering.db", run)
    if read is not None:
        return read
    outdoor = evidence.get("air.outdoor.db", run)
    if outdoor is None or evidence.machine.airside.recirculation > 0:
        return None
    return with_part(outdoor, "outdoor taken for entering", "air.entering.db", FAN_HEAT_SPREAD)


def leaving(evidence: Evidence, furnace: int, run: str) -> Estimate | None:
    """Air just after a furnace; after the last one the discharge probe serves where no coil is."""
    read = evidence.get(f"air.after.{furnace}.db", run)
    last = furnace == len(evidence.machine.furnaces)
    return evidence.get("air.discharge.db", run) if read is None and last else read


def rise(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """Temperature rise of one furnace [K]."""
    before = entering(evidence, run) if furnace == 1 else leaving(evidence, furnace - 1, run)
    after = leaving(evidence, furnace, run)
    names = {
        f"air.after.{furnace - 1}.db" if furnace > 1 else "air.entering.db": before,
        f"air.after.{furnace}.db": after,
    }
    return _difference(names, f"rise.{furnace}")


def unit_rise(evidence: Evidence, run: str) -> Estimate | Missing:
    """Temperature rise of the whole unit [K]."""
    names = {
        "air.entering.db": entering(evidence, run),
        "air.discharge.db": evidence.get("air.discharge.db", run),
    }
    return _difference(names, "rise.unit")


def _difference(names: dict[str, Estimate | None], what: str) -> Estimate | Missing:
    before, after = names.values()
    if before is None or after is None:
        return Missing(tuple(name for name, read in names.items() if read is None))
    difference = combine(lambda a, b: b - a, before, after)
    return with_part(difference, "unmixed air", what, UNMIXED * abs(difference.value))


def output(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """Heat a furnace gives to the airstream [W]."""
    flow, warmed = airflow(evidence, run), rise(evidence, furnace, run)
    missing = [each for each in (flow, warmed) if isinstance(each, Missing)]
    if isinstance(flow, Missing) or isinstance(warmed, Missing):
        return Missing(tuple(point for each in missing for point in each.points))
    dry = combine(lambda w: 1 / (1 + w), moisture(evidence, run))
    return combine(
        lambda q, share, dt: sensible_heat(q * STANDARD_AIR_DENSITY * share, dt),
        flow,
        dry,
        warmed,
    )
