"""REL004 Parts do not go into service before the film is hard

Checks
    The minimum time before return to service: not below that before handling; and at the lowest air temperature of the jobs, for a lower coat with the minimum intervals above it, against the time to through-dry of each product, or else to dry-to-handle. A time that a product states for warmer air alone is not known for the job: less than that is an error all the same, otherwise a warning; a time kept between those stated for colder and for warmer air, taken to fall evenly, is a warning. Service before the film is fully cured is a note; it is a warning where the time is just what the product states for warmer air, and where the part is immersed, splashed or buried, unless the time between those stated for colder and for warmer air is kept.
Why
    Rain, wash brushes, loads and fuel destroy in an hour a film that another night would have hardened.
Passes
    products.clear.drying.through: {id: through, stage: through-dry, time: 7 days, air: 15 degC}

    systems.cab.service_after: 7 days

    products.primer.drying.through: {id: through, stage: through-dry, time: 7 days, air: 15 degC}
Fails
    systems.cab.service_after: 11 h    # at systems.cab.service_after    # note at systems.cab.service_after

    products.clear.drying.through: {id: through, stage: through-dry, time: 25 h, air: 15 degC}    # at systems.cab.service_after    # note at systems.cab.service_after
    systems.cab.service_after: 24 h

    products.clear.drying.through: {id: through, stage: through-dry, time: 20 h, air: 20 degC}    # warning at systems.cab.service_after

    systems.cab.service_after: 6.9 days    # note at systems.cab.service_after

    products.clear.drying.cure: {id: cure, stage: fully-cured, time: 5 days, air: 20 degC}    # note at systems.cab.service_after

    products.primer.drying.through: {id: through, stage: through-dry, time: 8 days, air: 15 degC}    # at systems.cab.service_after

    products.clear.drying.cure: {id: cure, stage: fully-cured, time: 14 days, air: 10 degC}    # warning at systems.cab.service_after
    products.clear.drying.cure-warm: {id: cure-warm, stage: fully-cured, time: 7 days, air: 20 degC}
    systems.cab.service_after: 7 days

    products.clear.drying.cure: {id: cure, stage: fully-cured, time: 14 days, air: 10 degC}    # note at systems.cab.service_after
    products.clear.drying.cure-warm: {id: cure-warm, stage: fully-cured, time: 7 days, air: 20 degC}
    systems.cab.service_after: 6.9 days

    systems.cab.service_after: 6.9 days    # warning at systems.cab.service_after
    jobs.refit.environment: {kind: buried}

    systems.cab.service_after: 6.9 days    # warning at systems.cab.service_after
    jobs.refit.environment: {kind: splash}

    Given second good
    systems.deck.service_after: 15.9 h    # at systems.deck.service_after    # at systems.deck.service_after    # note at systems.deck.service_after
To put right
    Write the time of the drying stage at the lowest air temperature of the job; where parts leave before the film is fully cured, say in use or in the scope what must wait, as washing, loading and decals.
"""

import math

from specgen.facts.job.exposure import environment_of
from specgen.facts.layer.intervals import coldest_air
from specgen.facts.layer.release import Reached, reached
from specgen.facts.pairs.families import binder_family
from specgen.facts.placing import items_painted_with
from specgen.facts.product.drying import warmer_rows
from specgen.model.drying import Drying, DryingStage
from specgen.model.environment import EnvironmentKind
from specgen.model.job import Item
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    PRACTICE,
    WARNING,
    Job,
    Problem,
    Problems,
    Spec,
    System,
    date,
    rule,
    show,
)
from specgen.units.quantity import lower, upper

_PATH = ("service_after",)
_ASK = "ask the manufacturer for the time at this air temperature, or keep the air warmer"


@rule("REL004", on=System, severity=ERROR, source=LOGIC)
def in_service_when_hard(system: System, spec: Spec, on: date) -> Problems:
    after = system.service_after
    if after is None:
        return
    if system.handle_after is not None and after < system.handle_after:
        yield Problem(
            _PATH, f"parts go into service after {show(after)}, before they may be handled, {show(system.handle_after)}"
        )
    if coldest_air(system, spec) is None:
        return
    hard = reached(system, spec, after, (DryingStage.THROUGH, DryingStage.HANDLING))
    early = next((one for one in sorted(hard, key=lambda one: one.may_do) if one.too_soon), None)
    last = next((one for one in hard if one.layer is system.layers[-1]), None)
    if early is not None:
        what = f"parts go into service {show(after)} after the last coat, but {early.only_after}"
        yield Problem(_PATH, what, severity=WARNING if early.may_do else None)
    elif last is not None and last.warmer_alone and last.stage is DryingStage.THROUGH:
        what = f"parts go into service {show(after)} after the last coat; {last.not_stated}"
        yield Problem(_PATH, what, _ASK, WARNING)
        return
    yield from _before_full_cure(system, spec)


def _before_full_cure(system: System, spec: Spec) -> Problems:
    after = system.service_after
    cured = reached(system, spec, after, (DryingStage.FULLY_CURED,)) if after is not None else ()
    last = next((one for one in cured if one.layer is system.layers[-1]), None)
    if after is None or last is None:
        return
    said = f"parts go into service {show(after)} after the last coat"
    if last.too_soon:
        warmer = warmer_rows(spec.product_of(last.layer), DryingStage.FULLY_CURED, last.air)
        row = next((entry for entry in warmer if upper(entry.time) == after), None)
        told = f"; {upper(row.time)} is its time at {lower(row.air)}" if row is not None else ""
        wet = any(_wetted(job, item) for job, item in items_painted_with(system, spec))
        weight, source = (WARNING, LOGIC) if row is not None else (NOTE, PRACTICE)
        if wet and not (warmer and not last.warmer_alone and _between(last, warmer[0]) <= after.to("day")):
            weight = WARNING
        yield Problem(_PATH, f"{said}; {last.only_after}{told}", severity=weight, source=source)
    elif last.warmer_alone and binder_family(spec.product_of(last.layer).binder)["cure"] != "stoved":
        what = f"{said}; {last.not_stated}"
        yield Problem(_PATH, what, _ASK, NOTE)


def _between(last: Reached, warmer: Drying) -> float:
    """Days to the stage at the air of the job, between the entry for colder and that for warmer air, by equal factors for equal steps."""
    cold, warm = last.stated_at.to("degC"), lower(warmer.air).to("degC")
    long, short = float(last.due.to("day")), float(upper(warmer.time).to("day"))
    return long * math.pow(short / long, float((last.air.to("degC") - cold) / (warm - cold)))


def _wetted(job: Job, item: Item) -> bool:
    """True where water or soil lies on the film from the first hour of service."""
    found = environment_of(job, item)
    return found is not None and found.kind in {
        EnvironmentKind.IMMERSION,
        EnvironmentKind.SPLASH,
        EnvironmentKind.BURIED,
    }
