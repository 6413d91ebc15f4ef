"""OLD012 Powder coating is degreased and abraded

Checks
    Powder coating as the outermost existing coat, or as the finish the part is supplied with: the preparation degreases and abrades.
Why
    Powder coating contains wax that migrates to its surface and separates new paint from it; and the stoved film itself gives no adhesion.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: rack, family: powder, thickness: 70 um}]

    jobs.refit.items.DOOR.old_coats: [{id: rack, family: powder, thickness: 70 um}, {id: factory, family: oem_finish, thickness: 40 um}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: rack, family: powder, thickness: 70 um}]    # at jobs.refit.items.DOOR.old_coats.rack
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}
    jobs.refit.items.DOOR.preparation: wipe

    jobs.refit.items.STEP.old_coats: [{id: rack, family: powder, thickness: 70 um}]    # at jobs.refit.items.STEP.old_coats.rack
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: sand, do: sand, text: Sand., abrasive: P180, grade: P Ma}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: wipe    # also PRE001 at preparations.wipe.steps.sand
To put right
    Degrease, abrade all over until no gloss remains, and degrease again.
"""

from specgen.facts.pairs.old_paint import done_to_old_paint, top_pairs
from specgen.facts.pairs.overcoat import overcoating
from specgen.rules.kit import WARNING, Concern, Job, Problem, Problems, Spec, date, rule


@rule(
    "OLD012",
    on=Job,
    severity=WARNING,
    concern=Concern.PREPARATION,
    source=overcoating("epoxy_2k", "powder").citation,
)
def powder_abraded(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.old.family != "powder":
            continue
        done = done_to_old_paint(pair, job, spec)
        lacking = [text for need, text in (("degrease", "degreased"), ("abrade", "abraded")) if need not in done]
        if lacking:
            what = f"{pair.stack.item.id}: the powder coating {pair.old.coat.id} is not {' or '.join(lacking)}"
            yield Problem(pair.old.path, what, absolute=True)
