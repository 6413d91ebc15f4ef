"""REC004 A concession holds from a day to a day

Checks
    Each concession: it ends on the day it was agreed on or later, and that day is not still to come; whether its last day has passed.
Why
    What nobody has agreed to yet, or what ended before it began, eases nothing. An expired one stays as a record of what was accepted while it held, and no longer.
Passes
    Given a job with a concession
    concessions.thin-primer.agreed_on: 2026-11-25
    concessions.thin-primer.until: 2026-11-25

    Given second good
    concessions: [{id: cool, job: rails, items: [RAIL], air: {specified: min 55 degF, conceded: min 53 degF}, agreed_by: inspector, agreed_on: 2026-11-20, until: 2026-12-31, reason: One night.}]
Fails
    Given a job with a concession
    concessions.thin-primer.until: 2026-11-19    # at concessions.thin-primer.until

    Given a job with a concession
    concessions.thin-primer.agreed_on: 2026-11-26    # at concessions.thin-primer.agreed_on

    Given a job with a concession
    concessions.thin-primer.agreed_on: 2026-11-01
    concessions.thin-primer.until: 2026-11-24    # note at concessions.thin-primer.until
To put right
    Correct the days by the letter or minutes in which it was agreed; have it renewed as a concession of its own where work goes on.
"""

from specgen.model.concession import Concession
from specgen.rules.kit import ERROR, LOGIC, NOTE, Problem, Problems, Spec, date, rule


@rule("REC004", on=Concession, severity=ERROR, source=LOGIC)
def concession_in_its_days(concession: Concession, spec: Spec, on: date) -> Problems:
    agreed, until = concession.agreed_on, concession.until
    if until < agreed:
        yield Problem(("until",), f"{concession.id} ends on {until}, before it was agreed on {agreed}")
    elif agreed > on:
        yield Problem(("agreed_on",), f"{concession.id} was agreed on {agreed}, a day still to come as at {on}")
    elif until < on:
        what = f"{concession.id} expired on {until}: nothing made or read after that day is accepted under it"
        yield Problem(("until",), what, severity=NOTE)
