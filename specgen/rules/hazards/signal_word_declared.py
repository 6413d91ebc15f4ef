"""HAZ002 A signal word is declared

Checks
    Every product states its signal word: Danger, Warning, or none where its classification carries none.
Why
    The signal word is read first; if it is left out, it is unclear whether there is none or it was forgotten.
Passes
    products.base.hazards.signal_word: Danger

    products.barrier.hazards.signal_word: Warning
Fails
    without products.base.hazards.signal_word    # at products.base.hazards.signal_word

    Given second good
    without products.gloss.hazards.signal_word    # at products.gloss.hazards.signal_word
To put right
    Copy the signal word from section 2 of the current safety data sheet; write none where it has none.
"""

from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ002",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Art. 17(1)(e) and Art. 20", Basis.REGULATION),
    waivable=False,
)
def signal_word_declared(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.hazards.signal_word is None:
        yield Problem(("hazards", "signal_word"), f"the product {product.id} declares no signal word")
