"""HAZ023 A product containing low-molecular-weight epoxy states it (EUH205)

Checks
    EUH205 on every product with epoxy constituents of an average molecular weight up to 700, in the EU and Great Britain. A molecular weight that is not stated cannot be assessed; a missing statement is then a warning.
Why
    Epoxy allergy is acquired through the skin and is lifelong.
Passes
    products.primer.hazards.epoxy_up_to_700: yes

    products.barrier.hazards.supplemental: []
    products.barrier.hazards.epoxy_up_to_700: no

    Given second good
    without products.mastic.hazards.supplemental
Fails
    without products.primer.hazards.supplemental    # at products.primer.hazards.supplemental
    products.primer.hazards.epoxy_up_to_700: yes

    without products.barrier.hazards.supplemental    # warning at products.barrier.hazards.supplemental

    products.barrier.hazards.epoxy_up_to_700: no    # note at products.barrier.hazards.supplemental

    products.base.hazards.epoxy_up_to_700: yes    # at products.base.hazards.supplemental
To put right
    Add EUH205, or state under epoxy_up_to_700 that the epoxy has a higher molecular weight.
"""

from specgen.facts.product.declared import in_europe
from specgen.facts.product.hazard_facts import epoxy_in
from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import ERROR, NOTE, WARNING, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.hazard_class import Element
from specgen.trade.known import NotKnown

CODE = "EUH205"


@rule(
    "HAZ023",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex II, 2.5"),
    waivable=False,
)
def epoxy_statement(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not in_europe(spec):
        return
    path, declared = ("hazards", "supplemental"), CODE in product.hazards.supplemental
    found = hazards_of(spec, product.id, on).supplemental
    wanted = next((entry for entry in found if isinstance(entry, Element) and entry.code == CODE), None)
    gap = next((entry for entry in found if isinstance(entry, NotKnown) and entry.what == CODE), None)
    if wanted is not None and not declared:
        what = f"{product.id} contains {'; '.join(wanted.reasons)} but does not carry {CODE}"
        yield Problem(path, what, source=wanted.source)
    elif gap is not None and not declared:
        severity = WARNING if epoxy_in(product) else NOTE
        yield Problem(path, f"whether {product.id} requires {CODE} cannot be assessed: {gap.why}", severity=severity)
    elif product.hazards.epoxy_up_to_700 is False and declared:
        what = f"{product.id} carries {CODE} but is stated to contain no epoxy of so low a molecular weight"
        yield Problem(path, what, severity=NOTE)
