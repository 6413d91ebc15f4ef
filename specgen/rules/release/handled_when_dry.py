"""REL003 Parts are not handled before the film is dry to handle

Checks
    The minimum time before handling, and for a lower coat the minimum intervals above it as well, against the time to dry-to-handle of each product at the lowest air temperature of the jobs. Where a product states that time for warmer air alone, it is not known for the job: less than in warmer air is an error all the same, otherwise a warning. A time kept between those stated for colder and for warmer air, taken to fall evenly, is a warning too. Where the last product states none, this is a note.
Why
    A soft film takes the print of every strap, rack and glove, and what is packed on it sticks.
Passes
    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 12 h, air: 15 degC}

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 10..12 h, air: 10..15 degC}

    products.primer.drying.hand: {id: hand, stage: dry-to-handle, time: 12.5 h, air: 15 degC}

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 11 h, air: 10 degC}
Fails
    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 12.1 h, air: 15 degC}    # at systems.cab.handle_after

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 10..13 h, air: 15 degC}    # at systems.cab.handle_after

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 10 h, air: 16 degC}    # warning at systems.cab.handle_after

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 13 h, air: 20 degC}    # at systems.cab.handle_after

    without products.clear.drying.hand    # note at systems.cab.handle_after

    products.primer.drying.hand: {id: hand, stage: dry-to-handle, time: 13 h, air: 15 degC}    # at systems.cab.handle_after

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 16 h, air: 10 degC}    # warning at systems.cab.handle_after
    products.clear.drying.hand-warm: {id: hand-warm, stage: dry-to-handle, time: 8 h, air: 20 degC}

    products.clear.drying.hand: {id: hand, stage: dry-to-handle, time: 16.2 h, air: 10 degC}    # at systems.cab.handle_after
    products.clear.drying.hand-warm: {id: hand-warm, stage: dry-to-handle, time: 8 h, air: 20 degC}

    Given second good
    systems.deck.handle_after: 15.9 h    # at systems.deck.handle_after
To put right
    Write the time of the last coat at the lowest air temperature of the job, or keep the air warmer; ask the manufacturer for times that its data do not state.
"""

from specgen.facts.layer.intervals import coldest_air
from specgen.facts.layer.release import reached
from specgen.model.drying import DryingStage
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Problem, Problems, Spec, System, date, rule, show

_ASK = "ask the manufacturer for the time at this air temperature, or keep the air warmer"


@rule("REL003", on=System, severity=ERROR, source=LOGIC)
def handled_when_dry(system: System, spec: Spec, on: date) -> Problems:
    after, path = system.handle_after, ("handle_after",)
    if after is None or coldest_air(system, spec) is None:
        return
    dried = reached(system, spec, after, (DryingStage.HANDLING,))
    early = next((one for one in sorted(dried, key=lambda one: one.may_do) if one.too_soon), None)
    last = next((one for one in dried if one.layer is system.layers[-1]), None)
    if early is not None:
        what = f"parts are handled {show(after)} after the last coat, but {early.only_after}"
        yield Problem(path, what, severity=WARNING if early.may_do else None)
    elif last is None and system.layers[-1].product is None:
        return  # asked of whoever offers the product
    elif last is None:
        what = f"the time before handling cannot be assessed: {system.layers[-1].product} does not state when it is dry to handle"
        yield Problem(path, what, "write the drying stage dry-to-handle of the product", NOTE)
    elif last.warmer_alone:
        what = f"parts are handled {show(after)} after the last coat; {last.not_stated}"
        yield Problem(path, what, _ASK, WARNING)
