"""HAZ011 The signal word is that of the most severe class

Checks
    The declared signal word against the highest that the declared classes ask for.
Why
    Danger printed as Warning makes light of it; the other way round teaches people to pass it over.
Passes
    products.base.hazards.signal_word: Danger
Fails
    products.base.hazards.signal_word: Warning    # at products.base.hazards.signal_word

    Given second good
    products.gloss.hazards.signal_word: Danger    # at products.gloss.hazards.signal_word
To put right
    Copy the signal word from section 2 of the safety data sheet, or put the classes right.
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
            what = f"{product.id} declares {found.code}; {found.why}"
            yield Problem(("hazards", "signal_word"), what, source=found.source)
