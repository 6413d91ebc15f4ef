"""What a part meets in service: air, water, soil or a hollow section, how corrosive, and whether in the sun. A part of job and item."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, leaf
from specgen.model.field_types import YesNo, choice, listed
from specgen.model.node import Node


class EnvironmentKind(StrEnum):
    """Where the part is in service."""

    ATMOSPHERE = "atmosphere"
    IMMERSION = "immersion"
    SPLASH = "splash"
    BURIED = "buried"
    UNDERSIDE = "underside"
    CAVITY = "cavity"


class Medium(StrEnum):
    """What a part is immersed in, or splashed with."""

    FRESH_WATER = "fresh-water"
    SEA_WATER = "sea-water"
    WASTE_WATER = "waste-water"
    FUEL = "fuel"


class Environment(Node):
    """Conditions in service. What is not said is not known."""

    kind: Annotated[EnvironmentKind, choice(EnvironmentKind)] = leaf(
        Polarity.FACT,
        Concern.COMPATIBILITY,
        "kind of environment: atmosphere, immersion, splash, buried, underside or cavity",
        required=True,
    )
    category: Annotated[str, listed("exposure_categories")] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "category of the environment, C1 to CX or Im1 to Im4"
    )
    medium: Annotated[Medium, choice(Medium)] | None = leaf(
        Polarity.FACT, Concern.COMPATIBILITY, "medium: fresh-water, sea-water (or brackish), waste-water or fuel"
    )
    sun: YesNo | None = leaf(Polarity.FACT, Concern.COMPATIBILITY, "sunlight on the part")
