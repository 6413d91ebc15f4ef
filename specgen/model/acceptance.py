"""Inspection points and what decides them. A film criterion names its rule, for each rule judges the same readings differently."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.field_types import Code, Id, Line, Text, Thickness, WholeNumber, YesNo, choice
from specgen.model.node import Node
from specgen.model.senses import Concern, Sense, leaf, part


class AcceptanceRule(StrEnum):
    """A counting rule for film readings."""

    PA_2 = "SSPC-PA-2"
    ISO_19840 = "ISO-19840"
    NINETY_TEN = "90-10"
    OWN = "own"


class Stage(StrEnum):
    """When an inspection point falls, where it does not follow a layer."""

    RECEIPT = "receipt"
    PREPARED = "after-preparation"
    APPLYING = "while-applying"
    FINISHED = "finished"


class Criterion(Node):
    """What passes."""

    rule: Annotated[AcceptanceRule, choice(AcceptanceRule)] | None = leaf(
        Sense.REPLACED, Concern.ACCEPTANCE, "counting rule for film readings"
    )
    edition: Code | None = leaf(Sense.REPLACED, Concern.ACCEPTANCE, "edition of that rule, as in 2012")
    level: WholeNumber | None = leaf(Sense.REPLACED, Concern.ACCEPTANCE, "restriction level of that rule")
    min: Thickness | None = leaf(Sense.AT_LEAST, Concern.ACCEPTANCE, "least film")
    max: Thickness | None = leaf(Sense.AT_MOST, Concern.ACCEPTANCE, "most film")
    text: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what passes, in words")


class InspectionPoint(Node):
    """One look, test or measurement, when it falls, and what becomes of a failure."""

    id: Id = leaf(Sense.SCOPE, Concern.ACCEPTANCE, "id of the point", required=True)
    check: Line = leaf(Sense.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what is looked at", required=True)
    at: Annotated[Stage, choice(Stage)] | None = leaf(Sense.EXACTLY, Concern.ACCEPTANCE, "stage it falls in")
    after: Id | None = leaf(Sense.EXACTLY, Concern.ACCEPTANCE, "id of the layer it follows")
    method: Line | None = leaf(Sense.REPLACED, Concern.ACCEPTANCE, "method or instrument")
    often: Line | None = leaf(Sense.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "how often, how many")
    criterion: Criterion = part("what passes", required=True)
    hold_point: YesNo = leaf(Sense.EXACTLY, Concern.ACCEPTANCE, "work stops until it is signed", default=False)
    if_failed: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what to do with a failure")
