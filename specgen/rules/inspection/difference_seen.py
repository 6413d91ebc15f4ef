"""INS016 A film by difference is not finer than the gauge

Checks
    A point that measures DFT through several coats, with limits that can only be those of the last one: the span between the limits is at least twice what the difference of two readings is uncertain by to either side (table gauge_tolerances).
Why
    The difference of two readings carries the error of both. Limits closer than that accept and refuse by chance.
Passes
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat less the primer, after: base, gauge: {principle: magnetic}, criterion: {rule: own, min: 15 um, max: 30 um, text: no reading outside the limits}}

    systems.cab.layers.base.film: {min: 18 um, nominal: 20 um, max: 24 um}
    without systems.cab.total
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: destructive}, criterion: {rule: own, min: 18 um, max: 24 um, text: cut in five places}}
Fails
    systems.cab.layers.base.film: {min: 18 um, nominal: 20 um, max: 24 um}
    without systems.cab.total
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat less the primer, after: base, gauge: {principle: magnetic}, criterion: {rule: own, min: 18 um, max: 24 um, text: no reading outside the limits}}    # at jobs.refit.inspection.base-film.criterion.max

    Given second good
    systems.touch.layers.face.film: {min: 1.4 mil, nominal: 1.5 mil, max: 1.6 mil}
    jobs.lids.inspection.film.criterion: {rule: own, min: 1.4 mil, max: 1.6 mil, text: every reading}    # at jobs.lids.inspection.film.criterion.max
To put right
    Measure the coat on a panel by itself, cut through the film, or judge the sum of the coats.
"""

from fractions import Fraction

from specgen.facts.job.inspected import film_points, systems_at
from specgen.facts.job.points import BEFORE_PAINT, layers_read, principle_of
from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.usual import proportion
from specgen.model.acceptance import GaugePrinciple
from specgen.rules.kit import WARNING, Job, Problem, Problems, Quantity, Spec, System, date, rule, show, table

_ALONE = {GaugePrinciple.COMB, GaugePrinciple.DESTRUCTIVE}


@rule("INS016", on=Job, severity=WARNING, source=table("gauge_tolerances").citation)
def difference_seen(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        low, high = point.criterion.min, point.criterion.max
        if principle_of(point) in _ALONE or point.at in BEFORE_PAINT or low is None or high is None:
            continue
        for system in systems_at(point, job, spec):
            read = layers_read(point, system)
            least = _sum(system, spec, [layer.id for layer in read], "min")
            most = _sum(system, spec, [layer.id for layer in read], "max")
            if len(read) < 2 or least is None or most is None or high.to("um") >= least:
                continue
            row = table("gauge_tolerances").row("id", (principle_of(point) or GaugePrinciple.MAGNETIC).value)
            one = max(Fraction(row["at_least_um"]), most * Fraction(row["share_pct"]) / 100)
            wanted = Quantity.of("thickness", one * proportion("difference"), "um")
            if high.to("um") - low.to("um") < wanted.to("um"):
                what = (
                    f"{point.id} can judge {low} to {high} only as the difference of two readings, "
                    f"which tells apart no less than {show(wanted)}"
                )
                yield Problem(("inspection", point.id, "criterion", "max"), what)
                break


def _sum(system: System, spec: Spec, ids: list[str], limit: Limit) -> Fraction | None:
    films = [film_limit(system, layer, spec, limit) for layer in system.layers if layer.id in ids]
    held = [film.value.to("um") for film in films if film is not None]
    return sum(held, Fraction(0)) if held and len(held) == len(films) else None
