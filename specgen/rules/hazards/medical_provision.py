"""HAZ022 Isocyanate work has health surveillance

Checks
    A product containing isocyanate for professional use states the health surveillance of its users; in Germany a sprayed epoxy as well.
Why
    Asthma and allergy begin with signs that are found in time only by a doctor who looks for them.
Passes
    products.clear.hazards.health_surveillance: before the first job and every year

    Given second good
    without products.gloss.hazards.health_surveillance
    products.gloss.hazards.cautions: [{id: doctor, task: any, text: Take part in the health surveillance.}]

    without products.clear.hazards.health_surveillance
    products.clear.hazards.cautions.doctor: {id: doctor, task: any, text: Occupational medical care is offered.}
Fails
    without products.clear.hazards.health_surveillance    # at products.clear.hazards.health_surveillance

    Given second good
    without products.gloss.hazards.health_surveillance    # at products.gloss.hazards.health_surveillance

    project.jurisdictions: [EU, DE]    # at products.primer.hazards.health_surveillance    # at products.barrier.hazards.health_surveillance
To put right
    State the surveillance under health_surveillance, as required by law at the place of work.
"""

from specgen.facts.product.duties import duties_of
from specgen.facts.product.hazard_facts import for_the_public, isocyanates_in
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ022",
    on=Product,
    severity=WARNING,
    source=cite("HSE-MR2", "health surveillance"),
)
def health_surveillance(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None or hazards.health_surveillance is not None or for_the_public(product, spec.project):
        return
    text = " ".join(caution.text for caution in hazards.cautions).casefold()
    if "health surveillance" in text or "occupational medical" in text:
        return
    path = ("hazards", "health_surveillance")
    if isocyanates_in(product):
        yield Problem(path, f"{product.id} contains isocyanate but states no health surveillance")
    elif row := next((duty for duty in duties_of(product, spec) if duty["id"] == "de_epoxy"), None):
        yield Problem(path, f"{product.id}: {row['duty']}", source=table("isocyanate_duties").row_citation(row))
