"""USU001 A figure lies in its usual range

Checks
    Figures of products, preparations, systems and jobs, against the table usual_ranges: where a figure of its kind usually lies, by pack, curing type, generic type, gloss grade or material.
Why
    A slip of the decimal point or of the unit is a figure like any other until it is held against those of other sheets; on the page it is then an instruction.
Passes
    products.base.application.distance: 10..40 cm

    products.base.application.shake: 1 min

    products.primer.shelf_life: 12 months

    products.primer.climate.humidity: 20..85 %
    jobs.refit.climate.humidity: 40..75 %

    jobs.refit.substrate.thickness: 4 mm

    products.clear.hazards.isocyanates: {monomer: 0.5 %}

    Given second good
    products.gloss.application.mixing.ratio_by_volume: 12:1

    Given a body filler under a primer
    products.barrier.application.mixing: {ratio_by_mass: "100:2", stir: Stir to one shade., clock_starts: when the paste is in}
Fails
    products.base.application.distance: 9 cm..25 cm    # at products.base.application.distance

    products.base.application.distance: 20..41 cm    # at products.base.application.distance

    products.primer.application.shake: 59 s    # at products.primer.application.shake

    products.clear.shelf_life: 61 months    # at products.clear.shelf_life

    products.primer.climate.humidity: 19..85 %    # at products.primer.climate.humidity

    jobs.refit.substrate.thickness: 4.1 mm    # at jobs.refit.substrate.thickness

    products.clear.hazards.isocyanates: {monomer: 0.51 %}    # at products.clear.hazards.isocyanates.monomer

    products.primer.variants.grey.gloss: 60..70 GU    # at products.primer.variants.grey.gloss
    products.primer.variants.grey.gloss_grade: gloss

    products.primer.variants.red: {id: red, name: red, order_number: EX-101, gloss_grade: Matt, gloss: 25 +- 10 GU}    # at products.primer.variants.red.gloss

    Given second good
    products.gloss.application.mixing.ratio_by_volume: 13:1    # at products.gloss.application.mixing.ratio_by_volume

    Given a body filler under a primer
    products.barrier.application.mixing: {ratio_by_mass: "100:20", stir: Stir to one shade., clock_starts: when the paste is in}    # at products.barrier.application.mixing.ratio_by_mass
To put right
    Check number and unit against the product's own data or the drawing. Where the figure is right, accept the finding with a waiver that names the test or the document.
"""

from specgen.facts.usual import unusual
from specgen.rules.kit import PRACTICE, WARNING, Node, Problem, Problems, Spec, date, rule, table


@rule("USU001", on=Node, severity=WARNING, source=PRACTICE)
def in_the_usual_range(subject: Node, spec: Spec, on: date) -> Problems:
    for found in unusual(subject):
        source = table("usual_ranges").row_citation(found.row)
        yield Problem(found.path, f"{found.row['called']} {found.value}; {found.usual}", source=source)
