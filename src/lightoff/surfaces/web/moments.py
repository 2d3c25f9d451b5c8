"""When something was done: by our clock, unless it runs behind the visit's own times."""

from datetime import datetime, timedelta, tzinfo

from lightoff.surfaces.web.contexts.bench import Bench


def visit_zone(bench: Bench, now: datetime) -> tzinfo | None:
    """The offset the visit is told in."""
    return next((at.tzinfo for at in reversed(_times(bench))), now.tzinfo)


def reading_time(bench: Bench, now: datetime) -> dict[str, str]:
    """What a reading just taken says about its time.

    A clock that runs behind the visit would put a new reading before older ones. Then it says no
    time, so that it follows the line before it, and that it was taken after every adjustment.
    """
    times = _times(bench)
    if not times or now >= times[-1]:
        return {"at": now.astimezone(visit_zone(bench, now)).isoformat(timespec="seconds")}
    return {"state": "as left"} if bench.visit.adjustments else {}


def local_moment(bench: Bench, now: datetime) -> str:
    """The moment a form offers, without offset: now, or just after the visit's last time."""
    times = _times(bench)
    moment = max([now, *(times[-1:])]) if times else now
    if moment > now:
        moment += timedelta(minutes=1)
    return f"{moment.astimezone(visit_zone(bench, now)):%Y-%m-%dT%H:%M}"


def _times(bench: Bench) -> list[datetime]:
    """Every time the visit tells, the latest last."""
    read = [row.at for row in bench.visit.readings if row.at is not None]
    return sorted([*read, *(row.at for row in bench.visit.adjustments)])
