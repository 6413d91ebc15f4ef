"""REC009 Nothing that protects people is conceded

Checks
    Concessions on words or on a test: the inspection point, and what is specified and conceded there, name no explosive limit, oxygen, exposure limit, ventilation, respiratory protection or entry permit.
Why
    A limit that protects whoever sprays or goes into a space holds for everybody and every day; a customer who accepts a thinner film cannot accept that. Limits of safety have no key in a concession, and are not conceded in words either.
Passes
    Given a job with a concession
    without concessions.thin-primer.film_min
    concessions.thin-primer.point: look
    concessions.thin-primer.words: {specified: "no runs, pores or bare places", conceded: one run of up to 20 mm at a lower edge}

    Given a job with a concession
    jobs.refit.inspection.primer-film.check: Film of the primer, measured once the booth is ventilated
Fails
    Given a job with a concession
    without concessions.thin-primer.film_min
    jobs.refit.inspection.air: {id: air, check: Air of the pit, at: during-application, frequency: every hour, criterion: {text: below 10 % of the lower explosive limit}, if_failed: leave the pit}
    concessions.thin-primer.point: air
    concessions.thin-primer.words: {specified: below 10 % of the lower explosive limit, conceded: below 20 % for one hour}    # at concessions.thin-primer.words

    Given a job with a concession
    without concessions.thin-primer.film_min
    concessions.thin-primer.point: look
    concessions.thin-primer.words: {specified: "no runs, pores or bare places", conceded: runs; the last coat may be sprayed without the respirator}    # at concessions.thin-primer.words
To put right
    Take the concession out, and stop work until the limit is met.
"""

from specgen.facts.job.concessions import eased
from specgen.facts.job.looked_for import PROTECTION, words_of
from specgen.model.concession import Concession
from specgen.rules.kit import LOGIC, WARNING, Concern, Problem, Problems, Spec, date, rule

_IN_WORDS = frozenset({"words", "test"})


@rule("REC009", on=Concession, severity=WARNING, source=LOGIC, concern=Concern.SAFETY)
def protection_not_conceded(concession: Concession, spec: Spec, on: date) -> Problems:
    point = next((one for one in spec.jobs[concession.job].inspection if one.id == concession.point), None)
    if point is None:
        return
    for limit in eased(concession):
        found = PROTECTION.search(f"{words_of(point)} {limit.specified} {limit.conceded}")
        if limit.name in _IN_WORDS and found is not None:
            yield Problem((limit.name,), f"{concession.id} speaks of {found[0]}, which protects people, at {point.id}")
