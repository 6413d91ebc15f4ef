"""The dew-point table of a job, where one of its inspection points asks for the table: over the air temperatures of the job.

Over water, as printed tables have it, in whole degrees of air and steps of humidity. Called by the method statement.
"""

from __future__ import annotations

import re

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.dew_point import dew_point_table
from specgen.model.job import Job

_ASKED = re.compile(r"dew[- ]point[^.;]*\btables?\b|\btables? of dew[- ]points?", re.IGNORECASE)
_HUMIDITIES = (30, 40, 50, 60, 65, 70, 75, 80, 85, 90)
_MOST_ROWS = 12


def dew_points(job: Job, words: Words) -> TableView | None:
    """None where no point asks for the table or the job does not state both ends of its air temperature."""
    air = job.climate.air if job.climate is not None else None
    if air is None or air.low is None or air.high is None:
        return None
    if not any(point.method is not None and _ASKED.search(point.method) for point in job.inspection):
        return None
    coldest = int(air.low.to("degC") // 1)
    warmest = int(-(-air.high.to("degC") // 1))
    step = max(1, -(-(warmest - coldest) // (_MOST_ROWS - 1)))
    rows = [
        (words.phrase(line.air), *(words.figures(str(found.rounded).replace("-", "−")) for found in line.dew_points))
        for line in dew_point_table(range(coldest, warmest + 1, step), _HUMIDITIES)
    ]
    columns = [Column(words("Air temperature"), "w-15")]
    columns += [Column(words("{humidity} % RH").format(humidity=humidity), numeric=True) for humidity in _HUMIDITIES]
    return table_view(words("Dew point in °C by air temperature and relative humidity"), columns, rows)
