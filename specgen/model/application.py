"""How a product is applied. One record for every curing kind; rules say which value belongs to which kind."""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, leaf, part
from specgen.model.field_types import (
    Duration,
    DurationRange,
    LengthRange,
    Percentage,
    Ratio,
    Share,
    TemperatureRange,
    Text,
    WholeNumber,
)
from specgen.model.node import Node


class Mixing(Node):
    """Bringing the two components of a liquid together."""

    ratio_by_volume: Ratio | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "base to hardener by volume, as in 4:1")
    ratio_by_mass: Ratio | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "base to hardener by mass")
    induction: Duration | None = leaf(Polarity.AT_LEAST, Concern.PRODUCT, "wait after mixing, before use")
    stir: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "how to stir")
    thinner: Text | None = leaf(Polarity.REPLACED, Concern.PRODUCT, "thinner by name")
    thinner_max: Percentage | None = leaf(
        Polarity.PERMISSION, Concern.PRODUCT, "most thinner, by volume on the mixed paint"
    )
    clock_starts: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "when the pot life begins to run")


class Activation(Node):
    """Releasing the hardener from its capsule into the can."""

    action: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "how to release the hardener")
    shake_after: Duration | None = leaf(Polarity.AT_LEAST, Concern.PRODUCT, "shaking after release")
    usable_for: Duration | None = leaf(Polarity.AT_MOST, Concern.PRODUCT, "life of the can once activated")


class Application(Node):
    """Values an applicator needs at the part."""

    shake: Duration | None = leaf(Polarity.AT_LEAST, Concern.PRODUCT, "shaking from the first rattle of the ball")
    can_temperature: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "temperature of the can or paint")
    surface_temperature: TemperatureRange | None = leaf(Polarity.WITHIN, Concern.CLIMATE, "temperature of the part")
    distance: LengthRange | None = leaf(Polarity.WITHIN, Concern.PRODUCT, "nozzle to part")
    overlap: Share | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "overlap of neighbouring strokes")
    cross_coats: WholeNumber | None = leaf(Polarity.EXACTLY, Concern.PRODUCT, "usual number of cross coats")
    flash_between_passes: DurationRange | None = leaf(Polarity.WITHIN, Concern.PRODUCT, "wait between passes")
    clear_valve: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "clearing the valve after spraying")
    put_away: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "putting a part-used can away")
    restart: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "starting a part-used can again weeks later"
    )
    nozzle: Text | None = leaf(Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "nozzle, needle and pressure of a spray gun")
    mixing: Mixing | None = part("mixing of a liquid two-pack")
    activation: Activation | None = part("activation of a capsule can")
