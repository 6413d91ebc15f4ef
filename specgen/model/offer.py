"""An offer: the products a supplier names for coats that a specification leaves open, and what is handed in to show that they do."""

from __future__ import annotations

from specgen.model.control import DocumentControl
from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import Id, IsoDate, Line, Text, YesNo
from specgen.model.film import FilmLimits
from specgen.model.node import Node
from specgen.model.product import Evidence


class OfferedTest(Node):
    """What the supplier hands in on a test that is required."""

    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the test, as the requirement has it", required=True)
    passed: YesNo = leaf(
        Polarity.FACT, Concern.ACCEPTANCE, "limit of the test met, by the supplier's word", required=True
    )
    result: Text | None = leaf(Polarity.FACT, Concern.ACCEPTANCE, "result of the test")
    report: Line | None = leaf(Polarity.FACT, Concern.ACCEPTANCE, "test report, with laboratory and date")
    evidence: Evidence | None = part("test report, where it is a source of the folder or its range")


class OfferedCoat(Node):
    """The product offered for one coat."""

    id: Id = leaf(
        Polarity.SCOPE,
        Concern.PRODUCT,
        "id of the coat it is offered for, or of the entry where layer names it",
        required=True,
    )
    system: Id | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "system of that coat (by its id), where the job has several", refers="systems"
    )
    layer: Id | None = leaf(Polarity.FACT, Concern.PRODUCT, "coat it is offered for, where the id is another")
    product: Id = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "product offered (by its id)", required=True, refers="products"
    )
    variant: Id | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "variant offered (by its id)")
    film: FilmLimits | None = part("DFT offered, where it is not as specified")
    tests: tuple[OfferedTest, ...] = entries("tests of which a report is handed in")
    text: Text | None = leaf(Polarity.FACT, Concern.PRODUCT, "answer to the further requirements in words")


class Offer(Node):
    """Products offered for the open coats of one job, or of one system."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the offer", required=True)
    document: DocumentControl = part("title block of the offer review", required=True)
    job: Id | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "job whose specification it answers (by its id)", refers="jobs"
    )
    system: Id | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "system it answers (by its id), where it answers no job", refers="systems"
    )
    supplier: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "supplier who offers", required=True)
    date: IsoDate = leaf(Polarity.FACT, Concern.DOCUMENT, "date of the offer", required=True)
    layers: tuple[OfferedCoat, ...] = entries("products offered, coat by coat", required=True, least=1)
    remarks: Text | None = leaf(Polarity.NOTE, Concern.DOCUMENT, "remarks on the offer")
