"""The project: maker, customer, units and page to print, numbering, roles and policies that hold for every document of a folder."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.banned import Banned
from specgen.model.control import Calculations, Contact
from specgen.model.declaring import Audience, Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Code,
    Colour,
    Id,
    Line,
    PictureFile,
    RangeFolder,
    Span,
    Text,
    Thickness,
    WholeNumber,
    YesNo,
    choice,
)
from specgen.model.hazards import Users
from specgen.model.node import Node
from specgen.model.product import ApplicationClimate

SCHEMA_VERSION = 2


class PageSize(StrEnum):
    A4 = "A4"
    LETTER = "Letter"


class FilmUnit(StrEnum):
    UM = "um"
    MIL = "mil"


class FilmConversion(StrEnum):
    """How um and mil are turned into each other in brackets: by 25.4, or by 25 as nominal films are specified."""

    EXACT = "exact"
    NOMINAL = "nominal-25"


class TemperatureUnit(StrEnum):
    CELSIUS = "degC"
    FAHRENHEIT = "degF"


class AreaUnit(StrEnum):
    M2 = "m2"
    FT2 = "ft2"


class LengthUnit(StrEnum):
    MM = "mm"
    IN = "in"


class VolumeUnit(StrEnum):
    ML = "mL"
    L = "L"
    FL_OZ = "fl oz"
    GAL = "gal"


class VocUnit(StrEnum):
    G_L = "g/L"
    LB_GAL = "lb/gal"


class DensityUnit(StrEnum):
    G_ML = "g/mL"
    LB_GAL = "lb/gal"


class Language(StrEnum):
    """The languages there are words for: English, which templates are written in, and those of `templates/locale`."""

    ENGLISH = "en"


class NumberingScheme(StrEnum):
    LETTERS = "letters"
    NUMBERS = "numbers"


class Party(Node):
    """Maker or customer as printed."""

    name: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name", required=True)
    address: Text | None = leaf(Polarity.WORDING, Concern.DOCUMENT, "address")
    contact: Contact | None = part("contact")


class SecondUnits(Node):
    """A second unit printed in brackets after the author's own; absent means none."""

    film: Annotated[FilmUnit, choice(FilmUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of film thickness: um or mil"
    )
    film_conversion: Annotated[FilmConversion, choice(FilmConversion)] = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "conversion of film thickness in brackets: exact, or nominal-25 for 25 um to the mil",
        default=FilmConversion.EXACT,
    )
    temperature: Annotated[TemperatureUnit, choice(TemperatureUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of temperature: degC or degF"
    )
    area: Annotated[AreaUnit, choice(AreaUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of area, m2 or ft2"
    )
    length: Annotated[LengthUnit, choice(LengthUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of length, mm or in"
    )
    volume: Annotated[VolumeUnit, choice(VolumeUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of volume: mL, L, fl oz or gal"
    )
    voc: Annotated[VocUnit, choice(VocUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of VOC content, g/L or lb/gal"
    )
    density: Annotated[DensityUnit, choice(DensityUnit)] | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "second unit of density, g/mL or lb/gal"
    )


class Numbering(Node):
    """How revisions are counted."""

    scheme: Annotated[NumberingScheme, choice(NumberingScheme)] = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "revision scheme: letters or numbers", default=NumberingScheme.LETTERS
    )
    skip: tuple[Code, ...] = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "revision letters never used", default=("I", "O", "Q", "S", "X", "Z")
    )


class ProjectRole(Node):
    """Someone's part in a document."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the role", required=True)
    name: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "role as printed", required=True)
    responsibility: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "responsibility of the role")


class ApprovalRole(StrEnum):
    """What an approval says: the technical check, or the release for use. Nobody does both."""

    CHECK = "check"
    APPROVE = "approve"


class RevisionGround(StrEnum):
    """What makes a revision in force due for another one."""

    CONTENT = "content"  # the sources say something else than it
    SHEETS = "data-sheets"  # a data sheet it rests on was revised or withdrawn
    TABLES = "tables"  # a published table or a document cited changed
    REVIEW = "review"  # its review is overdue


class ApprovalPolicy(Node):
    """Approvals of one role that a revision needs before it is issued."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the demand", required=True)
    role: Annotated[ApprovalRole, choice(ApprovalRole)] = leaf(
        Polarity.EXACTLY, Concern.DOCUMENT, "kind of approval: check or approve", required=True
    )
    count: WholeNumber = leaf(Polarity.AT_LEAST, Concern.DOCUMENT, "number of persons", default=1)
    signed: YesNo = leaf(Polarity.AT_LEAST, Concern.DOCUMENT, "signature required on each", default=False)


class Holder(Node):
    """Someone who is told of every revision and acknowledges it. A data sheet goes to many: who else holds it is the maker's."""

    id: Id = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "id of the holder",
        required=True,
        audience=Audience.MAKER,
        administrative=True,
    )
    name: Line = leaf(
        Polarity.WORDING,
        Concern.DOCUMENT,
        "person, desk or shop",
        required=True,
        audience=Audience.MAKER,
        administrative=True,
    )
    documents: tuple[Code, ...] = leaf(
        Polarity.ALL_OF,
        Concern.DOCUMENT,
        "document numbers held; all of the folder if left out",
        default=(),
        audience=Audience.MAKER,
        administrative=True,
    )


class Means(StrEnum):
    """How a mean of readings is held against a limit: with every digit, or rounded half up to the digits of the readings."""

    EXACT = "exact"
    AS_READ = "as-read"


class Policies(Node):
    """House rules of the project."""

    raise_to_error: tuple[Code, ...] = leaf(
        Polarity.ALL_OF, Concern.DOCUMENT, "rules whose warnings count as errors here", default=()
    )
    approvals_needed: WholeNumber = leaf(
        Polarity.AT_LEAST,
        Concern.DOCUMENT,
        "number of persons who check or approve before issue; one of them approves",
        default=1,
    )
    approvals: tuple[ApprovalPolicy, ...] = entries("further approvals needed, by role")
    revision_forced_by: tuple[Annotated[RevisionGround, choice(RevisionGround)], ...] = leaf(
        Polarity.ALL_OF, Concern.DOCUMENT, "grounds that require a new revision", default=tuple(RevisionGround)
    )
    review_every: Span | None = leaf(
        Polarity.AT_MOST, Concern.DOCUMENT, "maximum time between reviews", administrative=True
    )
    guard_band: Thickness | None = leaf(
        Polarity.AT_LEAST,
        Concern.ACCEPTANCE,
        "guard band: film nearer to a limit than this is not decided, as in 2 um",
    )
    means: Annotated[Means, choice(Means)] = leaf(
        Polarity.REPLACED,
        Concern.ACCEPTANCE,
        "rounding of spot measurements and means before they are held against a limit: exact, or as-read",
        default=Means.EXACT,
    )


class Project(Node):
    """What holds for every document of the folder."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the project", required=True)
    schema_version: WholeNumber = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "version of the source format; 1 where it is left out", default=SCHEMA_VERSION
    )
    title: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "name of the project", required=True)
    maker: Party = part("manufacturer, who issues the documents", required=True)
    customer: Party | None = part("customer, who receives the documents; a folder of products alone needs none")
    range: RangeFolder | None = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "shared range: folder of products, preparations and systems, as in ../range or git:v1:../range",
        audience=Audience.MAKER,
        administrative=True,
    )
    logo: PictureFile | None = leaf(
        Polarity.WORDING,
        Concern.DOCUMENT,
        "logo, a PNG, JPEG or SVG file of the folder, as in logo.svg",
        administrative=True,
    )
    brand_colour: Colour | None = leaf(
        Polarity.WORDING, Concern.DOCUMENT, 'colour of bar and rules, as in "#0b5c6b"', administrative=True
    )
    second_units: SecondUnits | None = part("units printed in brackets")
    page_size: Annotated[PageSize, choice(PageSize)] = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "page size: A4 or Letter", default=PageSize.A4
    )
    calculations: Annotated[Calculations, choice(Calculations)] = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "place of the calculations of every document: annex, apart in a file of their own, or none",
        default=Calculations.ANNEX,
    )
    language: Annotated[Language, choice(Language)] = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "language of the documents: en", default=Language.ENGLISH
    )
    jurisdictions: tuple[Code, ...] = leaf(
        Polarity.ALL_OF, Concern.SAFETY, "jurisdictions that apply, as in EU, GB, US", default=("EU",)
    )
    emergency_phone: Line | None = leaf(
        Polarity.EXACTLY, Concern.SAFETY, "emergency telephone number, printed with the safety instructions"
    )
    users: Annotated[Users, choice(Users)] | None = leaf(
        Polarity.SCOPE, Concern.SAFETY, "users of the products: professional or public"
    )
    banned: tuple[Banned, ...] = entries("substances banned on every job of the folder")
    climate: ApplicationClimate | None = part(
        "ambient conditions during the work, of every job that does not state its own"
    )
    numbering: Numbering | None = part("numbering of revisions")
    roles: tuple[ProjectRole, ...] = entries("roles and their responsibilities")
    policies: Policies | None = part("house rules")
    distribution: tuple[Holder, ...] = entries("holders of the documents")
