"""Film thickness as limits: lower limit, nominal value, upper limit. One bare number is never a film requirement."""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, leaf
from specgen.model.field_types import Thickness
from specgen.model.node import Node


class FilmLimits(Node):
    """Dry film thickness of a coat, a product or a whole system."""

    min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.FILM, "minimum DFT, as in 40 um")
    nominal: Thickness | None = leaf(Polarity.EXACTLY, Concern.FILM, "nominal DFT")
    max: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "maximum DFT")


class ProductFilm(FilmLimits):
    """What the product allows and gives."""

    per_pass: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT per cross coat on a flat panel")
    max_single_coat: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "maximum DFT in one coat")
    sag_limit_wet: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "sag limit, as WFT")
    hiding: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "DFT for full hiding")
