"""USE006 Dead volume of the blast profile is calculated by a named table

Checks
    A job that states the height of the blast profile also states the table by which the paint that fills it is calculated, and some item has one: blast-cleaned, worked to a profile by tools, or jetted down to the profile of an earlier blasting. Only the first coat is charged with it.
Why
    Three tables are in use; for one and the same profile of 75 um they give 35, 50 and 75 um of paint.
Passes
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: blast, do: blast, text: Blast to an even profile., grade: Sa 2 1/2, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: blast
    jobs.refit.items.STEP.substrate: {material: steel_hot_rolled, thickness: 6 mm}
    jobs.refit.consumption: {transfer_efficiency: 60 %, profile: 20 um, dead_volume: by-roughness}

    Given second good

    preparations.sand-steel.steps.sand: {id: sand, do: power-tool, text: Grind to bare metal., grade: SP 11, profile: 15..20 um, profile_method: ASTM D4417-B}
    systems.cab.layers.primer.film.min: 45 um
    systems.cab.total: {min: 100 um, nominal: 130 um, max: 180 um}
    jobs.refit.inspection.primer-film.criterion.min: 45 um
    jobs.refit.consumption: {transfer_efficiency: 60 %, profile: 20 um, dead_volume: by-roughness}
Fails
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: blast, do: blast, text: Blast to an even profile., grade: Sa 2 1/2, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: blast
    jobs.refit.items.STEP.substrate: {material: steel_hot_rolled, thickness: 6 mm}
    jobs.refit.consumption: {transfer_efficiency: 60 %, profile: 20 um}    # at jobs.refit.consumption.dead_volume

    jobs.refit.consumption: {transfer_efficiency: 60 %, profile: 60 um, dead_volume: by-band}    # at jobs.refit.consumption.profile

    Given second good
    without jobs.rails.consumption.dead_volume    # at jobs.rails.consumption.dead_volume

    Given second good
    jobs.lids.items.FRAME.preparation: sand
    jobs.lids.consumption: {transfer_efficiency: 50 %, profile: 1 mil, dead_volume: whole-profile}    # at jobs.lids.consumption.profile
To put right
    Write dead_volume: by-roughness, by-band or whole-profile; leave out the profile for sanded sheet.
"""

from specgen.facts.job.quantities import has_profile
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule, table


@rule("USE006", on=Job, severity=WARNING, source=table("dead_volume_by_roughness").citation)
def dead_volume_named(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.consumption
    if stated is None or stated.profile is None:
        return
    if stated.dead_volume is None:
        what = f"a profile of {stated.profile} is stated without the table for its dead volume"
        yield Problem(("consumption", "dead_volume"), what)
    if not any(has_profile(job, item, spec) for item in job.items):
        what = (
            f"a profile of {stated.profile} is stated, but no item of the job is blast-cleaned or comes with a profile"
        )
        yield Problem(("consumption", "profile"), what, source=LOGIC)
