"""A job: which parts of which vehicles get which preparation and system, in what climate, inspected how."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.acceptance import InspectionPoint
from specgen.model.control import DocumentControl, OnCall, Waiver
from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    AirFlow,
    Area,
    Code,
    DecimalNumber,
    Duration,
    Id,
    Length,
    Line,
    Percentage,
    ReleaseRate,
    RoomVolume,
    Share,
    Temperature,
    Text,
    Thickness,
    WholeNumber,
    YesNo,
    choice,
    listed,
)
from specgen.model.node import Node
from specgen.model.preparation import Substrate
from specgen.model.product import ApplicationClimate


class ShapeKind(StrEnum):
    """Shapes an area can be worked out from."""

    PLATE = "plate"
    TUBE = "tube"
    BOX = "box"
    ANGLE = "angle"
    CYLINDER = "cylinder"


class Shape(Node):
    """One simple body; which sizes it needs follows from its kind."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the shape", required=True)
    kind: Annotated[ShapeKind, choice(ShapeKind)] = leaf(Polarity.FACT, Concern.FILM, "shape", required=True)
    length: Length | None = leaf(Polarity.FACT, Concern.FILM, "length")
    width: Length | None = leaf(Polarity.FACT, Concern.FILM, "width, or second leg of an angle")
    height: Length | None = leaf(Polarity.FACT, Concern.FILM, "height, or first leg of an angle")
    diameter: Length | None = leaf(Polarity.FACT, Concern.FILM, "outside diameter")
    sides: WholeNumber | None = leaf(
        Polarity.FACT, Concern.FILM, "coated sides of a plate, faces of a box, ends of a tube"
    )
    count: WholeNumber | None = leaf(Polarity.FACT, Concern.FILM, "how many of them on one part")


class MaskedArea(Node):
    """What stays bare."""

    id: Id = leaf(Polarity.SCOPE, Concern.PREPARATION, "id of the entry", required=True)
    what: Line = leaf(Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "what is masked", required=True)
    area: Area | None = leaf(Polarity.FACT, Concern.FILM, "area to take off")


class EdgeAllowance(Node):
    """Edges that take paint of their own."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the entry", required=True)
    length: Length = leaf(Polarity.FACT, Concern.FILM, "length of the edges", required=True)
    width: Length = leaf(Polarity.FACT, Concern.FILM, "width of the band", required=True)


# ISO 2409 and ISO 4628-6 both run from class 0, the best, to this one; ASTM D3359 runs the other way.
WORST_CLASS = 5


class RubResult(StrEnum):
    """What a rag wet with MEK or acetone does to an old coat."""

    SOLUBLE = "soluble"
    SOFTENS = "softens"
    RESISTANT = "resistant"


class TapeClass(StrEnum):
    """Classes of ASTM D3359: method A is a cross of two cuts, method B a lattice; 5 holds, 0 is off."""

    A0 = "0A"
    A1 = "1A"
    A2 = "2A"
    A3 = "3A"
    A4 = "4A"
    A5 = "5A"
    B0 = "0B"
    B1 = "1B"
    B2 = "2B"
    B3 = "3B"
    B4 = "4B"
    B5 = "5B"

    @property
    def number(self) -> int:
        return int(self.value[0])


class PatchResult(StrEnum):
    """How a patch test ended."""

    PASS = "pass"  # noqa: S105  # a word of the trade, no password
    FAIL = "fail"


class Exposure(StrEnum):
    """Whether sun and rain reach the part."""

    EXTERIOR = "exterior"
    INTERIOR = "interior"


class OldCoat(Node):
    """One coat that is on the part already, from the substrate up. What is not said is not known."""

    id: Id = leaf(Polarity.SCOPE, Concern.COMPATIBILITY, "id of the entry", required=True)
    family: Annotated[str, listed("binder_families")] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "binder family, absent where nobody knows"
    )
    thickness: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "thickness, measured")
    condition: Text | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "sound, chalked, cracked and so on")
    rub: Annotated[RubResult, choice(RubResult)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "what a rag wet with MEK or acetone did: soluble, softens or resistant"
    )
    cured: YesNo | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "hard through; no where it is still soft below")
    age: Duration | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "age of the coat, as in 30 days")
    cross_cut: WholeNumber | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "adhesion measured: class of ISO 2409, 0 (holds) to 5"
    )
    tape: Annotated[TapeClass, choice(TapeClass)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "adhesion measured: class of ASTM D3359, as in 4A or 4B (5 holds)"
    )
    chalking: WholeNumber | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "chalking measured with tape: class of ISO 4628-6, 0 (none) to 5"
    )
    sound: YesNo | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "firm all over; no where it flakes, cracks or blisters"
    )


class PatchTest(Node):
    """A patch of this item's system on its prepared old paint. The method sets no limit, so the specification does."""

    result: Annotated[PatchResult, choice(PatchResult)] = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "pass or fail", required=True
    )
    limit: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "pass limit it was judged by, in words")


class Repair(Node):
    """How far a repaired spot runs out into what is sound around it. A width left out is not asked for."""

    feather: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "least width of the ring each old coat is ground back to, as in 20 mm"
    )
    sanded: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "least width of sound old paint sanded matt around the rings"
    )
    lap: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "least width by which the new coats lap on the sanded old paint"
    )


class Item(Node):
    """A part type and how many of it."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the item", required=True)
    name: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name of the part", required=True)
    count: WholeNumber = leaf(Polarity.FACT, Concern.FILM, "how many", required=True)
    area: Area | None = leaf(Polarity.FACT, Concern.FILM, "area of one part, stated")
    shapes: tuple[Shape, ...] = entries("bodies the area of one part is worked out from")
    masked: tuple[MaskedArea, ...] = entries("what stays bare on one part")
    edges: tuple[EdgeAllowance, ...] = entries("edge allowance of one part")
    old_coats: tuple[OldCoat, ...] = entries("what is on the part already, from the substrate up")
    patch_test: PatchTest | None = part("patch test of the new system on the old paint")
    strip_limit: Thickness | None = leaf(
        Polarity.AT_MOST, Concern.FILM, "most film, old and new together; above it the old paint comes off"
    )
    exposure: Annotated[Exposure, choice(Exposure)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "exterior or interior, where it differs from the job's"
    )
    repair: Repair | None = part("how far a repair runs out into the old coats")
    substrate: Substrate | None = part("where it differs from the job's")
    preparation: Id | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "where it differs from the job's", refers="preparations"
    )
    system: Id | None = leaf(Polarity.REPLACED, Concern.FILM, "where it differs from the job's", refers="systems")
    service_temperature: Temperature | None = leaf(Polarity.FACT, Concern.PRODUCT, "hottest the part gets in service")


class DeadVolumeTable(StrEnum):
    """How the paint that fills a blast profile is reckoned; the three differ by half."""

    BY_ROUGHNESS = "by-roughness"
    BY_BAND = "by-band"
    WHOLE_PROFILE = "whole-profile"


class Ordered(Node):
    """Packs that are ordered."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    product: Id = leaf(Polarity.FACT, Concern.PRODUCT, "id of the product", required=True, refers="products")
    variant: Id | None = leaf(Polarity.FACT, Concern.PRODUCT, "id of the variant of that product")
    packs: WholeNumber = leaf(Polarity.FACT, Concern.FILM, "cans or tins ordered", required=True)


class Consumption(Node):
    """What the quantities are reckoned with. A loss names its convention: 40 % loss is not 40 % surplus."""

    transfer_efficiency: Share | None = leaf(Polarity.FACT, Concern.FILM, "share of the solids that lands on the part")
    loss_share: Share | None = leaf(Polarity.FACT, Concern.FILM, "loss of liquid paint as a share of the paint used")
    loss_surplus: Percentage | None = leaf(
        Polarity.FACT, Concern.FILM, "loss of liquid paint as a surplus on the paint that would do without loss"
    )
    profile: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "height of the blast profile the first coat fills")
    dead_volume: Annotated[DeadVolumeTable, choice(DeadVolumeTable)] | None = leaf(
        Polarity.FACT, Concern.FILM, "how the paint that fills the profile is reckoned"
    )
    ordered: tuple[Ordered, ...] = entries("packs ordered, a line for each product and variant")


class WorkAir(Node):
    """The air where the spraying is done."""

    room: RoomVolume | None = leaf(Polarity.FACT, Concern.SAFETY, "volume of the booth or room")
    flow: AirFlow | None = leaf(Polarity.AT_LEAST, Concern.SAFETY, "fresh air let in")
    changes: DecimalNumber | None = leaf(
        Polarity.AT_LEAST, Concern.SAFETY, "air changes in an hour, where the flow is not known"
    )
    spraying_rate: ReleaseRate | None = leaf(Polarity.FACT, Concern.SAFETY, "contents sprayed, as in 1200 g/h")
    mixing: DecimalNumber | None = leaf(
        Polarity.FACT, Concern.SAFETY, "how many times more air is needed because it does not mix fully"
    )
    statement: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "what is asked of the air, in words")


class Job(Node):
    """One job for one customer."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the job", required=True)
    document: DocumentControl = part("title block of the method statement", required=True)
    scope: Text = leaf(Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "what is done, where and why", required=True)
    vehicles: tuple[Code, ...] = leaf(Polarity.SCOPE, Concern.DOCUMENT, "fleet numbers", default=())
    call: OnCall | None = part("who to call during the work")
    substrate: Substrate | None = part("what the parts are made of")
    preparation: Id | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "id of the preparation", refers="preparations"
    )
    system: Id | None = leaf(Polarity.REPLACED, Concern.FILM, "id of the system", refers="systems")
    exposure: Annotated[Exposure, choice(Exposure)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "exterior or interior"
    )
    items: tuple[Item, ...] = entries("part types", required=True)
    climate: ApplicationClimate | None = part("climate kept during the work")
    ventilation: WorkAir | None = part("air where the spraying is done")
    consumption: Consumption | None = part("what quantities are reckoned with")
    inspection: tuple[InspectionPoint, ...] = entries("inspection points in their order")
    waivers: tuple[Waiver, ...] = entries("findings taken on")
