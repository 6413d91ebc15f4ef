"""INS007 The gauge works on the substrate

Checks
    The gauge of each point that measures DFT, against the metal of the items measured: a magnetic gauge does not work on aluminium and other non-magnetic metals, and an eddy-current gauge not on bare steel and iron; on zinc over steel it may. A gauge for a non-magnetic metal is not zeroed on steel. On stainless steel, of which some grades are magnetic, a magnetic gauge gives a warning.
Why
    On aluminium a magnetic gauge gives no reading or a false one; an eddy-current gauge measures the DFT, with the same number of readings and the same limits. On steel the magnetism of the base upsets the eddy currents.
Passes
    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 2 mm}

    Given second good
    jobs.lids.inspection.ground.gauge: {principle: magnetic}
Fails
    Given second good
    jobs.lids.inspection.ground.gauge: {principle: eddy-current}    # warning at jobs.lids.inspection.ground.gauge.principle

    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: aluminium    # note at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}    # warning at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current, zeroed_on: smooth-steel}    # at jobs.refit.inspection.primer-film.gauge.zeroed_on

    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 2 mm}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # warning at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: magnetic}, criterion: {rule: own, min: 15 um, max: 30 um, text: every reading}}    # at jobs.refit.inspection.base-film.gauge.principle
To put right
    Use an eddy-current gauge on non-magnetic metals, gauge: {principle: eddy-current}, and a magnetic one on steel.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import material_of, principle_of
from specgen.facts.pairs.parts import members
from specgen.model.acceptance import GaugePrinciple, ZeroedOn
from specgen.rules.kit import ERROR, LOGIC, NOTE, PRACTICE, WARNING, Job, Problem, Problems, Spec, cite, date, rule


@rule(
    "INS007",
    on=Job,
    severity=ERROR,
    source=cite("SSPC-PA-2", "films on metal that is not ferrous"),
)
def gauge_for_the_metal(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        path, principle = ("inspection", point.id, "gauge", "principle"), principle_of(point)
        rows = [row for item, _ in places(point, job, spec) if (row := material_of(job, item, spec)) is not None]
        metals = [row for row in rows if row["kind"] == "metal"]
        names = sorted({row["name"] for row in metals if row["magnetic"] == "no"})
        steel = sorted(
            {row["name"] for row in metals if row["magnetic"] == "yes" and row["id"] not in members("galvanized")}
        )
        zeroed = point.gauge.zeroed_on if point.gauge is not None else None
        if names and zeroed is ZeroedOn.SMOOTH:
            what = f"the gauge of {point.id} is zeroed on smooth steel, but reads on {', '.join(names)}"
            yield Problem((*path[:-1], "zeroed_on"), what, "zero it on the bare metal of the part", source=LOGIC)
        if steel and principle is GaugePrinciple.EDDY_CURRENT:
            what = f"an eddy-current gauge does not measure DFT on {', '.join(steel)}"
            yield Problem(path, what, "write gauge: {principle: magnetic}", WARNING, PRACTICE)
        elif names and principle is GaugePrinciple.MAGNETIC:
            # ferritic and duplex grades of stainless steel are magnetic
            sure = any(row["magnetic"] == "no" and row["id"] != "stainless" for row in metals)
            what = f"a magnetic gauge does not measure DFT on {', '.join(names)}"
            yield Problem(path, what, severity=None if sure else WARNING)
        elif names and principle is None:
            what = f"{point.id} names no gauge, so it cannot be assessed on {', '.join(names)}"
            yield Problem(path, what, severity=NOTE)
