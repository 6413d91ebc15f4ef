"""The part before paint: what it is made of, what state it is in, and how it is prepared, step by step."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import (
    Duration,
    Id,
    Length,
    Line,
    Percentage,
    Pressure,
    Strict,
    SurfaceDensity,
    Text,
    Thickness,
    ThicknessRange,
    WholeNumber,
    YesNo,
    choice,
    listed,
    nearest_of,
    refuse,
)
from specgen.model.figure import Figure
from specgen.model.node import Node
from specgen.standards.reads import remembered


class StepKind(StrEnum):
    """What a preparation step does."""

    DRILL = "drill"
    CUT = "cut"
    STEAM = "steam-clean"
    WASH = "wash"
    DEGREASE = "degrease"
    STRIP = "strip"
    BLAST = "blast"
    SWEEP = "sweep-blast"
    JET = "water-jet"
    HAND_TOOL = "hand-tool"
    POWER_TOOL = "power-tool"
    SAND = "sand"
    FEATHER = "feather-edge"
    MASK = "mask"
    SEAL = "seal"
    DUST_OFF = "dust-off"
    CONVERT = "conversion"
    TEST = "test"


@remembered
def known_grades() -> dict[str, str]:
    """What an author may write for a grade, and the grade it is: ids of the table and the usual spellings."""
    from specgen.standards.tables import table

    known = {row["id"]: row["id"] for row in table("preparation_grades").rows}
    return known | {row["written"]: row["grade"] for row in table("preparation_spellings").rows}


_GRADES = "preparation_grades"


def _parse_grade(text: str) -> str:
    known = known_grades()
    if text not in known:
        raise refuse(f"'{text[:40]}' is not a preparation grade that is known here", nearest_of(text, list(known)))
    return known[text]


# Sa 2.5 and Sa 2 1/2 are one grade: a change of spelling is no change of what is asked.
Grade = Annotated[
    str, Strict(f"id of the table {_GRADES}", _parse_grade, lambda: {"enum": list(known_grades())}, _GRADES)
]


class Substrate(Node):
    """What the part is made of and the state it comes in. What is not said is not known."""

    material: Annotated[str, listed("materials")] = leaf(
        Polarity.REPLACED, Concern.COMPATIBILITY, "material, an id of the table materials", required=True
    )
    thickness: Length | None = leaf(Polarity.FACT, Concern.PREPARATION, "thickness of sheet or section")
    condition: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "condition on receipt")
    rust_grade: Annotated[str, listed("rust_grades")] | None = leaf(
        Polarity.FACT, Concern.PREPARATION, "rust grade of bare steel: A (adherent mill scale) to D (general pitting)"
    )
    zinc_state: Annotated[str, listed("galvanized_states")] | None = leaf(
        Polarity.FACT, Concern.PREPARATION, "state of hot-dip zinc: new, partly_weathered or fully_weathered"
    )
    salt_exposure: YesNo | None = leaf(
        Polarity.FACT, Concern.PREPARATION, "exposure of the bare or rusted steel to road salt or sea air"
    )
    has_profile: YesNo | None = leaf(Polarity.FACT, Concern.PREPARATION, "existing blast profile of the metal")
    flexible: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "flexible part (flexes in service or when fitted)"
    )
    moisture: Percentage | None = leaf(Polarity.FACT, Concern.PREPARATION, "wood moisture content, by mass of dry wood")
    bare_outdoors: Duration | None = leaf(
        Polarity.FACT, Concern.PREPARATION, "outdoor exposure of the uncoated part, as in 10 days"
    )
    attached_metals: tuple[Annotated[str, listed("materials")], ...] = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "attached metals left uncoated", default=()
    )
    joint_sealed: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "sealed or insulated joint to the attached metals"
    )


class PreparationStep(Node):
    """One step, with what it is done with, the grade it must reach and how that is seen."""

    id: Id = leaf(Polarity.SCOPE, Concern.PREPARATION, "id of the step", required=True)
    do: Annotated[StepKind, choice(StepKind)] = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "kind of step", required=True
    )
    text: Text = leaf(Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "instruction, in words", required=True)
    grade: Grade | None = leaf(
        Polarity.LADDER, Concern.PREPARATION, "preparation grade required, as in P Ma, St 3, Sa 2 1/2, SP 10 or WJ-2"
    )
    abrasive: Line | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "paper, pad or abrasive, in words; papers in their order by P number"
    )
    medium: Annotated[str, listed("preparation_media")] | None = leaf(
        Polarity.REPLACED,
        Concern.PREPARATION,
        "abrasive, tool, solvent or treatment, an id of the table preparation_media",
    )
    grain: ThicknessRange | None = leaf(Polarity.WITHIN, Concern.PREPARATION, "abrasive grain size, as in 200..500 um")
    pressure: Pressure | None = leaf(Polarity.AT_MOST, Concern.PREPARATION, "maximum blast pressure, as in 275 kPa")
    zinc_loss: Thickness | None = leaf(Polarity.AT_MOST, Concern.PREPARATION, "maximum zinc removal")
    profile: ThicknessRange | None = leaf(Polarity.WITHIN, Concern.PREPARATION, "surface profile, as in 25..40 um")
    profile_method: Annotated[str, listed("profile_methods")] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "method of measuring the profile, as in ISO 8503-5"
    )
    unrinsed_acid: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "unrinsed acid of a rust converter or conversion treatment"
    )
    cleanliness: Annotated[str, listed("cleanliness_tests")] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "cleanliness test, as in water_break"
    )
    acceptance: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "acceptance criterion")
    figures: tuple[Figure, ...] = entries("pictures and sketches of the step")


class Preparation(Node):
    """An ordered preparation that jobs refer to, and what the surface must be when it is done."""

    id: Id = leaf(Polarity.SCOPE, Concern.PREPARATION, "id of the preparation", required=True)
    title: Line = leaf(Polarity.WORDING, Concern.PREPARATION, "name as printed", required=True)
    materials: tuple[Annotated[str, listed("materials")], ...] = leaf(
        Polarity.ONE_OF, Concern.PREPARATION, "materials the preparation is for, ids of the table materials", default=()
    )
    steps: tuple[PreparationStep, ...] = entries("steps in their order", required=True)
    coat_within: Duration | None = leaf(
        Polarity.AT_MOST, Concern.PREPARATION, "maximum interval from the last step to the first coat"
    )
    salt_limit: SurfaceDensity | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum soluble salts, as sodium chloride, as in 50 mg/m2"
    )
    dust_quantity: WholeNumber | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum dust quantity rating to ISO 8502-3: 0 to 5"
    )
    dust_size: WholeNumber | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum dust size class to ISO 8502-3: 0 to 5"
    )
    edge_grade: Annotated[str, listed("steel_defect_grades")] | None = leaf(
        Polarity.LADDER, Concern.PREPARATION, "preparation grade of welds and edges to ISO 8501-3: P1 to P3"
    )
    edge_radius: Length | None = leaf(Polarity.AT_LEAST, Concern.PREPARATION, "minimum edge radius, as in 2 mm")
