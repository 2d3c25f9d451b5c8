"""Gas supply, train pressures, input and turndown."""

from collections.abc import Iterator, Sequence

from lightoff.inference.conformity import (
    CONFIDENT,
    acceptance,
    decide,
    decide_stop,
    probability_within,
)
from lightoff.inference.estimate import Estimate
from lightoff.inference.told import Told, Uncertain
from lightoff.judgement.evidence import Missing
from lightoff.judgement.gas_input import (
    Input,
    furnace_input,
    high_fire_read,
    manifolds_in_window,
    root_turndown,
    turndown,
)
from lightoff.judgement.message import message
from lightoff.judgement.target import (
    COMMON_PRACTICE,
    UNIT_PLATE,
    Bounds,
    Case,
    Instance,
    Ruling,
    Target,
    about,
    at_most,
    reading,
)
from lightoff.judgement.targets.where import at_high, at_low, each_train
from lightoff.machine import Machine
from lightoff.machine.gas import allowed_input, expected_manifold, least_input
from lightoff.machine.plate import Train
from lightoff.quantity import si

PROPANE_SUPPLY = (si(11, "inwc"), si(14, "inwc"))  # [Pa] where the plate is silent; [cp]
OUTLET_TOLERANCE = si(0.3, "inwc")  # [Pa] about the plate's valve outlet; [cp]
INPUT_LIMIT = 1.05  # [1] of the allowed input; [cp]
MANIFOLD_LIMIT = 1.10  # [1] of the manifold pressure to set; [cp]


def _supply(run: str) -> tuple[Instance, ...]:
    return (Instance("gas.supply", (run,), ("gas.supply",)),)


def _lowest_maximum(machine: Machine) -> float | None:
    declared = [f.supply_max for f in machine.furnaces if f.supply_max is not None]
    return min(declared, default=None)


def _supply_bounds(case: Case) -> Bounds | None:
    """From the highest of the furnaces' minima to the lowest of their maxima."""
    declared = [f.supply_min for f in case.machine.furnaces if f.supply_min is not None]
    upper = _lowest_maximum(case.machine)
    if declared:
        return Bounds(max(declared), upper, "plate", UNIT_PLATE)
    if all(f.gas == "propane" for f in case.machine.furnaces):
        low, high = PROPANE_SUPPLY
        return Bounds(low, high if upper is None else upper, "common practice", COMMON_PRACTICE)
    return None


def _train(case: Case) -> Train:
    return case.machine.furnace(case.furnace).trains[(case.instance.train or 1) - 1]


def _outlet_bounds(case: Case) -> Bounds | None:
    plate = _train(case).valve_outlet
    if plate is None:
        return None
    return Bounds(plate - OUTLET_TOLERANCE, plate + OUTLET_TOLERANCE, "plate", UNIT_PLATE)


def _to_set(case: Case) -> float | None:
    """The manifold pressure to set at high fire here [Pa]."""
    plate = _train(case).manifold_high
    furnace = case.machine.furnace(case.furnace)
    return None if plate is None else expected_manifold(case.machine, furnace, plate)


def _manifold_source(case: Case) -> str:
    if case.machine.furnace(case.furnace).derate == "manifold":
        return f"{UNIT_PLATE}, lowered for the altitude's derate"
    return UNIT_PLATE


def _high_bounds(case: Case) -> Bounds | None:
    return about(_to_set(case), 0.05, "plate", _manifold_source(case))


def _high_limit_bounds(case: Case) -> Bounds | None:
    wanted = _to_set(case)
    upper = None if wanted is None else MANIFOLD_LIMIT * wanted
    return at_most(upper, "plate", _manifold_source(case))


def _input_instances(machine: Machine) -> Iterator[Instance]:
    for number, furnace in machine.numbered():
        trains = range(1, len(furnace.trains) + 1)
        needs = ("gas.meter.seconds", *(f"train.{number}.{m}.manifold" for m in trains))
        yield Instance(f"input.{number}", at_high(machine, number), needs, furnace=number)


def _input(case: Case) -> Estimate | Missing:
    found = furnace_input(case.evidence, case.furnace, case.run)
    return found.estimate if isinstance(found, Input) else found


def _input_bounds(case: Case) -> Bounds:
    furnace = case.machine.furnace(case.furnace)
    upper = allowed_input(case.machine, furnace)
    due = upper < furnace.input
    source = f"{UNIT_PLATE}, less the derate of NFPA 54" if due else UNIT_PLATE
    of = "what its orifices give at this altitude" if furnace.derate == "none" else "it"
    least = least_input(case.machine, furnace)
    return Bounds(least, upper, "plate", f"{source}; at least 95 % of {of}")


def _input_limit_bounds(case: Case) -> Bounds:
    upper = INPUT_LIMIT * allowed_input(case.machine, case.machine.furnace(case.furnace))
    return Bounds(None, upper, "common practice", COMMON_PRACTICE)


def _judge_input(case: Case, bounds: Bounds, found: Sequence[Uncertain]) -> Ruling | None:
    """With the manifold as the plate says, the input conforms unless it is provably off."""
    if not manifolds_in_window(case.evidence, case.furnace, case.run):
        return _unmetered(case, bounds, found[-1])
    value, u = found[-1].value, found[-1].u
    above = 1 - probability_within(value, u, None, bounds.upper)
    below = 1 - probability_within(value, u, bounds.lower, None)
    unchecked = not _metered(case)
    if above >= CONFIDENT:
        return Ruling("does not conform", "guarded", message("provably-above"), unchecked)
    if below >= CONFIDENT:
        return Ruling("does not conform", "guarded", message("provably-below"), unchecked)
    why = message("root-law-only") if unchecked else message("manifold-at-plate")
    return Ruling("conforms", "guarded", why, unchecked)


def _judge_input_limit(case: Case, bounds: Bounds, found: Sequence[Uncertain]) -> Ruling | None:
    """Metered with the manifold in its window: simple. Unmetered: by the root law, and said so."""
    series = [(each.value, each.u) for each in found]
    decision, stood = decide_stop(series, None, bounds.upper, "simple")
    if _metered(case):
        if not manifolds_in_window(case.evidence, case.furnace, case.run):
            return None
        return Ruling(decision, "simple", message("retaken" if stood else "metered"))
    why = message("retaken" if stood else "root-law-only")
    return Ruling(decision, "simple", why, unchecked=True)


def _unmetered(case: Case, bounds: Bounds, estimate: Uncertain) -> Ruling | None:
    """The usual rule, with the mark that no meter stands behind it."""
    if _metered(case):
        return None
    how = acceptance(estimate.expanded, bounds.lower, bounds.upper)
    decision = decide(estimate.value, estimate.u, bounds.lower, bounds.upper, how)
    return Ruling(decision, how, message("root-law-only"), unchecked=True)


def _metered(case: Case) -> bool:
    found = furnace_input(case.evidence, case.furnace, case.run)
    return isinstance(found, Input) and found.metered


def _turndown_instances(machine: Machine) -> Iterator[Instance]:
    for number, furnace in machine.numbered():
        if furnace.has_low_fire:
            trains = range(1, len(furnace.trains) + 1)
            needs = tuple(f"train.{number}.{m}.manifold" for m in trains)
            there = at_low(machine, number)
            yield Instance(f"turndown.{number}", there, needs, furnace=number)


def _turndown_told(case: Case) -> Told | None:
    """The ratio of the inputs themselves."""
    high = high_fire_read(case.evidence, case.furnace)
    if case.together is None or high is None:
        return None
    name = f"input.{case.furnace}"
    return case.together.told((name, high), (name, case.run), by=lambda a, b: a / b)


def _turndown_bounds(case: Case) -> Bounds | None:
    trains = case.machine.furnace(case.furnace).trains
    high = [t.manifold_high for t in trains if t.manifold_high is not None]
    low = [t.manifold_low for t in trains if t.manifold_low is not None]
    if len(high) < len(trains) or len(low) < len(trains):
        return None
    plate = root_turndown([t.share for t in trains], high, low)
    return about(plate, 0.10, "plate", "root of the plate's manifold pressures")


def _low(machine: Machine) -> Iterator[Instance]:
    for instance in each_train(machine, "train.{n}.{m}.manifold", "low"):
        if machine.furnace(instance.furnace or 1).has_low_fire:
            yield instance


TARGETS = (
    Target(
        id="gas pressure all off",
        severity="stop",
        kind="pressure",
        instances=lambda _: iter(_supply("off")),
        estimate=reading,
        bounds=lambda case: at_most(_lowest_maximum(case.machine), "plate", UNIT_PLATE),
        caution="caution-gas",
    ),
    Target(
        id="gas pressure at high fire",
        severity="correct",
        kind="pressure",
        instances=lambda _: iter(_supply("high")),
        estimate=reading,
        bounds=_supply_bounds,
        caution="caution-gas",
    ),
    Target(
        id="gas pressure with everything on",
        severity="correct",
        kind="pressure",
        instances=lambda _: iter(_supply("all")),
        estimate=reading,
        bounds=_supply_bounds,
        caution="caution-gas",
    ),
    Target(
        id="valve outlet",
        severity="correct",
        kind="pressure",
        instances=lambda machine: each_train(machine, "train.{n}.{m}.outlet", "high"),
        estimate=reading,
        bounds=_outlet_bounds,
        caution="caution-gas-port",
    ),
    Target(
        id="manifold high",
        severity="correct",
        kind="pressure",
        instances=lambda machine: each_train(machine, "train.{n}.{m}.manifold", "high"),
        estimate=reading,
        bounds=_high_bounds,
        caution="caution-gas-port",
    ),
    Target(
        id="manifold high limit",
        severity="stop",
        kind="pressure",
        instances=lambda machine: each_train(machine, "train.{n}.{m}.manifold", "high"),
        estimate=reading,
        bounds=_high_limit_bounds,
        caution="caution-gas-port",
    ),
    Target(
        id="manifold low",
        severity="correct",
        kind="pressure",
        instances=_low,
        estimate=reading,
        bounds=lambda case: about(_train(case).manifold_low, 0.10, "plate", UNIT_PLATE),
        caution="caution-gas-port",
    ),
    Target(
        id="input",
        severity="correct",
        kind="heat",
        instances=_input_instances,
        estimate=_input,
        bounds=_input_bounds,
        caution="caution-pilots",
        judge=_judge_input,
    ),
    Target(
        id="input limit",
        severity="stop",
        kind="heat",
        instances=_input_instances,
        estimate=_input,
        bounds=_input_limit_bounds,
        caution="caution-pilots",
        judge=_judge_input_limit,
    ),
    Target(
        id="turndown",
        severity="correct",
        kind="number",
        instances=_turndown_instances,
        estimate=lambda case: turndown(case.evidence, case.furnace, case.run),
        told=_turndown_told,
        bounds=_turndown_bounds,
    ),
)
