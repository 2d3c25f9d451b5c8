"""What can be wrong: each cause with the ways in which it shows."""

from lightoff.inference.causes.catalogue import causes
from lightoff.inference.causes.effect import Cause, Effect

__all__ = ["Cause", "Effect", "causes"]
