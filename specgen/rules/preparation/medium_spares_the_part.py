"""PRE005 The abrasive, tool or solvent does not damage the substrate

Checks
    The abrasive, tool or solvent of each step, against what the table excludes for that material (iron contamination has a rule of its own): hard abrasives on aluminium, ketones on plastic, strippers on laminate, fast sanders on polyolefins.
Why
    The wrong medium pits soft metal, crazes or melts plastic, and softens laminate before any paint is applied.
Passes
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.medium: soft_media

    jobs.refit.items.STEP.substrate: {material: grp}
    preparations.sand-steel.steps.degrease.medium: ketone
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.medium: hard_media    # at preparations.sand-steel.steps.sand.medium

    jobs.refit.items.STEP.substrate: {material: grp}
    preparations.sand-steel.steps.degrease.medium: paint_stripper    # at preparations.sand-steel.steps.degrease.medium

    jobs.refit.items.STEP.substrate: {material: plastic}
    preparations.sand-steel.steps.dust: {id: dust, do: degrease, text: Wipe., medium: ketone}    # at preparations.sand-steel.steps.dust.medium    # also PRE017 at preparations.sand-steel.steps.sand.abrasive    # also SUB006 at systems.chassis.layers.barrier.product
To put right
    Use a softer or finer abrasive at low pressure or a milder cleaner, or sand by hand.
"""

from specgen.facts.pairs.parts import medium_name, prepared_with
from specgen.rules.kit import PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_MEDIA = table("substrate_media")


@rule("PRE005", on=Preparation, severity=WARNING, source=PRACTICE)
def medium_spares_the_part(preparation: Preparation, spec: Spec, on: date) -> Problems:
    iron = {row["id"] for row in table("preparation_media").rows if row["iron"] == "yes"}
    for part in prepared_with(preparation, spec):
        refused = {
            row["medium"]: row
            for row in _MEDIA.rows
            if row["material"] == part.material and row["verdict"] == "forbidden" and row["medium"] not in iron
        }
        for step in preparation.steps:
            if step.medium in refused:
                what = f"{medium_name(step)} must not be used on {part.name}"
                yield Problem(("steps", step.id, "medium"), what, source=_MEDIA.row_citation(refused[step.medium]))
