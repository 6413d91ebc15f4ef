"""A test report: which panels, of which coats in which film, went through what, with which results; by whom and when.

It is a source beside what it came from: the report as received, its readings, photographs. Claims name it; `facts.tests` says whether it
is evidence for them.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.application import Method
from specgen.model.declaring import Audience, Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Code,
    Duration,
    Gloss,
    HumidityRange,
    Id,
    IsoDate,
    KeptFile,
    Length,
    Line,
    Sha256,
    Temperature,
    TemperatureOrRange,
    Text,
    Thickness,
    WholeNumber,
    YesNo,
    choice,
    listed,
)
from specgen.model.figure import Figure
from specgen.model.node import Node
from specgen.model.preparation import Grade
from specgen.model.test_required import Detail, Exposed, Statistic
from specgen.model.test_value import ColourLab, TestResult


class DecisionRule(StrEnum):
    """How a statement of conformity takes the uncertainty of a result into account."""

    SIMPLE = "simple"
    GUARDED = "guarded"
    NON_BINARY = "non-binary"


class Laboratory(Node):
    """Who tested, and on what standing."""

    name: Line = leaf(Polarity.FACT, Concern.PRODUCT, "laboratory", required=True)
    address: Text | None = leaf(Polarity.FACT, Concern.PRODUCT, "place where the tests were done")
    accreditation: Line | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "accreditation for these tests, with body and number; none if left out"
    )
    own: YesNo | None = leaf(Polarity.FACT, Concern.PRODUCT, "laboratory of the manufacturer himself")


class ReportDates(Node):
    """Days of the report, in their order."""

    prepared: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "last coat on the panels")
    received: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "panels received by the laboratory")
    started: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "first day of the tests")
    ended: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "last day of the tests")
    issued: IsoDate = leaf(Polarity.FACT, Concern.PRODUCT, "issue of the report", required=True)


class PanelCoat(Node):
    """One coat as it was applied and measured."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the coat", required=True)
    product: Line = leaf(
        Polarity.FACT, Concern.PRODUCT, "product (by its id), or its name and manufacturer", required=True
    )
    formulated: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "formulation of the product that was tested")
    batch: Code | None = leaf(Polarity.FACT, Concern.PRODUCT, "batch of the product")
    method: Annotated[Method, choice(Method)] | None = leaf(Polarity.FACT, Concern.PRODUCT, "application method")
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "mean DFT measured")
    film_min: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "lowest DFT measured")
    film_max: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "highest DFT measured")


class PanelCure(Node):
    """How the coated panels were kept until they were tested."""

    time: Duration | None = leaf(Polarity.FACT, Concern.PRODUCT, "time from the last coat to the test")
    temperature: TemperatureOrRange | None = leaf(Polarity.FACT, Concern.PRODUCT, "air temperature")
    humidity: HumidityRange | None = leaf(Polarity.FACT, Concern.PRODUCT, "relative humidity")
    stoved: Duration | None = leaf(Polarity.FACT, Concern.PRODUCT, "time of forced drying or stoving")
    stoved_at: Temperature | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "surface temperature of forced drying or stoving"
    )
    text: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "cure or conditioning in words, as a cure class")


class PanelSeries(Node):
    """Panels that are alike."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the panels", required=True)
    panels: WholeNumber | None = leaf(Polarity.FACT, Concern.PRODUCT, "number of panels")
    substrate: Annotated[str, listed("materials")] = leaf(
        Polarity.FACT, Concern.PRODUCT, "substrate, an id of the table materials", required=True
    )
    thickness: Length | None = leaf(Polarity.FACT, Concern.PRODUCT, "thickness of the panels")
    grade: Grade | None = leaf(Polarity.FACT, Concern.PRODUCT, "preparation grade, as in Sa 2 1/2")
    preparation: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "preparation in words, with the profile")
    coats: tuple[PanelCoat, ...] = entries("coats from the substrate outwards", required=True, least=1)
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "mean total DFT measured")
    film_min: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "lowest total DFT measured")
    film_max: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "highest total DFT measured")
    cure: PanelCure | None = part("cure before the test")
    scribe: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "scribe: tool, width, direction, down to what")
    control: YesNo | None = leaf(Polarity.FACT, Concern.PRODUCT, "control panels beside those that are tested")


class SpecimenResult(Node):
    """The result of one panel or place."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "panel or place, as in P1", required=True)
    value: TestResult = leaf(Polarity.FACT, Concern.PRODUCT, "result with its unit, or rating", required=True)
    colour_before: ColourLab | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "L*, a* and b* of the reference or before the exposure, as in 52.10 3.20 -10.40"
    )
    colour_after: ColourLab | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "L*, a* and b* of the panel or after the exposure, as in 51.80 3.40 -9.90"
    )
    gloss_before: Gloss | None = leaf(Polarity.FACT, Concern.PRODUCT, "gloss before the exposure, as in 38 GU")
    gloss_after: Gloss | None = leaf(Polarity.FACT, Concern.PRODUCT, "gloss after the exposure, as in 31 GU")
    mode: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "failure mode with its share, as in B 80 %, B/C 20 %")
    excluded: Text | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "cause for which this result is not counted; it is shown all the same"
    )


class DoneTest(Node):
    """One test on one series of panels."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the test", required=True)
    series: Id = leaf(Polarity.FACT, Concern.PRODUCT, "panels tested (by the id of their series)", required=True)
    method: Annotated[str, listed("test_methods")] = leaf(
        Polarity.FACT, Concern.PRODUCT, "test method, an id of the table test_methods", required=True
    )
    standard: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "standard of the method, as in ISO 4624")
    edition: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "edition of that standard, as in 2023")
    variant: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "variant of the method, as in method B or 60 degrees")
    details: tuple[Detail, ...] = entries("what the method leaves open: dolly, tester, scribe, liquid")
    after: Exposed | None = part("exposure before the test")
    results: tuple[SpecimenResult, ...] = entries("results, one of each panel or place", required=True, least=1)
    statistic: Annotated[Statistic, choice(Statistic)] | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "statistic held against the limit by the laboratory: mean or each"
    )
    limit: Text | None = leaf(Polarity.FACT, Concern.PRODUCT, "limit that the laboratory held the results against")
    uncertainty: TestResult | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "expanded uncertainty (k = 2) in the unit of the result, as in 0.3 MPa"
    )
    decision: Annotated[DecisionRule, choice(DecisionRule)] | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "decision rule of the statement of conformity: simple, guarded or non-binary"
    )
    figures: tuple[Figure, ...] = entries("photographs of the panels after the test")


class ReportFile(Node):
    """What the laboratory sent, kept as it came. How it is filed is the maker's."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the file", required=True, audience=Audience.MAKER)
    file: KeptFile = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "file below the folder of the project, as in reports/204.pdf",
        required=True,
        audience=Audience.MAKER,
    )
    sha256: Sha256 | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "SHA-256 of the file as it was received", audience=Audience.MAKER
    )


class LabReport(Node):
    """One report of one laboratory."""

    id: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the report", required=True)
    number: Code = leaf(Polarity.FACT, Concern.PRODUCT, "number of the report", required=True)
    title: Line = leaf(Polarity.FACT, Concern.PRODUCT, "title of the report", required=True)
    laboratory: Laboratory = part("laboratory", required=True)
    customer: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "customer of the laboratory")
    dates: ReportDates = part("dates in their order", required=True)
    series: tuple[PanelSeries, ...] = entries("panels by series", required=True, least=1)
    tests: tuple[DoneTest, ...] = entries("tests with their results", required=True, least=1)
    repeats: Code | None = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "number of the report whose results this one repeats, where it has none of its own",
    )
    deviations: Text | None = leaf(Polarity.FACT, Concern.PRODUCT, "deviations from the methods; none if left out")
    signed_by: Line | None = leaf(Polarity.FACT, Concern.PRODUCT, "person who authorised the report")
    files: tuple[ReportFile, ...] = entries("files of the report as received, each kept by its SHA-256")
    figures: tuple[Figure, ...] = entries("photographs and plots of the report")
