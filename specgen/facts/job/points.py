"""What lies under the gauge of an inspection point, and when it is looked at. Called by rules, pages and whoever assesses readings."""

from __future__ import annotations

import re

from specgen.facts.job.quantities import is_blasted
from specgen.model.acceptance import GaugePrinciple, InspectionPoint, Stage
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.standards.tables import Row, table

BEFORE_PAINT = {Stage.RECEIPT, Stage.PREPARED}
# A gauge of one of these principles finds the metal through the paint.
THROUGH_THE_PAINT = {GaugePrinciple.MAGNETIC, GaugePrinciple.EDDY_CURRENT}
_ONCE_SANDED = re.compile(r"(?<!before and )(?<!before or )\b(?:after|once) (?:(?:dry|wet)[- ])?sand(?:ing|ed)\b", re.I)


def once_sanded(point: InspectionPoint) -> bool:
    """True for a point on a coat that is sanded first: it says so under `after_sanding`, or in its name (`DFT, after sanding`)."""
    return point.after_sanding or (point.after is not None and _ONCE_SANDED.search(point.check) is not None)


def layers_read(point: InspectionPoint, system: System) -> tuple[Layer, ...]:
    """The layers under the gauge, from the substrate up."""
    if point.at in BEFORE_PAINT:
        return ()
    ids = [layer.id for layer in system.layers]
    return system.layers[: ids.index(point.after) + 1] if point.after in ids else system.layers


def material_of(job: Job, item: Item, spec: Spec) -> Row | None:
    """The row of the table of materials, or None where no substrate is stated."""
    substrate = spec.substrate_of(job, item)
    return table("materials").row("id", substrate.material) if substrate is not None else None


def is_rough(job: Job, item: Item, spec: Spec) -> bool:
    """True where the item is blasted, comes blasted, or has the profile of an earlier blasting."""
    substrate = spec.substrate_of(job, item)
    comes_blasted = substrate is not None and (substrate.material == "steel_blasted" or substrate.has_profile is True)
    return comes_blasted or is_blasted(job, item, spec)


def principle_of(point: InspectionPoint) -> GaugePrinciple | None:
    return point.gauge.principle if point.gauge is not None else None
