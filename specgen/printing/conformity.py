"""An assessment in, the bytes of its conformity report and as-built record out; writing them is left to `specgen assess`."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from specgen.assessing.as_built import Built
from specgen.assessing.results import Assessment
from specgen.documents.registry import KINDS
from specgen.facts.closure import cut_to_closure
from specgen.model.spec import Spec
from specgen.printing.files import context_of, files
from specgen.register.revisions import revisions_of


def print_conformity(
    found: Assessment, spec: Spec, register: Path | None = None, built: Built | None = None
) -> dict[str, bytes]:
    """File name to content, PDF first, with the as-built record of what is `built`; `register` is asked which revision of the job it was.

    Raises RenderError where the report cannot be laid out."""
    number = found.job.document.number
    known = (
        {number: revisions_of(register, number, partial(cut_to_closure, spec, found.job))}
        if register is not None
        else {}
    )
    context = context_of(spec, found.day, revisions=known)
    printed = dict(files(KINDS["conformity-report"], found, context))
    if built is not None:
        printed |= files(KINDS["as-built-record"], built, context)
    return printed
