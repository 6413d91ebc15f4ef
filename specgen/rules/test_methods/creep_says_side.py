"""TST023 A creep from the scribe says from where it is measured

Checks
    Each creep from the scribe that is asked or claimed: it names ISO 4628-8, ASTM D1654 or ASTM D7087, which measure to one side of the scribe, or states under details whether one side or both are meant. A report without its standard is told by EVD008.
Why
    Over both sides the same panel has twice the creep, and the scribe itself besides.
Passes
    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: nss, standard: ISO 9227, duration: 480 h}, limit: max 2 mm, statistic: mean}]

    jobs.refit.tests: [{id: creep, method: scribe_creep, details: [{id: sides, value: one-sided}], after: {method: nss, standard: ISO 9227, duration: 480 h}, limit: max 2 mm, statistic: mean}]
Fails
    jobs.refit.tests: [{id: creep, method: scribe_creep, after: {method: nss, standard: ISO 9227, duration: 480 h}, limit: max 2 mm, statistic: mean}]    # at jobs.refit.tests.creep
To put right
    Name the standard, or write details: [{id: sides, value: one-sided}].
"""

from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.standards import standards_in
from specgen.rules.kit import WARNING, Basis, Node, Problem, Problems, Spec, cite, date, rule

_CREEP = "scribe_creep"


@rule("TST023", on=Node, severity=WARNING, source=cite("SCRIBE-NOTES", "", Basis.SECONDARY))
def creep_says_side(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        test = asked.test
        if test.method != _CREEP or any(detail.id == "sides" for detail in test.details):
            continue
        if not standards_in(test.standard or ""):
            yield Problem(asked.path, "the creep from the scribe does not say whether one side or both are measured")
