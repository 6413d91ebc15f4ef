"""CUS002 A job follows the advised clauses of the document it is made to

Checks
    Each advised clause of each document a job is made to that states a limit, as CUS001 does with required clauses.
Why
    Advice may be departed from, but by decision and in the open: the customer asks for the reason.
Passes
    Given a job made to a document
    contract_documents.yard.clauses.advice.limit: {total: {max: 180 um}}

    Given a job made to a document
    contract_documents.yard.clauses.advice.force: permitted
    contract_documents.yard.clauses.advice.limit: {climate: {air: min 16 degC}}
Fails
    Given a job made to a document
    contract_documents.yard.clauses.advice.limit: {total: {max: 179 um}}    # at systems.cab.total.max

    Given a job made to a document
    contract_documents.yard.clauses.advice.limit: {climate: {humidity: max 70 %}}    # at jobs.refit.climate.humidity

    Given a job made to a document
    contract_documents.yard.clauses.advice.limit: {coat: primer, coats: min 2}    # at systems.cab.layers    # also CUS002 at systems.chassis.layers
    without jobs.refit.made_to.yard.items
    contract_documents.yard.clauses.film.limit.total: {min: 60 um}
To put right
    Follow the advice, or state under `deviations` what is done instead and who of the customer agrees.
"""

from specgen.model.contract_document import Force
from specgen.rules.broken_clauses import of_broken
from specgen.rules.kit import LOGIC, WARNING, Job, Problems, Spec, date, rule


@rule("CUS002", on=Job, severity=WARNING, source=LOGIC)
def advised_clause_met(job: Job, spec: Spec, on: date) -> Problems:
    yield from of_broken(job, spec, Force.ADVISED)
