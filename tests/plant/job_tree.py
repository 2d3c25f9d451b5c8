"""What is declared, as the job file writes it."""

from typing import Any

from plant.limit import MARGIN
from plant.plate import FurnacePlate, Plate, TrainPlate

Tree = dict[str, Any]
SPELT = {"butane": "n-butane"}  # components the job file names otherwise


def tree(plate: Plate) -> Tree:
    """The whole job but its instruments and visits."""
    return {
        "format": 1,
        "unit": _unit(plate),
        "design": _design(plate),
        "site": _site(plate),
    }


def _unit(plate: Plate) -> Tree:
    return {
        "tag": plate.tag,
        "arrangement": plate.arrangement,
        "mounting": "indoor" if plate.indoor else "rooftop",
        "options": list(plate.options),
        "electrical": {
            "volts": f"{plate.motor.supply:g} V",
            "phases": plate.motor.phases,
            "frequency": "60 Hz",
            "control_volts": "24 V",
            "control_power": f"{plate.control_power:g} VA",
        },
        "motor": _motor(plate),
        "drive": _drive(plate),
        "fan": _fan(plate),
        "airside": _airside(plate),
        "furnace": [_furnace(one, i == plate.leading) for i, one in enumerate(plate.furnaces)],
    }


def _motor(plate: Plate) -> Tree:
    motor = plate.motor
    return {
        "power": f"{motor.power:g} hp",
        "volts": f"{motor.volts:g} V",
        "full_load_amps": f"{motor.amps:g} A",
        "service_factor": motor.service_factor,
        "speed": f"{motor.speed:g} rpm",
        "efficiency": motor.efficiency,
        "power_factor": motor.power_factor,
    }


def _drive(plate: Plate) -> Tree:
    drive = plate.drive
    if not drive.belt:
        return {"kind": "direct", "vfd": drive.vfd}
    return {
        "kind": "belt",
        "motor_sheave": f"{drive.motor_sheave:g} in",
        "fan_sheave": f"{drive.fan_sheave:g} in",
        "belts": drive.belts,
        "belt_force": [f"{force:g} lbf" for force in drive.force],
        "span": f"{drive.span:g} in",
        "adjustable": drive.adjustable,
        "vfd": drive.vfd,
    }


def _fan(plate: Plate) -> Tree:
    fan = plate.fan
    tree: Tree = {
        "wheel": f"{fan.wheel:g} in",
        "speed": f"{fan.speed:g} rpm",
        "max_speed": f"{fan.max_speed:g} rpm",
    }
    if fan.curve:
        tree["curve_speed"] = f"{fan.speed:g} rpm"
        tree["curve"] = [
            [f"{flow:g} cfm", f"{pressure:.2f} inwc", *([] if power is None else [f"{power:g} hp"])]
            for flow, pressure, power in fan.curve
        ]
    return tree


def _airside(plate: Plate) -> Tree:
    air = plate.air
    names = {"hood": air.hood, "damper": air.damper, "filters_clean": air.filters,
             "filters_change": air.change, "furnace": air.furnace, "coil": air.coil}  # fmt: skip
    return {**{name: f"{drop:.2f} inwc" for name, drop in names.items()},
            "recirculation": air.recirculation}  # fmt: skip


def _furnace(one: FurnacePlate, leading: bool) -> Tree:
    tree = {
        "gas": one.gas,
        "control": one.control,
        "input": f"{one.input:g} kBtu/h",
        # its pressure lowered by the maker, the plate's pressure gives the input due here, as
        # smaller orifices do; in the job format `manifold` is for who still has to lower it
        "derate": "orifice" if one.derate == "manifold" else one.derate,
        "rated_heating_value": f"{one.heating_value:g} Btu/ft3",
        "rated_relative_density": one.relative_density,
        "efficiency": one.efficiency,
        "rise": [f"{end:g} degF" for end in one.rise],
        "max_outlet": f"{one.max_outlet:g} degF",
        "supply_min": f"{one.supply[0]:g} inwc",
        "supply_max": f"{one.supply[1]:g} inwc",
        "flue_o2": list(one.oxygen),
        "flue_max": f"{one.flue_max:g} degF",
        "condensing": one.condensing,
        "purge": f"{one.purge:g} s",
        "ignition_trial": f"{one.trial:g} s",
        "flame_failure": f"{one.failure:g} s",
        "high_limit": f"{one.max_outlet + MARGIN:g} degF",
        "train": [_train(train) for train in one.trains],
    }
    if leading:
        tree["leading"] = True
    if one.draft:
        tree["flue_draft"] = [f"{end:.2f} inwc" for end in one.draft]
    if one.proving:
        tree["proving_pressure"] = [f"{end:.2f} inwc" for end in one.proving]
    if one.flame:
        tree["flame_signal"] = f"{one.flame:g} uA"
    return tree


def _train(train: TrainPlate) -> Tree:
    tree: Tree = {
        "valve_outlet": f"{train.outlet:.1f} inwc",
        "manifold_high": f"{train.high:.2f} inwc",
        "reference": train.reference,
        "share": train.share,
    }
    if train.low is not None:
        tree["manifold_low"] = f"{train.low:.2f} inwc"
    return tree


def _design(plate: Plate) -> Tree:
    return {
        "airflow": f"{plate.air.airflow:g} cfm",
        "external_static": f"{plate.air.external:.2f} inwc",
        "discharge": f"{plate.site.discharge:g} degF",
        "winter_outdoor": f"{plate.site.winter:g} degF",
        "summer_outdoor": f"{plate.site.summer:g} degF",
        "exhaust": f"{plate.air.exhaust:g} cfm",
    }


def _site(plate: Plate) -> Tree:
    site = plate.site
    tree: Tree = {
        "altitude": f"{site.altitude:g} ft",
        "supply_pressure": f"{site.supply:.1f} inwc",
        "meter_dial": f"{site.dial:g} ft3",
        "meter_compensated": site.compensated,
        "pipe": [{"size": f"{pipe.size} in", "length": f"{pipe.length:g} ft",
                  "other_load": f"{pipe.other:g} kBtu/h"} for pipe in site.pipes],
    }  # fmt: skip
    if site.heating_value is None:
        parts = {SPELT.get(name, name): share for name, share in site.composition}
        return {**tree, "gas_composition": parts}
    return {
        **tree,
        "heating_value": f"{site.heating_value:g} Btu/ft3",
        "heating_value_basis": site.basis,
        "relative_density": site.relative_density,
    }
