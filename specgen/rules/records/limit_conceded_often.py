"""REC006 A limit that is conceded again and again is looked at itself

Checks
    Concessions of one job on one limit, whatever their items and days: from the number in the table on, a note counts them.
Why
    What is conceded each time is no exception any more: either the limit asks for more than the coating needs, or the work does not reach what it needs. A concession hides which of the two it is.
Passes
    Given a job with a concession
    concessions.second: {id: second, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 34 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-21, until: 2027-01-31, reason: Again.}
Fails
    Given a job with a concession
    concessions.thin-primer.until: 2026-11-21
    concessions.second: {id: second, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 36 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-22, until: 2026-11-22, reason: Again.}
    concessions.third: {id: third, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 35 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-23, until: 2026-12-31, reason: And again.}    # at concessions.third.film_min    # also REC004 at concessions.thin-primer.until    # also REC004 at concessions.second.until
To put right
    Ask who owns the job whether the limit is needed; change the job, or the work.
"""

from specgen.facts.job.concessions import concessions_in, eased
from specgen.rules.kit import NOTE, PRACTICE, Job, Problem, Problems, Spec, date, rule, table


@rule("REC006", on=Job, severity=NOTE, source=PRACTICE)
def limit_conceded_often(job: Job, spec: Spec, on: date) -> Problems:
    many = int(table("concession_counts").row("id", "many")["value"])
    found: dict[tuple[str, str | None], list[str]] = {}
    for one in concessions_in(job, spec):
        for limit in eased(one):
            found.setdefault((limit.name, one.point or one.coat), []).append(one.id)
    for (name, _), ids in found.items():
        if len(ids) >= many:
            what = f"{len(ids)} concessions ease one limit of {job.id}: {', '.join(ids)}"
            yield Problem(("concessions", ids[-1], name), what, absolute=True)
