"""INS022 A point inspected once a coat is sanded names the coat

Checks
    Each inspection point with after_sanding: it states after, the coat that is sanded.
Why
    Without the coat nobody can tell which sanding is meant, and the point is printed among those of its stage, before any sanding.
Passes
    jobs.refit.inspection.primer-film.after_sanding: yes

    jobs.refit.inspection.prepared.after_sanding: no
Fails
    jobs.refit.inspection.prepared.after_sanding: yes    # at jobs.refit.inspection.prepared.after_sanding

    jobs.refit.inspection.look.after_sanding: yes    # at jobs.refit.inspection.look.after_sanding
To put right
    State under after the id of the coat that is sanded, or take after_sanding out.
"""

from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("INS022", on=Job, severity=ERROR, source=LOGIC)
def sanded_after_a_coat(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if point.after_sanding and point.after is None:
            what = f"{point.id} is inspected after sanding, but names no coat that is sanded"
            yield Problem(("inspection", point.id, "after_sanding"), what)
