"""A job: which parts of which vehicles get which preparation and system, in what climate, inspected how."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.acceptance import InspectionPoint
from specgen.model.application import Workplace
from specgen.model.banned import Banned
from specgen.model.contract_document import MadeTo
from specgen.model.control import DocumentControl, OnCall, Waiver
from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.environment import Environment
from specgen.model.field_types import (
    AirFlow,
    Area,
    Code,
    DecimalNumber,
    Duration,
    Humidity,
    Id,
    IsoDate,
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
from specgen.model.figure import Figure
from specgen.model.film import FilmLimits
from specgen.model.hazards import SafetyDataSheet
from specgen.model.node import Node
from specgen.model.preparation import Substrate
from specgen.model.product import ApplicationClimate
from specgen.model.schedule import Schedule
from specgen.model.test_required import RequiredTest


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
    kind: Annotated[ShapeKind, choice(ShapeKind)] = leaf(Polarity.FACT, Concern.FILM, "kind of shape", required=True)
    length: Length | None = leaf(Polarity.FACT, Concern.FILM, "length")
    width: Length | None = leaf(Polarity.FACT, Concern.FILM, "width, or second leg of an angle")
    height: Length | None = leaf(Polarity.FACT, Concern.FILM, "height, or first leg of an angle")
    diameter: Length | None = leaf(Polarity.FACT, Concern.FILM, "outside diameter")
    sides: WholeNumber | None = leaf(
        Polarity.FACT, Concern.FILM, "number of coated sides of a plate, faces of a box, ends of a tube"
    )
    count: WholeNumber | None = leaf(Polarity.FACT, Concern.FILM, "number on one part")


class MaskedArea(Node):
    """What stays bare."""

    id: Id = leaf(Polarity.SCOPE, Concern.PREPARATION, "id of the entry", required=True)
    what: Line = leaf(Polarity.REQUIREMENT_TEXT, Concern.PREPARATION, "masked feature", required=True)
    area: Area | None = leaf(Polarity.FACT, Concern.FILM, "masked area to deduct")


class EdgeAllowance(Node):
    """Edges that take paint of their own."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "id of the entry", required=True)
    length: Length = leaf(Polarity.FACT, Concern.FILM, "length of the edges", required=True)
    width: Length = leaf(Polarity.FACT, Concern.FILM, "width of the edge band", required=True)


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
        Polarity.FACT, Concern.COMPATIBILITY, "generic type (binder family), left out if unknown"
    )
    thickness: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "measured thickness")
    condition: Text | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "condition, as in sound, chalked or cracked")
    rub: Annotated[RubResult, choice(RubResult)] | None = leaf(
        Polarity.FACT,
        Concern.COMPATIBILITY,
        "result of the solvent rub (MEK or acetone): soluble, softens or resistant",
    )
    cured: YesNo | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "through-dry state; no if still soft underneath")
    age: Duration | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "age of the coat, as in 30 days or 12 years")
    cross_cut: WholeNumber | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "cross-cut classification to ISO 2409: 0 (best) to 5"
    )
    tape: Annotated[TapeClass, choice(TapeClass)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "tape test rating to ASTM D3359, as in 4A or 4B (5 is best)"
    )
    chalking: WholeNumber | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "degree of chalking by the tape method of ISO 4628-6: 0 (none) to 5"
    )
    lead: YesNo | None = leaf(Polarity.FACT, Concern.SAFETY, "lead in the coat, by test or by its data sheet")
    chromate: YesNo | None = leaf(
        Polarity.FACT, Concern.SAFETY, "chromate (chromium(VI)) in the coat, by test or by its data sheet"
    )
    sound: YesNo | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "soundness; no if it flakes, cracks or blisters")


class PatchTest(Node):
    """A patch of this item's system on its prepared old paint. The method sets no limit, so the specification does."""

    result: Annotated[PatchResult, choice(PatchResult)] = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "result of the patch test: pass or fail", required=True
    )
    limit: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "acceptance criterion used, in words")


class Repair(Node):
    """How far a repaired spot runs out into what is sound around it. A width left out is not asked for."""

    feather: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "minimum width of the feathered ring of each existing coat, as in 20 mm"
    )
    sanded: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "minimum width of sound existing coating abraded around the rings"
    )
    lap: Length | None = leaf(
        Polarity.AT_LEAST, Concern.PREPARATION, "minimum overlap of the new coats on the abraded existing coating"
    )


class Hand(StrEnum):
    """On which side of the vehicle a part is; of both, the number is half left and half right."""

    LEFT = "left"
    RIGHT = "right"
    BOTH = "left-and-right"


class ItemCoat(Node):
    """A coat of the item's system that has another colour or film on this item; all else of the coat stays."""

    id: Id = leaf(Polarity.SCOPE, Concern.FILM, "coat of the system (by its id)", required=True)
    variant: Id | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "variant of its product on this item (by its id)")
    film: FilmLimits | None = part("DFT limits on this item, where they differ")


class Item(Node):
    """A part type and how many of it."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the item", required=True)
    name: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name of the part", required=True)
    count: WholeNumber = leaf(Polarity.FACT, Concern.FILM, "number of parts", required=True)
    hand: Annotated[Hand, choice(Hand)] | None = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "hand of the parts: left, right, or left-and-right where half of them are of each",
    )
    area: Area | None = leaf(Polarity.FACT, Concern.FILM, "stated area of one part")
    shapes: tuple[Shape, ...] = entries("shapes from which the area of one part is calculated")
    masked: tuple[MaskedArea, ...] = entries("areas of one part that are masked and left uncoated")
    edges: tuple[EdgeAllowance, ...] = entries("edge allowance of one part")
    old_coats: tuple[OldCoat, ...] = entries("existing coats on the part, from the substrate outwards")
    patch_test: PatchTest | None = part("patch test of the new system on the existing coating")
    strip_limit: Thickness | None = leaf(
        Polarity.AT_MOST,
        Concern.FILM,
        "maximum total DFT, existing and new coats; above it the existing coating is stripped",
    )
    exposure: Annotated[Exposure, choice(Exposure)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "exposure, where it differs from the job's: exterior or interior"
    )
    environment: Environment | None = part("environment in service, where it differs from the job's")
    repair: Repair | None = part("extent of a repair into the existing coating")
    substrate: Substrate | None = part("substrate, where it differs from the job's")
    preparation: Id | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "preparation, where it differs from the job's", refers="preparations"
    )
    system: Id | None = leaf(
        Polarity.REPLACED, Concern.FILM, "system, where it differs from the job's", refers="systems"
    )
    coats: tuple[ItemCoat, ...] = entries("coats of the system that have another variant or DFT on this item")
    service_temperature: Temperature | None = leaf(Polarity.FACT, Concern.PRODUCT, "maximum service temperature")
    figures: tuple[Figure, ...] = entries("pictures and sketches of the part")


class DeadVolumeTable(StrEnum):
    """How the paint that fills a blast profile is reckoned; the three differ by half."""

    BY_ROUGHNESS = "by-roughness"
    BY_BAND = "by-band"
    WHOLE_PROFILE = "whole-profile"


class Ordered(Node):
    """Packs that are ordered."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    product: Id = leaf(Polarity.FACT, Concern.PRODUCT, "product (by its id)", required=True, refers="products")
    variant: Id | None = leaf(Polarity.FACT, Concern.PRODUCT, "variant of that product (by its id)")
    packs: WholeNumber = leaf(Polarity.FACT, Concern.FILM, "cans or tins ordered", required=True)
    use_by: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "last day of the shelf life of these packs")


class SupplyKind(StrEnum):
    """What a supply is; thinner and cleaner are chemicals with a safety data sheet of their own."""

    THINNER = "thinner"
    CLEANER = "cleaner"
    ABRASIVE = "abrasive"
    MASKING = "masking"
    OTHER = "other"


class Supply(Node):
    """Something to order beside the paint."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    what: Line = leaf(
        Polarity.FACT, Concern.PRODUCT, "supply, as in degreaser, thinner, P320 discs, masking film", required=True
    )
    amount: Line = leaf(Polarity.FACT, Concern.FILM, "amount, as in 2 L or 30 discs", required=True)
    order_number: Code | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "order number of the supply")
    use: Line | None = leaf(Polarity.NOTE, Concern.PRODUCT, "use of the supply")
    kind: Annotated[SupplyKind, choice(SupplyKind)] | None = leaf(
        Polarity.FACT, Concern.SAFETY, "kind of supply: thinner, cleaner (degreasers too), abrasive, masking or other"
    )
    statements: tuple[Code, ...] = leaf(
        Polarity.ALL_OF, Concern.SAFETY, "H statements of a thinner or cleaner, as in H225", default=()
    )
    gloves: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "gloves, material and standard")
    safety_data_sheet: SafetyDataSheet | None = part("safety data sheet of a thinner or cleaner")


class Consumption(Node):
    """What the quantities are reckoned with. A loss names its convention: 40 % loss is not 40 % surplus."""

    transfer_efficiency: Share | None = leaf(Polarity.FACT, Concern.FILM, "transfer efficiency")
    loss_share: Share | None = leaf(Polarity.FACT, Concern.FILM, "loss of liquid paint as a share of the paint used")
    loss_surplus: Percentage | None = leaf(
        Polarity.FACT, Concern.FILM, "loss of liquid paint as a surplus on the quantity without loss"
    )
    profile: Thickness | None = leaf(
        Polarity.FACT, Concern.FILM, "height of the blast profile that the first coat fills"
    )
    dead_volume: Annotated[DeadVolumeTable, choice(DeadVolumeTable)] | None = leaf(
        Polarity.FACT, Concern.FILM, "method of calculating the dead volume of the profile"
    )
    test_area: Area | None = leaf(
        Polarity.FACT, Concern.FILM, "area of test panels and patches, coated with each system beside the parts"
    )
    supplies: tuple[Supply, ...] = entries(
        "thinner, cleaners, abrasives and the like to order with the packs", passes_on=False
    )
    ordered: tuple[Ordered, ...] = entries("packs ordered, a line for each product and variant", passes_on=False)


class WorkAir(Node):
    """The air where the spraying is done."""

    room: RoomVolume | None = leaf(Polarity.FACT, Concern.SAFETY, "volume of the booth or room")
    flow: AirFlow | None = leaf(Polarity.AT_LEAST, Concern.SAFETY, "fresh-air flow")
    changes: DecimalNumber | None = leaf(
        Polarity.AT_LEAST, Concern.SAFETY, "air changes per hour, where the flow is not known"
    )
    spraying_rate: ReleaseRate | None = leaf(Polarity.FACT, Concern.SAFETY, "contents sprayed per hour, as in 1200 g/h")
    mixing: DecimalNumber | None = leaf(
        Polarity.FACT, Concern.SAFETY, "mixing factor for incomplete mixing of the room air"
    )
    statement: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "ventilation requirement, in words")


class ConfinedSpace(Node):
    """What has to be in place before anybody goes into a tank, hopper or pit; whoever signs the permit answers for it."""

    permit: Line | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "person or office that signs the entry permit"
    )
    atmosphere_test: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "atmosphere test before and during entry: what, limits, how often"
    )
    standby: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "standby person outside")
    rescue: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "rescue: equipment, crew and call")


class OutsideAir(Node):
    """The air from outside that a bay is heated with."""

    air: Temperature = leaf(Polarity.FACT, Concern.CLIMATE, "temperature of the outside air", required=True)
    humidity: Humidity = leaf(Polarity.FACT, Concern.CLIMATE, "relative humidity of the outside air", required=True)
    humidifier: YesNo | None = leaf(Polarity.FACT, Concern.CLIMATE, "humidifier in the bay; no if left out")


class Job(Node):
    """One job for one customer."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the job", required=True)
    document: DocumentControl = part("title block of the method statement", required=True, passes_on=False)
    starts: IsoDate | None = leaf(Polarity.FACT, Concern.PRODUCT, "first day of the work", passes_on=False)
    scope: Text = leaf(
        Polarity.REQUIREMENT_TEXT,
        Concern.DOCUMENT,
        "scope of the work: what is done, where and why",
        required=True,
        passes_on=False,
    )
    vehicles: tuple[Code, ...] = leaf(
        Polarity.SCOPE, Concern.DOCUMENT, "fleet numbers, or the plant", default=(), passes_on=False
    )
    call: OnCall | None = part("contact during the work")
    substrate: Substrate | None = part("substrate of the parts")
    preparation: Id | None = leaf(
        Polarity.REPLACED, Concern.PREPARATION, "preparation (by its id)", refers="preparations"
    )
    system: Id | None = leaf(Polarity.REPLACED, Concern.FILM, "system (by its id)", refers="systems")
    exposure: Annotated[Exposure, choice(Exposure)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "exposure: exterior or interior"
    )
    environment: Environment | None = part("environment in service")
    items: tuple[Item, ...] = entries("part types", required=True, passes_on=False)
    climate: ApplicationClimate | None = part("ambient conditions during the work")
    heated_from: OutsideAir | None = part("outside air that the bay is heated with")
    workplace: Annotated[Workplace, choice(Workplace)] | None = leaf(
        Polarity.REPLACED, Concern.CLIMATE, "place of work: workshop, booth, outdoors, on-site or confined-space"
    )
    confined_space: ConfinedSpace | None = part("entry into a confined space")
    banned: tuple[Banned, ...] = entries(
        "substances banned on this job, beside those of project and system", passes_on=True
    )
    ventilation: WorkAir | None = part("ventilation where the spraying is done")
    consumption: Consumption | None = part("basis of the quantities")
    schedule: Schedule | None = part("schedule of the work")
    figures: tuple[Figure, ...] = entries("pictures and sketches of the job")
    tests: tuple[RequiredTest, ...] = entries("tests that the coated items or their panels have to pass")
    inspection: tuple[InspectionPoint, ...] = entries("inspection points in their order")
    made_to: tuple[MadeTo, ...] = entries("documents of the customer's that the job is made to", passes_on=False)
    waivers: tuple[Waiver, ...] = entries("waived findings", passes_on=False)
