"""What may be wrong: odds before anything is read, signs beside the readings, and the ranking."""

from lightoff.judgement.causes.diagnose import diagnose

__all__ = ["diagnose"]
