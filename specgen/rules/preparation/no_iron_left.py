"""PRE004 No iron contamination on aluminium, stainless steel, zinc or copper

Checks
    The abrasive or tool of each working step on such a metal: none of steel or chilled iron, and none that was used on steel before. A blasting step that names no abrasive cannot be assessed. Where the medium of a step leaves none, or none is stated, its words are read: a wire brush, steel wool, steel grit or shot in them is a warning, unless they forbid it or say stainless, brass, bronze or nylon.
Why
    Iron embedded in the metal rusts through the paint and starts galvanic corrosion: brown specks first, blisters later.
Passes
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.medium: nylon_web

    Given second good
    preparations.blast.steps.blast.medium: steel_grit

    preparations.sand-steel.steps.sand.text: Wire brush the welds, then sand with P180.

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.text: Sand with P180. Never use a wire brush or steel wool.

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.text: Clean welds with a stainless steel wire brush, then sand with P180.
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.text: Clean welds with a wire brush, then sand with P180.    # warning at preparations.sand-steel.steps.sand.text

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P180, then steel wool    # warning at preparations.sand-steel.steps.sand.text

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.medium: nylon_web
    preparations.sand-steel.steps.sand.text: Brush with steel wool.    # warning at preparations.sand-steel.steps.sand.text

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.medium: carbon_steel_brush    # at preparations.sand-steel.steps.sand.medium

    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: blast
    preparations.blast: {id: blast, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: sweep-blast, text: Sweep., grade: SP 16, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # note at preparations.blast.steps.blast.medium

    Given second good
    jobs.lids.items.FRAME.substrate: {material: galvanized_hot_dip, thickness: 0.25 in}
    preparations.blast.steps.blast.medium: chilled_iron    # warning at preparations.blast.steps.blast.medium    # also PRE002 at preparations.blast.steps.blast.grade    # also JOB015 at preparations.blast.steps.blast.text

    jobs.refit.items.STEP.substrate: {material: copper, thickness: 3 mm}
    preparations.sand-steel.steps.dust: {id: dust, do: power-tool, text: Brush., medium: carbon_steel_brush}    # warning at preparations.sand-steel.steps.dust.medium
To put right
    Use alumina, garnet, nylon web or a stainless steel brush, and keep separate papers for this metal.
"""

from specgen.facts.job.iron_named import iron_named
from specgen.facts.pairs.parts import BLASTING, medium_name, prepared_with
from specgen.model.preparation import PreparationStep
from specgen.rules.kit import (
    ERROR,
    NOTE,
    PRACTICE,
    WARNING,
    Preparation,
    Problem,
    Problems,
    Row,
    Spec,
    cite,
    date,
    rule,
    table,
)


@rule("PRE004", on=Preparation, severity=ERROR, source=cite("ALUMINIUM-ANSWER"))
def no_iron_left(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        refused = _iron(part.material)
        for step in preparation.steps if refused else ():
            path = ("steps", step.id, "medium")
            if step.medium in refused:
                source = table("substrate_media").row_citation(refused[step.medium])
                yield Problem(path, f"{medium_name(step)} leaves iron on {part.name}", source=source)
            elif named := _named(step):
                beside = f"; typed is {medium_name(step)}" if step.medium is not None else ""
                what = f"{step.id} uses {named} on {part.name}, and does not say that it leaves no iron{beside}"
                yield Problem(("steps", step.id, "text"), what, severity=WARNING, source=PRACTICE)
            elif step.medium is None and step.do in BLASTING:
                what = f"cannot be assessed: {step.id} blasts {part.name} but names no abrasive"
                yield Problem(path, what, "write the abrasive, as in garnet or alumina", NOTE)


def _iron(material: str) -> dict[str, Row]:
    iron = {row["id"] for row in table("preparation_media").rows if row["iron"] == "yes"}
    rows = [row for row in table("substrate_media").rows if row["material"] == material]
    return {row["medium"]: row for row in rows if row["verdict"] == "forbidden" and row["medium"] in iron}


def _named(step: PreparationStep) -> str:
    """The steel tool or abrasive a step names in words; empty where its sentence forbids it or names another metal."""
    return iron_named(step.text) or iron_named(step.abrasive or "")
