"""TST012 A cyclic test lasts whole cycles

Checks
    The duration of each exposure to a cyclic test that is asked or claimed is a whole number of its cycles, by the table test_cycles.
Why
    A run that stops in the middle of a cycle ends wet in one laboratory and dry in the next.
Passes
    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: cyclic_12944, duration: 1680 h}, limit: max 3 mm, statistic: mean}]
Fails
    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: cyclic_12944, duration: 1000 h}, limit: max 3 mm, statistic: mean}]    # at jobs.refit.tests.creep.after.duration
To put right
    State a multiple of the hours of one cycle, or the number of cycles.
"""

from fractions import Fraction

from specgen.facts.tests.spoken import asked_tests
from specgen.rules.kit import WARNING, Node, Problem, Problems, Quantity, Spec, date, rule, table


@rule("TST012", on=Node, severity=WARNING, source=table("test_cycles").citation)
def whole_cycles(subject: Node, spec: Spec, on: date) -> Problems:
    cycles = table("test_cycles")
    for asked in asked_tests(subject):
        exposed = asked.test.after
        for row in cycles.rows if exposed is not None and isinstance(exposed.duration, Quantity) else ():
            if exposed is None or not isinstance(exposed.duration, Quantity) or row["method"] != exposed.method:
                continue
            number = exposed.duration.to("h") / Fraction(row["hours"])
            if number.denominator != 1:
                what = f"{exposed.duration} are no whole number of cycles of {row['hours']} h"
                yield Problem((*asked.path, "after", "duration"), what, source=cycles.row_citation(row))
