"""How many areas, spots and readings a published table asks for on so much area, and what is asked at a point of a job.

Called by the rule on enough readings, and by whoever lays out record sheets or judges what was read.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import NamedTuple

from specgen.facts.job.inspected import places
from specgen.facts.job.quantities import quantities
from specgen.model.acceptance import AcceptanceRule, InspectionPoint, Readings, SampledUnit
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.standards.citations import Basis, Citation
from specgen.standards.tables import table
from specgen.trade.known import NotKnown
from specgen.units.quantity import Quantity

_SPOTS, _READINGS = "spots in an area", "readings in a spot"


class LeastCount(NamedTuple):
    """A number, and on whose word."""

    number: int
    source: Citation


def least_count(name: str, area: Quantity, unit: str = "m2") -> LeastCount:
    """The count that the table `name` asks for on an area; its rows count in `unit`. The last row goes on without end, a part
    counting whole."""
    found, size = table(name), area.to(unit)
    row = next(row for row in found.rows if not row[f"up_to_{unit}"] or size <= Fraction(row[f"up_to_{unit}"]))
    number = int(row["least"])
    if each := row[f"for_each_further_{unit}"]:
        number += int(row["more"]) * ceil((size - Fraction(row[f"over_{unit}"])) / Fraction(each))
    return LeastCount(number, Citation(Basis(row["basis"]), found.document, found.clause))


def spots_in_an_area() -> int:
    """Spots of one measurement area under SSPC-PA 2."""
    return int(table("sspc_pa_2_readings").row("what", _SPOTS)["least"])


def readings_in_a_spot() -> int:
    """Gauge readings of one spot under SSPC-PA 2."""
    return int(table("sspc_pa_2_readings").row("what", _READINGS)["least"])


def counts_of_rule(
    rule: AcceptanceRule | None, area: Quantity, plan: Readings | None = None, unit: str = "m2"
) -> dict[str, LeastCount]:
    """Areas, spots and readings that a rule asks for on an area, by those names; empty for a rule that asks for no number.

    Under SSPC-PA 2 spots follow from the areas planned and readings from the spots planned, where those are more than are asked.
    """
    if rule is AcceptanceRule.ISO_19840:
        return {"readings": least_count("iso_19840_readings", area)}
    if rule is not AcceptanceRule.PA_2:
        return {}
    areas = least_count("sspc_pa_2_areas_us" if unit == "ft2" else "sspc_pa_2_areas", area, unit)
    spots = max(areas.number, (plan.areas if plan is not None else None) or 0) * spots_in_an_area()
    readings = max(spots, (plan.spots if plan is not None else None) or 0) * readings_in_a_spot()
    source = table("sspc_pa_2_readings").citation
    return {"areas": areas, "spots": LeastCount(spots, source), "readings": LeastCount(readings, source)}


def sampled(point: InspectionPoint, job: Job, spec: Spec) -> int | None:
    """How many measurements the typed sampling of a point asks for on its items; once where the number of times is not known
    beforehand. None where it states no count, or the area that it goes by is not known."""
    plan = point.sampling
    if plan is None or plan.count is None:
        return None
    each = plan.count.low
    if plan.per is SampledUnit.PART:
        return each * sum(item.count for item, _ in places(point, job, spec))
    if plan.first_area is None and plan.each_area is None:
        return each
    found = area_at(point, job, spec)
    if isinstance(found, NotKnown):
        return None
    area = found[0]
    first = plan.first_area
    left = area.to("m2") - (first.to("m2") if first is not None else 0)
    further = ceil(left / plan.each_area.to("m2")) if plan.each_area is not None and left > 0 else 0
    return each * ((1 if first is not None else 0) + further)


def area_at(point: InspectionPoint, job: Job, spec: Spec) -> tuple[Quantity, str] | NotKnown:
    """The area of all items a point looks at, and the unit its rule counts in: ft2 where every item states its area in it."""
    known = quantities(job, spec).areas
    items = [item for item, _ in places(point, job, spec)]
    unknown = tuple(item.id for item in items if item.id not in known)
    if not items or unknown:
        return NotKnown(f"area at {point.id}", f"the area measured at {point.id} is not known", unknown or ("items",))
    total = sum((known[item.id].quantity.to("m2") for item in items), Fraction(0))
    in_feet = all(item.area is not None and not item.shapes and item.area.unit == "ft2" for item in items)
    return Quantity.of("area", total, "m2"), "ft2" if in_feet else "m2"
