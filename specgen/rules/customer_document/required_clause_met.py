"""CUS001 A job meets the required clauses of the document it is made to

Checks
    Each required clause of each document a job is made to (`made_to`) that states a limit: DFT of a coat or in total, number of coats, what the products must be, banned substances, preparation, ambient conditions, acceptance rule, hold points, corrosivity category, durability and warranty are held against what the job states. A limit that a coat borrows from its product gives a warning.
Why
    A job that is done as written and breaks a required clause is rejected by whoever accepts it.
Passes
    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {min: 95 um, max: 180 um}

    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {min: 3.8 mil}
    jobs.refit.made_to.yard.items: [DOOR]
    systems.cab.total: {min: 96.52 um, max: 180 um}

    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {min: 96 um}
    jobs.refit.made_to.yard.deviations: [{id: film, text: 95 um on inner faces, agreed_by: "Yard office, letter of 2026-11-02"}]

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: clearcoat, film: {min: 40 um, max: 70 um}, product: {generic_type: pu_2k_aliphatic}}
    products.clear.binder: pu_2k_aliphatic
Fails
    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {min: 96 um}    # at systems.cab.total.min

    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {max: 179 um}    # at systems.cab.total.max

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: clearcoat, film: {min: 41 um}}    # at systems.cab.layers.clear.film.min

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: basecoat, product: {voc: 700 g/L}}    # at products.base.voc.content    # also VOC001 at products.base.voc.categories
    products.base.voc: {content: 701 g/L}

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {climate: {air: min 16 degC}}    # at jobs.refit.climate.air

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {acceptance: ISO-19840}    # at jobs.refit.inspection.primer-film.criterion.rule
    jobs.refit.inspection.primer-film.criterion: {rule: 90-10, nominal: 60 um, max: 80 um}

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {hold_points: [after-preparation, completion]}    # at jobs.refit.inspection.look.hold_point

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {warranty: 5 years}    # at jobs.refit.made_to.yard.warranty
    jobs.refit.made_to.yard.warranty: 4 years

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: clearcoat, film: {max: 69 um}}    # warning at products.clear.film.max
    without systems.cab.layers.clear.film.max
    products.clear.film.max: 70 um
To put right
    Change the job so that it meets the clause, or have the customer agree to the deviation and state it under `deviations`.
"""

from specgen.model.contract_document import Force
from specgen.rules.broken_clauses import of_broken
from specgen.rules.kit import ERROR, LOGIC, Job, Problems, Spec, date, rule


@rule("CUS001", on=Job, severity=ERROR, source=LOGIC)
def required_clause_met(job: Job, spec: Spec, on: date) -> Problems:
    yield from of_broken(job, spec, Force.REQUIRED)
