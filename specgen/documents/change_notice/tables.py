"""The counts by concern and the approvals of a change notice. Called by `change_notice`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from specgen.comparison.changes import Change, Effect
from specgen.comparison.tally import OPEN_WORD, counted
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.declaring import Concern
from specgen.model.project import Project
from specgen.units.locale import N_

CONCERNS: Mapping[Concern, str] = {
    Concern.SAFETY: N_("safety"),
    Concern.PREPARATION: N_("surface preparation"),
    Concern.FILM: N_("film thickness"),
    Concern.COMPATIBILITY: N_("compatibility"),
    Concern.CLIMATE: N_("ambient conditions"),
    Concern.ACCEPTANCE: N_("acceptance"),
    Concern.PRODUCT: N_("product"),
    Concern.DOCUMENT: N_("document"),
}
EFFECTS: Mapping[Effect, str] = {
    Effect.TIGHTENED: N_("tightened"),
    Effect.RELAXED: N_("relaxed"),
    Effect.SHIFTED: N_("shifted"),
    Effect.REPLACED: N_("replaced"),
    Effect.REWORDED: N_("reworded"),
    Effect.FACT: N_("data"),
    Effect.EDITORIAL: N_("editorial"),
}


def counts(changes: Sequence[Change], words: Words) -> TableView:
    """How many changes of each kind touch what; a concern that nothing touches is left out."""
    kinds = (Effect.RELAXED.value, OPEN_WORD, Effect.TIGHTENED.value, Effect.FACT.value, Effect.EDITORIAL.value)
    columns = (
        Column(words("Subject"), "w-20"),
        Column(words("Relaxed"), "w-15", numeric=True),
        Column(words("For decision"), "w-15", numeric=True),
        Column(words("Tightened"), "w-15", numeric=True),
        Column(words("Data"), "w-15", numeric=True),
        Column(words("Editorial"), "w-15", numeric=True),
    )
    found = counted(changes)
    rows = [(words(CONCERNS[concern]), *(str(found[concern].get(kind, "")) for kind in kinds)) for concern in found]
    return table_view(words("Changes by subject"), columns, rows, "–")


def approvals(project: Project, words: Words) -> TableView:
    """Lines to sign, one a role of the project; at least as many as its policy asks for."""
    needed = project.policies.approvals_needed if project.policies is not None else 1
    named = [(role.name, role.responsibility or "") for role in project.roles]
    named += [(words("Approval"), "")] * max(needed - len(named), 0)
    columns = (
        Column(words("Role"), "w-25"),
        Column(words("Responsibility"), "w-30"),
        Column(words("Name"), "w-20"),
        Column(words("Date"), "w-10"),
        Column(words("Signature")),
    )
    return TableView(
        caption=words("Reviewed and approved"),
        columns=columns,
        rows=tuple((name, duty, "", "", "") for name, duty in named),
    )
