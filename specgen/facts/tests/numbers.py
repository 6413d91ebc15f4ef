"""The numbers of reports and documents of a specification, each with what first has it. Called by the rule on evidence for itself."""

from __future__ import annotations

from collections.abc import Mapping

from specgen.facts.memo import memoised
from specgen.model.file_names import sheet_number
from specgen.model.spec import Spec
from specgen.model.test_report import LabReport


@memoised
def reports_by_number(spec: Spec) -> Mapping[str, LabReport]:
    """The first report of each number."""
    found: dict[str, LabReport] = {}
    for report in spec.reports.values():
        found.setdefault(report.number, report)
    return found


@memoised
def documents_by_number(spec: Spec) -> Mapping[str, str]:
    """What each document of the folder is that has a number of its own."""
    sheets = {sheet_number(one): f"data sheet of {one.id}" for one in spec.products.values()}
    return sheets | {job.document.number: f"method statement of {job.id}" for job in spec.jobs.values()}
