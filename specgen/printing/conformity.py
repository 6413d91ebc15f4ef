"""An assessment in, the bytes of its conformity report out. Called by `specgen assess`; writing them to disk is the caller's."""

from __future__ import annotations

from specgen.assessing.results import Assessment
from specgen.documents.registry import KINDS
from specgen.model.spec import Spec
from specgen.printing.files import context_of, files


def print_conformity(found: Assessment, spec: Spec) -> dict[str, bytes]:
    """File name to content, PDF first. Raises RenderError where the report cannot be laid out."""
    return dict(files(KINDS["conformity-report"], found, context_of(spec, found.day)))
