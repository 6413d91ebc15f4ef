"""A coating system: ordered layers from the substrate up, each a product at a film, with the holds between them."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.control import DocumentControl
from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Duration,
    DurationRange,
    Id,
    Line,
    Percentage,
    Text,
    Thickness,
    WholeNumber,
    YesNo,
    choice,
)
from specgen.model.film import FilmLimits
from specgen.model.node import Node
from specgen.model.product import Role


class Corrosivity(StrEnum):
    """Corrosivity categories of the air, from low to very high."""

    C2 = "C2"
    C3 = "C3"
    C4 = "C4"
    C5 = "C5"


class Durability(StrEnum):
    """How long the system is meant to last before its first major repair."""

    LOW = "low"
    MEDIUM = "medium"
    HIGH = "high"
    VERY_HIGH = "very-high"


class CategoryClaim(Node):
    """The corrosivity category and durability a system is said to serve."""

    corrosivity: Annotated[Corrosivity, choice(Corrosivity)] = leaf(
        Polarity.LADDER, Concern.FILM, "corrosivity category, C2 to C5", required=True
    )
    durability: Annotated[Durability, choice(Durability)] = leaf(
        Polarity.LADDER, Concern.FILM, "durability: low, medium, high or very-high", required=True
    )
    evidence: Text | None = leaf(Polarity.NOTE, Concern.FILM, "test report of this very system, if there is one")


class Layer(Node):
    """One coat of the system."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the layer", required=True)
    role: Annotated[Role, choice(Role)] = leaf(
        Polarity.REPLACED, Concern.COMPATIBILITY, "what the coat is for", required=True
    )
    product: Id = leaf(Polarity.REPLACED, Concern.PRODUCT, "id of the product", required=True, refers="products")
    variant: Id | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "id of the variant of that product")
    film: FilmLimits = part("dry film of this coat", required=True)
    passes: WholeNumber | None = leaf(Polarity.EXACTLY, Concern.FILM, "cross coats to lay down")
    coats: WholeNumber | None = leaf(
        Polarity.EXACTLY, Concern.FILM, "coats the passes are split into, if more than one"
    )
    wet_target: Thickness | None = leaf(Polarity.EXACTLY, Concern.FILM, "wet film for the comb, if not to be computed")
    thinner: Percentage | None = leaf(Polarity.PERMISSION, Concern.FILM, "thinner added, by volume on the paint")
    flash_between_passes: DurationRange | None = leaf(Polarity.WITHIN, Concern.FILM, "wait between passes")
    sanding_removes: Thickness | None = leaf(
        Polarity.AT_MOST, Concern.FILM, "most film that sanding takes off this coat"
    )
    polishing_removes: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "most film that polishing takes off")
    remaining_min: Thickness | None = leaf(
        Polarity.AT_LEAST, Concern.FILM, "least dry film left after sanding or polishing"
    )
    overcoat_interval: DurationRange | None = leaf(
        Polarity.WITHIN, Concern.COMPATIBILITY, "wait before the next coat, as in 30 min..24 h"
    )
    if_exceeded: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "what to do once the hold is past"
    )
    before_next: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "what to do to this coat before the next"
    )
    abraded_with: Line | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "paper or pad this coat is abraded with before the next, as in P400"
    )
    blush_wash: YesNo | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "washed with warm water and detergent, and tested, before the next coat"
    )
    mist_coat: YesNo | None = leaf(
        Polarity.EXACTLY, Concern.FILM, "begins with a mist coat, much thinner than a normal one"
    )
    tie_coat: YesNo | None = leaf(
        Polarity.EXACTLY, Concern.COMPATIBILITY, "is a tie coat, or begins with a fog coat that is left to turn tacky"
    )
    flexible: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "bends with the part; no for a hard coat, absent where it does not matter"
    )


class System(Node):
    """Layers in their order, the first on the substrate."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the system", required=True)
    document: DocumentControl | None = part("title block, if the system is a document of its own")
    title: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name as printed", required=True)
    use: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "what it is meant for")
    layers: tuple[Layer, ...] = entries("layers from the substrate up", required=True, least=1)
    total: FilmLimits | None = part("total dry film, if stated")
    category: CategoryClaim | None = part("corrosivity category and durability it is said to serve")
    handle_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.FILM, "wait before the part is handled")
    service_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.FILM, "wait before the part goes into service")
