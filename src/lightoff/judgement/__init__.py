"""What the trade decides: history, targets, proofs, remarks, verdict; `assess` composes them."""

from lightoff.judgement.answer import Assessment, DerivedRow, PointRow, Row, Verdict
from lightoff.judgement.assess import ENGINE, assess
from lightoff.judgement.fits import Fits, quick_fits
from lightoff.judgement.message import Message, Remark
from lightoff.judgement.targets import TARGET_KINDS
from lightoff.judgement.worked import worked

__all__ = [
    "ENGINE",
    "TARGET_KINDS",
    "Assessment",
    "DerivedRow",
    "Fits",
    "Message",
    "PointRow",
    "Remark",
    "Row",
    "Verdict",
    "assess",
    "quick_fits",
    "worked",
]
