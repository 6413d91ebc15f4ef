"""A job: which parts of which vehicles get which preparation and system, in what climate, inspected how."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.acceptance import InspectionPoint
from specgen.model.control import Contact, DocumentControl, Waiver
from specgen.model.field_types import (
    Area,
    Code,
    Id,
    Length,
    Line,
    Percentage,
    Share,
    Temperature,
    Text,
    Thickness,
    WholeNumber,
    choice,
    listed,
)
from specgen.model.node import Node
from specgen.model.preparation import Substrate
from specgen.model.product import ApplicationClimate
from specgen.model.senses import Concern, Sense, entries, leaf, part


class ShapeKind(StrEnum):
    """Shapes an area can be worked out from."""

    PLATE = "plate"
    TUBE = "tube"
    BOX = "box"
    ANGLE = "angle"
    CYLINDER = "cylinder"


class Shape(Node):
    """One simple body; which sizes it needs follows from its kind."""

    id: Id = leaf(Sense.SCOPE, Concern.FILM, "id of the shape", required=True)
    kind: Annotated[ShapeKind, choice(ShapeKind)] = leaf(Sense.FACT, Concern.FILM, "shape", required=True)
    length: Length | None = leaf(Sense.FACT, Concern.FILM, "length")
    width: Length | None = leaf(Sense.FACT, Concern.FILM, "width, or second leg of an angle")
    height: Length | None = leaf(Sense.FACT, Concern.FILM, "height, or first leg of an angle")
    diameter: Length | None = leaf(Sense.FACT, Concern.FILM, "outside diameter")
    sides: WholeNumber | None = leaf(
        Sense.FACT, Concern.FILM, "coated sides of a plate, faces of a box, ends of a tube"
    )
    count: WholeNumber | None = leaf(Sense.FACT, Concern.FILM, "how many of them on one part")


class MaskedArea(Node):
    """What stays bare."""

    id: Id = leaf(Sense.SCOPE, Concern.PREPARATION, "id of the entry", required=True)
    what: Line = leaf(Sense.REQUIREMENT_TEXT, Concern.PREPARATION, "what is masked", required=True)
    area: Area | None = leaf(Sense.FACT, Concern.FILM, "area to take off")


class EdgeAllowance(Node):
    """Edges that take paint of their own."""

    id: Id = leaf(Sense.SCOPE, Concern.FILM, "id of the entry", required=True)
    length: Length = leaf(Sense.FACT, Concern.FILM, "length of the edges", required=True)
    width: Length = leaf(Sense.FACT, Concern.FILM, "width of the band", required=True)


class OldCoat(Node):
    """One coat that is on the part already, from the substrate up."""

    id: Id = leaf(Sense.SCOPE, Concern.COMPATIBILITY, "id of the entry", required=True)
    family: Annotated[str, listed("binder_families")] | None = leaf(
        Sense.FACT, Concern.COMPATIBILITY, "binder family, absent where nobody knows"
    )
    thickness: Thickness | None = leaf(Sense.FACT, Concern.FILM, "thickness, measured")
    condition: Text | None = leaf(Sense.FACT, Concern.COMPATIBILITY, "sound, chalked, cracked and so on")


class Repair(Node):
    """How far a repaired spot runs out into what is sound around it. A width left out is not asked for."""

    feather: Length | None = leaf(
        Sense.AT_LEAST, Concern.PREPARATION, "least width of the ring each old coat is ground back to, as in 20 mm"
    )
    sanded: Length | None = leaf(
        Sense.AT_LEAST, Concern.PREPARATION, "least width of sound old paint sanded matt around the rings"
    )
    lap: Length | None = leaf(
        Sense.AT_LEAST, Concern.PREPARATION, "least width by which the new coats lap on the sanded old paint"
    )


class Item(Node):
    """A part type and how many of it."""

    id: Id = leaf(Sense.SCOPE, Concern.DOCUMENT, "id of the item", required=True)
    name: Line = leaf(Sense.WORDING, Concern.DOCUMENT, "name of the part", required=True)
    count: WholeNumber = leaf(Sense.FACT, Concern.FILM, "how many", required=True)
    area: Area | None = leaf(Sense.FACT, Concern.FILM, "area of one part, stated")
    shapes: tuple[Shape, ...] = entries("bodies the area of one part is worked out from")
    masked: tuple[MaskedArea, ...] = entries("what stays bare on one part")
    edges: tuple[EdgeAllowance, ...] = entries("edge allowance of one part")
    old_coats: tuple[OldCoat, ...] = entries("what is on the part already, from the substrate up")
    repair: Repair | None = part("how far a repair runs out into the old coats")
    substrate: Substrate | None = part("where it differs from the job's")
    preparation: Id | None = leaf(
        Sense.REPLACED, Concern.PREPARATION, "where it differs from the job's", refers="preparations"
    )
    system: Id | None = leaf(Sense.REPLACED, Concern.FILM, "where it differs from the job's", refers="systems")
    service_temperature: Temperature | None = leaf(Sense.FACT, Concern.PRODUCT, "hottest the part gets in service")


class DeadVolumeTable(StrEnum):
    """How the paint that fills a blast profile is reckoned; the three differ by half."""

    BY_ROUGHNESS = "by-roughness"
    BY_BAND = "by-band"
    WHOLE_PROFILE = "whole-profile"


class Ordered(Node):
    """Packs that are ordered."""

    id: Id = leaf(Sense.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    product: Id = leaf(Sense.FACT, Concern.PRODUCT, "id of the product", required=True, refers="products")
    variant: Id | None = leaf(Sense.FACT, Concern.PRODUCT, "id of the variant of that product")
    packs: WholeNumber = leaf(Sense.FACT, Concern.FILM, "cans or tins ordered", required=True)


class Consumption(Node):
    """What the quantities are reckoned with. A loss names its convention: 40 % loss is not 40 % surplus."""

    transfer_efficiency: Share | None = leaf(Sense.FACT, Concern.FILM, "share of the solids that lands on the part")
    loss_share: Share | None = leaf(Sense.FACT, Concern.FILM, "loss of liquid paint as a share of the paint used")
    loss_surplus: Percentage | None = leaf(
        Sense.FACT, Concern.FILM, "loss of liquid paint as a surplus on the paint that would do without loss"
    )
    profile: Thickness | None = leaf(Sense.FACT, Concern.FILM, "height of the blast profile the first coat fills")
    dead_volume: Annotated[DeadVolumeTable, choice(DeadVolumeTable)] | None = leaf(
        Sense.FACT, Concern.FILM, "how the paint that fills the profile is reckoned"
    )
    ordered: tuple[Ordered, ...] = entries("packs ordered, a line for each product and variant")


class Job(Node):
    """One job for one customer."""

    id: Id = leaf(Sense.SCOPE, Concern.DOCUMENT, "id of the job", required=True)
    document: DocumentControl = part("title block of the method statement", required=True)
    scope: Text = leaf(Sense.REQUIREMENT_TEXT, Concern.DOCUMENT, "what is done, where and why", required=True)
    vehicles: tuple[Code, ...] = leaf(Sense.SCOPE, Concern.DOCUMENT, "fleet numbers", default=())
    call: Contact | None = part("who to call during the work")
    substrate: Substrate | None = part("what the parts are made of")
    preparation: Id | None = leaf(Sense.REPLACED, Concern.PREPARATION, "id of the preparation", refers="preparations")
    system: Id | None = leaf(Sense.REPLACED, Concern.FILM, "id of the system", refers="systems")
    items: tuple[Item, ...] = entries("part types", required=True)
    climate: ApplicationClimate | None = part("climate kept during the work")
    consumption: Consumption | None = part("what quantities are reckoned with")
    inspection: tuple[InspectionPoint, ...] = entries("inspection points in their order")
    waivers: tuple[Waiver, ...] = entries("findings taken on")
