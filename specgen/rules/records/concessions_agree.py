"""REC005 Concessions on one limit do not contradict each other

Checks
    Concessions of one job on one limit, at one point or during one coat, with an item in common: where both hold on a day, they concede the same.
Why
    Of two limits for one part on one day nobody can tell which was accepted, and whoever assesses the readings takes the wider one or the narrower one as he likes.
Passes
    Given a job with a concession
    concessions.same: {id: same, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 34 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-21, until: 2027-01-31, reason: Longer.}

    Given a job with a concession
    concessions.other: {id: other, job: refit, items: [DOOR], point: primer-film, film_max: {specified: 80 um, conceded: 90 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-21, until: 2027-01-31, reason: Thick edges.}

    Given second good
    concessions: [{id: cool, job: rails, items: [RAIL], coat: first, air: {specified: min 55 degF, conceded: min 53 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}, {id: cooler, job: rails, items: [RAIL], coat: second, air: {specified: min 55 degF, conceded: min 52 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}]
Fails
    Given a job with a concession
    concessions.later: {id: later, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 36 um}, agreed_by: fleet-engineer, agreed_on: 2026-11-21, until: 2027-01-31, reason: Fewer parts left.}    # at concessions.later.film_min.conceded

    Given second good
    concessions: [{id: cool, job: rails, items: [RAIL], air: {specified: min 55 degF, conceded: min 53 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}, {id: cooler, job: rails, items: [RAIL], coat: second, air: {specified: min 55 degF, conceded: min 52 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}]    # at concessions.cooler.air.conceded
To put right
    Let the earlier one end on the day before the later one was agreed on.
"""

from specgen.facts.job.concessions import concessions_in, eased
from specgen.model.concession import Concession
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("REC005", on=Job, severity=ERROR, source=LOGIC)
def concessions_agree(job: Job, spec: Spec, on: date) -> Problems:
    held = concessions_in(job, spec)
    for at, later in enumerate(held):
        for earlier in held[:at]:
            yield from _contradict(earlier, later)


def _contradict(earlier: Concession, later: Concession) -> Problems:
    together = set(earlier.items).intersection(later.items)
    same_time = max(earlier.agreed_on, later.agreed_on) <= min(earlier.until, later.until)
    if not together or not same_time or not _same_place(earlier, later):
        return
    before = {limit.name: limit.conceded for limit in eased(earlier)}
    for limit in eased(later):
        if limit.name in before and before[limit.name] != limit.conceded:
            what = f"{later.id} concedes {limit.conceded}, {earlier.id} {before[limit.name]}, both on {', '.join(sorted(together))}"
            yield Problem(("concessions", later.id, limit.name, "conceded"), what, absolute=True)


def _same_place(one: Concession, other: Concession) -> bool:
    """True where no point and no coat keeps them apart: one that names none holds at all of them."""
    places = ((one.point, other.point), (one.coat, other.coat))
    return all(None in pair or pair[0] == pair[1] for pair in places)
