"""What every test shares: how long each folder of claims takes."""

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import settings

# a claim does not become false on a busy machine
settings.register_profile("patient", deadline=None)
settings.load_profile("patient")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print each folder's share of the time, so that a slow one is seen where it grows."""
    seconds: Counter[str] = Counter()
    for reports in terminalreporter.stats.values():
        for report in reports:
            if isinstance(report, pytest.TestReport):
                seconds[Path(report.location[0]).parts[1]] += report.duration
    if seconds:
        shares = ", ".join(f"{name} {spent:.1f} s" for name, spent in seconds.most_common())
        terminalreporter.write_line(f"time by folder: {shares}")
