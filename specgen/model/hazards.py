"""What a product can do to people, as its safety data sheet declares it. The data sheet stays the authority."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Audience, Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Code,
    DecimalNumber,
    Heat,
    Id,
    IsoDate,
    Length,
    Line,
    Mass,
    Share,
    Temperature,
    Text,
    Volume,
    YesNo,
    choice,
    listed,
)
from specgen.model.node import Node


class SignalWord(StrEnum):
    DANGER = "Danger"
    WARNING = "Warning"
    NONE = "none"


class Task(StrEnum):
    """What the person is doing when the protection is needed."""

    PREPARATION = "surface-preparation"
    SANDING = "sanding"
    MIXING = "mixing"
    SPRAYING = "spraying"
    CLEAN_UP = "clean-up"
    ANY = "any"


class Route(StrEnum):
    INHALED = "inhaled"
    SKIN = "skin"
    EYES = "eyes"
    SWALLOWED = "swallowed"


class Users(StrEnum):
    """Who the product is supplied to."""

    PROFESSIONAL = "professional"
    PUBLIC = "public"


class SafetyDataSheet(Node):
    """Where the current safety data sheet is."""

    number: Code = leaf(Polarity.EXACTLY, Concern.SAFETY, "number of the sheet", required=True)
    revision: Code | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "revision of the sheet")
    date: IsoDate | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "date of the sheet")
    language: Code | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "language of the sheet, as in en")
    available_from: Line | None = leaf(Polarity.WORDING, Concern.SAFETY, "source of the current sheet")


class Protection(Node):
    """Protective equipment for one task."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    task: Annotated[Task, choice(Task)] = leaf(Polarity.SCOPE, Concern.SAFETY, "task of the protection", required=True)
    respiratory: Line | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "respiratory protection, type and standard"
    )
    gloves: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "gloves, material and standard")
    eyes: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "eye protection")
    skin: Line | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "protective clothing")


class FirstAid(Node):
    """First aid in a line."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    route: Annotated[Route, choice(Route)] = leaf(Polarity.SCOPE, Concern.SAFETY, "route of exposure", required=True)
    action: Line = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "first-aid measure", required=True)


class Caution(Node):
    """A caution in the maker's words."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the caution", required=True)
    task: Annotated[Task, choice(Task)] = leaf(Polarity.SCOPE, Concern.SAFETY, "task of the caution", required=True)
    text: Text = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "text of the caution", required=True)


class HazardClass(Node):
    """One hazard class of the product, as section 2 of the safety data sheet gives it."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    hazard_class: Annotated[str, listed("hazard_classes")] = leaf(
        Polarity.REPLACED, Concern.SAFETY, "hazard class, an id of the table hazard_classes", required=True
    )
    category: Code = leaf(Polarity.EXACTLY, Concern.SAFETY, "category, as in 1 or 1A", required=True)
    statement: Code | None = leaf(
        Polarity.EXACTLY, Concern.SAFETY, "statement, where the category has several, as H335 or H336"
    )
    basis: Line | None = leaf(Polarity.NOTE, Concern.SAFETY, "supporting test report, calculation or list")


class AerosolTest(Node):
    """The flammability tests of a spray."""

    report: Line = leaf(Polarity.EXACTLY, Concern.SAFETY, "number of the test report", required=True)
    ignition_distance: Length | None = leaf(
        Polarity.FACT, Concern.SAFETY, "ignition distance of the spray; 0 cm if it did not ignite"
    )
    time_equivalent: DecimalNumber | None = leaf(
        Polarity.FACT, Concern.SAFETY, "time equivalent of the enclosed-space test (s/m3)"
    )
    deflagration_density: DecimalNumber | None = leaf(
        Polarity.FACT, Concern.SAFETY, "deflagration density of the enclosed-space test (g/m3)"
    )


class CombustionHeat(Node):
    """Heat of combustion of the whole contents. It goes with the composition and is the maker's."""

    heat: Heat = leaf(
        Polarity.FACT, Concern.SAFETY, "heat of combustion of the contents", required=True, audience=Audience.MAKER
    )
    source: Line | None = leaf(
        Polarity.NOTE, Concern.SAFETY, "supporting test report or formula", audience=Audience.MAKER
    )


class Isocyanates(Node):
    """What is known of isocyanates in the product ready for use."""

    contained: YesNo | None = leaf(Polarity.FACT, Concern.SAFETY, "presence of isocyanates, prepolymers included")
    monomer: Share | None = leaf(
        Polarity.FACT, Concern.SAFETY, "free monomeric diisocyanates, share by mass", audience=Audience.MAKER
    )
    monomer_at_limit: YesNo | None = leaf(
        Polarity.FACT, Concern.SAFETY, "free monomeric diisocyanates at 0.1 % or above"
    )


class Transport(Node):
    """How the pack travels."""

    un_number: Code | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "UN number, as in UN 1950")
    transport_class: Code | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "dangerous goods class, as in 2.1")
    limited_quantity: Volume | None = leaf(Polarity.AT_MOST, Concern.SAFETY, "limited quantity per inner packaging")
    package_max: Mass | None = leaf(
        Polarity.AT_MOST, Concern.SAFETY, "maximum gross mass of a limited-quantity package"
    )


class Hazards(Node):
    """Declared classification, label elements and protection."""

    signal_word: Annotated[SignalWord, choice(SignalWord)] | None = leaf(
        Polarity.LADDER, Concern.SAFETY, "signal word: Danger, Warning or none"
    )
    statements: tuple[Code, ...] = leaf(Polarity.ALL_OF, Concern.SAFETY, "H statements, as in H222", default=())
    supplemental: tuple[Code, ...] = leaf(Polarity.ALL_OF, Concern.SAFETY, "EUH statements", default=())
    precautions: tuple[Code, ...] = leaf(Polarity.ALL_OF, Concern.SAFETY, "P statements, as in P210", default=())
    pictograms: tuple[Code, ...] = leaf(Polarity.ALL_OF, Concern.SAFETY, "pictograms, as in GHS02", default=())
    classification: tuple[HazardClass, ...] = entries("hazard classes as section 2 of the safety data sheet gives them")
    precautions_reason: Text | None = leaf(
        Polarity.NOTE,
        Concern.SAFETY,
        "reason for more than six P statements on the label, or for one that no class requires",
    )
    sensitisers_named: tuple[Line, ...] = leaf(
        Polarity.ALL_OF, Concern.SAFETY, "sensitising substances that EUH208 names", default=()
    )
    named_on_label: tuple[Line, ...] = leaf(
        Polarity.ALL_OF,
        Concern.SAFETY,
        "substances the label names because its health classes come from them",
        default=(),
    )
    isocyanates: Isocyanates | None = part("isocyanates, where the binder leaves it open")
    epoxy_up_to_700: YesNo | None = leaf(
        Polarity.FACT, Concern.SAFETY, "presence of epoxy constituents with a number-average molecular weight up to 700"
    )
    titanium_dioxide_decision: Text | None = leaf(
        Polarity.NOTE, Concern.SAFETY, "decision on EUH211 (kept or dropped, by whom and when)"
    )
    cure_releases: Line | None = leaf(
        Polarity.FACT, Concern.SAFETY, "substance released by a blocked hardener during cure"
    )
    cure_release_cas: Code | None = leaf(
        Polarity.FACT, Concern.SAFETY, "CAS number of the substance released during cure", audience=Audience.MAKER
    )
    cure_release_share: Share | None = leaf(
        Polarity.FACT, Concern.SAFETY, "mass released during cure, as a share of the contents", audience=Audience.MAKER
    )
    flash_point: Temperature | None = leaf(Polarity.FACT, Concern.SAFETY, "flash point of the liquid")
    heat_of_combustion: CombustionHeat | None = part("heat of combustion of the contents, for the manufacturer only")
    aerosol_test: AerosolTest | None = part("flammability tests of the spray")
    safety_data_sheet: SafetyDataSheet | None = part("the current safety data sheet")
    safety_sets: tuple[Id, ...] = leaf(
        Polarity.NOTE,
        Concern.SAFETY,
        "sets of protection, first aid and cautions shared with other products (by their ids); read as if they stood here",
        default=(),
    )
    protection: tuple[Protection, ...] = entries("personal protective equipment by task")
    ventilation: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "ventilation at the workplace")
    first_aid: tuple[FirstAid, ...] = entries("first aid")
    cautions: tuple[Caution, ...] = entries("further cautions of the manufacturer")
    health_surveillance: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "health surveillance of the users"
    )
    storage_min: Temperature | None = leaf(Polarity.AT_LEAST, Concern.SAFETY, "minimum storage temperature")
    storage_max: Temperature | None = leaf(Polarity.AT_MOST, Concern.SAFETY, "maximum storage temperature")
    transport: Transport | None = part("transport of the pack")
    waste_codes: tuple[Line, ...] = leaf(
        Polarity.ALL_OF, Concern.SAFETY, "waste codes (List of Waste), as in 16 05 04*", default=()
    )
    disposal: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.SAFETY, "disposal of cans, rags and residues")
