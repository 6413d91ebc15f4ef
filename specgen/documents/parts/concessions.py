"""Concessions as they are printed: which limit, as specified and as conceded, for which items, agreed by whom and when, until when, why.

Asked by the record sheets, which tell those in force, and by the conformity report, which counts them and says what each was used for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from specgen.documents.parts.coats import coats_by_id
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.concessions import CALLED, eased
from specgen.model.concession import Concession
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.display import show, show_range
from specgen.units.quantity import Quantity, Range


def concession_heads(words: Words) -> tuple[str, ...]:
    return (
        words("Concession"),
        words("Limit and items"),
        words("As specified"),
        words("As conceded"),
        words("Agreed"),
        words("Reason"),
    )


def concession_cells(one: Concession, job: Job, spec: Spec, words: Words) -> tuple[str, ...]:
    """The cells of one, under `concession_heads`."""
    limits = eased(one)
    agreed = words("by {who} on {day}, until {until}").format(
        who=_who(one.agreed_by, spec), day=one.agreed_on.isoformat(), until=one.until.isoformat()
    )
    return (
        "\n".join(part for part in (one.id, one.record or "") if part),
        "\n".join(_what(one, job, spec, words)),
        "\n".join(_limit(limit.specified, words) for limit in limits),
        "\n".join(_limit(limit.conceded, words) for limit in limits),
        agreed,
        " ".join(one.reason.split()),
    )


def concession_table(held: Sequence[tuple[Concession, str]], job: Job, spec: Spec, words: Words) -> TableView:
    """Concessions with what each was used for."""
    widths = ("w-10", "w-15", "w-10", "w-10", "w-15", "")
    columns = [Column(head, width) for head, width in zip(concession_heads(words), widths, strict=True)]
    rows = [(*concession_cells(one, job, spec, words), used) for one, used in held]
    return table_view(words("Concessions of this job"), [*columns, Column(words("Used for"), "w-15")], rows)


def _who(id: str, spec: Spec) -> str:
    """The name of the role that agreed, or the words of the id where it is none of the project."""
    named = {role.id: role.name for role in spec.project.roles}
    return named.get(id, id.replace("-", " "))


def _what(one: Concession, job: Job, spec: Spec, words: Words) -> Iterator[str]:
    for limit in eased(one):
        yield words(CALLED[limit.name])
    point = next((point.check for point in job.inspection if point.id == one.point), None)
    if point is not None:
        yield words("at: {}").format(point)
    if one.coat is not None:
        yield words("coat: {}").format(coats_by_id(job, spec, words).get(one.coat, one.coat))
    yield words("on: {}").format(", ".join(one.items))


def _limit(limit: Any, words: Words) -> str:
    if isinstance(limit, Quantity):
        return show(limit, words.second, words.translate)
    if isinstance(limit, Range):
        return show_range(limit, words.second, words.translate)
    return " ".join(str(limit).split())
