"""Inspection points and what decides them.

A film criterion names its rule, for each rule judges the same readings differently.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, leaf, part
from specgen.model.field_types import Code, Id, Length, Line, Text, Thickness, WholeNumber, YesNo, choice
from specgen.model.node import Node


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
    APPLICATION = "during-application"
    COMPLETION = "completion"


class LowReadings(StrEnum):
    """How many readings ISO 19840 lets lie below the nominal film: the two ways its clause is read."""

    FEWER_THAN = "fewer-than"
    AT_MOST = "at-most"


class GaugePrinciple(StrEnum):
    """How a gauge finds the film."""

    MAGNETIC = "magnetic"
    EDDY_CURRENT = "eddy-current"
    ULTRASONIC = "ultrasonic"
    COMB = "wet-film-comb"
    DESTRUCTIVE = "destructive"


class ZeroedOn(StrEnum):
    """The surface a gauge was set to zero on."""

    SMOOTH = "smooth-steel"
    PROFILE = "blast-profile"


class Gauge(Node):
    """The instrument, and what is taken off its readings."""

    principle: Annotated[GaugePrinciple, choice(GaugePrinciple)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "how the gauge finds the film"
    )
    zeroed_on: Annotated[ZeroedOn, choice(ZeroedOn)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "surface the gauge was set to zero on"
    )
    correction: Thickness | None = leaf(
        Polarity.EXACTLY,
        Concern.ACCEPTANCE,
        "taken off every reading, for the blast profile or the zinc below the paint",
    )


class Readings(Node):
    """Where and how often film is read."""

    areas: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "areas that are judged one by one")
    spots: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "spots in all areas together")
    readings: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "gauge readings in all spots together")
    from_edge: Length | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "least distance from edges, corners and holes"
    )


class Criterion(Node):
    """What passes."""

    rule: Annotated[AcceptanceRule, choice(AcceptanceRule)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "counting rule for film readings"
    )
    edition: Code | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "edition of that rule, as in 2012")
    level: WholeNumber | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "restriction level of that rule")
    min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "least film")
    nominal: Thickness | None = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "nominal film that ISO 19840 and 90-10 count from"
    )
    max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "most film")
    spot_min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "least mean of a spot, under SSPC-PA 2")
    spot_max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "most mean of a spot, under SSPC-PA 2")
    area_min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "least mean of an area, under SSPC-PA 2")
    area_max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "most mean of an area, under SSPC-PA 2")
    low_readings: Annotated[LowReadings, choice(LowReadings)] | None = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "fewer than 20 % or at most 20 % of readings below nominal, under ISO 19840",
    )
    governs: YesNo = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "this criterion decides where two rules judge one film", default=False
    )
    text: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what passes, in words")


class InspectionPoint(Node):
    """One look, test or measurement, when it falls, and what becomes of a failure."""

    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the point", required=True)
    check: Line = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what is looked at", required=True)
    at: Annotated[Stage, choice(Stage)] | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "stage it falls in")
    after: Id | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "id of the layer it follows")
    items: tuple[Id, ...] = leaf(
        Polarity.SCOPE, Concern.ACCEPTANCE, "ids of the items it looks at; all of the job where left out", default=()
    )
    method: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "method or instrument")
    gauge: Gauge | None = part("instrument for film")
    readings: Readings | None = part("where and how often film is read")
    frequency: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "how often, how many")
    criterion: Criterion = part("what passes", required=True)
    hold_point: YesNo = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "work stops until it is signed", default=False)
    if_failed: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "what to do with a failure")
