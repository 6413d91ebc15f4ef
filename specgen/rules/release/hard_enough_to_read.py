"""REL005 The film is hard enough when it is read

Checks
    Each point that reads the DFT of a coat before the next one, against the time to dry-to-handle of its product at the coldest air of the job, or else to touch-dry: there must be time for the reading before the maximum overcoating interval ends. A comb gauge is for the wet film.
Why
    A probe sinks into a soft film and reads too little; the print stays in the coat, and where the next coat cannot wait the reading is left out.
Passes
    products.primer.drying.hand: {id: hand, stage: dry-to-handle, time: 12.4 h, air: 15 degC}

    jobs.refit.inspection.primer-film: {id: primer-film, check: Film of the primer, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: even}}
    products.primer.drying.hand: {id: hand, stage: dry-to-handle, time: 12.4 h, air: 15 degC}
    systems.cab.layers.primer.overcoat_interval: 30 min..12 h
Fails
    products.primer.drying.hand: {id: hand, stage: dry-to-handle, time: 12.1 h, air: 15 degC}    # at jobs.refit.inspection.primer-film.after
    systems.cab.layers.primer.overcoat_interval: 30 min..12 h

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 61 min, air: 15 degC}    # at jobs.refit.inspection.primer-film.after
    without products.primer.drying.hand
    systems.cab.layers.primer.overcoat_interval: 30..60 min

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 61 min, air: 20 degC}
    without products.primer.drying.hand    # at jobs.refit.inspection.primer-film.after
    systems.cab.layers.primer.overcoat_interval: 30..60 min

    Given second good
    products.mastic.drying: [{id: hand, stage: dry-to-handle, time: 73 h, air: 50 degF}]    # at jobs.rails.inspection.film.after
    systems.deck.handle_after: 3 days
To put right
    Read after the coat is hard and lengthen the interval as the product allows, abrading the coat; or read by weight of a panel, or destructively on a witness panel.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import principle_of
from specgen.facts.layer.intervals import air_of
from specgen.facts.product.drying import earliest, longest
from specgen.model.acceptance import GaugePrinciple
from specgen.model.product import DryingStage
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule, show

_HARD = (DryingStage.HANDLING, DryingStage.TOUCH_DRY)


@rule("REL005", on=Job, severity=WARNING, source=PRACTICE)
def hard_enough_to_read(job: Job, spec: Spec, on: date) -> Problems:
    air = air_of(job)
    for point in film_points(job):
        if principle_of(point) is GaugePrinciple.COMB or point.after is None:
            continue
        for system in {system.id: system for _, system in places(point, job, spec)}.values():
            layer = next(layer for layer in system.layers if layer.id == point.after)
            last = layer.overcoat_interval.high if layer.overcoat_interval is not None else None
            product = spec.product_of(layer)
            found = next((one for stage in _HARD if (one := earliest(product, stage, air)) is not None), None)
            if layer is system.layers[-1] or last is None or found is None or longest(found) <= last:
                continue
            what = f"{point.id} reads the coat {layer.id}, which is overcoated within {show(last)}, but {product.id} is hard enough only after {show(longest(found))}"
            yield Problem(("inspection", point.id, "after"), what)
