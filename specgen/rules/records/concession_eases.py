"""REC003 A concession eases a limit that is specified

Checks
    Each concession: the job states the limit for every item named, it is the one the concession calls specified, and what is conceded accepts more; of a range on the sides it states.
Why
    A concession on a limit that is not there, or is another by now, was agreed on a paper that does not hold. One that accepts less is a new requirement, and belongs into the job, where it is approved.
Passes
    Given a job with a concession
    concessions.thin-primer.film_min: {specified: 40 um, conceded: 39.9 um}

    Given a job with a concession
    without concessions.thin-primer.film_min
    concessions.thin-primer.film_max: {specified: 80 um, conceded: 95 um}

    Given a job with a concession
    preparations.sand-steel.salt_limit: 50 mg/m2
    jobs.refit.inspection.prepared.check: Surface clean and matt; soluble salts
    concessions.salty: {id: salty, job: refit, items: [DOOR, STEP], salt: {specified: 50 mg/m2, conceded: 60 mg/m2}, agreed_by: fleet-engineer, agreed_on: 2026-11-20, until: 2026-12-31, reason: Indoors.}

    Given second good
    concessions: [{id: cool, job: rails, items: [RAIL], air: {specified: min 55 degF, conceded: min 53 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}]
Fails
    Given a job with a concession
    concessions.thin-primer.film_min: {specified: 40 um, conceded: 42 um}    # at concessions.thin-primer.film_min.conceded

    Given a job with a concession
    concessions.thin-primer.film_min: {specified: 40 um, conceded: 40.0 um}    # at concessions.thin-primer.film_min.conceded

    Given a job with a concession
    jobs.refit.inspection.primer-film.criterion.min: 38 um    # at concessions.thin-primer.film_min.specified    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    Given a job with a concession
    without concessions.thin-primer.film_min
    concessions.thin-primer.film_nominal: {specified: 60 um, conceded: 50 um}    # at concessions.thin-primer.film_nominal

    Given a job with a concession
    without concessions.thin-primer.film_min
    concessions.thin-primer.test: {specified: class 1, conceded: class 2}    # at concessions.thin-primer.test

    Given a job with a concession
    concessions.dry: {id: dry, job: refit, items: [DOOR], humidity: {specified: 40..75 %, conceded: 45..80 %}, agreed_by: fleet-engineer, agreed_on: 2026-11-20, until: 2026-12-31, reason: A dry week.}    # at concessions.dry.humidity.conceded

    Given a job with a concession
    concessions.film: {id: film, job: refit, items: [DOOR], point: primer-film, film_max: {specified: 3.1 mil, conceded: 90 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-20, until: 2026-12-31, reason: Thick.}    # note at concessions.film.film_max.specified
To put right
    State under `specified` the limit as the job has it, and agree anew where it was changed since; take out a concession that eases nothing.
"""

from specgen.facts.job.concessions import OF_A_POINT, Eased, accepts_more, asked, eased, same_limit
from specgen.facts.job.inspected import places
from specgen.model.acceptance import InspectionPoint
from specgen.model.concession import Concession
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Quantity, Spec, date, rule, unless_rounded


@rule("REC003", on=Concession, severity=ERROR, source=LOGIC)
def concession_eases(concession: Concession, spec: Spec, on: date) -> Problems:
    job = spec.jobs[concession.job]
    point = next((one for one in job.inspection if one.id == concession.point), None)
    for limit in eased(concession):
        yield from _specified(limit, concession, point, job, spec)
        if not accepts_more(limit, point):
            what = f"{concession.id} concedes {limit.conceded} where {limit.specified} is specified: it accepts nothing more"
            yield Problem((limit.name, "conceded"), what)


def _specified(limit: Eased, concession: Concession, point: InspectionPoint | None, job: Job, spec: Spec) -> Problems:
    if point is None and limit.name in OF_A_POINT:
        return  # told by REC002
    for item in job.items:
        looked_at = point is None or any(one is item for one, _ in places(point, job, spec))
        if item.id not in concession.items or not looked_at:
            continue
        by_job = asked(limit.name, concession, item, job, spec)
        if by_job is None:
            yield Problem((limit.name,), f"{job.id} states no such limit for {item.id}")
            return
        if not same_limit(limit.specified, by_job):
            what = f"{concession.id} calls {limit.specified} specified; the job requires {by_job} on {item.id}"
            problem = Problem((limit.name, "specified"), what)
            if isinstance(by_job, Quantity):
                problem = unless_rounded(problem, limit.specified, by_job)
            yield problem
            return
