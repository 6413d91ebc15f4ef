"""OLD009 Chalk is removed before painting

Checks
    The outermost existing coat where it chalks (class above 0 of ISO 4628-6): the preparation washes or degreases and abrades, and the first coat is not waterborne acrylic.
Why
    New paint over chalk adheres only to powder. Waterborne paint contains too little solvent to wet through the chalk that remains after washing.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, chalking: 3}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, chalking: 0}]
    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Steam clean., grade: SP 1, acceptance: Water stays whole.}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, chalking: 3}]    # at jobs.refit.items.DOOR.old_coats.factory.chalking    # also OLD014 at jobs.refit.items.DOOR.old_coats.factory
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}
    jobs.refit.items.DOOR.preparation: wipe

    jobs.refit.items.STEP.old_coats: [{id: under, family: epoxy_2k, thickness: 20 um, chalking: 4}, {id: factory, family: epoxy_2k, thickness: 60 um, chalking: 1}]    # at jobs.refit.items.STEP.old_coats.factory.chalking
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: sand, do: sand, text: Sand., abrasive: P180, grade: P Ma}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: wipe    # also PRE001 at preparations.wipe.steps.sand

    products.barrier.binder: acrylic_wb
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, chalking: 1}]    # at jobs.refit.items.STEP.old_coats.factory.chalking
To put right
    Wash with water and detergent, abrade until a dark rag stays dark, and start with an epoxy or oil-based primer that binds what remains.
"""

from specgen.facts.pairs.old_paint import done_to_old_paint, top_pairs
from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import WARNING, Concern, Job, Problem, Problems, Spec, date, rule

_WATERBORNE = "acrylic_wb"


@rule("OLD009", on=Job, severity=WARNING, concern=Concern.PREPARATION, source=table_row("mechanisms", "wet_out"))
def chalk_taken_off(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if not pair.old.coat.chalking:
            continue
        path, item = (*pair.old.path, "chalking"), pair.stack.item.id
        done = done_to_old_paint(pair, job, spec)
        lacking = [text for need, text in (("degrease", "washed"), ("abrade", "abraded")) if need not in done]
        if lacking:
            what = f"{item}: {pair.old.name} chalks (class {pair.old.coat.chalking}) and is not {' or '.join(lacking)}"
            yield Problem(path, what, absolute=True)
        elif pair.new.family == _WATERBORNE:
            what = f"{item}: {pair.old.name} chalks (class {pair.old.coat.chalking}), and the first coat is waterborne acrylic"
            yield Problem(path, what, absolute=True)
