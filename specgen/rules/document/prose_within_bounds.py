"""DOC001 Markdown stays within its limits

Checks
    Each text that is printed as Markdown nests lists, quotations and brackets at most 10 deep and contains at most 20 of one of [ ( ! * _ ` > # in a row.
Why
    Such a text takes minutes to lay out, so its document is not printed.
Passes
    jobs.refit.scope: "> > > > > > > > > > ten deep"

    preparations.sand-steel.steps.sand.text: Sand it !!!!!!!!!!!!!!!!!!!! to a matt surface.
Fails
    jobs.refit.scope: "> > > > > > > > > > > eleven deep"    # at jobs.refit.scope

    preparations.sand-steel.steps.sand.text: Sand it !!!!!!!!!!!!!!!!!!!!! to a matt surface.    # at preparations.sand-steel.steps.sand.text

    products.barrier.application.mixing.stir: "((((((((((((((((((((( stir"    # at products.barrier.application.mixing.stir

    Given second good
    systems.touch.use: "> > > > > > > > > > > eleven deep"    # at systems.touch.use
    products.touch-up.not_claimed: "(((((((((((((((((((((  claimed"    # at products.touch-up.not_claimed
    products.touch-up.application.restart: "(((((((((((((((((((((  restart"    # at products.touch-up.application.restart

    products.barrier.about: "(((((((((((((((((((((  about"    # at products.barrier.about
    products.barrier.application.nozzle: "(((((((((((((((((((((  nozzle"    # at products.barrier.application.nozzle
    products.barrier.application.mixing.thinner: "(((((((((((((((((((((  thinner"    # at products.barrier.application.mixing.thinner
    products.barrier.application.mixing.clock_starts: "(((((((((((((((((((((  mixing starts"    # at products.barrier.application.mixing.clock_starts
    products.base.application.clear_valve: "(((((((((((((((((((((  valve"    # at products.base.application.clear_valve
    products.base.application.activation: {action: "(((((((((((((((((((((  act"}    # at products.base.application.activation.action    # also CUR003 at products.base.application.activation
    products.base.application.put_away: "(((((((((((((((((((((  away"    # at products.base.application.put_away
To put right
    Flatten the lists, quotations or brackets, or shorten the run of characters.
"""

from collections.abc import Mapping

from specgen.model.application import Activation, Application, Mixing
from specgen.model.preparation import PreparationStep
from specgen.model.prose import prose_fault
from specgen.model.walk import records
from specgen.rules.kit import ERROR, LOGIC, Job, Node, Problem, Problems, Product, Spec, System, date, rule

# Every field that some template prints through the filter `prose`; a test prints them all.
PROSE: Mapping[type[Node], tuple[str, ...]] = {
    Job: ("scope",),
    System: ("use",),
    PreparationStep: ("text",),
    Product: ("about", "not_claimed"),
    Application: ("nozzle", "clear_valve", "put_away", "restart"),
    Mixing: ("thinner", "stir", "clock_starts"),
    Activation: ("action",),
}


@rule("DOC001", on=Node, severity=ERROR, source=LOGIC)
def prose_within_bounds(subject: Node, spec: Spec, on: date) -> Problems:
    for path, record in records(subject):
        for name in PROSE.get(type(record), ()):
            fault = prose_fault(getattr(record, name) or "")
            if fault is not None:
                yield Problem((*path, name), f"the text {fault.what}", fault.remedy)
