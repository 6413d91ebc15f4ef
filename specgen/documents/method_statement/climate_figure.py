"""The climate window of a job: what job and products allow, the margin over the dew point, the least water in the air.

Called by the method statement. Empty where the job does not state both ends of air and humidity.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.parts.wording import Words
from specgen.facts.job.climate_lines import humidity_of_margin, humidity_of_water
from specgen.facts.job.moist_air import limits_of_products, water_wanted
from specgen.facts.requirement import names_products
from specgen.figures.climate_window import Curve, Field, climate_window
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.quantity import Quantity

_DRY, _HUMID = 0.0, 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ClimateFigure:
    """`drawing` is SVG; `text` says the same in words."""

    drawing: str
    text: str


def climate_figure(job: Job, spec: Spec, words: Words) -> ClimateFigure | None:
    climate = job.climate
    if climate is None or climate.air is None or climate.humidity is None:
        return None
    cold, warm, dry, humid = climate.air.low, climate.air.high, climate.humidity.low, climate.humidity.high
    if cold is None or warm is None or dry is None or humid is None:
        return None
    allowed = limits_of_products(job, spec)
    inner = (_degrees(cold), _degrees(warm), float(dry.to("%")), float(humid.to("%")))
    outer = (
        _degrees(allowed.coldest) if allowed.coldest is not None else inner[0],
        _degrees(allowed.warmest) if allowed.warmest is not None else inner[1],
        float(allowed.driest.to("%")) if allowed.driest is not None else _DRY,
        float(allowed.most_humid.to("%")) if allowed.most_humid is not None else _HUMID,
    )
    low, high = min(inner[0], outer[0]) - 4, max(inner[1], outer[1]) + 4
    kept = climate.dew_point_margin.low if climate.dew_point_margin is not None else None
    margin = max((entry for entry in (kept, allowed.margin) if entry is not None), default=None)
    wanted = water_wanted(job, spec)
    curves, told = [], []
    if margin is not None:
        told.append(words("{margin} above the dew point, part as warm as the air").format(margin=words.phrase(margin)))
        curves.append(
            Curve(
                words("{margin} above the dew point").format(margin=words.phrase(margin)),
                humidity_of_margin(low, high, margin),
                "6 3",
            )
        )
    if wanted is not None:
        told.append(words("at least {water} of water in the air").format(water=words.phrase(wanted[1])))
        curves.append(
            Curve(
                words("{water} of water in the air").format(water=words.phrase(wanted[1])),
                humidity_of_water(low, high, wanted[1]),
                "2 3",
            )
        )
    ticks = tuple((float(at), str(at)) for at in range(int(low // 5 + 1) * 5, int(high) + 1, 5))
    names = (
        words("allowed by the products"),
        words("conditions of this job"),
        words("Air temperature, °C"),
        words("Relative humidity, %"),
    )
    # what products nobody has chosen yet allow is not known
    chosen = names_products(job, spec)
    said = words("Ambient conditions of the job within what its products allow; {lines}.")
    if not chosen:
        said = words("Ambient conditions of the job; {lines}.")
    title = said.format(lines="; ".join(told) or words("no further limits"))
    field = Field(low, high, outer if chosen else None, inner, ticks)
    return ClimateFigure(drawing=climate_window(field, tuple(curves), names, title), text=title)


def _degrees(air: Quantity) -> float:
    return float(air.to("degC"))
