"""Film thickness as limits: lower limit, nominal value, upper limit. One bare number is never a film requirement."""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, leaf
from specgen.model.field_types import Thickness
from specgen.model.node import Node


class FilmLimits(Node):
    """Dry film thickness of a coat, a product or a whole system."""

    min: Thickness | None = leaf(Polarity.AT_LEAST, Concern.FILM, "least dry film, as in 40 um")
    nominal: Thickness | None = leaf(Polarity.EXACTLY, Concern.FILM, "dry film aimed at")
    max: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "most dry film")


class ProductFilm(FilmLimits):
    """What the product allows and gives."""

    per_pass: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "dry film one cross coat gives on a flat panel")
    max_single_coat: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "most dry film in one coat")
    sag_limit_wet: Thickness | None = leaf(Polarity.AT_MOST, Concern.FILM, "wet film from which the coat runs")
    hiding: Thickness | None = leaf(Polarity.FACT, Concern.FILM, "dry film at which the colour hides fully")
