"""A coating system: ordered layers from the substrate up, each a product at a film, with the holds between them."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.application import Method
from specgen.model.banned import Banned
from specgen.model.control import DocumentControl
from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    CountRange,
    Duration,
    DurationRange,
    Id,
    Line,
    Percentage,
    Text,
    Thickness,
    ThicknessOrRange,
    YesNo,
    choice,
)
from specgen.model.film import FilmLimits
from specgen.model.node import Node
from specgen.model.product import Role
from specgen.model.requirement import Required
from specgen.model.test_required import RequiredTest


class Corrosivity(StrEnum):
    """Corrosivity categories of the air, from very low to extreme."""

    C1 = "C1"
    C2 = "C2"
    C3 = "C3"
    C4 = "C4"
    C5 = "C5"
    CX = "CX"


class Immersion(StrEnum):
    """Categories of water and soil; none is above another."""

    IM1 = "Im1"
    IM2 = "Im2"
    IM3 = "Im3"
    IM4 = "Im4"


class Durability(StrEnum):
    """How long the system is meant to last before its first major repair."""

    LOW = "low"
    MEDIUM = "medium"
    HIGH = "high"
    VERY_HIGH = "very-high"


class CategoryClaim(Node):
    """What a system is said to serve and for how long: a corrosivity category of the air, immersion, or both as in a splash zone."""

    corrosivity: Annotated[Corrosivity, choice(Corrosivity)] | None = leaf(
        Polarity.LADDER, Concern.FILM, "corrosivity category to ISO 12944-2: C1 to CX"
    )
    immersion: Annotated[Immersion, choice(Immersion)] | None = leaf(
        Polarity.EXACTLY, Concern.FILM, "immersion category to ISO 12944-2: Im1 to Im4"
    )
    durability: Annotated[Durability, choice(Durability)] = leaf(
        Polarity.LADDER, Concern.FILM, "durability: low, medium, high or very-high", required=True
    )
    evidence: Text | None = leaf(Polarity.NOTE, Concern.FILM, "test report for this exact system, if there is one")


class StripeTime(StrEnum):
    """When a stripe coat is laid, by the full coat it belongs to."""

    BEFORE = "before"
    AFTER = "after"


class StripeCoat(Node):
    """The paint of a coat laid on edges, welds and the like besides the full coat; it counts in no film."""

    when: Annotated[StripeTime, choice(StripeTime)] = leaf(
        Polarity.EXACTLY, Concern.FILM, "time of the stripe coat, before or after the full coat", required=True
    )
    where: Line = leaf(
        Polarity.REQUIREMENT_TEXT,
        Concern.FILM,
        "extent of the stripe coat, as in edges, welds and bolts",
        required=True,
    )


class Layer(Node):
    """One coat of the system."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the coat", required=True)
    role: Annotated[Role, choice(Role)] = leaf(Polarity.REPLACED, Concern.COMPATIBILITY, "coat type", required=True)
    product: Id | None = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "product (by its id), where it is chosen", refers="products"
    )
    variant: Id | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "variant of that product (by its id)")
    required: Required | None = part("what the product must be and show, where none is named")
    film: FilmLimits = part("DFT of this coat", required=True)
    passes: CountRange | None = leaf(Polarity.WITHIN, Concern.FILM, "number of cross coats")
    coats: CountRange | None = leaf(
        Polarity.WITHIN, Concern.FILM, "number of coats the cross coats are divided into, if more than one"
    )
    wet_target: ThicknessOrRange | None = leaf(
        Polarity.WITHIN, Concern.FILM, "target WFT for the comb gauge, if not to be calculated"
    )
    stripe_coat: StripeCoat | None = part("stripe coat of the same paint")
    method: Annotated[Method, choice(Method)] | None = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "application method of this coat, as in airless"
    )
    thinner: Percentage | None = leaf(Polarity.PERMISSION, Concern.FILM, "thinner added, by volume of the paint")
    flash_between_passes: DurationRange | None = leaf(
        Polarity.WITHIN, Concern.FILM, "flash-off time between cross coats"
    )
    sanding_removes: Thickness | None = leaf(
        Polarity.AT_MOST, Concern.FILM, "maximum DFT removed from this coat by sanding"
    )
    polishing_removes: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "maximum DFT removed by polishing")
    remaining_min: Thickness | None = leaf(
        Polarity.AT_LEAST, Concern.FILM, "minimum DFT remaining after sanding or polishing"
    )
    overcoat_interval: DurationRange | None = leaf(
        Polarity.WITHIN, Concern.COMPATIBILITY, "overcoating interval, as in 30 min..24 h"
    )
    if_exceeded: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "action if the maximum overcoating interval is exceeded"
    )
    before_next: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "preparation of this coat before overcoating"
    )
    abraded_with: Line | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "abrasive paper or pad used on this coat before overcoating, as in P400"
    )
    blush_wash: YesNo | None = leaf(
        Polarity.AT_LEAST,
        Concern.PREPARATION,
        "amine blush wash with warm water and detergent, tested, before overcoating",
    )
    mist_coat: YesNo | None = leaf(
        Polarity.EXACTLY, Concern.FILM, "mist coat at the start of the coat (much thinner than a normal coat)"
    )
    tie_coat: YesNo | None = leaf(
        Polarity.EXACTLY, Concern.COMPATIBILITY, "tie coat, or coat that starts with a fog coat left until tacky"
    )
    flexible: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "flexible coat; no for a hard coat, left out where it does not matter"
    )


class System(Node):
    """Layers in their order, the first on the substrate."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the system", required=True)
    document: DocumentControl | None = part("title block, if the system is a document of its own", passes_on=False)
    title: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name as printed", required=True)
    use: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "intended use")
    layers: tuple[Layer, ...] = entries("coats from the substrate outwards", required=True, least=1)
    total: FilmLimits | None = part("total DFT, if stated")
    category: CategoryClaim | None = part("corrosivity category and durability claimed", passes_on=False)
    tests: tuple[RequiredTest, ...] = entries("tests that the finished system has to pass")
    banned: tuple[Banned, ...] = entries("substances banned in the products of this system", passes_on=True)
    handle_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.FILM, "minimum time before handling")
    service_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.FILM, "minimum time before return to service")
