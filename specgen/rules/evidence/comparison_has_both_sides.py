"""EVD004 A comparison shows both its sides from one run

Checks
    Each claim whose text puts the product above others (best, superior, better than), and each that names the other side of a comparison: both tests stand in one report, by one method in one edition and variant, after exposures of equal kind and length, on one substrate, at equal DFT. The description of a product says nothing of the kind, for it has no report. Of two films it is common practice that counts as equal, and of words it is a reading: these parts give a warning.
Why
    Two results compare two coatings only where everything else was the same. Hours from two cabinets, or of two films, compare cabinets and films. Nobody can hold a superlative against anything.
Passes
    Given a claim with its report
    products.barrier.claims.salt.text: "After 480 h of salt spray, creep better than 2 mm."

    Given a comparison of two coatings
    products.barrier.claims.less.text: Less creep from the scribe than the one-pack primer tested beside it.
Fails
    Given a claim with its report
    products.barrier.claims.salt.text: Best corrosion protection of its class.    # warning at products.barrier.claims.salt.text

    Given a claim with its report
    products.barrier.about: A primer with superior adhesion.    # warning at products.barrier.about

    Given a comparison of two coatings
    reports.lab-12.tests.beside.after.duration: 160 h    # at products.barrier.claims.less.evidence.than

    Given a comparison of two coatings
    reports.lab-12.series.other.coats.coat.film: 60 um    # warning at products.barrier.claims.less.evidence.than

    Given a comparison of two coatings
    reports.lab-12.tests.beside.standard: ASTM D1654    # at products.barrier.claims.less.evidence.than
To put right
    Have both coatings tested side by side and name both tests of that report; or state what was measured and leave the others out.
"""

from specgen.facts.tests.evidence import comparing_word, evidence_of
from specgen.facts.tests.fit import EQUAL_FILM
from specgen.rules.kit import ERROR, LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("EVD004", on=Product, severity=ERROR, source=LOGIC)
def comparison_has_both_sides(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.claims:
        at = ("claims", claim.id)
        found = evidence_of(spec, product.id, claim.id)
        if found.alone:
            what = f"the claim {claim.id} of {product.id} compares (“{found.alone}”) and names no other side of the comparison, so it is not printed"
            yield Problem((*at, "text"), what, severity=WARNING)
        if found.unequal:
            told = "; ".join(f"{one.about}: {one.asked} and {one.tested}" for one in found.unequal)
            what = f"the two sides of the claim {claim.id} of {product.id} do not compare: {told}"
            film_alone = all(one.about == EQUAL_FILM for one in found.unequal)
            yield Problem((*at, "evidence", "than"), what, severity=WARNING if film_alone else None)
    if product.about is not None and (word := comparing_word(product.about)):
        what = f"the description of {product.id} compares (“{word}”) and no test report stands behind it"
        yield Problem(("about",), what, "say what the product is for, and leave the others out", severity=WARNING)
