"""TST005 A value that is claimed or asked is one that its method and binder can show

Checks
    The limit of each test that is asked or claimed with its method, against the table test_envelopes_family for the generic type, else test_envelopes. Beyond what the calibration glass of a pendulum shows is an error; all else is a warning, and keeps a claim off the data sheet until somebody confirms it. What a limit asks too little of is told of claims alone.
Why
    A figure in the wrong unit, or with a zero lost, looks like any other until somebody measures.
Passes
    Given a claim with its report
    products.barrier.claims.salt.test.limit: max 1.9 mm

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 2 MPa, condition: {substrate: steel_blasted}, statistic: mean}]
Fails
    jobs.refit.tests: [{id: swing, method: pendulum_konig, standard: ISO 1522, limit: min 175 swings, statistic: mean}]    # at jobs.refit.tests.swing.limit

    jobs.refit.tests: [{id: swing, method: pendulum_konig, standard: ISO 1522, limit: min 151 swings, statistic: mean}]    # warning at jobs.refit.tests.swing.limit

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 50 MPa, condition: {substrate: steel_blasted}, statistic: mean}]    # warning at jobs.refit.tests.pull.limit
To put right
    Look the value up in the test report or the customer's document: number, unit and method. Where it is right, name who confirmed it (`confirmed_by` of a claim), or accept the finding with a waiver.
"""

from specgen.facts.tests.doubtful import doubt_of
from specgen.facts.tests.plausible import said
from specgen.facts.tests.spoken import asked_tests
from specgen.model.product import Product
from specgen.rules.kit import ERROR, WARNING, Node, Problem, Problems, Spec, cite, date, rule


@rule("TST005", on=Node, severity=ERROR, source=cite("ISO-1522"))
def asked_value_usual(subject: Node, spec: Spec, on: date) -> Problems:
    confirmed = (
        {claim.id for claim in subject.claims if claim.confirmed_by is not None}
        if isinstance(subject, Product)
        else set()
    )
    for asked in asked_tests(subject):
        doubt = doubt_of(asked.test, asked.family)
        if doubt is None or (doubt.below and not asked.claimed):
            continue
        if asked.claimed and not doubt.ceiling and asked.path[1] in confirmed:
            continue
        what = said(doubt, asked.test.method or "", asked.family)
        weight = ERROR if doubt.ceiling and doubt.source.basis.confirmed else WARNING
        yield Problem((*asked.path, "limit"), what, severity=weight, source=doubt.source)
