"""INS008 The gauge measures only the paint

Checks
    A magnetic or eddy-current gauge on plastic, glass-reinforced plastic or wood, or over body filler; paint on galvanised steel where neither a correction value nor a measurement of the zinc at a hold point states what is deducted; an eddy-current gauge over a zinc-rich coat. Not verified against a published text.
Why
    Such a gauge measures down to the next metal: body filler and zinc are included in the reading, and over plastic there is no metal to measure from.
Passes
    jobs.refit.substrate.material: grp
    products.primer.direct_to_metal: yes
    jobs.refit.inspection.primer-film.gauge: {principle: ultrasonic}

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}
    jobs.refit.inspection.zinc: {id: zinc, check: Zinc before painting, at: after-preparation, gauge: {principle: magnetic}, criterion: {text: mean written down}}

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}
    jobs.refit.inspection.zinc: {id: zinc, check: Zinc before painting, at: after-preparation, gauge: {principle: magnetic}, criterion: {text: mean written down}, hold_point: yes}

    jobs.refit.items.STEP.substrate: {material: grp}

    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
Fails
    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.correction

    jobs.refit.substrate.material: grp    # note at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.items.STEP.substrate: {material: wood}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.principle    # also SUB008 at jobs.refit.items.STEP.substrate.moisture

    jobs.refit.items.STEP.substrate: {material: galvanized_electro, thickness: 2 mm}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.correction

    products.base.roles: [body-filler]
    systems.cab.layers.base.role: body-filler
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: magnetic}, criterion: {rule: own, min: 15 um, max: 30 um, text: every reading}}    # at jobs.refit.inspection.base-film.gauge.principle    # also FIL010 at systems.cab.layers.base    # also LAY003 at systems.cab.layers.clear.role

    products.primer.binder: zinc_organic
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}    # at jobs.refit.inspection.primer-film.gauge.principle    # also INS007 at jobs.refit.inspection.primer-film.gauge.principle    # also SUB004 at preparations.sand-steel.steps.sand.grade

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.correction
    jobs.refit.inspection.zinc: {id: zinc, check: Zinc before painting, at: after-preparation, items: [DOOR], gauge: {principle: magnetic}, criterion: {text: mean written down}, hold_point: yes}

    products.base.binder: zinc_organic
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: eddy-current}, criterion: {rule: own, min: 15 um, max: 30 um, text: every reading}}    # at jobs.refit.inspection.base-film.gauge.principle    # also INS007 at jobs.refit.inspection.base-film.gauge.principle    # also HAZ023 at products.base.hazards.supplemental    # also SUB003 at systems.cab.layers.base.product
To put right
    Use an ultrasonic gauge or a metal witness panel; measure the zinc before painting and write it as correction.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import BEFORE_PAINT, THROUGH_THE_PAINT, layers_read, material_of, principle_of
from specgen.model.acceptance import GaugePrinciple
from specgen.rules.kit import MEMORY, NOTE, WARNING, Job, Problem, Problems, Role, Spec, date, rule


@rule("INS008", on=Job, severity=WARNING, source=MEMORY)
def gauge_reads_paint(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        path, principle = ("inspection", point.id, "gauge"), principle_of(point)
        read = list(places(point, job, spec))
        materials = [row for item, _ in read if (row := material_of(job, item, spec)) is not None]
        no_metal = sorted({row["name"] for row in materials if row["kind"] in {"plastic", "wood"}})
        if no_metal and principle is None:
            what = f"{point.id} names no gauge, so it cannot be assessed on {', '.join(no_metal)}"
            yield Problem((*path, "principle"), what, severity=NOTE)
        if principle not in THROUGH_THE_PAINT:
            continue
        if no_metal:
            yield Problem(
                (*path, "principle"),
                f"a {principle} gauge cannot be used over {', '.join(no_metal)}: there is no metal to measure from",
            )
        known = _zinc_read(job, spec)
        unread = [row for item, _ in read if item.id not in known if (row := material_of(job, item, spec)) is not None]
        zinc = sorted({row["name"] for row in unread if row["id"].startswith("galvanized")})
        if zinc and point.at not in BEFORE_PAINT and (point.gauge is None or point.gauge.correction is None):
            yield Problem((*path, "correction"), f"on {', '.join(zinc)} the gauge includes the zinc in the reading")
        layers = [layer for _, system in read for layer in layers_read(point, system)]
        if any(layer.role is Role.BODY_FILLER for layer in layers):
            yield Problem((*path, "principle"), f"a {principle} gauge includes the body filler in the reading")
        zinc_rich = any(spec.product_of(layer).binder.startswith("zinc_") for layer in layers)
        if zinc_rich and principle is GaugePrinciple.EDDY_CURRENT:
            yield Problem((*path, "principle"), "an eddy-current gauge gives false readings over a zinc-rich coat")


def _zinc_read(job: Job, spec: Spec) -> set[str]:
    """The items whose metal a gauge reads before any paint: what it finds there is taken off, part by part."""
    return {
        item.id
        for point in film_points(job)
        if point.at in BEFORE_PAINT and point.hold_point and principle_of(point) in THROUGH_THE_PAINT
        for item, _ in places(point, job, spec)
    }
