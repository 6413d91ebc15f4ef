"""PRE003 Thin sheet is not fully blast-cleaned

Checks
    Full blast-cleaning of steel or aluminium, against the thickness below which a document forbids it. Sweep-blasting is assessed by its own rule.
Why
    Blasting stretches one face of thin sheet, and the sheet bows; no body filler restores it.
Passes
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm
    systems.cab.layers.primer.film.min: 45 um
    systems.cab.total: {min: 100 um, nominal: 130 um, max: 180 um}
    jobs.refit.inspection.primer-film.criterion.min: 45 um

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 3 mm

    Given second good
    jobs.lids.items.FRAME.substrate.thickness: 1.6 mm
Fails
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}    # at preparations.sand-steel.steps.sand.do

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    without jobs.refit.substrate.thickness    # note at jobs.refit.substrate.thickness

    Given second good
    jobs.lids.items.FRAME.substrate: {material: steel_hot_rolled}    # note at jobs.lids.items.FRAME.substrate.thickness

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}    # at preparations.sand-steel.steps.sand.do
    jobs.refit.substrate.thickness: 1.5 mm
    jobs.refit.items.STEP.substrate: {material: cast_iron, thickness: 1 mm}

    Given second good
    jobs.lids.items.FRAME.substrate.thickness: 1.59 mm    # at preparations.blast.steps.blast.do
To put right
    Sand to P Ma, sweep-blast with a soft abrasive at low pressure after a trial on scrap, or state why this sheet withstands it.
"""

from fractions import Fraction

from specgen.facts.pairs.parts import Part, members, prepared_with
from specgen.model.preparation import StepKind
from specgen.rules.kit import (
    NOTE,
    WARNING,
    Citation,
    Preparation,
    Problem,
    Problems,
    Quantity,
    Spec,
    cell_citation,
    date,
    rule,
    table,
)


@rule(
    "PRE003",
    on=Preparation,
    severity=WARNING,
    source=cell_citation("substrates", "steel_cold_rolled", "blast_from_mm"),
)
def thin_sheet_not_blasted(preparation: Preparation, spec: Spec, on: date) -> Problems:
    blasting = next((step for step in preparation.steps if step.do is StepKind.BLAST), None)
    if blasting is None:
        return
    for part in prepared_with(preparation, spec):
        limit = _limit(part)
        if limit is None:
            continue
        least, source = limit
        thickness = part.substrate.thickness
        if thickness is None:
            owner = ("items", part.item.id) if part.item.substrate is not None else ()
            path = ("jobs", part.job.id, *owner, "substrate", "thickness")
            what = f"cannot be assessed: {part.name} is blasted, but its thickness is not stated"
            yield Problem(path, what, f"write the thickness; blasting is allowed from {least}", NOTE, absolute=True)
        elif thickness < least:
            what = f"{part.name} {thickness} thick is fully blast-cleaned; the minimum thickness is {least}"
            yield Problem(("steps", blasting.id, "do"), what, source=source)


def _limit(part: Part) -> tuple[Quantity, Citation] | None:
    """All plain steel has the limit of steel sheet."""
    material = "steel_cold_rolled" if part.material in members("bare_steel") else part.material
    rows = [row for row in table("substrates").rows if row["material"] == material and row["blast_from_mm"]]
    if not rows:
        return None
    digits = rows[0]["blast_from_mm"]
    return Quantity.of("length", Fraction(digits), "mm", digits), cell_citation("substrates", material, "blast_from_mm")
