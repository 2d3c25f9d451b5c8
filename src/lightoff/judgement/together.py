"""All readings of one state put to the model together, and what it says of anything."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from lightoff.inference.estimate import Estimate, NoSuchStateError, with_part
from lightoff.inference.posterior import Quantity
from lightoff.inference.reconcile import Reconciled, Taken
from lightoff.inference.suspects import MOST, Suspect
from lightoff.inference.told import Told
from lightoff.judgement.airside import AIRFLOW_POINTS, measured_airflow
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.fits import Fits
from lightoff.judgement.gas_input import turned
from lightoff.machine import fan_runs, firing, points
from lightoff.machine.model.points import shows_at_rest, topic_of
from lightoff.machine.model.predict import Condition, predict
from lightoff.machine.visit import Reading

AGAIN = 0.015  # [1] from one start to the next: manifold, supply, volts; engineering judgement
AGAIN_KELVIN = 1.0  # [K] the same of a temperature
AGREES = 2.0  # standard uncertainties: a reading as near to the others is not the wrong one
UNCHECKED = 0.05  # [1] redundancy below which a reading is said to be unchecked
WEATHER = ("air.barometer", "air.outdoor.db", "air.outdoor.rh", "air.return.db")
ONE_DIAL = 1.0  # [m3] of a meter whose dial only its readings tell


def itself(value: Any) -> Any:
    """The formula of a quantity by itself."""
    return value


@dataclass(frozen=True)
class Misfit:
    """A reading that does not fit the others, or a few of which one does not, the likeliest first.

    `told` is what all readings that fit say instead, where they say anything.
    """

    taken: tuple[Taken, ...]
    suspect: Suspect
    told: Told | None

    @property
    def foretold(self) -> float:
        """What the others foretell of the first."""
        return self.told.value if self.told else self.taken[0].estimate.value - self.suspect.off

    @property
    def off(self) -> float:
        """How far it stands from that."""
        return self.taken[0].estimate.value - self.foretold

    @property
    def u(self) -> float:
        """Standard uncertainty of that distance."""
        if self.told is None:
            return abs(self.suspect.off) / self.suspect.statistic
        return math.hypot(self.told.u, self.taken[0].estimate.u)


@dataclass(frozen=True)
class Together:
    """A state of the machine as its readings leave it.

    `found` stands on those that fit each other, `whole` on all of them; without a misfit the two
    are the same.
    """

    evidence: Evidence
    found: Reconciled
    whole: Reconciled
    misfits: tuple[Misfit, ...] = ()

    @cached_property
    def with_misfits(self) -> "Together":
        """The same on all readings."""
        return Together(self.evidence, self.whole, self.whole)

    def told(self, *names: tuple[str, str], by: Callable[..., Any] = itself) -> Told | None:
        """Points or derived quantities in their runs, read or not, by a formula of them.

        None where the model says nothing, or nothing that is a number.
        """
        if by is itself and names in self._told:
            return self._told[names]
        told = self._worked_out(names, by)
        if by is itself:
            self._told[names] = told
        return told

    @cached_property
    def _told(self) -> dict[tuple[tuple[str, str], ...], Told | None]:
        """What was told before."""
        return {}

    def _worked_out(
        self, names: tuple[tuple[str, str], ...], by: Callable[..., Any]
    ) -> Told | None:
        try:
            told = self.found.told(*names, by=by)
        except (ArithmeticError, TypeError, ValueError):  # a root of less than nothing
            return None
        return told if told is not None and math.isfinite(told.value * told.u) else None

    def on_a_day(self, name: str, run: str, outdoor: float) -> Told | None:
        """Something in a run on a day of that outdoor temperature [K], the machine as it is."""
        there = self._on_a_day(run, outdoor)
        return self.found.of(there[name]) if name in there else None

    def _on_a_day(self, run: str, outdoor: float) -> dict[str, Quantity]:
        if (run, outdoor) not in self._days:
            try:
                there = self.found.elsewhere(run, {"air.outdoor.db": outdoor})
            except (ArithmeticError, TypeError, ValueError):  # the machine cannot work there
                there = {}
            self._days[run, outdoor] = there
        return self._days[run, outdoor]

    @cached_property
    def _days(self) -> dict[tuple[str, float], dict[str, Quantity]]:
        return {}

    def point_of(self, taken: Taken) -> str:
        """The point that was read, which the model may know by another name."""
        return self._readings[taken.place].point

    def reading_of(self, taken: Taken) -> Reading:
        """The reading as it was taken."""
        return self._readings[taken.place]

    @cached_property
    def _readings(self) -> dict[str, Reading]:
        return {each.place: each for each in self.evidence.visit.readings}

    def turns(self, point: str, run: str) -> float:
        """How many turns of the site's dial the last reading of the meter took; else one."""
        last = self.evidence.readings(point, run)[-1:] if point == "gas.meter.seconds" else ()
        volumes = [turned(self.evidence, each) for each in last]
        return sum(volume / _dial(self.evidence) for volume in volumes if volume) or 1.0

    def foreseen(self, run: str) -> dict[str, float]:
        """What each point should show in a run, in the weather of the day and else as usual."""
        values = {each.id: each.mean for each in self.found.model.table}
        now = self.found.values()
        today = {name: value for name, value in now.items() if name in WEATHER}
        shown = predict(self.found.model.rated, {**values, **today}, Condition(run)).shown
        return {name: float(value) for name, value in shown.items()}

    def is_alone(self, point: str, run: str) -> bool:
        """Whether a point was read once in a run and nothing else has a say in it."""
        places = [i for i, t in enumerate(self.found.taken) if (t.point, t.run) == (point, run)]
        return len(places) == 1 and self.found.posterior.redundancy(places[0]) < UNCHECKED

    @cached_property
    def misfit_names(self) -> tuple[str, ...]:
        """The readings that do not fit, each as point and run."""
        taken = (taken for each in self.misfits for taken in each.taken)
        return tuple(f"{self.point_of(each)} {each.run}" for each in taken)

    @cached_property
    def suspected(self) -> frozenset[str]:
        """The places of the readings that do not fit."""
        return frozenset(taken.place for each in self.misfits for taken in each.taken)


def together(
    evidence: Evidence, without: frozenset[str] = frozenset(), fits: Fits | None = None
) -> Together | None:
    """The model as these readings leave it; None where they describe no machine.

    `without` are the places of readings that stay out of it, `fits` what was fitted before.
    """
    taken = [each for each in _taken(evidence) if each.place not in without]
    if not taken:
        return None
    known = fits or Fits()
    try:
        whole = known.fit(evidence.machine, taken)
    except ArithmeticError:
        return None
    found, suspected = _fitting(known, whole)
    misfits = tuple(_misfit(found, *each) for each in suspected)
    return Together(evidence, found, whole, misfits)


def _fitting(
    fits: Fits, whole: Reconciled
) -> tuple[Reconciled, list[tuple[tuple[Taken, ...], Suspect]]]:
    """The readings that fit each other, and the others, the worst taken out first."""
    found = whole
    out: list[tuple[tuple[Taken, ...], Suspect]] = []
    while found.suspects and len(out) < MOST:
        worst = found.suspects[0]
        group = tuple(found.taken[i] for i in worst.readings)
        try:
            without = _without(group, found, fits)
            guilty = _guilty(group, without)
            found = without if guilty == group else _without(guilty, found, fits)
        except ArithmeticError:  # nothing is left, or what describes no machine
            break
        out.append((guilty, worst))
        if not found.solution.converged:  # whatever else is wrong, no machine shows it
            break
    return found, out


def _without(group: tuple[Taken, ...], found: Reconciled, fits: Fits) -> Reconciled:
    rest = [each for each in found.taken if each not in group]
    return fits.fit(found.model.rated.machine, rest)


def _guilty(group: tuple[Taken, ...], without: Reconciled) -> tuple[Taken, ...]:
    """Of a few readings of which one is wrong: those the others do not agree with, the worst first.

    All of them where all agree, or nobody can say.
    """
    told = [(each, without.told((each.point, each.run))) for each in group]
    off = [
        (abs(each.estimate.value - said.value) / math.hypot(each.estimate.u, said.u), each)
        for each, said in told
        if said is not None
    ]
    guilty = [(by, each) for by, each in off if by > AGREES]
    if len(off) < len(group) or not guilty:
        return group
    return tuple(each for _, each in sorted(guilty, key=lambda pair: -round(pair[0], 6)))


def _misfit(found: Reconciled, group: tuple[Taken, ...], suspect: Suspect) -> Misfit:
    told = found.told((group[0].point, group[0].run))
    return Misfit(group, suspect, told if told and math.isfinite(told.value * told.u) else None)


def _taken(evidence: Evidence) -> Iterator[Taken]:
    """Every reading the model knows, as it knows it."""
    here = {point.id for point in points(evidence.machine)}
    for run, point in evidence.history.state(evidence.state):
        if point not in here or not _is_known(evidence, point, run):
            continue
        readings = [each for each in evidence.readings(point, run) if each.main_fan]
        places = {each.position for each in readings}
        if len(places) > 1:  # several places make one reading, as uncertain as they scatter
            found = evidence.get(point, run)
            if found is not None:
                yield Taken(run, point, found, readings[-1].place)
            continue
        for each in readings:
            for taken in _one(evidence, each, run):
                yield _again(taken) if len(readings) > 1 else taken


def _again(taken: Taken) -> Taken:
    """A reading taken more than once: the machine was not quite the same each time."""
    temperature = taken.point.endswith((".db", ".wb", ".sensor"))
    size = AGAIN_KELVIN if temperature else AGAIN * abs(taken.estimate.value)
    return taken._replace(estimate=with_part(taken.estimate, "another moment", taken.place, size))


def _one(evidence: Evidence, reading: Reading, run: str) -> Iterator[Taken]:
    """A reading in the model's terms: airflow at standard density, a dial's single turn."""
    point, found = reading.point, evidence.of(reading)
    try:
        if point in AIRFLOW_POINTS:
            point, found = "airflow.standard", measured_airflow(evidence, reading, run)
    except NoSuchStateError:
        return
    if point == "gas.meter.seconds":
        volume = turned(evidence, reading)
        if volume is None:
            return
        share = _dial(evidence) / volume
        parts = {part: size * share for part, size in found.parts.items()}
        found = Estimate(found.value * share, parts)
    yield Taken(run, point, found, reading.place)


def _dial(evidence: Evidence) -> float:
    return evidence.machine.site.meter_dial or ONE_DIAL


def _is_known(evidence: Evidence, point: str, run: str) -> bool:
    """Whether the model says anything of a point in a run."""
    if not fan_runs(run):
        return shows_at_rest(point)
    topic = topic_of(point)
    if topic in ("fire", "flue"):
        furnace = int(point.split(".")[1])
        return furnace in firing(evidence.machine, run)
    return topic is not None
