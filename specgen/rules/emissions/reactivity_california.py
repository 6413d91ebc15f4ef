"""VOC003 Reactivity is within the limit of California

Checks
    Where the law of California holds: a can states its reactivity with the set of factors, and it is within the lowest limit of the categories named.
Why
    Above its limit the can may not be sold there.
Passes
    products.base.voc.reactivity: 0.9
Fails
    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.9, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}    # at products.primer.voc.reactivity
    products.base.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
    products.clear.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
To put right
    State reactivity, factors and category, and bring the reactivity under the limit.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.hazard_facts import package_of
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import Basis, cite
from specgen.trade.judged import CannotJudge
from specgen.trade.voc_limit import lowest_limit, reactivity_limit
from specgen.units.rounding import plain_text


@rule(
    "VOC003",
    on=Product,
    severity=Severity.ERROR,
    concern=Concern.SAFETY,
    source=cite("17-CCR-94522", "", Basis.REGULATION),
    waivable=False,
)
def reactivity_california(product: Product, spec: Spec) -> Iterator[Problem]:
    if "US-CA" not in spec.project.jurisdictions or package_of(product) != "aerosol":
        return
    stated = product.voc
    entries = [entry for entry in stated.categories if entry.jurisdiction == "US-CA"] if stated is not None else []
    if stated is None or not entries:
        yield Problem(
            ("voc",),
            f"the can {product.id} states no category for California, so its limit cannot be judged",
            severity=Severity.NOTE,
        )
        return
    if stated.reactivity is None:
        yield Problem(("voc", "reactivity"), f"the can {product.id} states no reactivity for California")
    if stated.factors is None:
        yield Problem(("voc", "factors"), f"the reactivity of {product.id} does not name its set of factors")
    limit = lowest_limit([reactivity_limit("US-CA", entry.category, date.max) for entry in entries])
    path = ("voc", "categories")
    if isinstance(limit, CannotJudge):
        yield Problem(path, f"the reactivity of {product.id} cannot be judged: {limit.why}", severity=Severity.NOTE)
    elif stated.reactivity is not None and isinstance(limit.limit, Fraction) and stated.reactivity > limit.limit:
        shown = f"{plain_text(stated.reactivity)} {limit.unit}"
        what = f"{shown} of {product.id} is above the {plain_text(limit.limit)} {limit.unit} of {limit.name}"
        yield Problem(("voc", "reactivity"), what, source=limit.source)
