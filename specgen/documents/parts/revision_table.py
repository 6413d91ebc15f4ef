"""The revision history of a document: each revision issued with day, reason and who approved it, and last the one printed.

Called by the views of documents that are issued. What is not issued yet has the reason its author gives.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from specgen.documents.context import Context
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.control import DocumentControl
from specgen.register.revisions import Revision, Revisions


def revision_table(number: str, control: DocumentControl | None, context: Context) -> TableView:
    """Empty for a draft that was never issued and states no reason."""
    words = context.words
    columns = (
        Column(words("Revision"), "w-8"),
        Column(words("Date"), "w-10"),
        Column(words("Reason for change")),
        Column(words("Checked, approved"), "w-35"),
    )
    earlier = context.revisions.get(number, Revisions())
    return table_view(words("Revision history"), columns, list(_rows(earlier, control, context)))


def _rows(earlier: Revisions, control: DocumentControl | None, context: Context) -> Iterator[tuple[str, ...]]:
    words, issue = context.words, context.issue
    if not earlier.whole:
        why = words("The register of this document is damaged; its earlier revisions are not listed.")
        yield "–", "–", why, "–"
    for one in earlier.issued:
        yield one.revision, one.day, _reason(one, words), _names(one.who, words)
    if issue is not None:
        yield issue.revision, issue.issued, issue.reason, _names(issue.who, words)
        return
    reason = control.reason_for_change if control is not None else None
    if earlier.issued or reason:
        yield (
            words("draft"),
            words("not issued"),
            _since(earlier, reason or words("not stated"), words),
            words("not approved"),
        )


def _since(earlier: Revisions, reason: str, words: Words) -> str:
    """Why a draft follows the revision before it, and where stands what changed: a draft is compared with nothing by itself."""
    if not earlier.issued:
        return reason
    last = earlier.issued[-1].revision
    if earlier.current is not None:
        return words("Says what revision {} says.").format(last)
    return f"{reason.rstrip('.')}. " + words("Changes since {}: see the change notice.").format(last)


def _reason(one: Revision, words: Words) -> str:
    if one.withdrawn is None:
        return one.reason
    day, why = one.withdrawn
    return f"{one.reason}\n" + words("Withdrawn {day}: {why}").format(day=day, why=why)


def _names(who: Iterable[tuple[str, str]], words: Words) -> str:
    said = {"check": words("checked: {}"), "approve": words("approved: {}")}
    return "\n".join(said[role].format(name) for role, name in who) or "–"
