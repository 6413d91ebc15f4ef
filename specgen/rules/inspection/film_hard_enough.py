"""INS015 A film is hard before it is measured

Checks
    A point that measures the dry film of a coat before the next one: the maximum overcoating interval leaves time until the coat is dry to handle at the lowest air temperature of the job, as its product states it. Between two temperatures the product states, the time is taken to fall evenly; where only the time of the colder one is too long, it is a note.
Why
    The probe sinks into a soft film: it reads too little and leaves a mark under the next coat.
Passes
    products.primer.drying: [{id: handle, stage: dry-to-handle, time: 8 h, air: 15 degC}]

    products.primer.drying: [{id: handle, stage: dry-to-handle, time: 30 h, air: 15 degC}]
    jobs.refit.inspection.primer-film.gauge: {principle: destructive}
    systems.cab.handle_after: 30 h
Fails
    products.primer.drying: [{id: handle, stage: dry-to-handle, time: 30 h, air: 15 degC}]    # at jobs.refit.inspection.primer-film.after    # also REL003 at systems.cab.handle_after

    Given second good
    products.mastic.drying: [{id: handle, stage: dry-to-handle, time: 97 h, air: 50 degF}]    # at jobs.rails.inspection.first.after    # at jobs.rails.inspection.film.after    # also USU001 at products.mastic.drying.handle.time    # also REL003 at systems.deck.handle_after

    products.primer.drying: [{id: cold, stage: dry-to-handle, time: 36 h, air: 10 degC}, {id: warm, stage: dry-to-handle, time: 12 h, air: 20 degC}]    # note at jobs.refit.inspection.primer-film.after    # also REL003 at systems.cab.handle_after

    products.primer.drying: [{id: cold, stage: dry-to-handle, time: 37 h, air: 10 degC}, {id: warm, stage: dry-to-handle, time: 12 h, air: 20 degC}]    # warning at jobs.refit.inspection.primer-film.after    # also REL003 at systems.cab.handle_after
To put right
    Measure wet film during application or dry film on a panel, or choose an interval after which the coat is dry to handle.
"""

from specgen.facts.job.inspected import film_points, systems_at
from specgen.facts.job.points import principle_of
from specgen.facts.layer.intervals import air_of, interval
from specgen.facts.product.drying import Unstated, earliest, longest, time_between
from specgen.model.acceptance import GaugePrinciple
from specgen.model.drying import Drying, DryingStage
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Job, Layer, Problem, Problems, Quantity, Spec, System, date, rule
from specgen.units.quantity import lower


@rule("INS015", on=Job, severity=WARNING, source=PRACTICE)
def film_hard_enough(job: Job, spec: Spec, on: date) -> Problems:
    air = air_of(job)
    for point in film_points(job):
        if point.after is None or principle_of(point) in {GaugePrinciple.COMB, GaugePrinciple.DESTRUCTIVE}:
            continue
        for system in systems_at(point, job, spec):
            latest = _latest(system, point.after, spec, air)
            layer = next(layer for layer in system.layers if layer.id == point.after)
            hard = earliest(spec.product_of(layer), DryingStage.HANDLING, air)
            if latest is not None and air is not None and hard is not None and longest(hard) > latest:
                product = spec.product_of(layer)
                between = None if isinstance(hard, Unstated) else time_between(product, DryingStage.HANDLING, air)
                what = (
                    f"{point.id} measures {layer.id}, which has to be overcoated within {latest}; "
                    f"{layer.product} is dry to handle only after {longest(hard)}{_stated_at(hard, air)}"
                )
                likely = between is not None and between <= latest
                yield Problem(("inspection", point.id, "after"), what, severity=NOTE if likely else None)
                break


def _stated_at(hard: Drying | Unstated, air: Quantity) -> str:
    at = hard.stated_at if isinstance(hard, Unstated) else lower(hard.air)
    return "" if at == air else f" at {at}"


def _latest(system: System, layer_id: str, spec: Spec, air: Quantity | None) -> Quantity | None:
    """The end of the interval before the next coat: the system's own, else its product's; None where it is open or none follows."""
    layers: list[Layer] = list(system.layers)
    at = [layer.id for layer in layers].index(layer_id)
    if at + 1 == len(layers):
        return None
    own = layers[at].overcoat_interval
    if own is not None:
        return own.high
    allowed = interval(layers[at], layers[at + 1], spec, air).allowed
    return allowed.high if allowed is not None else None
