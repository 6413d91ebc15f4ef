"""The instruments that readings were taken with, and their checks, as the records state them. Called by two kinds of report."""

from __future__ import annotations

from specgen.assessing.instruments import ZERO, instruments_of
from specgen.assessing.results import Assessment
from specgen.documents.parts.as_read import with_unit
from specgen.documents.parts.assessed import MOST_ROWS, cut
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words


def instruments_table(found: Assessment, words: Words) -> TableView:
    columns = [
        Column(words("Instrument"), "w-20"),
        Column(words("Serial number"), "w-12"),
        Column(words("Last checked"), "w-12"),
        Column(words("Calibrated until"), "w-12"),
        Column(words("Zero before"), "w-10", numeric=True),
        Column(words("Zero after"), "w-10", numeric=True),
        Column(words("Inspection")),
    ]
    checks = {point.id: point.check for point in found.job.inspection}
    rows = [
        (
            *(
                one.stated[name] or words("not stated")
                for name in ("gauge", "serial", "checked_on", "calibrated_until")
            ),
            *(with_unit(one.stated[name], one.units[name], words) or words("not stated") for name in ZERO),
            "\n".join(checks[point] for point in one.points),
        )
        for one in instruments_of(found)
    ]
    return table_view(cut(words("Instruments, as the readings name them"), rows, words), columns, rows[:MOST_ROWS])
