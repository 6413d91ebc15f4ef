"""PRE017 The final paper suits the surface and the first coat

Checks
    The final paper of the last sanding step, against the range of papers for its task: key for primer or for body filler on steel, aluminium, stainless steel, gelcoat, plastic, electrocoat, existing finish; coarser on steelwork, whose environment or system has a category, and before a brush or roller. Where there is such a range and no paper is named, it cannot be assessed. Surfaces that are blasted after sanding, and zinc, have no range.
Why
    Too coarse, and the scratches swell through the colour; too fine, and the coat has too little key.
Passes
    preparations.sand-steel.steps.sand.abrasive: P80, then P120

    Given second good
    preparations.sand.steps.sand.abrasive: P180

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    jobs.refit.items.STEP.preparation: scuff
    systems.chassis.layers.barrier.role: topcoat
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}], coat_within: 4 h}

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    jobs.refit.items.STEP.preparation: scuff
    systems.chassis.layers.barrier.role: topcoat
    systems.chassis.layers.barrier.method: brush
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P120}], coat_within: 4 h}
Fails
    preparations.sand-steel.steps.sand.abrasive: P240    # at preparations.sand-steel.steps.sand.abrasive

    without preparations.sand-steel.steps.sand.abrasive    # note at preparations.sand-steel.steps.sand.abrasive

    Given second good
    preparations.sand.steps.more: {id: more, do: sand, text: Sand finer., abrasive: P240}    # at preparations.sand.steps.more.abrasive

    jobs.refit.items.STEP.substrate: {material: grp}
    preparations.sand-steel.steps.sand.abrasive: P150    # at preparations.sand-steel.steps.sand.abrasive

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    preparations.sand-steel.steps.sand.abrasive: P150    # at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps.sand.abrasive: P60    # at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps.sand.abrasive: P120, then P220    # at preparations.sand-steel.steps.sand.abrasive

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    systems.chassis.layers.barrier.role: topcoat    # at preparations.sand-steel.steps.sand.abrasive

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    jobs.refit.items.STEP.preparation: scuff
    systems.chassis.layers.barrier.role: topcoat
    systems.chassis.layers.barrier.method: brush
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P100}], coat_within: 4 h}    # at preparations.scuff.steps.scuff.abrasive
To put right
    Finish with a paper in the range named.
"""

from specgen.facts.job.exposure import has_category
from specgen.facts.pairs.papers import COLOUR, consequence, papers_in, papers_on_material, sanding_task, side_of_window
from specgen.facts.pairs.parts import BLASTING, Part, members, prepared_with
from specgen.model.application import BY_HAND
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_STAGES = table("sanding_stages")


@rule("PRE017", on=Preparation, severity=WARNING, source=PRACTICE)
def last_paper(preparation: Preparation, spec: Spec, on: date) -> Problems:
    step = _last_sanding(preparation)
    if step is None:
        return
    path, papers = ("steps", step.id, "abrasive"), papers_in(step.abrasive)
    for part in prepared_with(preparation, spec):
        name = _task(part, spec)
        if not name:
            continue
        row = sanding_task(name)
        papers_for = f"P{row['coarsest_p']} to P{row['finest_p']} for {row['task']}"
        if not papers:
            what = f"cannot be assessed: no paper is named; the range is {papers_for}"
            yield Problem(path, what, "", NOTE, _STAGES.row_citation(row))
        elif side := side_of_window(papers[-1], row):
            what = f"P{papers[-1]} is {side} than {papers_for}: {consequence(side)}"
            yield Problem(path, what, source=_STAGES.row_citation(row))


def _last_sanding(preparation: Preparation) -> PreparationStep | None:
    last = None
    for step in preparation.steps:
        last = step if step.do is StepKind.SAND else None if step.do in BLASTING else last
    return last


def _task(part: Part, spec: Spec) -> str:
    """The task of the table that this surface and this first coat make; empty where the table has none."""
    first = part.system.layers[0]
    if part.old_paint or part.material == "oem_finish":
        if part.is_repair or part.item.repair is not None:
            return ""  # bare metal, rings and existing coating lie side by side, each with a range of its own
        if first.role in COLOUR:
            coarse = first.method in BY_HAND or has_category(part.job, part.item, part.system)
            return "old_finish_steelwork" if coarse else "old_finish_before_colour"
        return "old_2k_before_epoxy_primer" if spec.product_of(first).binder in members("epoxy") else ""
    return papers_on_material(part.material, first.role) if part.material != "steel_blasted" else ""
