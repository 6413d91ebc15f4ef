"""Which published tables and cited documents a document rests on: those looked into when it is judged and when its pages are worded.

Only what the document rests on is judged, not the rest of its folder, so that nothing else of the folder has a part in it.
Nothing is set in type. Called by `candidate`, which binds approvals to them, and where the snapshot of an old record lists more.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import TYPE_CHECKING

from specgen.checking import Checked, check_loaded
from specgen.findings import Severity
from specgen.model.job import Job
from specgen.model.parse import Loaded
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.rules.declare import all_rules
from specgen.standards.reads import recorded

if TYPE_CHECKING:
    from specgen.assessing.as_built import Built

Assessed = Callable[[Spec, date], "Built"]
"""From the part of a specification to what was recorded of a job."""


def tables_read(part: Loaded, subject: Job | Product, on: date, records: Assessed | None = None) -> frozenset[str]:
    """Their names, as `table comb` and `document CLP`. `part` is cut to what the subject's document rests on.

    With `records` it is the as-built record of the subject, a job, and what assessing them looks into counts too.
    Where errors stand against the part, no pages are worded and only judging is told.
    """
    all_rules()  # a rule takes its citation from a table when its module is read, which is no part of judging
    with recorded() as names:
        checked = check_loaded(part, on)
        if part.spec is not None and not checked.report.count(Severity.ERROR):
            _word_pages(checked, part.spec, subject, records)
    return frozenset(names)


def _word_pages(checked: Checked, spec: Spec, subject: Job | Product, records: Assessed | None) -> None:
    """Every view of the kinds that are issued."""
    from specgen.documents.registry import KINDS
    from specgen.printing.files import context_of

    context = context_of(spec, checked.on, findings=tuple(checked.report))
    about = "job" if isinstance(subject, Job) else "product"
    told: Job | Product | Built = subject
    if records is not None:
        about, told = "records", records(spec, checked.on)
    for kind in (kind for kind in KINDS.values() if kind.issued and kind.about == about):
        view = kind.view(told, context)
        if kind.sheet is not None:
            kind.sheet(view)
