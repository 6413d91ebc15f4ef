"""HAZ011 The signal word matches the most severe class

Checks
    The declared signal word against the highest one that the declared classes require.
Why
    Danger printed as Warning plays the hazard down; the reverse teaches people to disregard it.
Passes
    products.base.hazards.signal_word: Danger
Fails
    products.base.hazards.signal_word: Warning    # at products.base.hazards.signal_word

    Given second good
    products.gloss.hazards.signal_word: Danger    # at products.gloss.hazards.signal_word
To put right
    Copy the signal word from section 2 of the safety data sheet, or correct the classes.
"""

from specgen.facts.product.declared import differences
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ011",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Article 20", Basis.REGULATION),
    waivable=False,
)
def signal_word_follows(product: Product, spec: Spec, on: date) -> Problems:
    for found in differences(product, spec):
        if found.part == "signal word":
            what = f"{product.id} declares the signal word {found.code}; {found.why}"
            yield Problem(("hazards", "signal_word"), what, source=found.source)
