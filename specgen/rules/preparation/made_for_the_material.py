"""PRE023 A preparation is used on a material it is for

Checks
    The material of each part a preparation is used on is among the materials the preparation is stated to be for. A preparation that states none is not assessed.
Why
    What cleans and keys steel embeds iron in aluminium, strips zinc, or melts plastic.
Passes
    preparations.sand-steel.materials: [steel_cold_rolled, steel_hot_rolled]

    Given second good
    preparations.blast.materials: [steel_hot_rolled, cast_iron]
Fails
    preparations.sand-steel.materials: [cast_iron]    # at preparations.sand-steel.materials

    Given second good
    preparations.sand.materials: [aluminium, steel_hot_rolled]    # at preparations.sand.materials
To put right
    Choose a preparation for that material, or add the material if the preparation suits it.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import ERROR, LOGIC, Preparation, Problem, Problems, Spec, date, rule, table


@rule("PRE023", on=Preparation, severity=ERROR, source=LOGIC)
def made_for_the_material(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if not preparation.materials:
        return
    told: set[str] = set()
    for part in prepared_with(preparation, spec):
        if part.material not in {*preparation.materials, *told, NOT_NAMED}:
            told.add(part.material)
            names = ", ".join(table("materials").row("id", material)["name"] for material in preparation.materials)
            what = f"the preparation {preparation.id} is for {names}, but is used on {part.name}"
            yield Problem(("materials",), what)
