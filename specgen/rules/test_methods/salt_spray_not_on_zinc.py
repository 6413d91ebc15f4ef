"""TST011 Zinc is not qualified by neutral salt spray

Checks
    Each test that is asked or claimed on galvanised steel: the exposure before it is no neutral salt spray.
Why
    Without dry spells zinc never forms the film that protects it outdoors; good systems fail on it and poor ones pass. A cyclic test tells them apart.
Passes
    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: vda233, cycles: 6}, condition: {substrate: galvanized_hot_dip}, limit: max 3 mm, statistic: mean}]

    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: nss, duration: 480 h}, condition: {substrate: steel_blasted}, limit: max 3 mm, statistic: mean}]
Fails
    jobs.refit.tests: [{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: nss, duration: 480 h}, condition: {substrate: galvanized_hot_dip}, limit: max 3 mm, statistic: mean}]    # at jobs.refit.tests.creep.after.method
To put right
    Ask for a cyclic test, as ISO 11997-1 cycle B, ISO 11997-3 or the cycle of the customer.
"""

from specgen.facts.tests.spoken import asked_tests
from specgen.rules.kit import WARNING, Node, Problem, Problems, Spec, cite, date, rule

_ZINC = frozenset({"galvanized_hot_dip", "galvanized_electro"})
_SALT_SPRAY = "nss"


@rule("TST011", on=Node, severity=WARNING, source=cite("TT-C-490", "3.5.7"))
def salt_spray_not_on_zinc(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        exposed, condition = asked.test.after, asked.test.condition
        if exposed is None or exposed.method != _SALT_SPRAY or condition is None or condition.substrate not in _ZINC:
            continue
        yield Problem(
            (*asked.path, "after", "method"), "galvanised steel is tested by neutral salt spray, which misleads on zinc"
        )
