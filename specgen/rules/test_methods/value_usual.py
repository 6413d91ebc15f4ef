"""TST003 A test value in words is one that its method and binder can show

Checks
    Values of tests in the description and the claims of a product, in tests that are asked in words, and in acceptance criteria: number, unit and method are read from the sentence and held against the table test_envelopes_family for the generic type, else test_envelopes. Where a number would be usual in another unit or with a zero lost, each such reading is named; nothing is corrected. A criterion that asks too little is left to the rule on weak tests.
Why
    A pull-off in psi that was read in bar, swings that were seconds, a zero lost in copying: such a figure is printed, quoted and one day measured by the customer.
Passes
    products.barrier.about: "Pull-off on blast-cleaned steel 8 to 12 MPa (ISO 4624)."

    products.barrier.about: "König pendulum 90 swings after 7 days."

    products.clear.about: "Gloss at 60 degrees 90 to 95 GU, at 20 degrees 82 to 88 GU."

    products.barrier.about: "After 480 h of salt spray, creep from the scribe 1.5 mm or less."

    products.barrier.about: "Pull-off not below 150 psi on old paint; topcoat at 3 bar."
Fails
    products.barrier.about: "Pull-off adhesion 150 to 160 psi on blast-cleaned steel."    # at products.barrier.about

    products.barrier.about: "König pendulum hardness 150 to 180 swings."    # at products.barrier.about

    products.barrier.about: "König pendulum hardness 165 swings."    # at products.barrier.about

    products.barrier.about: "Neutral salt spray, ISO 9227: no rust after 8000 h."    # at products.barrier.about

    jobs.refit.inspection.holds: {id: holds, check: Pull-off, at: completion, method: "ISO 4624", frequency: one part, criterion: {text: At least 50 MPa.}, if_failed: Ask.}    # at jobs.refit.inspection.holds.criterion.text
To put right
    Look the value up in the test report: number, unit, dolly and instrument. Where it is right, say film, age and method beside it and accept the finding with a waiver that names the report.
"""

from specgen.facts.tests.in_words import angle_in, said_values
from specgen.facts.tests.plausible import plausible, said
from specgen.facts.tests.spoken import spoken
from specgen.rules.kit import WARNING, Node, Problem, Problems, Spec, date, rule, table


@rule("TST003", on=Node, severity=WARNING, source=table("test_envelopes_family").citation)
def value_usual(subject: Node, spec: Spec, on: date) -> Problems:
    for place in spoken(subject, spec):
        for value in said_values(place):
            where = {"substrate": "metal", "coats": "system", "angle": angle_in(value.sentence)}
            doubt = plausible(value.method, value.values, place.family, where)
            if doubt is not None and (place.claimed or not doubt.below):
                yield Problem(place.path, said(doubt, value.method, place.family), source=doubt.source)
