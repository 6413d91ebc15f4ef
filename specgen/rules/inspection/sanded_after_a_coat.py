"""INS022 A point inspected once a coat is sanded names a coat that is sanded

Checks
    Each inspection point with after_sanding: it states after, the coat that is sanded. The last coat of its systems has to state that it is sanded or polished (before_next, sanding_removes or polishing_removes); where it does not, this is a warning.
Why
    Without the coat nobody can tell which sanding is meant, and the point is printed among those of its stage, before any sanding.
Passes
    jobs.refit.inspection.primer-film.after_sanding: yes

    jobs.refit.inspection.prepared.after_sanding: no

    jobs.refit.inspection.gloss: {id: gloss, check: Gloss, after: clear, after_sanding: yes, criterion: {text: even}}
    systems.cab.layers.clear.polishing_removes: 5 um
    systems.cab.layers.clear.remaining_min: 20 um
Fails
    jobs.refit.inspection.gloss: {id: gloss, check: Gloss, after: clear, after_sanding: yes, criterion: {text: even}}    # warning at jobs.refit.inspection.gloss.after_sanding

    jobs.refit.inspection.prepared.after_sanding: yes    # at jobs.refit.inspection.prepared.after_sanding

    jobs.refit.inspection.look.after_sanding: yes    # at jobs.refit.inspection.look.after_sanding
To put right
    State under after the id of the coat that is sanded, or take after_sanding out.
"""

from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("INS022", on=Job, severity=ERROR, source=LOGIC)
def sanded_after_a_coat(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if not point.after_sanding:
            continue
        path = ("inspection", point.id, "after_sanding")
        if point.after is None:
            yield Problem(path, f"{point.id} is inspected after sanding, but names no coat that is sanded")
            continue
        held = [
            (layer, layer is system.layers[-1])
            for system in spec.systems_of(job)
            for layer in system.layers
            if layer.id == point.after
        ]
        sanded = any(
            layer.before_next or layer.sanding_removes is not None or layer.polishing_removes is not None
            for layer, _ in held
        )
        if held and all(last for _, last in held) and not sanded:
            what = f"{point.id} is inspected after sanding, but {point.after} is the last coat, and nothing says that it is sanded"
            yield Problem(path, what, "state what sanding or polishing removes, or take after_sanding out", WARNING)
