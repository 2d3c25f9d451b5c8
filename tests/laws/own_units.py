"""Formulas that hold only in SI, because a number in them has a unit of its own."""

OWN_UNITS = {
    "geopotential_altitude": "radius of the earth",
    "standard_temperature": "lapse rate",
    "barometric_pressure": "the standard atmosphere",
    "geopotential_altitude_of_pressure": "the standard atmosphere",
    "altitude_of_pressure": "the standard atmosphere",
    "saturation_pressure": "fitted coefficients",
    "vapour_pressure": "fitted coefficients",
    "humidity_ratio": "fitted coefficients",
    "moist_air_density": "gas constant of dry air",
    "code_derate_factor": "feet of the code",
    "base_volume_factor": "base state of the gas trade",
    "standard_airflow": "standard density",
    "sensible_heat": "heat capacity of air",
    "moist_heat_capacity": "heat capacities of air and vapour",
    "temperature_rise": "heat capacities of air and vapour",
    "airflow_from_rise": "heat capacities of air and vapour",
}
