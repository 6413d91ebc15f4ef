"""OLD008 The existing coating adheres before it is overcoated

Checks
    Each existing coat that remains: measured adhesion (class 2 or worse of ASTM D3359, which is class 3 or worse of ISO 2409), and whether it is stated to be sound.
Why
    New paint contracts as it dries; a weak existing coat comes off with everything on it, and the damage is deeper than before.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, tape: 4A, sound: yes}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, tape: 3A, cross_cut: 2}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, tape: 2A}]    # at jobs.refit.items.DOOR.old_coats.factory.tape

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, cross_cut: 3}]    # at jobs.refit.items.DOOR.old_coats.factory.cross_cut

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: no}]    # at jobs.refit.items.DOOR.old_coats.factory.sound

    Given second good
    jobs.rails.items.LOCKER.old_coats.works.sound: no    # at jobs.rails.items.LOCKER.old_coats.works.sound
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: pu_2k_aliphatic, thickness: 3 mil, tape: 2B}    # at jobs.rails.items.LOCKER.old_coats.later.tape

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, cross_cut: 4}]    # at jobs.refit.items.STEP.old_coats.factory.cross_cut
To put right
    Strip back to paint that adheres, feather the edge, and measure adhesion again on what remains.
"""

from specgen.facts.job.stack import stacks
from specgen.facts.pairs.adhesion import weak_adhesion
from specgen.facts.pairs.old_paint import citation_of
from specgen.rules.kit import WARNING, Job, Problem, Problems, Spec, date, rule


@rule("OLD008", on=Job, severity=WARNING, source=citation_of("adhesion_marginal"))
def existing_coating_adheres(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        for old in stack.old:
            weak = weak_adhesion(old.coat)
            if weak is not None:
                what = f"{stack.item.id}: {old.name} has poor adhesion ({weak.words}) but is overcoated with the new system"
                yield Problem((*old.path, weak.leaf), what, source=weak.source, absolute=True)
            elif old.coat.sound is False:
                what = f"{stack.item.id}: {old.name} is not sound but is overcoated with the new system"
                yield Problem((*old.path, "sound"), what, absolute=True)
