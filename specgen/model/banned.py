"""A substance that a project, a system or a job does not allow in what is used."""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, leaf
from specgen.model.field_types import Id, Line, Share
from specgen.model.node import Node


class Banned(Node):
    """One substance and the most of it that is still accepted."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    substance: Line = leaf(
        Polarity.EXACTLY,
        Concern.SAFETY,
        "substance: an id of the table banned_substances, a CAS number or a name",
        required=True,
    )
    limit: Share | None = leaf(
        Polarity.AT_MOST, Concern.SAFETY, "maximum share by mass in a product; none at all if left out"
    )
