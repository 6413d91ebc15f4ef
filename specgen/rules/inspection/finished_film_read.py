"""INS021 The finished film is measured, where a coat below it is

Checks
    Each system with a corrosivity or immersion category, or with a total DFT, of which the DFT of a coat is measured at an inspection point of the job: a point after the last coat with DFT limits, or at completion, measures the finished film too, by figures or in words. A comb gauge on the last coat is left to its own rule. A system measured at no point, one with body filler, whose depth is unknown, and a spot repair pass, and without a category a basecoat, a clearcoat and a last coat from spray cans, which are inspected visually.
Why
    The primer is signed off and the coats above it are never seen by a gauge: a thin or missing finish leaves with a full set of records.
Passes
    jobs.refit.inspection.primer-film.check: Film of the primer

    Given second good
    without jobs.lids.inspection.film

    Given second good
    systems.deck.total: {min: 8 mil, max: 16 mil}
    jobs.rails.inspection.face: {id: face, check: Film of the gloss, after: gloss, gauge: {principle: wet-film-comb}, frequency: 3 spots, criterion: {text: even}}

    Given second good
    systems.deck.total: {min: 8 mil, max: 16 mil}
    jobs.rails.inspection.face: {id: face, check: Dry film thickness of all coats, after: gloss, method: magnetic gauge, frequency: 3 spots, criterion: {text: as in the table of coats}}

    Given second good
    without jobs.rails.inspection.face

    Given a body filler under a primer
    systems.chassis.total: {min: 100 um, max: 200 um}
Fails
    Given second good
    systems.deck.total: {min: 8 mil, max: 16 mil}
    without jobs.rails.inspection.face    # at jobs.rails.inspection

    Given second good
    systems.deck.total: {min: 8 mil, max: 16 mil}
    jobs.rails.inspection.face: {id: face, check: Look of the gloss, after: gloss, criterion: {text: even}}    # at jobs.rails.inspection

    systems.cab.category: {corrosivity: C3, durability: medium}    # at jobs.refit.inspection    # also FLM012 note at systems.cab.category
To put right
    Add a point after the last coat with the gauge, the number of readings and the limits of the total DFT.
"""

from collections.abc import Iterator

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.looked_for import FILM, words_of
from specgen.facts.job.points import BEFORE_PAINT, layers_read, principle_of
from specgen.facts.layer.film import has_film_limits
from specgen.facts.pairs.parts import parts_of
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.model.product import PackForm, Role
from specgen.model.system import Layer, System
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule

_BY_EYE = {Role.BASECOAT, Role.CLEARCOAT}


@rule("INS021", on=Job, severity=WARNING, source=LOGIC)
def finished_film_read(job: Job, spec: Spec, on: date) -> Problems:
    anew = {part.system.id for part in parts_of(job, spec) if not part.is_repair}
    for system in spec.systems_of(job):
        limited = [layer for layer in system.layers if has_film_limits(system, layer, spec)]
        filled = any(layer.role is Role.BODY_FILLER for layer in system.layers)
        if filled or len(limited) < 2 or system.id not in anew or not _asked(system, limited[-1], spec):
            continue
        last, read = limited[-1], list(_read(job, spec, system))
        if any(last in layers for _, layers in read):
            continue
        by_gauge = [layers[-1].id for point, layers in read if principle_of(point) is not GaugePrinciple.COMB]
        if by_gauge:
            what = (
                f"the dry film of {system.id} is measured after {', '.join(dict.fromkeys(by_gauge))}, but at no point "
                f"after {last.id}: nobody measures the DFT of the finished system"
            )
            yield Problem(("inspection",), what)


def _asked(system: System, last: Layer, spec: Spec) -> bool:
    """Whether the finished film has to be known: by the category it serves, or by a stated total where the finish is not one inspected visually."""
    from_cans = spec.product_of(last).pack.form is PackForm.AEROSOL
    return system.category is not None or not (system.total is None or from_cans or last.role in _BY_EYE)


def _read(job: Job, spec: Spec, system: System) -> Iterator[tuple[InspectionPoint, tuple[Layer, ...]]]:
    """The points that read film of a system, by a figure or in words, each with the coats under the gauge."""
    by_figures = {point.id for point in film_points(job)}
    for point in job.inspection:
        if point.at in BEFORE_PAINT or not (point.id in by_figures or FILM.search(words_of(point))):
            continue
        if any(placed is system for _, placed in places(point, job, spec)) and (layers := layers_read(point, system)):
            yield point, layers
