"""Print the documents of a checked folder as bytes. Called by `render`; writing them to disk is the caller's.

Nothing is printed from a folder with errors: a document is right or it is not there.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from specgen import __version__
from specgen.checking import Checked
from specgen.findings import Severity
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.rendering.environment import fill, translation
from specgen.rendering.html import write_html
from specgen.rendering.pdf import write_pdf
from specgen.views.method_statement import MethodStatement, method_statement

DOCUMENTS = ("method-statement",)
FORMATS = ("pdf", "html")


class Refused(Exception):
    """The folder cannot be printed; the text says why."""


def print_documents(
    checked: Checked,
    *,
    documents: Iterable[str] = DOCUMENTS,
    formats: Iterable[str] = FORMATS,
    jobs: Iterable[str] | None = None,
) -> dict[str, bytes]:
    """File name to content, for every document and format asked for.

    `jobs` are the ids of the jobs to print, all where None. Raises Refused where the folder has errors, holds no job, or a name is
    not known, and RenderError where a document cannot be laid out.
    """
    spec = checked.loaded.spec
    errors = checked.report.count(Severity.ERROR)
    if errors or spec is None:
        raise Refused(f"the folder has {errors} error{'' if errors == 1 else 's'}, so nothing is printed")
    chosen = _jobs(spec, jobs)
    printed: dict[str, bytes] = {}
    for document in documents:
        if document not in DOCUMENTS:
            raise Refused(f"there is no document {document}; there is: {', '.join(DOCUMENTS)}")
        for job in chosen:
            view = _view(job, spec, checked)
            stem = f"{_file_stem(job.document.number)}-{document}"
            for kind in formats:
                name = f"{stem}.{kind}"
                if name in printed:
                    raise Refused(f"two jobs have the document number {job.document.number}")
                printed[name] = _print(view, spec, kind)
    return printed


def _jobs(spec: Spec, wanted: Iterable[str] | None) -> list[Job]:
    if not spec.jobs:
        raise Refused("the folder holds no job")
    if wanted is None:
        return list(spec.jobs.values())
    names = list(wanted)
    for name in names:
        if name not in spec.jobs:
            raise Refused(f"there is no job {name}; the folder has: {', '.join(spec.jobs)}")
    return [spec.jobs[name] for name in names]


def _view(job: Job, spec: Spec, checked: Checked) -> MethodStatement:
    return method_statement(
        job,
        spec,
        on=checked.on,
        open_warnings=checked.report.count(Severity.WARNING),
        program=f"specgen {__version__}",
        translate=translation(spec.project.language),
    )


def _print(view: MethodStatement, spec: Spec, kind: str) -> bytes:
    template = "method_statement/document.html.j2"
    language = spec.project.language
    if kind == "html":
        return write_html(fill(template, language=language, medium="screen", view=view, draft=True))
    html = fill(template, language=language, medium="print", view=view, draft=True)
    return write_pdf(
        html, page_size=spec.project.page_size.value, author=spec.project.maker.name, subject=view.scope[:200]
    )


def _file_stem(number: str) -> str:
    """The document number as part of a file name: letters, digits, point and hyphen only."""
    return re.sub(r"[^A-Za-z0-9.\-]+", "-", number).strip("-.")
