"""INS012 Each coat is measured before it is overcoated

Checks
    A point that measures DFT non-destructively: every overcoated coat beneath it that has DFT limits, its own or those of its product, is measured at a point of its own. Where the point has limits of its own or the system states a total DFT, by which it can decide, and where those coats are laid by brush, roller, dipping or trowel, it is a note; so it is for a basecoat, wash primer or adhesion promoter, which are inspected visually. An existing coat of unknown thickness that stays, listed or the paint the part comes with, is measured before the first new coat.
Why
    A gauge measures all coats down to the metal; a coat beneath the others can then no longer be assessed by itself.
Passes
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, criterion: {rule: own, min: 15 um, max: 30 um, text: no reading outside the limits}}
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {rule: own, min: 40 um, max: 70 um, text: no reading outside the limits}}

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]

    Given second good
    without jobs.rails.inspection.first
    jobs.rails.inspection.film.gauge: {principle: destructive}

    Given second good
    jobs.rails.items.LOCKER.strip_limit: 30 mil
    jobs.rails.inspection.old: {id: old, check: Film of the old paint, at: after-preparation, method: magnetic gauge, items: [LOCKER], criterion: {rule: own, max: 10 mil, text: every reading}}

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k}]
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 100 um}]
Fails
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {rule: own, min: 40 um, max: 70 um, text: no reading outside the limits}}    # note at jobs.refit.inspection.clear-film.after

    systems.cab.layers.base.film: {nominal: 20 um}
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {rule: own, min: 40 um, max: 70 um, text: no reading outside the limits}}    # note at jobs.refit.inspection.clear-film.after

    without systems.cab.total
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {rule: own, min: 40 um, max: 70 um, text: no reading outside the limits}}    # note at jobs.refit.inspection.clear-film.after

    without systems.cab.total
    without jobs.refit.inspection.primer-film
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {rule: own, min: 40 um, max: 70 um, text: no reading outside the limits}}    # note at jobs.refit.inspection.clear-film.after    # note at jobs.refit.inspection.clear-film.after

    without systems.cab.total
    without jobs.refit.inspection.primer-film
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of the clear, after: clear, criterion: {as_specified: yes, text: as specified}}    # note at jobs.refit.inspection.clear-film.after    # warning at jobs.refit.inspection.clear-film.after

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish}]    # at jobs.refit.items.DOOR.old_coats.factory.thickness

    jobs.refit.items.DOOR.substrate: {material: oem_finish}    # at jobs.refit.items.DOOR.old_coats

    Given second good
    without jobs.rails.inspection.first
    jobs.rails.inspection.film.after: second    # at jobs.rails.inspection.film.after

    Given second good
    without jobs.rails.inspection.first
    systems.deck.layers.first.method: brush
    jobs.rails.inspection.film.after: second    # note at jobs.rails.inspection.film.after

    Given second good
    without jobs.rails.items.LOCKER.old_coats.later.thickness    # at jobs.rails.items.LOCKER.old_coats.later.thickness    # also OLD010 at jobs.rails.items.LOCKER.old_coats

    Given second good
    without jobs.lids.inspection.ground    # note at jobs.lids.inspection.film.after

    Given second good
    without jobs.rails.items.LOCKER.old_coats.works.thickness    # at jobs.rails.items.LOCKER.old_coats.works.thickness    # also OLD010 at jobs.rails.items.LOCKER.old_coats
To put right
    Plan a hold point with DFT readings before each coat is overcoated and before the first coat on an existing coating, or state its measured thickness under old_coats of the item; or measure destructively by a cut through the film and repair the area.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import BEFORE_PAINT, layers_read, principle_of
from specgen.facts.job.stack import old_layers
from specgen.facts.layer.film import has_film_limits
from specgen.model.acceptance import GaugePrinciple
from specgen.model.application import BY_HAND
from specgen.rules.kit import LOGIC, NOTE, WARNING, Job, Problem, Problems, Role, Spec, date, rule

# Coats of a few micrometres, overcoated within the hour: what tells their film is how they look.
_BY_EYE = {Role.BASECOAT, Role.WASH_PRIMER, Role.ADHESION_PROMOTER}


@rule("INS012", on=Job, severity=WARNING, source=LOGIC)
def each_coat_read_in_time(job: Job, spec: Spec, on: date) -> Problems:
    points = list(film_points(job))
    read_after = {point.after for point in points}
    for point in points:
        if principle_of(point) in {GaugePrinciple.DESTRUCTIVE, GaugePrinciple.COMB} or point.at in BEFORE_PAINT:
            continue
        if point.after is None and point.at is None:
            continue  # a point without a place in the work has its own rule
        below = [(system, layer) for _, system in places(point, job, spec) for layer in layers_read(point, system)[:-1]]
        limited = [layer for system, layer in below if has_film_limits(system, layer, spec)]
        unread = [layer for layer in limited if layer.id not in read_after]
        at = "after" if point.after is not None else "at"
        for by_eye in (False, True):
            ids = dict.fromkeys(layer.id for layer in unread if (layer.role in _BY_EYE) is by_eye)
            if not ids:
                continue
            what = f"{point.id} measures all coats together; not measured before overcoating: {', '.join(ids)}"
            decides = point.criterion.min is not None or point.criterion.max is not None
            stated = decides or all(
                system.total is not None or layer.method in BY_HAND for system, layer in below if layer.id in ids
            )
            graver = (
                "" if stated or by_eye else "; neither this point nor its system states limits by which it could decide"
            )
            yield Problem(("inspection", point.id, at), what + graver, severity=None if graver else NOTE)
    if any(point.at in BEFORE_PAINT for point in points):
        return
    read = dict.fromkeys(item.id for point in points for item, _ in places(point, job, spec))
    for item in job.items:
        for old in old_layers(job, item, spec) if item.id in read else ():
            if old.coat.thickness is None:
                what = f"{old.name} of {item.id} is not measured before overcoating"
                listed = ("items", item.id, "old_coats", old.coat.id, "thickness")
                yield Problem(listed if item.old_coats else ("items", item.id, "old_coats"), what)
