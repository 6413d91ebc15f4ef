"""REC002 A concession names one limit, and items, a point and a coat of its job

Checks
    Each concession: it eases one limit; its items are items of the job; for film, a test or words it names an inspection point of the job that looks at these items, for any other limit at most that; a coat stands with a limit of the air alone, and is a coat of these items.
Why
    A concession that leads nowhere eases nothing, and one that can be read two ways eases what nobody agreed to.
Passes
    Given a job with a concession
    concessions.thin-primer.items: [DOOR, STEP]
    concessions.thin-primer.point: look
    without concessions.thin-primer.film_min
    concessions.thin-primer.words: {specified: "no runs, pores or bare places", conceded: "no bare places; one run of up to 20 mm at a lower edge"}

    Given a job with a concession
    without concessions.thin-primer.film_min
    without concessions.thin-primer.point
    concessions.thin-primer.coat: base
    concessions.thin-primer.humidity: {specified: max 75 %, conceded: max 78 %}

    Given second good
    concessions: [{id: thin, job: lids, items: [LID], point: film, film_min: {specified: 2.5 mil, conceded: 2.3 mil}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: The lids are renewed next year.}]
Fails
    Given a job with a concession
    concessions.thin-primer.items: [DOOR, HATCH]    # at concessions.thin-primer.items

    Given a job with a concession
    concessions.thin-primer.items: [STEP]    # at concessions.thin-primer.items

    Given a job with a concession
    concessions.thin-primer.point: base-film    # at concessions.thin-primer.point

    Given a job with a concession
    without concessions.thin-primer.point    # at concessions.thin-primer.point

    Given a job with a concession
    concessions.thin-primer.film_max: {specified: 80 um, conceded: 90 um}    # at concessions.thin-primer.film_max

    Given a job with a concession
    without concessions.thin-primer.film_min    # at concessions.thin-primer

    Given a job with a concession
    concessions.thin-primer.coat: primer    # at concessions.thin-primer.coat

    Given a job with a concession
    without concessions.thin-primer.film_min
    without concessions.thin-primer.point
    concessions.thin-primer.coat: barrier
    concessions.thin-primer.humidity: {specified: max 75 %, conceded: max 78 %}    # at concessions.thin-primer.coat
To put right
    Write one concession for each limit, with the ids as they stand in the job.
"""

from specgen.facts.job.concessions import CALLED, OF_A_POINT, OF_THE_AIR, eased
from specgen.facts.job.inspected import places
from specgen.model.concession import Concession
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("REC002", on=Concession, severity=ERROR, source=LOGIC)
def concession_in_its_job(concession: Concession, spec: Spec, on: date) -> Problems:
    job = spec.jobs[concession.job]
    limits = [limit.name for limit in eased(concession)]
    if not limits:
        yield Problem((), f"{concession.id} eases no limit")
    for name in limits[1:]:
        what = f"{concession.id} eases the {CALLED[name]} and the {CALLED[limits[0]]}: a concession is of one limit"
        yield Problem((name,), what)
    yield from _items(concession, job, spec)
    yield from _point(concession, limits[:1], job, spec)
    yield from _coat(concession, limits[:1], job, spec)


def _items(concession: Concession, job: Job, spec: Spec) -> Problems:
    known = {item.id for item in job.items}
    if lost := [item for item in concession.items if item not in known]:
        yield Problem(("items",), f"{', '.join(lost)}: no item of {job.id}; there is: {', '.join(known)}")
        return
    point = next((one for one in job.inspection if one.id == concession.point), None)
    looked_at = {item.id for item, _ in places(point, job, spec)} if point is not None else known
    if outside := [item for item in concession.items if item not in looked_at]:
        yield Problem(("items",), f"{concession.point} does not look at {', '.join(outside)}")


def _point(concession: Concession, limits: list[str], job: Job, spec: Spec) -> Problems:
    known = [point.id for point in job.inspection]
    if concession.point is None and OF_A_POINT.intersection(limits):
        yield Problem(("point",), f"the {CALLED[limits[0]]} is a limit of an inspection point, and none is named")
    elif concession.point is not None and concession.point not in known:
        what = f"{concession.point} is no inspection point of {job.id}; there is: {', '.join(known)}"
        yield Problem(("point",), what)


def _coat(concession: Concession, limits: list[str], job: Job, spec: Spec) -> Problems:
    if concession.coat is None:
        return
    if not OF_THE_AIR.intersection(limits):
        yield Problem(("coat",), "a coat is named with a limit of the air alone; name the inspection point instead")
        return
    systems = [spec.system_of(job, item) for item in job.items if item.id in concession.items]
    known = dict.fromkeys(layer.id for system in systems if system is not None for layer in system.layers)
    if concession.coat not in known:
        what = f"{concession.coat} is no coat of {', '.join(concession.items)}; there is: {', '.join(known)}"
        yield Problem(("coat",), what)
