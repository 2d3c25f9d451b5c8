"""An example of every calculation, as a person would type it; invented, and tried by a test."""

EXAMPLES: dict[str, dict[str, str]] = {
    "unbalance": {
        "volts_ab": "462 V",
        "volts_bc": "463 V",
        "volts_ca": "455 V",
        "motor_power": "15 hp",
    },
    "motor-load": {
        "motor_amps": "15.2 A",
        "terminal_volts": "458 V",
        "motor_power": "15 hp",
        "motor_volts": "460 V",
        "full_load_amps": "18.4 A",
        "motor_efficiency": "92.4 %",
        "rated_speed": "1765 rpm",
        "motor_speed": "1773 rpm",
    },
    "control-circuit": {
        "control_amps": "1.4 A",
        "wire_length": "85 ft",
        "transformer_power": "75 VA",
    },
    "pipe-drop": {
        "pipe_size": "1 1/4 in",
        "gas_load": "400 kBtu/h",
        "pipe_length": "60 ft",
        "elbows": "5",
        "inlet_pressure": "7.5 inwc",
        "unit_least": "6 inwc",
    },
    "pipe-size": {
        "gas_load": "400 kBtu/h",
        "pipe_length": "60 ft",
        "elbows": "5",
        "inlet_pressure": "7.5 inwc",
        "allowed_drop": "0.5 inwc",
    },
    "clocking": {
        "dial": "2 ft3",
        "turns": "4",
        "seconds": "72 s",
        "gas_temperature": "52 degF",
        "altitude": "1200 ft",
    },
    "gas": {
        "methane": "94.6 %",
        "ethane": "3.3 %",
        "propane": "0.5 %",
        "nitrogen": "0.9 %",
        "carbon_dioxide": "0.7 %",
    },
    "orifice": {
        "rated_input": "200 kBtu/h",
        "orifices": "5",
        "manifold": "3.5 inwc",
        "altitude": "4800 ft",
        "derate": "code derate",
    },
    "manifold": {
        "rated_manifold": "3.5 inwc",
        "rated_heating_value": "1030 Btu/ft3",
        "heating_value": "985 Btu/ft3",
        "relative_density": "0.63",
    },
    "flue": {
        "o2": "6.4 %",
        "flue_temperature": "395 degF",
        "combustion_air_temperature": "38 degF",
        "altitude": "1200 ft",
    },
    "co-air-free": {"co": "38 ppm", "o2": "6.4 %"},
    "airflow-from-rise": {
        "burner_input": "400 kBtu/h",
        "entering_temperature": "18 degF",
        "discharge_temperature": "71 degF",
        "altitude": "1200 ft",
    },
    "air-density": {"dry_bulb": "18 degF", "altitude": "1200 ft", "relative_humidity": "70 %"},
    "humid-air": {"dry_bulb": "72 degF", "wet_bulb": "58 degF", "altitude": "1200 ft"},
    "mixed-air": {
        "outdoor_airflow": "3000 cfm",
        "outdoor_temperature": "18 degF",
        "return_airflow": "6000 cfm",
        "return_temperature": "70 degF",
        "outdoor_humidity": "70 %",
        "return_humidity": "35 %",
    },
    "outdoor-air": {
        "outdoor_temperature": "18 degF",
        "return_temperature": "70 degF",
        "mixed_temperature": "51 degF",
        "probe_places": "4",
    },
    "pressure-decay": {
        "test_start": "15 psi",
        "test_end": "14.6 psi",
        "test_start_temperature": "61 degF",
        "test_end_temperature": "54 degF",
        "test_time": "30 min",
        "pipe_volume": "2.4 ft3",
    },
    "building-pressure": {
        "supply_airflow": "9000 cfm",
        "exhaust_airflow": "9600 cfm",
        "leakage_airflow": "5200 cfm",
    },
    "door-force": {
        "door_pressure": "0.08 inwc",
        "door_width": "3 ft",
        "door_height": "7 ft",
        "closer_force": "8 lbf",
    },
    "traverse-points": {"duct_width": "36 in", "duct_height": "24 in"},
    "traverse": {
        "duct_width": "24 in",
        "duct_height": "18 in",
        "velocity_pressures": "0.12, 0.14, 0.15, 0.15, 0.13, 0.11, 0.13, 0.15, 0.16, 0.16, 0.14, "
        "0.12, 0.14, 0.16, 0.17, 0.17, 0.15, 0.12, 0.12, 0.14, 0.15, 0.15, 0.13, 0.10, "
        "0.11, 0.13 inwc",
        "air_temperature": "62 degF",
        "altitude": "1200 ft",
        "straight_before": "16 ft",
        "straight_after": "8 ft",
    },
    "fan-law": {
        "fan_speed": "1020 rpm",
        "fan_airflow": "8400 cfm",
        "wanted_airflow": "9000 cfm",
        "fan_static": "1.62 inwc",
        "motor_amps": "15.2 A",
        "full_load_amps": "19.0 A",
    },
    "belt": {
        "motor_sheave": "5.4 in",
        "fan_sheave": "9.25 in",
        "shaft_centres": "31 in",
        "motor_speed": "1760 rpm",
    },
    "sheave": {
        "fan_speed": "1020 rpm",
        "wanted_fan_speed": "1090 rpm",
        "motor_sheave": "5.4 in",
        "fan_sheave": "9.25 in",
    },
}


def example(name: str) -> dict[str, str]:
    """What is typed in the example of a calculation; nothing where there is none."""
    return EXAMPLES.get(name, {})


def example_of(calculation: str, name: str) -> str | None:
    """How an input is typed in the example of a calculation, or of another that asks for it."""
    own = example(calculation).get(name)
    others = (typed[name] for typed in EXAMPLES.values() if name in typed)
    return own or next(others, None)
