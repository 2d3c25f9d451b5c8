"""The plan of a visit in words, made once for terminal and page."""

from lightoff.surfaces.planning.sheet import PlanSheet, plan_sheet
from lightoff.surfaces.planning.weather import OUTDOORS, expected_weather

__all__ = ["OUTDOORS", "PlanSheet", "expected_weather", "plan_sheet"]
