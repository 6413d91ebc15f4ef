"""INS008 The gauge measures only the paint

Checks
    A magnetic or eddy-current gauge on plastic, glass-reinforced plastic or wood, where the point does not speak of a metal witness panel, or over body filler that the point does not name; paint on galvanised steel where neither a correction value nor a measurement of the zinc at a hold point states what is deducted, unless the point reads where the zinc is gone; a correction far below the zinc that such steel is galvanised with (table zinc_coating_least, less what the preparation may take off), where the zinc is not weathered; an eddy-current gauge over a zinc-rich coat. That no part has metal beneath the paint, and the point names none, is an error; the others are warnings, not verified against a published text.
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

    jobs.refit.substrate.material: grp
    products.primer.direct_to_metal: yes
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
    jobs.refit.inspection.primer-film.method: On an aluminium witness panel sprayed with each part

    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 4 mm}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 45 um}

    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 4 mm, zinc_state: fully_weathered}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 30 um}

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}
    jobs.refit.inspection.primer-film.check: DFT of the primer on the weld metal

    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}

    jobs.refit.substrate.material: grp
    products.primer.direct_to_metal: yes
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
    jobs.refit.inspection.primer-film.frequency: One metal disc with each door, three readings
Fails
    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}
    jobs.refit.inspection.primer-film.method: Over the steel backing of each edge    # warning at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}    # at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # warning at jobs.refit.inspection.primer-film.gauge.correction

    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 4 mm}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 8.5 um}    # warning at jobs.refit.inspection.primer-film.gauge.correction

    jobs.refit.substrate.material: grp    # note at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.items.STEP.substrate: {material: wood}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # warning at jobs.refit.inspection.primer-film.gauge.principle    # also SUB008 at jobs.refit.items.STEP.substrate.moisture

    jobs.refit.items.STEP.substrate: {material: galvanized_electro, thickness: 2 mm}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # warning at jobs.refit.inspection.primer-film.gauge.correction

    products.base.roles: [body-filler]
    systems.cab.layers.base.role: body-filler
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: magnetic}, criterion: {rule: own, min: 15 um, max: 30 um, text: every reading}}    # warning at jobs.refit.inspection.base-film.gauge.principle    # also FIL010 at systems.cab.layers.base    # also LAY003 at systems.cab.layers.clear.role

    products.primer.binder: zinc_organic
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}    # warning at jobs.refit.inspection.primer-film.gauge.principle    # also INS007 at jobs.refit.inspection.primer-film.gauge.principle    # also SUB004 at preparations.sand-steel.steps.sand.grade

    jobs.refit.substrate.material: galvanized_hot_dip
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # warning at jobs.refit.inspection.primer-film.gauge.correction
    jobs.refit.inspection.zinc: {id: zinc, check: Zinc before painting, at: after-preparation, items: [DOOR], gauge: {principle: magnetic}, criterion: {text: mean written down}, hold_point: yes}

    products.base.binder: zinc_organic
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: eddy-current}, criterion: {rule: own, min: 15 um, max: 30 um, text: every reading}}    # warning at jobs.refit.inspection.base-film.gauge.principle    # also INS007 at jobs.refit.inspection.base-film.gauge.principle    # also HAZ023 at products.base.hazards.supplemental    # also SUB003 at systems.cab.layers.base.product
To put right
    Use an ultrasonic gauge or a metal witness panel; measure the zinc before painting and write it as correction.
"""

import re
from fractions import Fraction

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.looked_for import words_of
from specgen.facts.job.points import BEFORE_PAINT, THROUGH_THE_PAINT, layers_read, material_of, principle_of
from specgen.model.acceptance import GaugePrinciple
from specgen.model.job import Item
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    MEMORY,
    NOTE,
    WARNING,
    Job,
    Problem,
    Problems,
    Quantity,
    Role,
    Spec,
    date,
    rule,
    show,
    table,
)
from specgen.units.rounding import plain_text

_FILLER = re.compile(r"\b(?:body |knifing )?(?:fill(?:er|ers)|putty|putties|stoppers?)\b", re.I)
_ZINC_GONE = re.compile(
    r"weld metal|bare (?:steel|metal)|steel (?:was|is|lay|lies) bare|zinc (?:is|was) (?:gone|missing|burnt|ground)",
    re.I,
)

_WITNESS = re.compile(
    r"\b(?:witness|companion|reference|metal|steel|alumini?um|tin ?plate) ?(?:test )?"
    r"(?:panels?|plates?|plaques?|strips?|coupons?|foils?|tapes?|sheets?|dis[ck]s?|inserts?|shims?)\b|"
    r"\b(?:witness|test panels?|coupons?)\b",
    re.I,
)
_METAL = re.compile(r"\b(?:metal(?:lic)?|steel|alumini?um|tin ?plate|zinc|iron)\b", re.I)


@rule("INS008", on=Job, severity=ERROR, source=LOGIC)
def gauge_reads_paint(job: Job, spec: Spec, on: date) -> Problems:
    for problem in _misread(job, spec):
        weighed = problem.severity is not None
        yield problem if weighed else problem._replace(severity=WARNING, source=MEMORY)


def _misread(job: Job, spec: Spec) -> Problems:
    """What has a weight of its own is certain, or cannot be assessed; the rest stands on what is not verified."""
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
        gauge = "an eddy-current gauge" if principle is GaugePrinciple.EDDY_CURRENT else f"a {principle} gauge"
        said = f"{words_of(point)} {point.frequency or ''}"
        if no_metal and not _WITNESS.search(said):
            what = f"{gauge} cannot be used over {', '.join(no_metal)}: there is no metal to measure from"
            # a metal that is named may be a piece that was put there to be read
            none_has = all(row["kind"] in {"plastic", "wood"} for row in materials) and not _METAL.search(said)
            yield Problem((*path, "principle"), what, severity=ERROR if none_has else None)
        known = _zinc_read(job, spec)
        unread = [row for item, _ in read if item.id not in known if (row := material_of(job, item, spec)) is not None]
        zinc = sorted({row["name"] for row in unread if row["id"].startswith("galvanized")})
        taken_off = point.gauge.correction if point.gauge is not None else None
        if point.at not in BEFORE_PAINT and not _ZINC_GONE.search(words_of(point)):
            if zinc and taken_off is None:
                yield Problem((*path, "correction"), f"on {', '.join(zinc)} the gauge includes the zinc in the reading")
            least = _least_zinc([item for item, _ in read], job, spec)
            if taken_off is not None and least is not None and taken_off < least:
                what = f"correction {show(taken_off)}; the zinc beneath the paint is at least {show(least)}, and the rest of it counts as paint"
                yield Problem((*path, "correction"), what)
        layers = [layer for _, system in read for layer in layers_read(point, system)]
        if any(layer.role is Role.BODY_FILLER for layer in layers) and not _FILLER.search(words_of(point)):
            yield Problem((*path, "principle"), f"{gauge} includes the body filler in the reading")
        zinc_rich = any(spec.product_of(layer).binder.startswith("zinc_") for layer in layers)
        if zinc_rich and principle is GaugePrinciple.EDDY_CURRENT:
            yield Problem((*path, "principle"), f"{gauge} gives false readings over a zinc-rich coat")


def _least_zinc(items: list[Item], job: Job, spec: Spec) -> Quantity | None:
    """The least zinc that is left on any of the items; None where one is not of such steel, or its zinc has weathered."""
    left: list[Fraction] = []
    swept = int(table("sweep_blast_limits").row("what", "zinc loss")["most"])
    for item in items:
        substrate, preparation = spec.substrate_of(job, item), spec.preparation_of(job, item)
        if substrate is None or substrate.material != "galvanized_hot_dip" or substrate.thickness is None:
            return None
        steel = substrate.thickness.to("mm")
        rows = [row for row in table("zinc_coating_least").rows if Fraction(row["steel_from_mm"]) <= steel]
        if not rows or (substrate.zinc_state or "").endswith("weathered"):
            return None
        steps = preparation.steps if preparation is not None else ()
        losses = [step.zinc_loss.to("um") for step in steps if step.zinc_loss is not None]
        left.append(Fraction(rows[-1]["local_um"]) - max(sum(losses), swept))
    return Quantity.of("thickness", min(left), "um", plain_text(min(left))) if left else None


def _zinc_read(job: Job, spec: Spec) -> set[str]:
    """The items whose metal a gauge reads before any paint: what it finds there is taken off, part by part."""
    return {
        item.id
        for point in film_points(job)
        if point.at in BEFORE_PAINT and point.hold_point and principle_of(point) in THROUGH_THE_PAINT
        for item, _ in places(point, job, spec)
    }
