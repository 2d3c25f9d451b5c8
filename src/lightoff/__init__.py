"""Start-up of indirect gas-fired make-up air units, from nameplate to signed report.

>>> import lightoff
>>> lightoff.__version__
'0.1.0'

`load` reads a job, `assess` judges one visit of it, `render` puts the answer into words, `plan`
tells beforehand what the visit takes, `predict` foretells a run.
They are fetched on first use, so that importing one pure folder does not import them all.
"""

from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"
__all__ = ["JobError", "assess", "load", "loads", "plan", "predict", "render"]

if TYPE_CHECKING:
    from lightoff.surfaces.library import JobError, assess, load, loads, plan, predict, render


def __getattr__(name: str) -> Any:
    if name in __all__:
        from lightoff.surfaces import library

        return getattr(library, name)
    raise AttributeError(f"module 'lightoff' has no attribute {name!r}")
