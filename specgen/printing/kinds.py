"""The kinds of document a checked folder is printed as: what each is about, its formats, and how it is made.

Called by `printing`. A new kind is one entry in KINDS and one function here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal, Protocol

from specgen import __version__
from specgen.checking import Checked
from specgen.documents.data_sheet.view import data_sheet
from specgen.documents.hazard_card.view import CUTS as HAZARD_CUTS
from specgen.documents.hazard_card.view import Cut as HazardCut
from specgen.documents.hazard_card.view import hazard_card
from specgen.documents.job_card.card_side import Cut
from specgen.documents.job_card.view import JobCard, job_card
from specgen.documents.label_sheet.view import label_sheet
from specgen.documents.materials_list.view import materials_list
from specgen.documents.method_statement.view import method_statement
from specgen.documents.order_list.view import number_of as number_of_orders
from specgen.documents.order_list.view import order_list
from specgen.documents.parts.issue_block import IssueView
from specgen.documents.range_overview.view import number_of as number_of_overview
from specgen.documents.range_overview.view import range_overview
from specgen.facts.job.builds import builds_of
from specgen.findings import Severity
from specgen.model.file_names import sheet_number
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.printing.fit import fitted, mildest_cut
from specgen.rendering.attachments import Attachment
from specgen.rendering.csv_file import write_csv
from specgen.rendering.environment import fill, translation
from specgen.rendering.html import write_html
from specgen.rendering.pdf import write_pdf

About = Literal["job", "product", "folder", "jobs"]

FORMS = frozenset({"job-card"})
"""The kinds filled in by hand: what is kept of one is the sheet with its entries, so its file need not last."""


ISSUED = ("method-statement", "job-card", "hazard-card", "materials-list", "data-sheet")
"""The kinds that are issued under the number of their job or product. The others are drawn up anew when they are wanted."""


@dataclass(frozen=True, slots=True)
class Issue:
    """What makes a document more than a draft: what its pages say of it, what its PDF carries, and when it was issued (UTC).

    `identifier` becomes the file identifier of its PDF.
    """

    view: IssueView
    attachments: tuple[Attachment, ...]
    dated: datetime
    identifier: bytes


@dataclass(frozen=True, slots=True)
class Source:
    """What a document is made from; the subject is None for the whole folder and for all its jobs. Without `issue` it is a draft."""

    checked: Checked
    spec: Spec
    subject: Job | Product | None
    issue: Issue | None = None


@dataclass(frozen=True, slots=True)
class Document:
    """One document, ready to be written in any format of its kind."""

    number: str
    write: Callable[[str], bytes]


@dataclass(frozen=True, slots=True)
class Kind:
    """`make` turns a source whose subject is of the right sort into a document."""

    about: About
    formats: tuple[str, ...]
    make: Callable[[Source], Document]


class Titled(Protocol):
    """What every laid-out view has."""

    @property
    def title(self) -> str: ...


def _laid_out(
    source: Source, template: str, view: Titled, kind: str, subject: str, most_pages: int | None = None
) -> bytes:
    """The view in its template, as `html` or `pdf`; `subject` goes into the properties of the PDF."""
    project, issue = source.spec.project, source.issue
    name, lasting = f"{template}/document.html.j2", template.replace("_", "-") not in FORMS
    shown = {"view": view, "draft": issue is None, "issue": issue.view if issue is not None else None}
    if kind == "html":
        return write_html(fill(name, language=project.language, medium="screen", **shown))
    html = fill(name, language=project.language, medium="print", **shown)
    return write_pdf(
        html,
        page_size=project.page_size.value,
        author=project.maker.name,
        subject=subject[:200],
        most_pages=most_pages,
        identifier=issue.identifier if issue is not None else None,
        attachments=issue.attachments if issue is not None and lasting else (),
        dated=issue.dated if issue is not None else None,
        lasting=lasting,
    )


def _method_statement(source: Source) -> Document:
    job = source.subject
    assert isinstance(job, Job)  # noqa: S101  # `printing` hands over what `about` asks for
    view = method_statement(
        job,
        source.spec,
        on=source.checked.on,
        open_warnings=source.checked.report.count(Severity.WARNING),
        program=_PROGRAM,
        translate=translation(source.spec.project.language),
    )
    return Document(job.document.number, lambda kind: _laid_out(source, "method_statement", view, kind, job.scope))


def _materials_list(source: Source) -> Document:
    job = source.subject
    assert isinstance(job, Job)  # noqa: S101  # as above
    view = materials_list(job, source.spec, translate=translation(source.spec.project.language))
    return Document(job.document.number, lambda _: write_csv(view.headings, view.rows))


def _data_sheet(source: Source) -> Document:
    product = source.subject
    assert isinstance(product, Product)  # noqa: S101  # as above
    view = data_sheet(
        product,
        source.spec,
        on=source.checked.on,
        program=_PROGRAM,
        translate=translation(source.spec.project.language),
    )
    about = product.about or product.name
    return Document(
        sheet_number(product),
        lambda kind: _laid_out(source, "data_sheet", view, kind, about),
    )


def _range_overview(source: Source) -> Document:
    project = source.spec.project
    view = range_overview(source.spec, on=source.checked.on, program=_PROGRAM, translate=translation(project.language))
    return Document(
        number_of_overview(project),
        lambda kind: _laid_out(source, "range_overview", view, kind, view.title),
    )


def _job_card(source: Source) -> Document:
    job = source.subject
    assert isinstance(job, Job)  # noqa: S101  # as above

    def view(cuts: Sequence[Cut | None], vehicles: Sequence[str]) -> JobCard:
        return job_card(
            job,
            source.spec,
            cuts=cuts,
            vehicles=vehicles,
            on=source.checked.on,
            program=_PROGRAM,
            translate=translation(source.spec.project.language),
        )

    def write(card: JobCard) -> bytes:
        return _laid_out(source, "job_card", card, "pdf", job.scope, len(card.sides))

    builds, paper = len(builds_of(job, source.spec)), source.spec.project.page_size.value
    return Document(job.document.number, lambda _: fitted(job, builds, view, write, paper))


def _hazard_card(source: Source) -> Document:
    job = source.subject
    assert isinstance(job, Job)  # noqa: S101  # as above

    def write(cut: HazardCut) -> bytes:
        view = hazard_card(
            job,
            source.spec,
            cut=cut,
            on=source.checked.on,
            program=_PROGRAM,
            translate=translation(source.spec.project.language),
        )
        return _laid_out(source, "hazard_card", view, "pdf", job.scope, 1)

    what, paper = f"The hazard card of the job {job.id}", source.spec.project.page_size.value
    return Document(job.document.number, lambda _: mildest_cut(HAZARD_CUTS, write, what, paper))


def _order_list(source: Source) -> Document:
    project = source.spec.project
    view = order_list(source.spec, on=source.checked.on, program=_PROGRAM, translate=translation(project.language))

    def write(kind: str) -> bytes:
        if kind == "csv":
            return write_csv([column.heading for column in view.sheet.columns], view.sheet.rows)
        return _laid_out(source, "order_list", view, kind, view.title)

    return Document(number_of_orders(project), write)


def _label_sheet(source: Source) -> Document:
    product = source.subject
    assert isinstance(product, Product)  # noqa: S101  # as above
    view = label_sheet(
        product,
        source.spec,
        on=source.checked.on,
        program=_PROGRAM,
        translate=translation(source.spec.project.language),
    )
    about = product.about or product.name
    return Document(view.number, lambda kind: _laid_out(source, "label_sheet", view, kind, about))


_PROGRAM = f"specgen {__version__}"

KINDS: Mapping[str, Kind] = {
    "method-statement": Kind("job", ("pdf", "html"), _method_statement),
    "job-card": Kind("job", ("pdf",), _job_card),
    "hazard-card": Kind("job", ("pdf",), _hazard_card),
    "data-sheet": Kind("product", ("pdf", "html"), _data_sheet),
    "label-sheet": Kind("product", ("pdf", "html"), _label_sheet),
    "range-overview": Kind("folder", ("pdf", "html"), _range_overview),
    "materials-list": Kind("job", ("csv",), _materials_list),
    "order-list": Kind("jobs", ("pdf", "html", "csv"), _order_list),
}
