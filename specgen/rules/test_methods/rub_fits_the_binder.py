"""TST014 A solvent rub is one its standard is for, and says what it sets

Checks
    Each solvent rub that is asked or claimed: ASTM D4752 on zinc ethyl silicate alone; with ASTM D5402 solvent, number of double rubs and end point are stated, the number in the limit or as a detail.
Why
    ASTM D4752 rates how zinc silicate has cured; on an epoxy its ratings mean nothing. ASTM D5402 sets neither solvent nor rubs nor what counts as a failure: without them two inspectors do two tests.
Passes
    jobs.refit.tests: [{id: mek, method: solvent_rub, standard: ASTM D5402, details: [{id: solvent, value: MEK}, {id: end_point, value: no colour on the cloth}], limit: min 100 double rubs, statistic: each}]
Fails
    jobs.refit.tests: [{id: mek, method: solvent_rub, standard: ASTM D5402, limit: min 100 double rubs, statistic: each}]    # at jobs.refit.tests.mek

    products.barrier.about: "MEK rub, ASTM D4752, rating 5."    # at products.barrier.about
To put right
    Use ASTM D5402 for all but zinc silicate, and state solvent, double rubs and end point.
"""

from specgen.facts.tests.spoken import asked_tests, spoken
from specgen.facts.tests.standards import standards_in
from specgen.rules.kit import WARNING, Node, Problem, Problems, Spec, cite, date, rule

_SILICATE, _FOR_SILICATE, _OPEN = "zinc_inorganic", "ASTM D4752", "ASTM D5402"
_RUB = "solvent_rub"


@rule("TST014", on=Node, severity=WARNING, source=cite("ASTM-D5402"))
def rub_fits_the_binder(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        named = [one.standard for one in standards_in(asked.test.standard or "")]
        if asked.family and asked.family != _SILICATE and _FOR_SILICATE in named:
            yield Problem(
                (*asked.path, "standard"), f"{_FOR_SILICATE} is for zinc ethyl silicate, not for {asked.family}"
            )
        if asked.test.method == _RUB and _OPEN in named:
            said = " ".join(detail.id for detail in asked.test.details).casefold()
            rubs = "rub" in f"{said} {asked.test.limit or ''}"
            lacking = [
                name
                for name, there in (("solvent", "solvent" in said), ("double rubs", rubs), ("end point", "end" in said))
                if not there
            ]
            if lacking:
                yield Problem(asked.path, f"{_OPEN} leaves open what is not stated here: {', '.join(lacking)}")
    for place in spoken(subject, spec):
        if (
            place.family
            and place.family != _SILICATE
            and any(one.standard == _FOR_SILICATE for one in standards_in(place.text))
        ):
            yield Problem(place.path, f"{_FOR_SILICATE} is for zinc ethyl silicate, not for {place.family}")
