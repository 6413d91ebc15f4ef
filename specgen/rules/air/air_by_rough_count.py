"""AIR012 The fresh air holds the vapour off the explosive limit by a rough count

Checks
    Where a job states its fresh-air flow and the quantity sprayed per hour, each product whose composition names no volatile component: the vapour by its stated VOC content and density, against a quarter of the lower explosive limit of solvent vapour in general. The exact count from the composition has its own rule; in a confined space the test of the air decides.
Why
    A flow with a digit lost looks like any other. With no composition no limit can be calculated, but how many grams of solvent go into the air is stated, and so is how little air there is.
Passes
    Given a job that states its spray air
    jobs.refit.ventilation.mixing: 2
Fails
    Given a job that states its spray air
    without products.barrier.composition
    products.barrier.solids: {in_can: 60 %, sprayed: 60 %}
    products.barrier.voc: {content: 400 g/L, density: 1.25 g/mL, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    jobs.refit.ventilation.flow: 22 m3/h    # at jobs.refit.ventilation    # also AIR003 note at jobs.refit.ventilation
To put right
    Correct the flow or the quantity sprayed per hour, or spray less per hour; state the composition of the product, from which the flow is then calculated.
"""

from specgen.facts.job.air import rough_explosion_flow, stated_flow
from specgen.facts.job.confined import is_confined
from specgen.facts.product.hazard_facts import is_water
from specgen.model.product import Ingredient
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Product, Spec, date, rule
from specgen.trade.exposure import laws_with_limits
from specgen.trade.known import NotKnown


@rule("AIR012", on=Job, severity=WARNING, source=PRACTICE)
def air_by_rough_count(job: Job, spec: Spec, on: date) -> Problems:
    if job.ventilation is None or is_confined(job):
        return
    have = stated_flow(job, job.ventilation)
    if isinstance(have, NotKnown):
        return
    for product in spec.products_of(job):
        if _names_a_vapour(product):
            continue
        law = laws_with_limits(spec.project.jurisdictions)[0]
        least = rough_explosion_flow(job, job.ventilation, product, law)
        if isinstance(least, NotKnown) or have.quantity >= least.quantity:
            continue
        what = f"fresh-air flow {have.quantity} is below some {least.printed()} that the vapour of {product.id} asks for against explosion, by its VOC content and the quantity sprayed"
        yield Problem(("ventilation",), what)


def _names_a_vapour(product: Product) -> bool:
    return any(line.kind is not Ingredient.SOLIDS and not is_water(line) for line in product.composition)
