"""The bag a technician carries."""

from random import Random

from plant.instrument import Channel, Instrument, true_to_claims

# quantity, unit, range, of reading, plus-minus, resolution: common field grades (makers' claims of
# the kind, no source); `of reading` and `plus-minus` are multiplied by how good the bag is
BAG: dict[str, tuple[str, tuple[Channel, ...]]] = {
    "gauge-1": ("manometer", (Channel("pressure", "inwc", (-5, 40), 0.005, 0.01, 0.01),)),
    "gauge-2": ("manometer", (Channel("pressure", "inwc", (-4, 4), 0.005, 0.002, 0.001),)),
    "clamp-1": ("clamp", (
        Channel("current", "A", (0, 400), 0.015, 0.03, 0.01),
        Channel("voltage", "V", (0, 750), 0.006, 0.2, 0.1),
    )),
    "tach-1": ("tachometer", (Channel("speed", "rpm", (60, 10000), 0.0005, 1.0, 1.0),)),
    "therm-1": ("thermometer", (Channel("temperature", "degF", (-50, 500), 0.0, 0.7, 0.1),)),
    "hygro-1": ("hygrometer", (Channel("humidity", "%", None, 0.0, 3.0, 1.0),)),
    "baro-1": ("barometer", (Channel("pressure", "inHg", None, 0.0, 0.03, 0.01),)),
    "flue-1": ("analyser", (
        Channel("O2", "%", (0, 21), 0.0, 0.3, 0.1),
        Channel("CO2", "%", (0, 20), 0.0, 0.3, 0.1),
        Channel("CO", "ppm", (0, 8000), 0.05, 4.0, 1.0),
        Channel("temperature", "degF", (-4, 1200), 0.004, 3.0, 1.0),
        Channel("pressure", "inwc", (-8, 8), 0.0, 0.005, 0.001),
    )),
    "co-1": ("analyser", (Channel("CO", "ppm", (0, 500), 0.0, 2.0, 1.0),)),
    "watch-1": ("stopwatch", (Channel("time", "s", None, 0.0, 0.02, 0.01),)),
    "scale-1": ("spring scale", (
        Channel("force", "lbf", (0, 50), 0.0, 0.4, 0.5),
        Channel("angle", "deg", None, 0.0, 0.1, 0.1),
    )),
    "hood-1": ("flow hood", (Channel("flow", "cfm", None, 0.03, 10.0, 1.0),)),
    "unit-1": ("the unit itself", (
        Channel("temperature", "degF", None, 0.0, 0.3, 0.1),
        Channel("frequency", "Hz", None, 0.0, 0.02, 0.1),
        Channel("voltage", "V", None, 0.017, 0.0, 1.0),
        Channel("current", "A", None, 0.03, 0.0, 0.1),
        Channel("power", "kW", None, 0.04, 0.0, 0.1),
    )),
}  # fmt: skip
COARSE = {"gauge-1": 0.1, "gauge-2": 0.01, "therm-1": 1.0, "clamp-1": 0.1}  # in a plain bag


def drawn(rng: Random, unzeroed: str, zero: float) -> dict[str, Instrument]:
    """Good, common or plain; `zero` [inwc] is what nobody zeroed on one gauge."""
    grade, zeros = rng.choice((0.7, 1.0, 1.0, 1.6)), {unzeroed: zero}
    return {
        name: Instrument(
            name, kind,
            tuple(_one(rng, name, channel, grade, zeros.get(name, 0.0)) for channel in channels),
            f"2026-0{rng.randint(1, 8)}-{rng.randint(10, 28)}" if rng.random() < 0.85 else None,
        )
        for name, (kind, channels) in BAG.items()
    }  # fmt: skip


def _one(rng: Random, name: str, pattern: Channel, grade: float, zero: float) -> Channel:
    resolution = pattern.resolution
    if grade > 1.5 and pattern.quantity in ("pressure", "temperature", "current"):
        resolution = max(COARSE.get(name, resolution), resolution)
    claimed = Channel(
        pattern.quantity, pattern.unit, pattern.span, round(pattern.of_reading * grade, 5),
        round(pattern.plus_minus * grade, 5), resolution,
    )  # fmt: skip
    true = true_to_claims(claimed, rng)
    if zero:
        true = Channel(**{**true.__dict__, "zero": true.zero + zero})
    return true
