"""AIR004 Isocyanate is sprayed only where the ventilation is stated

Checks
    Each job in which a product that contains isocyanate may be sprayed: ventilation is stated by the job (a flow, air changes or a sentence) or by the product, or the place of work is a booth or outdoors. Where the job names another place and the product alone states the ventilation, and where it is not known whether the product contains isocyanate, this is a warning. A coat that is put on with brush or roller makes no mist.
Why
    Isocyanate mist that is not drawn off stays in the breathing air of everyone in the room, and one day of it can end a working life.
Passes
    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: "Spray booth to EN 16985, extraction on until it has cleared; air-fed respiratory protection stays on."}

    Given second good
    without jobs.rails.workplace
    without jobs.lids.workplace
    systems.deck.layers.gloss.method: brush

    Given second good
    jobs.rails.workplace: booth
Fails
    without jobs.refit.workplace    # at jobs.refit.ventilation

    jobs.refit.workplace: workshop    # at jobs.refit.ventilation

    Given second good
    jobs.rails.workplace: on-site    # at jobs.rails.ventilation
    jobs.lids.workplace: workshop    # at jobs.lids.ventilation

    Given second good
    without jobs.rails.workplace    # at jobs.rails.ventilation
    products.gloss.application.methods: [brush, airless]

    without jobs.refit.workplace    # at jobs.refit.ventilation
    products.clear.hazards.ventilation: None needed.

    jobs.refit.workplace: workshop    # warning at jobs.refit.ventilation
    products.clear.hazards.ventilation: Spray with forced extraction only.
To put right
    State the place of work and its ventilation: the booth and its standard, the fresh-air flow, and how long air-fed respiratory protection stays on after spraying.
"""

from specgen.facts.job.air_wording import NO_AIR, states_air
from specgen.facts.job.sprayed import sprayed_on
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.application import Workplace
from specgen.rules.kit import ERROR, WARNING, Basis, Job, Problem, Problems, Spec, cite, date, rule

# A booth draws the mist off and the open air carries it away; any other place has to say how.
_AIRED = {Workplace.BOOTH, Workplace.OUTDOORS}


@rule("AIR004", on=Job, severity=ERROR, source=cite("REACH", "Annex II, 8.2.1", Basis.REGULATION), waivable=False)
def isocyanate_aired(job: Job, spec: Spec, on: date) -> Problems:
    if job.workplace in _AIRED or states_air(job):
        return
    for product in sprayed_on(job, spec):
        held = isocyanates_in(product)
        stated = product.hazards.ventilation if product.hazards is not None else None
        if held is False:
            continue
        if stated is not None and not NO_AIR.search(stated):
            if held and job.workplace is not None:
                what = f"{product.id} contains isocyanate and is sprayed in {job.id}, which does not state the ventilation that the product asks for"
                yield Problem(("ventilation",), what, severity=WARNING)
            continue
        contents = "contains isocyanate" if held else "may contain isocyanate"
        what = f"{product.id} {contents} and is sprayed in {job.id}, but neither states how the air is kept clean"
        yield Problem(("ventilation",), what, severity=None if held else WARNING)
