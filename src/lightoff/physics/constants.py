"""Constants and reference states of the trade, each with unit and source."""

STANDARD_GRAVITY = 9.80665  # [m/s2] CGPM 1901
GAS_CONSTANT = 8.314462618  # [J/(mol K)] CODATA 2018
DRY_AIR_GAS_CONSTANT = 287.042  # [J/(kg K)] ASHRAE Fundamentals, psychrometrics
WATER_AIR_RATIO = 0.621945  # [1] molar masses of water and dry air, ASHRAE Fundamentals
STANDARD_PRESSURE = 101325.0  # [Pa] ISO 2533
STANDARD_AIR_DENSITY = 1.204  # [kg/m3] dry air at 20 degC; what "scfm" means in the job format
GAS_BASE_PRESSURE = 30 * 3386.389  # [Pa] 30 in. of mercury at 0 degC, US gas trade
GAS_BASE_TEMPERATURE = (60 + 459.67) * 5 / 9  # [K] 60 degF, US gas trade
AIR_HEAT_CAPACITY = 1006.0  # [J/(kg K)] dry air, ASHRAE Fundamentals
VAPOUR_HEAT_CAPACITY = 1860.0  # [J/(kg K)] water vapour, ASHRAE Fundamentals
AIR_O2 = 0.209  # [1] oxygen of dry air in the analyser standards' air-free formula
FOOT = 0.3048  # [m] exact
