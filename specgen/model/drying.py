"""How a film dries and cures with time and temperature: stages, sanding, intervals, stoving, light, and how long the mixed paint keeps."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Audience, Concern, Polarity, entries, leaf
from specgen.model.field_types import (
    DecimalNumber,
    Density,
    DurationOrRange,
    DurationRange,
    Humidity,
    Id,
    LengthRange,
    Line,
    Mass,
    MolarMass,
    Share,
    Temperature,
    TemperatureOrRange,
    Text,
    Thickness,
    Volume,
    YesNo,
    choice,
)
from specgen.model.node import Node


class DryingStage(StrEnum):
    DUST_FREE = "dust-free"
    TOUCH_DRY = "touch-dry"
    HANDLING = "dry-to-handle"
    THROUGH = "through-dry"
    FULLY_CURED = "fully-cured"


class Sanding(StrEnum):
    DRY = "dry"
    WET = "wet"


class Drying(Node):
    """One stage of drying with the conditions it holds for."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the entry", required=True)
    stage: Annotated[DryingStage, choice(DryingStage)] = leaf(
        Polarity.SCOPE, Concern.PRODUCT, "drying stage", required=True
    )
    time: DurationOrRange = leaf(
        Polarity.FACT, Concern.PRODUCT, "time to reach the stage, as in 4 h, 4..6 h or max 30 min", required=True
    )
    air: TemperatureOrRange = leaf(
        Polarity.FACT, Concern.CLIMATE, "air temperature the value applies to, or a band of them", required=True
    )
    humidity: Humidity | None = leaf(Polarity.FACT, Concern.CLIMATE, "relative humidity the value applies to")
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT the value applies to")


class SandableAfter(Node):
    """How long the film hardens before it may be sanded, with the conditions the time holds for."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the entry", required=True)
    sanding: Annotated[Sanding, choice(Sanding)] = leaf(
        Polarity.SCOPE, Concern.FILM, "way of sanding, dry or wet", required=True
    )
    time: DurationOrRange = leaf(
        Polarity.AT_LEAST, Concern.FILM, "minimum time before sanding, as in 4 h or 4..6 h", required=True
    )
    air: TemperatureOrRange = leaf(
        Polarity.FACT, Concern.CLIMATE, "air temperature the value applies to, or a band of them", required=True
    )
    humidity: Humidity | None = leaf(Polarity.FACT, Concern.CLIMATE, "relative humidity the value applies to")
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT the value applies to")


class OvercoatWindow(Node):
    """When the next coat may go on."""

    id: Id = leaf(Polarity.SCOPE, Concern.COMPATIBILITY, "id of the entry", required=True)
    next_coat: Id = leaf(Polarity.ONE_OF, Concern.COMPATIBILITY, "next coat: a product, itself, or any", required=True)
    interval: DurationRange = leaf(
        Polarity.WITHIN, Concern.COMPATIBILITY, "overcoating interval, as in 30 min..24 h, or min 30 min", required=True
    )
    air: Temperature = leaf(Polarity.FACT, Concern.CLIMATE, "air temperature the value applies to", required=True)
    humidity: Humidity | None = leaf(Polarity.FACT, Concern.CLIMATE, "relative humidity the value applies to")
    film: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT the value applies to")
    if_exceeded: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.COMPATIBILITY, "action if the maximum overcoating interval is exceeded"
    )


class Stoving(Node):
    """One pair of surface temperature and time that cures a stoved film."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the entry", required=True)
    surface: TemperatureOrRange = leaf(
        Polarity.WITHIN, Concern.CLIMATE, "surface temperature in the oven, as in 160..180 degC", required=True
    )
    time: DurationOrRange = leaf(
        Polarity.WITHIN,
        Concern.PRODUCT,
        "time at that surface temperature, as in 20 min or 15..30 min",
        required=True,
    )


class LightCure(Node):
    """The light that cures a film, and how long it is held on it."""

    lamp: Line = leaf(Polarity.REPLACED, Concern.PRODUCT, "lamp, as in UV-A LED 395 nm", required=True)
    time: DurationOrRange = leaf(Polarity.WITHIN, Concern.PRODUCT, "exposure time", required=True)
    distance: LengthRange | None = leaf(Polarity.WITHIN, Concern.PRODUCT, "distance of the lamp from the film")
    film_max: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "maximum DFT cured through in one exposure")


class PotLifeAt(Node):
    """The pot life at another temperature."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the entry", required=True)
    time: DurationOrRange = leaf(Polarity.AT_MOST, Concern.PRODUCT, "pot life, as in 2 h or 2..3 h", required=True)
    air: TemperatureOrRange = leaf(
        Polarity.FACT, Concern.CLIMATE, "temperature the value applies to, or a band of them", required=True
    )
    volume: Volume | None = leaf(Polarity.FACT, Concern.PRODUCT, "mixed volume the value applies to")


class PotLife(Node):
    """How long a mixed liquid stays usable."""

    time: DurationOrRange = leaf(Polarity.AT_MOST, Concern.PRODUCT, "pot life, as in 2 h or 2..3 h", required=True)
    air: TemperatureOrRange = leaf(
        Polarity.FACT, Concern.CLIMATE, "temperature the value applies to, or a band of them", required=True
    )
    volume: Volume | None = leaf(Polarity.FACT, Concern.PRODUCT, "mixed volume the value applies to")
    other_temperatures: tuple[PotLifeAt, ...] = entries("pot life at other temperatures")


class MoistureCure(Node):
    """What the water that a film takes up has to release, for the manufacturer only: the estimate of a wait rests on it."""

    equivalent_weight: MolarMass | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "equivalent weight of the resin, as in 475 g/mol", audience=Audience.MAKER
    )
    hardener_ratio: DecimalNumber | None = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "equivalents of hardener for each of the resin; 1 if left out",
        audience=Audience.MAKER,
    )
    one_for_one: YesNo | None = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "one water for each equivalent, as an aldimine with isocyanate takes; no if left out",
        audience=Audience.MAKER,
    )
    resin_share: Share | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "resin in the dry film, by mass", audience=Audience.MAKER
    )
    dry_density: Density | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "density of the dry film", audience=Audience.MAKER
    )
    taken_in_flight: Share | None = leaf(
        Polarity.FACT,
        Concern.PRODUCT,
        "share of the water taken up by the spray; none if left out",
        audience=Audience.MAKER,
    )
    free_water: DecimalNumber | None = leaf(
        Polarity.AT_MOST, Concern.PRODUCT, "free water in the can, parts per million by mass", audience=Audience.MAKER
    )
    can_equivalents: DecimalNumber | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "equivalents of hardener in the can, mol", audience=Audience.MAKER
    )
    can_contents: Mass | None = leaf(
        Polarity.FACT, Concern.PRODUCT, "contents of the can by mass", audience=Audience.MAKER
    )
    release_allowed: Share | None = leaf(
        Polarity.AT_MOST,
        Concern.PRODUCT,
        "hardener that may be released in the can within its shelf life",
        audience=Audience.MAKER,
    )
