"""Whether one machine explains all readings, in one sentence."""

from lightoff.judgement import Assessment
from lightoff.judgement.answer import Fit
from lightoff.surfaces.words.speech import Speech


def together(answer: Assessment, speech: Speech) -> str:
    """How the readings of a visit stand together; nothing where too few were taken to tell."""
    if answer.fit is None:
        return ""
    plain = _plain(answer, answer.fit, speech)
    if answer.fit.widened == 1.0:
        return plain
    return f"{plain} {speech.word('together:widened', times=f'{answer.fit.widened:.1f}')}"


def odd_readings(answer: Assessment) -> list[tuple[str, str]]:
    """Those that do not fit the others: point and run."""
    return [(point.id, point.run) for point in answer.points if point.suspect]


def _plain(answer: Assessment, fit: Fit, speech: Speech) -> str:
    looked_at = [point for point in answer.points if point.redundancy is not None]
    odd = [speech.reading(f"{point} {run}") for point, run in odd_readings(answer)]
    if odd:
        names = speech.together(odd)
        return speech.word("together:one-odd" if len(odd) == 1 else "together:odd", names=names)
    checked = sum(point.foretold is not None for point in looked_at)
    if fit.widened > 1.0:
        return speech.word("together:hardly", many=len(looked_at))
    if not checked:
        return speech.word("together:unchecked")
    read = sum(point.measured is not None for point in answer.points)
    return speech.word("together:fits", many=len(looked_at), checked=checked, all=read)
