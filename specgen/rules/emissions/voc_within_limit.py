"""VOC001 VOC content is stated and within its limit

Checks
    In the EU and Great Britain: the category whose limit applies and the VOC content ready for use are stated, the content is within the limit, and an aerosol can is in category e. A subcategory of annex II A, paints for buildings, is read as its letter (f to l) or as A/d; its limits are not verified against the published text and give a warning.
Why
    Above its limit the product may not be sold for the use its category names.
Passes
    products.primer.voc.content: 840 g/L

    products.primer.voc.content: 840 g/L
    products.barrier.voc: {content: 540 g/L, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    Given second good
    products.touch-up.voc.categories.eu: {id: eu, jurisdiction: EU, category: c(i)}

    products.barrier.voc: {content: 500 g/L, categories: [{id: eu, jurisdiction: EU, category: j}]}

    products.barrier.voc: {content: 300 g/L, categories: [{id: eu, jurisdiction: EU, category: A/d}]}
Fails
    products.barrier.voc: {content: 501 g/L, categories: [{id: eu, jurisdiction: EU, category: j}]}    # warning at products.barrier.voc.content

    products.primer.voc.content: 850 g/L    # at products.primer.voc.content

    products.primer.voc.categories.eu.category: c(i)    # at products.primer.voc.categories.eu.category    # also VOC001 at products.primer.voc.content

    without products.primer.voc.content    # at products.primer.voc.content

    without products.primer.voc    # note at products.primer.voc

    products.primer.voc.content: 841 g/L    # at products.primer.voc.content

    products.barrier.voc: {content: 541 g/L, categories: [{id: us, jurisdiction: US, category: d}, {id: eu, jurisdiction: EU, category: c(i)}]}    # at products.barrier.voc.content
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    project.jurisdictions: [EU, GB]
    products.barrier.voc: {content: 450 g/L, categories: [{id: eu, jurisdiction: EU, category: z}, {id: gb, jurisdiction: GB, category: d}]}    # warning at products.barrier.voc.categories.eu.category    # at products.barrier.voc.content

    products.barrier.voc.categories.eu.category: z    # warning at products.barrier.voc.categories.eu.category

    products.barrier.voc: {content: 450 g/L, categories: [{id: us, jurisdiction: US, category: d}]}    # note at products.barrier.voc.categories
To put right
    State VOC content and category from section 9 or 15 of the safety data sheet; every aerosol can is in category e.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.product.voc_limits import limit_of
from specgen.rules.kit import ERROR, NOTE, WARNING, Basis, Problem, Problems, Product, Quantity, Spec, cite, date, rule
from specgen.trade.known import NotKnown


@rule(
    "VOC001",
    on=Product,
    severity=ERROR,
    source=cite("DIR-2004-42", "Annex II B", Basis.REGULATION),
    waivable=False,
)
def voc_within_limit(product: Product, spec: Spec, on: date) -> Problems:
    laws = [law for law in spec.project.jurisdictions if law in {"EU", "GB"}]
    if product.hazards is None or not laws:
        return
    stated = product.voc
    entries = [entry for entry in stated.categories if entry.jurisdiction in laws] if stated is not None else []
    if stated is None or not entries:
        what = f"no VOC category of {product.id} is stated for {' and '.join(laws)}, so no limit can be assessed"
        yield Problem(("voc",) if stated is None else ("voc", "categories"), what, severity=NOTE)
        return
    if stated.content is None:
        yield Problem(("voc", "content"), f"{product.id} states a VOC category but no content")
    for entry in entries:
        path = ("voc", "categories", entry.id, "category")
        if package_of(product) == "aerosol" and entry.category != "e":
            yield Problem(
                path, f"the can {product.id} is stated in category {entry.category}; every aerosol is in category e"
            )
        limit = limit_of(product, entry, on)
        if isinstance(limit, NotKnown):
            yield Problem(path, limit.why, severity=WARNING)
        elif (
            stated.content is not None
            and limit is not None
            and isinstance(limit.limit, Quantity)
            and stated.content > limit.limit
        ):
            what = f"the VOC content of {product.id}, {stated.content}, is above the limit of category {entry.category}, {limit.limit}"
            sure = limit.source.basis is Basis.REGULATION
            yield Problem(("voc", "content"), what, severity=None if sure else WARNING, source=limit.source)
