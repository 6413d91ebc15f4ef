"""The counts by concern and the approvals of a change notice. Called by `change_notice`."""

from __future__ import annotations

from collections.abc import Sequence

from specgen.comparison.changes import Change, Effect
from specgen.comparison.tally import OPEN_WORD, counted
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.project import Project
from specgen.units.locale import N_

# the names of concerns and effects stand in the model as single words
_CONCERNS = (
    N_("safety"), N_("preparation"), N_("film"), N_("compatibility"), N_("climate"), N_("acceptance"), N_("product"), N_("document"),
)  # fmt: skip
_EFFECTS = (
    N_("relaxed"), N_("tightened"), N_("shifted"), N_("replaced"), N_("reworded"), N_("fact"), N_("editorial"), N_("neutral"),
)  # fmt: skip


def counts(changes: Sequence[Change], words: Words) -> TableView:
    """How many changes of each kind touch what; a concern that nothing touches is left out."""
    kinds = (Effect.RELAXED.value, OPEN_WORD, Effect.TIGHTENED.value, Effect.FACT.value, Effect.EDITORIAL.value)
    columns = (
        Column(words("Concern"), "w-20"),
        Column(words("Relaxed"), "w-15", numeric=True),
        Column(words("To decide"), "w-15", numeric=True),
        Column(words("Tightened"), "w-15", numeric=True),
        Column(words("Facts"), "w-15", numeric=True),
        Column(words("Editorial"), "w-15", numeric=True),
    )
    found = counted(changes)
    rows = [(words(concern.value), *(str(found[concern].get(kind, "")) for kind in kinds)) for concern in found]
    return table_view(words("Changes by concern"), columns, rows)


def approvals(project: Project, words: Words) -> TableView:
    """Lines to sign, one a role of the project; at least as many as its policy asks for."""
    needed = project.policies.approvals_needed if project.policies is not None else 1
    named = [(role.name, role.responsibility or "") for role in project.roles]
    named += [(words("Approval"), "")] * max(needed - len(named), 0)
    columns = (
        Column(words("Role"), "w-25"),
        Column(words("Duty"), "w-30"),
        Column(words("Name"), "w-20"),
        Column(words("Date"), "w-10"),
        Column(words("Signature")),
    )
    return TableView(
        caption=words("Read and agreed"), columns=columns, rows=tuple((name, duty, "", "", "") for name, duty in named)
    )
