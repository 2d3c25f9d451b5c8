"""What to carry, what each point should read, which gauge is too coarse, what is ready."""

from lightoff.judgement.plan.carry import AtHand, Carry
from lightoff.judgement.plan.expectation import is_weather, weather_read
from lightoff.judgement.plan.gauges import GaugeUse
from lightoff.judgement.plan.plan import Plan, plan
from lightoff.judgement.plan.windows import Limits, Window

__all__ = [
    "AtHand",
    "Carry",
    "GaugeUse",
    "Limits",
    "Plan",
    "Window",
    "is_weather",
    "plan",
    "weather_read",
]
