"""A coating system: ordered layers from the substrate up, each a product at a film, with the holds between them."""

from __future__ import annotations

from typing import Annotated

from specgen.model.control import DocumentControl
from specgen.model.field_types import (
    Duration,
    DurationRange,
    Id,
    Line,
    Percentage,
    Text,
    Thickness,
    WholeNumber,
    choice,
)
from specgen.model.film import FilmLimits
from specgen.model.node import Node
from specgen.model.product import Role
from specgen.model.senses import Concern, Sense, entries, leaf, part


class Layer(Node):
    """One coat of the system."""

    id: Id = leaf(Sense.SCOPE, Concern.FILM, "id of the layer", required=True)
    role: Annotated[Role, choice(Role)] = leaf(
        Sense.REPLACED, Concern.COMPATIBILITY, "what the coat is for", required=True
    )
    product: Id = leaf(Sense.REPLACED, Concern.PRODUCT, "id of the product", required=True, refers="products")
    variant: Id | None = leaf(Sense.REPLACED, Concern.PRODUCT, "id of the variant of that product")
    film: FilmLimits = part("dry film of this coat", required=True)
    passes: WholeNumber | None = leaf(Sense.EXACTLY, Concern.FILM, "cross coats to lay down")
    coats: WholeNumber | None = leaf(Sense.EXACTLY, Concern.FILM, "coats the passes are split into, if more than one")
    wet_target: Thickness | None = leaf(Sense.EXACTLY, Concern.FILM, "wet film for the comb, if not to be computed")
    thinner: Percentage | None = leaf(Sense.AT_MOST, Concern.FILM, "thinner added, by volume on the paint")
    flash_between_passes: DurationRange | None = leaf(Sense.WITHIN, Concern.FILM, "wait between passes")
    hold: DurationRange | None = leaf(
        Sense.WITHIN, Concern.COMPATIBILITY, "wait before the next coat, as in 30 min..24 h"
    )
    if_late: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "what to do once the hold is past")
    before_next: Text | None = leaf(
        Sense.REQUIREMENT_TEXT, Concern.PREPARATION, "what to do to this coat before the next"
    )


class System(Node):
    """Layers in their order, the first on the substrate."""

    id: Id = leaf(Sense.SCOPE, Concern.FILM, "id of the system", required=True)
    document: DocumentControl | None = part("title block, if the system is a document of its own")
    title: Line = leaf(Sense.WORDING, Concern.DOCUMENT, "name as printed", required=True)
    use: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "what it is meant for")
    layers: tuple[Layer, ...] = entries("layers from the substrate up", required=True)
    total: FilmLimits | None = part("total dry film, if stated")
    handle_after: Duration | None = leaf(Sense.AT_LEAST, Concern.FILM, "wait before the part is handled")
    service_after: Duration | None = leaf(Sense.AT_LEAST, Concern.FILM, "wait before the part goes into service")
