"""How well one machine explains all readings, and what they made of its unknowns."""

from collections.abc import Iterator

from lightoff.judgement.answer import Fit, UnknownRow
from lightoff.judgement.together import Together


def fit(together: Together) -> Fit:
    """The fit of all readings in numbers; what is free takes its readings' freedom away."""
    solution = together.whole.solution
    return Fit(
        chi_square=solution.objective,
        degrees_of_freedom=together.whole.degrees_of_freedom,
        p_value=together.whole.chance,
        widened=together.found.widened,
        iterations=solution.steps,
        converged=solution.converged,
        condition=together.whole.posterior.condition,
    )


def unknown_rows(together: Together) -> Iterator[UnknownRow]:
    """Every unknown of the machine, before and after."""
    model = together.found.model
    values = together.found.values()
    free = {each.id for each in model.free}
    for each in model.table:
        yield UnknownRow(
            id=each.id,
            unit=each.unit,
            prior=each.mean,
            prior_sigma=None if each.id in free else each.spread,
            estimate=values[each.id],
            standard_uncertainty=together.found.u_of_unknown(each.id),
            origin=each.origin,
            source=each.source,
        )
