"""Each fault moves what it should, the way it should; nothing else is wrong with a sound unit."""

from collections.abc import Callable
from random import Random

import pytest

from plant.faults import CAUSES, possible
from plant.machine import Machine
from plant.method import shown
from plant.plant import Plant, draw

Values = dict[str, float]
Pair = tuple[Values, Values, int]  # sound, struck, the furnace concerned


def pairs(cause: str, run: str, count: int = 4) -> list[Pair]:
    """The same units without and with a fault, as an ideal gauge shows them."""
    found = []
    for seed in range(400):
        sound = draw(seed, "none")
        if cause not in possible(sound.machine, sound.declared):
            continue
        struck = draw(seed, cause)
        name = run if run in sound.runs() else "high"
        found.append((seen(sound, name), seen(struck, name), struck.fault.furnace or 1))
        if len(found) == count:
            break
    assert found
    return found


def seen(plant: Plant, run: str) -> Values:
    machine: Machine = plant.machine
    return shown(machine, run, plant.state(run))


def lower(point: str) -> Callable[[Pair], bool]:
    return lambda pair: pair[1][point.format(n=pair[2])] < pair[0][point.format(n=pair[2])]


def higher(point: str) -> Callable[[Pair], bool]:
    return lambda pair: pair[1][point.format(n=pair[2])] > pair[0][point.format(n=pair[2])]


def differs(point: str, by: float = 0.005) -> Callable[[Pair], bool]:
    def off(pair: Pair) -> bool:
        sound, struck = pair[0][point.format(n=pair[2])], pair[1][point.format(n=pair[2])]
        return abs(struck - sound) > by * max(abs(sound), 1e-9)

    return off


# cause: run, and what an onlooker would see
CLAIMS: dict[str, tuple[str, tuple[Callable[[Pair], bool], ...]]] = {
    "reversed rotation": ("fan", (lower("airflow"), lower("static.duct"))),
    "belt slip": ("fan", (lower("fan.rpm"), lower("airflow"))),
    "wrong sheave": ("fan", (differs("fan.rpm", 0.05), differs("airflow", 0.03))),
    "blocked filter": ("fan", (lower("static.filters"), lower("airflow"))),
    "missing filter": ("fan", (higher("static.filters"), higher("airflow"))),
    "closed damper": ("fan", (lower("static.intake"), lower("airflow"))),
    "open duct": ("fan", (lower("static.duct"), higher("airflow"))),
    "exhaust off": ("fan", (higher("building.pressure"), lower("exhaust.airflow"))),
    "sensor not in duct": ("high", (lower("air.discharge.sensor"),)),
    "supply unbalance": ("fan", (higher("voltage_unbalance"),)),
    "single phasing": ("fan", (higher("motor.amps.b"), lower("motor.amps.a"))),
    "control volts sag": ("fan", (lower("power.control_volts"),)),
    "wrong voltage tap": ("off", (differs("power.control_volts.unloaded", 0.05),)),
    "gas supply too small": ("all", (lower("gas.supply"),)),
    "regulator creeps": ("off", (higher("gas.supply"),)),
    "blocked regulator vent": ("off", (higher("gas.supply"),)),
    "cold propane tank": ("all", (lower("gas.supply"),)),
    "wrong orifice": ("high", (differs("input.{n}", 0.05), differs("flue.{n}.o2", 0.03))),
    "wrong gas": ("high", (differs("input.1", 0.2),)),
    "setting did not hold": ("all", (differs("train.{n}.1.manifold", 0.03),)),
    "signal range mismatch": ("high", ()),
    "heating value off": ("high", (differs("input.1", 0.002),)),
    "blocked vent": ("high", (lower("flue.{n}.o2"), higher("flue.{n}.draft"))),
    "blocked drain or tube": ("high", (lower("flue.{n}.o2"), lower("flue.{n}.draft"))),
    "flue gas re-entrained": ("high", (higher("air.intake.co"), higher("air.entering.db"))),
    "excess combustion air": ("high", (higher("flue.{n}.o2"), lower("efficiency.{n}"))),
    "fouled heat exchanger": ("high", (higher("flue.{n}.db"), lower("efficiency.{n}"))),
    "weak flame signal": ("high", (lower("furnace.{n}.flame"),)),
    "diluted flue sample": ("high", (higher("flue.{n}.o2"), lower("flue.{n}.co"))),
    "stratified discharge": ("high", (differs("air.discharge.db", 0.002),)),
    "tachometer harmonic": ("fan", (differs("fan.rpm", 0.3),)),
    "bad traverse plane": ("fan", (differs("duct.traverse", 0.01),)),
    "wrong reference port": ("high", (differs("train.{n}.1.manifold", 0.005),)),
}


@pytest.mark.parametrize("cause", [name for name, claim in CLAIMS.items() if claim[1]])
def test_a_fault_shows_where_and_how_it_should(cause: str) -> None:
    run, claims = CLAIMS[cause]
    for pair in pairs(cause, run):
        for claim in claims:
            assert claim(pair)


def test_a_mismatched_signal_lifts_low_fire_or_cuts_high_fire() -> None:
    for sound, struck, n in pairs("signal range mismatch", "high"):
        assert struck[f"input.{n}"] <= 1.001 * sound[f"input.{n}"]


def test_a_leak_lets_air_into_the_flue_or_flue_gas_into_the_air() -> None:
    for sound, struck, n in pairs("leaking heat exchanger", "high", 8):
        diluted = struck[f"flue.{n}.o2"] > sound[f"flue.{n}.o2"]
        poisoned = struck["air.discharge.co"] > sound["air.discharge.co"]
        assert diluted or poisoned


def test_swapped_stages_burn_more_when_called_low() -> None:
    seed = next(s for s in range(400) if draw(s, "none").machine.controls == ("two-stage",))
    plant = draw(seed, "stages swapped")
    assert plant.state("low")["input.1"] > plant.state("high")["input.1"]


def test_a_safety_held_open_leaves_some_furnace_cold() -> None:
    for _, struck, _n in pairs("open safety", "high"):
        inputs = [x for name, x in struck.items() if name.startswith("input.")]
        assert min(inputs) == 0.0


def test_a_stage_that_stays_out_leaves_less_heat() -> None:
    for sound, struck, n in pairs("stage does not fire", "high"):
        assert struck[f"input.{n}"] < 0.9 * sound[f"input.{n}"]


def test_a_wrong_drive_moves_speed_or_volts() -> None:
    for sound, struck, _ in pairs("drive parameters", "fan"):
        volts_by_hertz = struck["vfd.volts"] / struck["vfd.hz"]
        before = sound["vfd.volts"] / sound["vfd.hz"]
        assert struck["vfd.hz"] < sound["vfd.hz"] or volts_by_hertz < 0.95 * before


@pytest.mark.parametrize("cause", ["wrong meter dial", "gauge zero", "meter compensated twice"])
def test_a_slip_of_measuring_leaves_the_machine_alone(cause: str) -> None:
    sound, struck = draw(7, "none"), draw(7, cause)
    assert struck.state("high")["input.1"] == sound.state("high")["input.1"]
    assert (struck.machine.method, struck.machine.meter) != (
        sound.machine.method, sound.machine.meter,
    )  # fmt: skip


def test_air_in_the_line_is_gone_after_the_first_fire() -> None:
    plant, sound = draw(7, "air in line"), draw(7, "none")
    first = "high" if len(plant.machine.furnaces) == 1 else "high.1"
    assert plant.state(first)["input.1"] < 0.95 * sound.state(first)["input.1"]
    assert plant.state("all")["input.1"] == sound.state("all")["input.1"]


def test_a_late_end_switch_is_timed_late() -> None:
    found = draw(7, "end switch").machine.extras
    assert found.fan_held or found.damper_seconds >= 90.0


def test_every_cause_has_a_claim() -> None:
    alone = {"leaking heat exchanger", "stages swapped", "open safety", "stage does not fire",
             "drive parameters", "wrong meter dial", "gauge zero", "meter compensated twice",
             "air in line", "end switch"}  # fmt: skip
    assert set(CAUSES) == set(CLAIMS) | alone


def test_a_fault_that_can_t_befall_a_unit_is_refused() -> None:
    seed = next(s for s in range(99) if not draw(s, "none").declared.drive.belt)
    with pytest.raises(KeyError, match="can't befall"):
        draw(seed, "belt slip")


def test_a_third_of_plants_are_sound_and_the_rest_spread_over_all_causes() -> None:
    drawn = [draw(seed).fault.id for seed in range(500)]
    assert 0.27 < drawn.count("none") / len(drawn) < 0.43  # 0.35 and four of its deviations
    assert len(set(drawn)) > 35


def test_putting_it_right_puts_it_right() -> None:
    plant = draw(7, "wrong voltage tap")
    before = plant.state("off")["power.control_volts.unloaded"]
    after = plant.adjusted("wiring", 1.0).state("off")["power.control_volts.unloaded"]
    assert after == draw(7, "none").state("off")["power.control_volts.unloaded"] != before


def test_a_visit_shows_the_fault_s_own_errors() -> None:
    plant = draw(7, "gauge zero")
    visit = plant.visit("thorough", Random(1))
    zero = visit.truth["instruments"][plant.machine.method.unzeroed].channels[0].zero
    assert zero * 249.08891 == pytest.approx(plant.machine.method.zero, abs=2.0)
