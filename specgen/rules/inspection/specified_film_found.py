"""INS028 Where a criterion is as specified, a DFT is specified

Checks
    Each inspection point whose criterion is as specified reads a film that has a limit: of a coat, of the coats up to it, or in total, stated by the system or its product. Before the first coat there is none.
Why
    The criterion is printed with the figures of the coats; where there are none, nothing decides whether the film is accepted.
Passes
    jobs.refit.inspection.primer-film.criterion: {as_specified: yes}

    jobs.refit.inspection.whole: {id: whole, check: Film of all coats, at: completion, items: [DOOR], gauge: {principle: destructive}, criterion: {as_specified: yes}}

    Given second good
    jobs.lids.inspection.film.criterion: {as_specified: yes, rule: SSPC-PA-2, edition: "2012", level: 3}
Fails
    jobs.refit.inspection.prepared.criterion: {as_specified: yes, text: matt all over}    # at jobs.refit.inspection.prepared.criterion.as_specified

    Given second good
    jobs.lids.inspection.clean.criterion: {as_specified: yes, text: no dust}    # at jobs.lids.inspection.clean.criterion.as_specified
To put right
    State the limits of the coats, say with after or at where the film is read, or write the criterion in words.
"""

from specgen.facts.job.criteria import criteria_of
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("INS028", on=Job, severity=ERROR, source=LOGIC)
def specified_film_found(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if point.criterion.as_specified and not criteria_of(point, job, spec):
            what = f"{point.id} accepts the film as specified, and no DFT is specified for what it reads"
            yield Problem(("inspection", point.id, "criterion", "as_specified"), what)
