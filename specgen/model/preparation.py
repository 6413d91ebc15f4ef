"""The part before paint: what it is made of, what state it is in, and how it is prepared, step by step."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.field_types import Code, Duration, Id, Length, Line, Text, choice, listed
from specgen.model.node import Node
from specgen.model.senses import Concern, Sense, entries, leaf


class StepKind(StrEnum):
    """What a preparation step does."""

    WASH = "wash"
    DEGREASE = "degrease"
    STRIP = "strip"
    BLAST = "blast"
    SWEEP = "sweep-blast"
    HAND_TOOL = "hand-tool"
    POWER_TOOL = "power-tool"
    SAND = "sand"
    FEATHER = "feather-edge"
    MASK = "mask"
    DUST_OFF = "dust-off"
    CONVERT = "conversion"
    TEST = "test"


class Substrate(Node):
    """What the part is made of and the state it comes in."""

    material: Annotated[str, listed("materials")] = leaf(
        Sense.REPLACED, Concern.COMPATIBILITY, "an id of the table materials", required=True
    )
    thickness: Length | None = leaf(Sense.FACT, Concern.PREPARATION, "thickness of sheet or section")
    condition: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.PREPARATION, "state in which the part is taken over")


class PreparationStep(Node):
    """One step, with the grade it must reach and how that is seen."""

    id: Id = leaf(Sense.SCOPE, Concern.PREPARATION, "id of the step", required=True)
    do: Annotated[StepKind, choice(StepKind)] = leaf(Sense.REPLACED, Concern.PREPARATION, "kind of step", required=True)
    text: Text = leaf(Sense.REQUIREMENT_TEXT, Concern.PREPARATION, "what to do, in words", required=True)
    grade: Code | None = leaf(Sense.LADDER, Concern.PREPARATION, "grade to reach, as in P Ma or St 3")
    abrasive: Line | None = leaf(Sense.REPLACED, Concern.PREPARATION, "paper, pad or blast medium")
    acceptance: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "how to see that it is done")


class Preparation(Node):
    """An ordered preparation that jobs refer to."""

    id: Id = leaf(Sense.SCOPE, Concern.PREPARATION, "id of the preparation", required=True)
    title: Line = leaf(Sense.WORDING, Concern.PREPARATION, "name as printed", required=True)
    steps: tuple[PreparationStep, ...] = entries("steps in their order", required=True)
    coat_within: Duration | None = leaf(Sense.AT_MOST, Concern.PREPARATION, "longest wait from last step to first coat")
