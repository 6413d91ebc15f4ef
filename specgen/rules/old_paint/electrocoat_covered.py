"""OLD011 Electrocoat is primed, surfaced or sealed before the colour coat

Checks
    Electrocoat as the outermost existing coat, or as the finish the part is supplied with: the first new coat is not a basecoat, topcoat or clearcoat.
Why
    Sunlight passes through the colour coat and breaks the surface of the electrocoat down to powder; the colour peels in sheets after a summer or two.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: dip, family: ecoat, thickness: 20 um}]
Fails
    jobs.refit.items.STEP.old_coats: [{id: dip, family: ecoat, thickness: 20 um}]    # at systems.chassis.layers.barrier.role
    systems.chassis.layers.barrier.role: topcoat
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: scuff

    jobs.refit.items.DOOR.old_coats: [{id: metal, family: oem_finish, thickness: 20 um}, {id: dip, family: ecoat, thickness: 20 um}]
    products.primer.roles: [sealer, topcoat]
    systems.cab.layers.primer.role: topcoat    # at systems.cab.layers.primer.role    # also LAY001 at systems.cab.layers.base.role    # also PRE017 at preparations.sand-steel.steps.sand.abrasive
To put right
    Scuff the electrocoat with P320 to P500 and apply a primer, surfacer or sealer beneath the colour coat.
"""

from specgen.facts.pairs.old_paint import top_pairs
from specgen.facts.pairs.overcoat import overcoating
from specgen.rules.kit import ERROR, Job, Problem, Problems, Spec, date, rule


@rule(
    "OLD011",
    on=Job,
    severity=ERROR,
    source=overcoating("basecoat", "ecoat").citation,
)
def electrocoat_covered(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.bare_electrocoat:
            what = f"{pair.stack.item.id}: the {pair.new.layer.role} {pair.new.layer.id} is applied directly over electrocoat"
            yield Problem((*pair.new.path, "role"), what, absolute=True)
