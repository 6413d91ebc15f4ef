"""What every document is drawn up in: whose specification, on which day, in which words. Called by every view with its subject."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from specgen.documents.parts.issue_block import IssueView
from specgen.documents.parts.wording import Words
from specgen.findings import Finding
from specgen.model.spec import Spec
from specgen.register.revisions import Revisions


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """`spec` checks without errors; it may be narrowed to what the document reaches. `day` is the day it is judged by.

    `program` names what prints, with its version; `findings` are those of the whole folder; `revisions` are
    those issued before, by the number of their document. Without `issue` the document is a draft.
    """

    spec: Spec
    day: date
    words: Words
    program: str
    issue: IssueView | None = None
    findings: tuple[Finding, ...] = ()
    revisions: Mapping[str, Revisions] = field(default_factory=dict)
