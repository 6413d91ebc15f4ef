"""A test with the result that passes: one record for what a customer requires, what a job accepts by, and what a product claims.

That it is one record lets the three be held against each other and against the test reports (`facts.tests`). A test may still be
named in words alone; then a person holds it against a report.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    DurationOrRange,
    HumidityRange,
    Id,
    Line,
    Share,
    TemperatureOrRange,
    Text,
    ThicknessOrRange,
    WholeNumber,
    choice,
    listed,
)
from specgen.model.node import Node
from specgen.model.test_value import TestResult


class Statistic(StrEnum):
    """What of the results of all specimens is held against the limit."""

    MEAN = "mean"
    EACH = "each"
    SHARE = "share"
    NUMBER = "number"


class Tester(StrEnum):
    """Who does a test."""

    MAKER = "manufacturer"
    SUPPLIER = "supplier"
    APPLICATOR = "applicator"
    CUSTOMER = "customer"
    INDEPENDENT = "independent-laboratory"


class Obligation(StrEnum):
    """How far a test binds."""

    REQUIRED = "required"
    ADVISED = "advised"
    INFORMATION = "for-information"


class Attendance(StrEnum):
    """What the customer does at a test, in the order of what it asks for: he reads the record, he is called to it, work stops for him."""

    REVIEW = "review"
    WITNESS = "witness"
    HOLD = "hold"


class Detail(Node):
    """Something the method leaves open, and without which its result says nothing: dolly, angle, scribe, lamp, liquid."""

    id: Id = leaf(
        Polarity.SCOPE, Concern.ACCEPTANCE, "subject of the detail, as in dolly, tester, scribe or lamp", required=True
    )
    value: Line = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "value of the detail, as in 20 mm or 60 degrees", required=True
    )


class Exposed(Node):
    """What the panels went through before they were assessed: salt spray, condensation, light, a liquid, heat."""

    method: Annotated[str, listed("test_methods")] = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "exposure, an id of the table test_methods", required=True
    )
    standard: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "standard of the exposure, as in ISO 9227")
    edition: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "edition of that standard, as in 2022")
    variant: Line | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "cycle, lamp or variant of the exposure, as in UVA-340, cycle 1"
    )
    duration: DurationOrRange | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "duration of the exposure, as in 480 h"
    )
    cycles: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "number of cycles")
    details: tuple[Detail, ...] = entries("further conditions of the exposure")


class CoatAsked(Node):
    """A coat of the panels, from the substrate up. The product may be of any maker."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the coat", required=True)
    product: Line = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "product (by its id), or its name and manufacturer", required=True
    )
    film: ThicknessOrRange | None = leaf(Polarity.WITHIN, Concern.FILM, "DFT of the coat")


class Condition(Node):
    """The panel, the film and the cure that a test is for. What is left out is left open."""

    substrate: Annotated[str, listed("materials")] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "substrate of the panels, an id of the table materials"
    )
    preparation: Line | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "preparation of the panels, as in Sa 2 1/2 or abraded with P180"
    )
    coats: tuple[CoatAsked, ...] = entries("coats of the panels, from the substrate outwards")
    film: ThicknessOrRange | None = leaf(Polarity.WITHIN, Concern.ACCEPTANCE, "total DFT of the panels")
    age: DurationOrRange | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "time from the last coat to the test")
    cure: Line | None = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "cure or cure class, as in 30 min at 60 degC")
    temperature: TemperatureOrRange | None = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "air temperature of the cure and the test"
    )
    humidity: HumidityRange | None = leaf(Polarity.WITHIN, Concern.ACCEPTANCE, "humidity of the cure and the test")


class AskedTest(Node):
    """Method, condition, limit and how it is judged; who tests, and how far it binds."""

    test: Line | None = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "test in words with its standard and duration, where no method is named"
    )
    method: Annotated[str, listed("test_methods")] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "test method, an id of the table test_methods"
    )
    standard: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "standard of the method, as in ISO 4624")
    edition: Line | None = leaf(Polarity.REPLACED, Concern.ACCEPTANCE, "edition of that standard, as in 2023")
    variant: Line | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "variant of the method, as in method B or 60 degrees"
    )
    details: tuple[Detail, ...] = entries("what the method leaves open: dolly, tester, scribe, liquid")
    after: Exposed | None = part("exposure before the test")
    condition: Condition | None = part("panels, film and cure the test is for")
    limit: Text | None = leaf(
        Polarity.TEST_LIMIT, Concern.ACCEPTANCE, "result that passes, as in min 5 MPa, class 0..1 or 0(S0)"
    )
    statistic: Annotated[Statistic, choice(Statistic)] | None = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "statistic held against the limit: mean, each result, a share of them, or a number of them",
    )
    share: Share | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "share of the results that pass, as in 80 %")
    floor: TestResult | None = leaf(Polarity.TEST_LIMIT, Concern.ACCEPTANCE, "value that no result may be worse than")
    passing: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "number of specimens that pass")
    specimens: WholeNumber | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "number of specimens or readings")
    by: Annotated[Tester, choice(Tester)] | None = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "tester: manufacturer, supplier, applicator, customer or independent-laboratory",
    )
    obligation: Annotated[Obligation, choice(Obligation)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "obligation of the test: required, advised or for-information"
    )
    attendance: Annotated[Attendance, choice(Attendance)] | None = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "attendance of the customer: hold, witness or review"
    )


class _Named(Node):
    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the test", required=True)


class RequiredTest(AskedTest, _Named):
    """A test in a list: of a coat that names no product yet, of a system, of a job."""
