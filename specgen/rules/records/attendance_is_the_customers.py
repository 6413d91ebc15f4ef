"""REC008 The customer's attendance at a test is that at its inspection point

Checks
    The test of an inspection point: where it states the attendance of the customer, the point states no other involvement of the customer, and for `hold` it is a hold point.
Why
    Where the two differ, the customer is called or not by whichever line was read, and a test is made without him that he wanted to see.
Passes
    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1, attendance: witness}
    jobs.refit.inspection.look.parties: {customer: witness}
    jobs.refit.inspection.prepared.parties: {contractor: hold}
    jobs.refit.inspection.primer-film.parties: {contractor: review}

    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1, attendance: review}

    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1, attendance: hold}
    jobs.refit.inspection.look.hold_point: yes
Fails
    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1, attendance: witness}    # at jobs.refit.inspection.look.test.attendance
    jobs.refit.inspection.look.parties: {customer: review}
    jobs.refit.inspection.prepared.parties: {contractor: hold}
    jobs.refit.inspection.primer-film.parties: {contractor: review}

    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1, attendance: hold}    # at jobs.refit.inspection.look.test.attendance
To put right
    Write the same at both, or leave attendance out and state the parties; `hold` needs hold_point: yes.
"""

from specgen.model.test_required import Attendance
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("REC008", on=Job, severity=ERROR, source=LOGIC)
def attendance_is_the_customers(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        attends = point.test.attendance if point.test is not None else None
        if attends is None:
            continue
        party = point.parties.customer if point.parties is not None else None
        at = ("inspection", point.id, "test", "attendance")
        if party is not None and party.value != attends.value:
            yield Problem(
                at, f"the customer attends the test of {point.id} as {attends.value}, the point as {party.value}"
            )
        elif attends is Attendance.HOLD and not point.hold_point:
            yield Problem(at, f"the customer holds the test of {point.id}, which is no hold point")
