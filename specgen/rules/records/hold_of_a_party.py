"""REC001 An inspection that a party holds is a hold point

Checks
    The parties of an inspection point: where one of them has `hold`, the point is a hold point; and where parties of a hold point are stated, one of them holds it.
Why
    The job card and the method statement stop the work at hold points alone: what only the party is said to hold is sprayed over. A hold point that no party holds has nobody who signs it off.
Passes
    jobs.refit.inspection.primer-film.hold_point: yes
    jobs.refit.inspection.primer-film.parties: {contractor: hold, customer: witness}

    jobs.refit.inspection.primer-film.parties: {contractor: witness, quality: review, third_party: surveillance}

    Given second good
    jobs.rails.inspection.blasted.parties: {third_party: hold}
Fails
    jobs.refit.inspection.primer-film.parties: {contractor: hold}    # at jobs.refit.inspection.primer-film.parties.contractor

    jobs.refit.inspection.primer-film.parties: {contractor: witness, customer: hold}    # at jobs.refit.inspection.primer-film.parties.customer

    Given second good
    jobs.rails.inspection.blasted.parties: {contractor: witness, customer: review}    # warning at jobs.rails.inspection.blasted.parties
To put right
    Write hold_point: yes at the point, or give the party witness; at a hold point name the party that signs it off.
"""

from specgen.model.acceptance import Involvement, Parties
from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("REC001", on=Job, severity=ERROR, source=LOGIC)
def hold_of_a_party(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if point.parties is None:
            continue
        holding = [name for name in Parties.model_fields if getattr(point.parties, name) is Involvement.HOLD]
        if holding and not point.hold_point:
            what = f"{holding[0].replace('_', ' ')} holds {point.id}, which is not a hold point"
            yield Problem(("inspection", point.id, "parties", holding[0]), what)
        elif point.hold_point and not holding:
            what = f"{point.id} is a hold point, and none of the parties stated for it holds it"
            yield Problem(("inspection", point.id, "parties"), what, severity=WARNING)
