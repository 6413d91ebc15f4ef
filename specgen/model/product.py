"""A product as its maker states it: what it is, how it cures and dries, what film it gives, what it does to people."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.application import Application
from specgen.model.control import DocumentControl
from specgen.model.declaring import Audience, Concern, Polarity, entries, leaf, part
from specgen.model.drying import Drying, LightCure, MoistureCure, OvercoatWindow, PotLife, SandableAfter, Stoving
from specgen.model.field_types import (
    AbsoluteHumidityRange,
    Area,
    Code,
    DecimalNumber,
    Density,
    GlossRange,
    HumidityRange,
    Id,
    IsoDate,
    Line,
    Mass,
    Share,
    ShareOrRange,
    Span,
    SpreadingRate,
    Temperature,
    TemperatureDifferenceRange,
    TemperatureRange,
    Text,
    Thickness,
    VocContent,
    Volume,
    YesNo,
    choice,
    listed,
)
from specgen.model.film import ProductFilm
from specgen.model.hazards import Hazards, Users
from specgen.model.node import Node
from specgen.model.preparation import Grade
from specgen.model.test_required import AskedTest


class CuringKind(StrEnum):
    """How the film hardens, and what that asks of the applicator."""

    LIQUID_TWO_PACK = "liquid-two-pack"
    CAPSULE_AEROSOL = "capsule-aerosol"
    BLOCKED_AEROSOL = "blocked-hardener-aerosol"
    MOISTURE = "moisture-cured"
    OXIDATIVE = "oxidative"
    PHYSICAL = "physically-drying"
    STOVED = "stoved"
    LIGHT = "light-cured"


class Role(StrEnum):
    """What a coat is for, in the order coats are laid down; where each may stand is told by the table coat_places."""

    WASH_PRIMER = "wash-primer"
    ADHESION_PROMOTER = "adhesion-promoter"
    PRIMER = "primer"
    BODY_FILLER = "body-filler"
    SURFACER = "surfacer"
    SEALER = "sealer"
    SEAM_SEALER = "seam-sealer"
    INTERMEDIATE = "intermediate"
    UNDERBODY = "underbody"
    BASECOAT = "basecoat"
    TOPCOAT = "topcoat"
    TANK_LINING = "tank-lining"
    CLEARCOAT = "clearcoat"
    ANTIFOULING = "antifouling"
    CAVITY_WAX = "cavity-wax"


class Ingredient(StrEnum):
    SOLIDS = "solids"
    SOLVENT = "solvent"
    PROPELLANT = "propellant"


class PackForm(StrEnum):
    AEROSOL = "aerosol"
    LIQUID = "liquid"


class Colour(Node):
    """A colour by the customer's own standard."""

    standard: Line = leaf(Polarity.EXACTLY, Concern.PRODUCT, "colour standard or card", required=True)
    number: Code = leaf(Polarity.EXACTLY, Concern.PRODUCT, "number in that standard", required=True)
    name: Line | None = leaf(Polarity.WORDING, Concern.PRODUCT, "name of the colour")


class VariantOverrides(Node):
    """The leaves of its product that a variant may state anew; nothing else can differ."""

    per_pass: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT per cross coat")
    hiding: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT for full hiding of this colour")
    solids_in_can: ShareOrRange | None = leaf(
        Polarity.FACT, Concern.FILM, "volume solids of the can contents, as in 63 %"
    )
    solids_sprayed: ShareOrRange | None = leaf(Polarity.FACT, Concern.FILM, "volume solids without propellant")


class Variant(Node):
    """One colour, gloss and pack of a product, with its order number."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the variant", required=True)
    name: Line = leaf(Polarity.WORDING, Concern.PRODUCT, "name as printed", required=True)
    order_number: Code = leaf(Polarity.EXACTLY, Concern.PRODUCT, "order number", required=True)
    colour: Colour | None = part("colour by the customer's standard")
    gloss_grade: Line | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "gloss grade in words")
    gloss: GlossRange | None = leaf(Polarity.WITHIN, Concern.ACCEPTANCE, "gloss at 60 degrees, as in 80..90 GU")
    fill: Volume | None = leaf(Polarity.FACT, Concern.PRODUCT, "net volume, where it differs from the product's pack")
    overrides: VariantOverrides | None = part("values that differ for this variant")


class Pack(Node):
    """The can or tin."""

    form: Annotated[PackForm, choice(PackForm)] = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "form of the pack: aerosol or liquid", required=True
    )
    fill: Volume | None = leaf(Polarity.FACT, Concern.PRODUCT, "net volume, propellant included")
    net_mass: Mass | None = leaf(Polarity.FACT, Concern.PRODUCT, "net mass, propellant included")
    dispensed: Share | None = leaf(Polarity.FACT, Concern.PRODUCT, "dispensed share of the contents")


class ComponentClass(Node):
    """One hazard class of a substance of the composition."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True, audience=Audience.MAKER)
    hazard_class: Annotated[str, listed("hazard_classes")] = leaf(
        Polarity.FACT,
        Concern.SAFETY,
        "hazard class, an id of the table hazard_classes",
        required=True,
        audience=Audience.MAKER,
    )
    category: Code = leaf(
        Polarity.FACT, Concern.SAFETY, "category, as in 1 or 1A", required=True, audience=Audience.MAKER
    )
    statement: Code | None = leaf(
        Polarity.FACT, Concern.SAFETY, "statement, where the category has several", audience=Audience.MAKER
    )
    m_factor: DecimalNumber | None = leaf(Polarity.FACT, Concern.SAFETY, "M-factor", audience=Audience.MAKER)
    limit: Share | None = leaf(
        Polarity.FACT,
        Concern.SAFETY,
        "specific concentration limit",
        audience=Audience.MAKER,
    )
    limit_source: Line | None = leaf(
        Polarity.NOTE, Concern.SAFETY, "source of the specific concentration limit", audience=Audience.MAKER
    )


class Component(Node):
    """One line of the composition. It is the maker's and never enters a customer document."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the line", required=True, audience=Audience.MAKER)
    name: Line = leaf(Polarity.FACT, Concern.PRODUCT, "substance", required=True, audience=Audience.MAKER)
    cas: Code | None = leaf(Polarity.FACT, Concern.PRODUCT, "CAS number", audience=Audience.MAKER)
    kind: Annotated[Ingredient, choice(Ingredient)] = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "kind of component: solids, solvent or propellant",
        required=True,
        audience=Audience.MAKER,
    )
    mass_share: Share = leaf(Polarity.FACT, Concern.PRODUCT, "share by mass", required=True, audience=Audience.MAKER)
    density: Density = leaf(
        Polarity.FACT, Concern.PRODUCT, "density at 20 degC", required=True, audience=Audience.MAKER
    )
    flammable: YesNo | None = leaf(
        Polarity.FACT, Concern.SAFETY, "classification of the component as flammable", audience=Audience.MAKER
    )
    adds_up: YesNo | None = leaf(
        Polarity.FACT,
        Concern.SAFETY,
        "adding up of its harm to skin and eyes with that of others; no for a strong acid or base",
        audience=Audience.MAKER,
    )
    classes: tuple[ComponentClass, ...] = entries("hazard classes of the substance")


class Solids(Node):
    """What stays on the part. Sprayed means without the propellant, which is gone when the wet film is read."""

    in_can: ShareOrRange | None = leaf(
        Polarity.FACT, Concern.FILM, "volume solids of the can contents, as in 63 %, 63 +- 2 % or min 60 %"
    )
    sprayed: ShareOrRange | None = leaf(
        Polarity.FACT, Concern.FILM, "volume solids without propellant (for the comb gauge)"
    )


class ServiceTemperature(Node):
    """Dry heat the cured film stands."""

    continuous_max: Temperature | None = leaf(
        Polarity.AT_MOST, Concern.PRODUCT, "maximum continuous service temperature"
    )
    short_max: Temperature | None = leaf(Polarity.AT_MOST, Concern.PRODUCT, "peak temperature, short-term")


class ApplicationClimate(Node):
    """Air and part while the film goes on and sets."""

    air: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "air temperature")
    surface: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "surface temperature")
    humidity: HumidityRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "relative humidity")
    absolute_humidity: AbsoluteHumidityRange | None = leaf(
        Polarity.WITHIN, Concern.CLIMATE, "absolute humidity (water in the air), as in min 5 g/m3"
    )
    dew_point_margin: TemperatureDifferenceRange | None = leaf(
        Polarity.WITHIN, Concern.CLIMATE, "surface temperature above the dew point, as in min 3 K"
    )


class Losses(StrEnum):
    """Whether a coverage figure has the losses of spraying in it."""

    INCLUDED = "included"
    EXCLUDED = "excluded"


class Coverage(Node):
    """What the maker says a pack or a litre covers; it means nothing without its film."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the claim", required=True)
    area_per_pack: Area | None = leaf(Polarity.FACT, Concern.PRODUCT, "coverage per can or tin")
    spreading_rate: SpreadingRate | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "spreading rate, area per litre or gallon"
    )
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT the figure applies to")
    losses: Annotated[Losses, choice(Losses)] | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "spray losses: included or excluded"
    )
    transfer_efficiency: Share | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "transfer efficiency assumed in the figure"
    )


class VocCategory(Node):
    """The category whose limit holds in one jurisdiction."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    jurisdiction: Code = leaf(Polarity.SCOPE, Concern.SAFETY, "jurisdiction: EU, GB, US or US-CA", required=True)
    category: Line = leaf(
        Polarity.REPLACED, Concern.SAFETY, "category in that jurisdiction, as in e or c(i)", required=True
    )


class Voc(Node):
    """Volatile organic compounds of the product ready for use, propellant included."""

    content: VocContent | None = leaf(
        Polarity.AT_MOST, Concern.SAFETY, "VOC content ready for use, by the EU definition"
    )
    density: Density | None = leaf(Polarity.FACT, Concern.PRODUCT, "density of the product ready for use")
    reactivity: DecimalNumber | None = leaf(
        Polarity.AT_MOST, Concern.SAFETY, "reactivity of an aerosol, in g of ozone per g of product"
    )
    factors: Code | None = leaf(Polarity.REPLACED, Concern.SAFETY, "set of reactivity factors, 2008 or 2010")
    categories: tuple[VocCategory, ...] = entries("VOC category whose limit applies, by jurisdiction")


class Evidence(Node):
    """The test of a report that stands behind a claim; `than` is the other side of a comparison, from the same report."""

    report: Id = leaf(Polarity.FACT, Concern.PRODUCT, "test report (by its id)", required=True, refers="reports")
    test: Id | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "test of that report (by its id), where it has several that would do"
    )
    than: Id | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "test of the same report that a comparison is made with (by its id)"
    )


class Claim(Node):
    """Something the maker says of the product, with the test that shows it. Without evidence it is not printed."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the claim", required=True)
    text: Text = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "text of the claim", required=True)
    test: AskedTest | None = part("test, condition and limit of the claim")
    evidence: Evidence | None = part("test report behind the claim")
    confirmed_by: Line | None = leaf(
        Polarity.NOTE, Concern.PRODUCT, "person who confirmed an unusual value of the claim against its report"
    )
    basis: Text | None = leaf(
        Polarity.NOTE, Concern.PRODUCT, "basis of the claim in words; it is no evidence and is not printed"
    )


class Product(Node):
    """One product with its variants."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the product", required=True)
    document: DocumentControl | None = part("title block of its data sheet", passes_on=False)
    name: Line = leaf(Polarity.WORDING, Concern.PRODUCT, "name as printed", required=True)
    formulated: IsoDate | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "date of the present formulation", passes_on=False
    )
    about: Text | None = leaf(Polarity.WORDING, Concern.PRODUCT, "description of the product (a sentence or two)")
    binder: Annotated[str, listed("binder_families")] = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "generic type, an id of the table binder_families", required=True
    )
    curing: Annotated[CuringKind, choice(CuringKind)] = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "curing mechanism and supply form", required=True
    )
    roles: tuple[Annotated[Role, choice(Role)], ...] = leaf(
        Polarity.ONE_OF, Concern.PRODUCT, "coat types it may be used as", required=True
    )
    direct_to_metal: YesNo = leaf(Polarity.PERMISSION, Concern.COMPATIBILITY, "use direct to metal", required=True)
    least_grade: Grade | None = leaf(
        Polarity.LADDER, Concern.PREPARATION, "minimum preparation grade of bare steel beneath it, as in St 3"
    )
    may_go_over: tuple[Annotated[str, listed("binder_families")], ...] = leaf(
        Polarity.ONE_OF,
        Concern.COMPATIBILITY,
        "allowed generic types beneath it, all others are left open",
        default=(),
    )
    not_over: tuple[Annotated[str, listed("binder_families")], ...] = leaf(
        Polarity.ALL_OF,
        Concern.COMPATIBILITY,
        "forbidden generic types beneath it",
        default=(),
    )
    variants: tuple[Variant, ...] = entries("colours, glosses and packs", required=True, passes_on=False)
    pack: Pack = part("can or tin", required=True)
    composition: tuple[Component, ...] = entries("composition by mass, for the manufacturer only")
    solids: Solids | None = part("volume solids")
    film: ProductFilm = part("DFT limits and film figures", required=True)
    drying: tuple[Drying, ...] = entries("drying stages with their conditions")
    sandable_after: tuple[SandableAfter, ...] = entries("times before sanding, dry or wet, with their conditions")
    overcoat: tuple[OvercoatWindow, ...] = entries("overcoating intervals with their conditions")
    moisture_cure: MoistureCure | None = part("water for the cure, for the manufacturer only")
    stoving: tuple[Stoving, ...] = entries("stoving, surface temperature with its time; each pair cures the film")
    light: LightCure | None = part("curing by light")
    pot_life: PotLife | None = part("pot life of a mixed liquid")
    shelf_life: Span | None = leaf(
        Polarity.AT_MOST, Concern.PRODUCT, "shelf life of the unopened pack, as in 24 months"
    )
    service_temperature: ServiceTemperature | None = part("dry heat resistance of the cured film")
    climate: ApplicationClimate | None = part("application conditions")
    application: Application | None = part("application, by curing type")
    users: Annotated[Users, choice(Users)] | None = leaf(
        Polarity.SCOPE,
        Concern.SAFETY,
        "users, professional or public, where different from the project's",
        passes_on=True,
    )
    voc: Voc | None = part("volatile organic compounds")
    hazards: Hazards | None = part("hazards as the safety data sheet declares them")
    coverage: tuple[Coverage, ...] = entries("coverage of a pack or a litre")
    claims: tuple[Claim, ...] = entries("claims with their basis", passes_on=False)
    not_claimed: Text | None = leaf(Polarity.WORDING, Concern.PRODUCT, "exclusions from the claims")

    def variant(self, variant_id: str) -> Variant | None:
        return next((v for v in self.variants if v.id == variant_id), None)
