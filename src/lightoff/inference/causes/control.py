"""What can be wrong with controls, safeties and readings. Sizes are engineering judgement."""

from collections.abc import Iterator, Sequence

from lightoff.inference.causes.effect import Cause, Effect, shares
from lightoff.inference.pushes import Size, between, either_way

TRAVERSED = r"duct\.traverse|airflow\.standard"
TIMES = (0.34, -0.5), (0.33, 1.0), (0.33, 0.5)  # half, twice, three halves of a speed


def controls() -> Iterator[Cause]:
    """Of controls and safeties."""
    yield Cause("open safety")
    yield Cause("end switch")
    yield Cause(
        "sensor not in duct",
        (
            Effect(shares(0.8, between(-1.0, -0.25)), {"sensor.place": 1.0}),
            Effect(shares(0.2, between(0.1, 0.5, 2)), {"sensor.place": 1.0}),  # sees the exchanger
        ),
    )


def readings(gauges: Sequence[str]) -> Iterator[Cause]:
    """Of the way it was read; `gauges` are the instruments that pressures were read with."""
    mixed = (
        Effect(shares(0.5, either_way(0.08, 0.25)), {"probe.discharge": 1.0}),
        Effect(shares(0.5, either_way(0.08, 0.25)), {"sensor.place": 1.0}),
    )
    yield Cause("stratified discharge", mixed)
    plane = (Effect(either_way(0.05, 0.2), read=TRAVERSED, scale=1.0),)
    yield Cause("bad traverse plane", plane)
    for gauge in gauges:
        # 0.01 to 0.08 in. w.c. [Pa]
        off = Effect(either_way(2.5, 20.0, 3), read=r".*", adds=1.0, gauge=gauge)
        yield Cause("gauge zero", (off,), point=gauge)
    # as uncertain as the speed itself, so many times
    sizes = tuple(Size(share, by, 0.03 * (1 + by)) for share, by in TIMES)
    for point in ("fan.rpm", "motor.rpm"):
        effect = Effect(sizes, read=point.replace(".", r"\."), scale=1.0)
        yield Cause("tachometer harmonic", (effect,), point=point)
