"""Inspection points and what decides them.

A film criterion names its rule, for each rule judges the same readings differently.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Area,
    Code,
    CountRange,
    Duration,
    Id,
    Length,
    Line,
    Share,
    Text,
    Thickness,
    Voltage,
    WholeNumber,
    YesNo,
    choice,
)
from specgen.model.figure import Figure
from specgen.model.node import Node
from specgen.model.test_required import AskedTest


class AcceptanceRule(StrEnum):
    """A counting rule for film readings."""

    PA_2 = "SSPC-PA-2"
    ISO_19840 = "ISO-19840"
    NINETY_TEN = "90-10"
    EIGHTY_TWENTY = "80-20"
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


class Each(StrEnum):
    """What has to lie inside the limits under an own rule: every gauge reading, or every spot, the mean of its readings."""

    READING = "reading"
    SPOT = "spot"


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
        Polarity.REPLACED, Concern.ACCEPTANCE, "measuring principle of the gauge"
    )
    zeroed_on: Annotated[ZeroedOn, choice(ZeroedOn)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "surface the gauge was zeroed on"
    )
    correction: Thickness | None = leaf(
        Polarity.EXACTLY,
        Concern.ACCEPTANCE,
        "correction value deducted from every reading (for the blast profile or for the zinc beneath the paint)",
    )


class Readings(Node):
    """Where and how often film is read."""

    areas: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "measurement areas assessed individually")
    spots: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "spot measurements in all areas together")
    readings: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "gauge readings at all spots together")
    from_edge: Length | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "minimum distance from edges, corners and holes"
    )


class SampledUnit(StrEnum):
    """What is sampled, each one or each time."""

    PART = "part"
    COAT = "coat"
    SHIFT = "shift"
    DAY = "day"
    BATCH = "batch"


class Sampling(Node):
    """How much is sampled and how often: of an area, in time, or of each part, shift or batch."""

    count: CountRange | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "measurements or tests each time, as in 5")
    first_area: Area | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "first area sampled once, as in 10 m2")
    each_area: Area | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "area sampled once each, after the first, as in 100 m2"
    )
    every: Duration | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "time between two samples, as in 4 h")
    per: Annotated[SampledUnit, choice(SampledUnit)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "unit sampled each: part, coat, shift, day or batch"
    )


class Criterion(Node):
    """What passes."""

    as_specified: YesNo = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "acceptance by the DFT specified for the coat, the coats up to it or the total; limits need not be repeated here",
        default=False,
    )
    rule: Annotated[AcceptanceRule, choice(AcceptanceRule)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "acceptance rule for DFT readings"
    )
    edition: Code | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "edition of that rule, as in 2012")
    level: WholeNumber | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "restriction level of that rule")
    min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "minimum DFT")
    nominal: Thickness | None = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "nominal DFT on which ISO 19840, 90-10 and 80-20 are based"
    )
    max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum DFT")
    spot_min: Thickness | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "minimum spot measurement, under SSPC-PA 2"
    )
    spot_max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum spot measurement, under SSPC-PA 2")
    area_min: Thickness | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "minimum area measurement, under SSPC-PA 2"
    )
    area_max: Thickness | None = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum area measurement, under SSPC-PA 2")
    low_readings: Annotated[LowReadings, choice(LowReadings)] | None = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "readings allowed below nominal under ISO 19840: fewer than 20 % or at most 20 %",
    )
    each: Annotated[Each, choice(Each)] | None = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "measurement that has to lie within the limits under an own rule: reading, or spot as the mean of its readings",
    )
    least_reading: Share | None = leaf(
        Polarity.AT_LEAST,
        Concern.ACCEPTANCE,
        "share of nominal below which no reading may lie under an own rule, as in 80 %",
    )
    below_nominal: Share | None = leaf(
        Polarity.AT_MOST,
        Concern.ACCEPTANCE,
        "maximum share of readings below nominal under an own rule, as in 20 %",
    )
    governs: YesNo = leaf(
        Polarity.EXACTLY,
        Concern.ACCEPTANCE,
        "precedence of this criterion, where two acceptance rules apply to one film",
        default=False,
    )
    text: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "acceptance criterion, in words")


class Involvement(StrEnum):
    """What a party does at an inspection point, in the order of what it asks for: it reads the record, it looks in, it is invited, the
    work stops for it."""

    REVIEW = "review"
    SURVEILLANCE = "surveillance"
    WITNESS = "witness"
    HOLD = "hold"


class Parties(Node):
    """What each party does at an inspection point."""

    contractor: Annotated[Involvement, choice(Involvement)] | None = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "involvement of the contractor: hold, witness, review or surveillance"
    )
    quality: Annotated[Involvement, choice(Involvement)] | None = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "involvement of quality assurance"
    )
    customer: Annotated[Involvement, choice(Involvement)] | None = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "involvement of the customer"
    )
    third_party: Annotated[Involvement, choice(Involvement)] | None = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "involvement of a third party"
    )


class InspectionPoint(Node):
    """One look, test or measurement, when it falls, and what becomes of a failure."""

    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the point", required=True)
    check: Line = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "inspection or test", required=True)
    at: Annotated[Stage, choice(Stage)] | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "stage of the work")
    after: Id | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "preceding coat (by its id)")
    after_sanding: YesNo = leaf(
        Polarity.EXACTLY,
        Concern.ACCEPTANCE,
        "inspected once that coat is sanded or otherwise made ready for the next; before that if left out",
        default=False,
    )
    items: tuple[Id, ...] = leaf(
        Polarity.SCOPE,
        Concern.ACCEPTANCE,
        "items inspected (by their ids); all items of the job if left out",
        default=(),
    )
    method: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "method or instrument")
    test: AskedTest | None = part("test done at the point, with its limit")
    gauge: Gauge | None = part("gauge")
    voltage: Voltage | None = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "test voltage of a holiday test, as in 67.5 V or 2.4 kV"
    )
    readings: Readings | None = part("place and number of readings")
    sampling: Sampling | None = part("extent and interval of sampling")
    frequency: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "frequency and number")
    criterion: Criterion = part("acceptance criterion", required=True)
    hold_point: YesNo = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "hold point: work stops until it is signed off", default=False
    )
    parties: Parties | None = part("involvement of each party")
    record: Line | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "record of the result, as in coating report CR-12"
    )
    figures: tuple[Figure, ...] = entries("pictures and sketches of what is inspected")
    marked: tuple[Code, ...] = leaf(
        Polarity.ALL_OF, Concern.ACCEPTANCE, "marks inspected, each by figure and mark, as in door/edge", default=()
    )
    if_failed: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "corrective action if it fails")
