"""How a product is applied. One record for every curing kind; rules say which value belongs to which kind."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, leaf, part
from specgen.model.field_types import (
    CountRange,
    Duration,
    DurationRange,
    LengthRange,
    Percentage,
    Ratio,
    Share,
    TemperatureRange,
    Text,
    VocContent,
    choice,
)
from specgen.model.node import Node


class Method(StrEnum):
    """How paint is put on the part."""

    BRUSH = "brush"
    ROLLER = "roller"
    AIR_SPRAY = "air-spray"
    AIRLESS = "airless"
    HVLP = "hvlp"
    ELECTROSTATIC = "electrostatic"
    DIP = "dip"
    AEROSOL = "aerosol"
    TROWEL = "trowel"


class Workplace(StrEnum):
    """Where the work is done."""

    WORKSHOP = "workshop"
    BOOTH = "booth"
    OUTDOORS = "outdoors"
    ON_SITE = "on-site"
    CONFINED = "confined-space"


# Places where the weather reaches the part, or may.
OPEN_AIR = frozenset({Workplace.OUTDOORS, Workplace.ON_SITE})


# Methods with a spray gun, which has a nozzle.
GUNS = frozenset({Method.AIR_SPRAY, Method.AIRLESS, Method.HVLP, Method.ELECTROSTATIC})


# Methods that put no mist into the air.
BY_HAND = frozenset({Method.BRUSH, Method.ROLLER, Method.DIP, Method.TROWEL})


class Mixing(Node):
    """Bringing the two components of a liquid together."""

    ratio_by_volume: Ratio | None = leaf(
        Polarity.EXACTLY, Concern.PRODUCT, "mixing ratio by volume (base to hardener), as in 4:1"
    )
    ratio_by_mass: Ratio | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "mixing ratio by mass (base to hardener)")
    induction: Duration | None = leaf(Polarity.AT_LEAST, Concern.PRODUCT, "induction time after mixing")
    stir: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "method of stirring")
    thinner: Text | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "thinner (by its name)")
    thinner_voc: VocContent | None = leaf(Polarity.AT_MOST, Concern.SAFETY, "VOC content of the thinner itself")
    thinner_max: Percentage | None = leaf(
        Polarity.PERMISSION, Concern.PRODUCT, "maximum thinner, by volume of the mixed paint"
    )
    clock_starts: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "start of the pot life")


class Activation(Node):
    """Releasing the hardener from its capsule into the can."""

    action: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "method of activation")
    shake_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.PRODUCT, "shaking after activation")
    usable_for: Duration | None = leaf(Polarity.AT_MOST, Concern.PRODUCT, "usable life of the can after activation")


class Application(Node):
    """Values an applicator needs at the part."""

    methods: tuple[Annotated[Method, choice(Method)], ...] = leaf(
        Polarity.ONE_OF, Concern.PRODUCT, "application methods, as in brush, roller, airless", default=()
    )
    places: tuple[Annotated[Workplace, choice(Workplace)], ...] = leaf(
        Polarity.ONE_OF,
        Concern.SAFETY,
        "places where it may be sprayed, as in booth, workshop; any place if left out",
        passes_on=True,
        default=(),
    )
    shake: Duration | None = leaf(
        Polarity.AT_LEAST, Concern.PRODUCT, "shaking time after the mixing ball starts to rattle"
    )
    can_temperature: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "temperature of the can or paint")
    surface_temperature: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "surface temperature")
    distance: LengthRange | None = leaf(Polarity.WITHIN, Concern.PRODUCT, "spray distance, nozzle to part")
    overlap: Share | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "overlap between strokes")
    cross_coats: CountRange | None = leaf(Polarity.WITHIN, Concern.PRODUCT, "usual number of cross coats")
    flash_between_passes: DurationRange | None = leaf(
        Polarity.WITHIN, Concern.PRODUCT, "flash-off time between cross coats"
    )
    clear_valve: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "clearing of the valve after spraying")
    put_away: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "storage of a part-used can")
    restart: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "reuse of a part-used can after weeks")
    nozzle: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "nozzle, needle and pressure of a spray gun")
    mixing: Mixing | None = part("mixing of a liquid two-pack")
    activation: Activation | None = part("activation of a capsule can")
