"""Any document in the formats of its kind: the one way from a subject to bytes. Called by `documents` and `notice`."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from typing import Any

from specgen import __version__
from specgen.documents.context import Context
from specgen.documents.emergency_call import emergency_call
from specgen.documents.identity import identity
from specgen.documents.kind import About, Kind, View
from specgen.documents.parts.issue_block import IssueView
from specgen.documents.parts.job_revision import is_current
from specgen.documents.parts.wording import Words
from specgen.findings import Finding
from specgen.model.file_names import file_stem
from specgen.model.spec import Spec
from specgen.register.revisions import Revisions
from specgen.rendering.attachments import Attachment
from specgen.rendering.csv_file import write_csv
from specgen.rendering.environment import fill, translation
from specgen.rendering.failure import TooMuchError
from specgen.rendering.html import write_html
from specgen.rendering.pdf import write_pdf

# What the properties of a PDF say of it, from its subject and its view.
_IN_SHORT: Mapping[About, Callable[[Any, Any], str]] = {
    "job": lambda job, _: job.scope,
    "product": lambda product, _: product.about or product.name,
    "folder": lambda _, view: view.title,
    "jobs": lambda _, view: view.title,
    "offer": lambda _, view: view.answer,
    "bid": lambda _, view: view.answer,
    "report": lambda report, _: report.title,
    "comparison": lambda _, view: view.answer,
    "assessment": lambda _, view: view.answer,
    "records": lambda _, view: view.answer,
}

_CALCULATIONS = "calculations.html.j2"


@dataclass(frozen=True, slots=True)
class Issue:
    """What makes a document more than a draft: what its pages say of it, what its PDF carries, and when it was issued (UTC).

    `identifier` becomes the file identifier of its PDF.
    """

    view: IssueView
    attachments: tuple[Attachment, ...]
    dated: datetime
    identifier: bytes


def context_of(
    spec: Spec,
    day: date,
    *,
    issue: Issue | None = None,
    findings: tuple[Finding, ...] = (),
    revisions: Mapping[str, Revisions] | None = None,
) -> Context:
    """What the documents of a specification are drawn up in. Raises RenderError for a language without words."""
    return Context(
        spec=spec,
        day=day,
        words=Words.of(spec.project, translation(spec.project.language)),
        program=f"specgen {__version__}",
        issue=issue.view if issue is not None else None,
        findings=findings,
        revisions=revisions or {},
    )


def files(
    kind: Kind[Any, Any],
    subject: Any,
    context: Context,
    *,
    formats: Collection[str] | None = None,
    issue: Issue | None = None,
    suffix: str = "",
) -> Iterator[tuple[str, bytes]]:
    """File name and content of one document in each of these formats its kind has, or in all; calculations apart follow it.

    `suffix` follows the name of the kind; `issue` is that of the context. Raises RenderError where it cannot be laid out.
    """
    view = kind.view(subject, context)
    called = kind.called(view) if kind.called is not None else kind.name
    wanted = [format for format in kind.formats if formats is None or format in formats]
    in_short = _IN_SHORT[kind.about](subject, view)
    for format in wanted:
        name = f"{file_stem(view.number)}-{called}{suffix}.{format}"
        if format == "csv" and kind.sheet is not None:
            sheet = kind.sheet(view)
            yield name, write_csv([column.heading for column in sheet.columns], sheet.rows)
        else:
            fields = kind.fields(view) if kind.fields is not None else None
            # what is drawn up anew is no draft where what it is drawn from was issued
            draft = not kind.record and (kind.issued or not is_current(view.number, context))
            lay = partial(
                _laid_out,
                kind.template,
                format=format,
                in_short=in_short,
                context=context,
                issue=issue,
                draft=draft,
                fields=fields,
            )
            parts = _in_parts(kind, view, lay)
            for number, content in enumerate(parts, 1):
                part = f"-{number}" if len(parts) > 1 else ""
                yield f"{file_stem(view.number)}-{called}{part}{suffix}.{format}", content
    apart = kind.apart(view) if kind.apart is not None else None
    if apart is not None:
        for format in (format for format in wanted if format != "csv"):
            yield f"{apart.file}{suffix}.{format}", _laid_out(_CALCULATIONS, apart, format, in_short, context, issue)


def _in_parts(kind: Kind[Any, Any], view: View, lay: Callable[[View], bytes]) -> list[bytes]:
    """The document as one file, or in as many as its size asks for. Raises TooMuchError where it cannot be divided."""
    try:
        return [lay(view)]
    except TooMuchError:
        halves = kind.halves(view) if kind.halves is not None else ()
        if not halves:
            raise
    return [content for half in halves for content in _in_parts(kind, half, lay)]


def _laid_out(
    template: str,
    view: View,
    format: str,
    in_short: str,
    context: Context,
    issue: Issue | None,
    *,
    draft: bool = True,
    fields: Mapping[str, str] | None = None,
) -> bytes:
    """`draft`: without an issue the document is one, and its pages say so. `fields` make a form of a PDF."""
    project = context.spec.project
    pictures = context.spec.pictures.values()
    page = fill(
        template,
        language=project.language,
        medium="screen" if format == "html" else "print",
        view=view,
        draft=draft and context.issue is None,
        issue=context.issue,
        emergency=emergency_call(project, context.words),
        identity=identity(context.spec),
        second_signs=context.words.second_signs,
    )
    if format == "html":
        return write_html(page, pictures)
    return write_pdf(
        page,
        page_size=project.page_size.value,
        author=project.maker.name,
        subject=in_short[:200],
        identifier=issue.identifier if issue is not None else None,
        attachments=issue.attachments if issue is not None else (),
        dated=issue.dated if issue is not None else None,
        pictures=pictures,
        fields=fields,
    )
