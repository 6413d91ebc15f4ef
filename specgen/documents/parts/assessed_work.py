"""What rows of work tell: times between coats and before sanding, and what was found before a repair. Called by two kinds of report."""

from __future__ import annotations

from specgen.assessing.results import Assessment
from specgen.assessing.waited import wait_asked, wait_found, waited_name
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.units.locale import Phrase


def times_between(found: Assessment, words: Words) -> TableView:
    """A row for each time that the job limits, with the items for which it was the same."""
    columns = [
        Column(words("Item"), "w-20"),
        Column(words("From coat to coat"), "w-20"),
        Column(words("By the records"), "w-20"),
        Column(words("Required"), "w-15"),
        Column(words("Result"), "w-12"),
        Column(words("Reasons")),
    ]
    items: dict[tuple[str, ...], list[str]] = {}
    for wait in found.waited:
        cells = (
            words(waited_name(wait)),
            words(wait_found(wait)) or words("not recorded"),
            wait_asked(wait),
            words(wait.verdict.value),
            "\n".join(said(text, words) for text in (*wait.reasons, wait.put_right) if text),
        )
        items.setdefault(cells, []).append(wait.item.id)
    rows = [(", ".join(of), *cells) for cells, of in items.items()]
    return table_view(words("Times between coats and before sanding"), columns, rows, empty="–")


def before_repairs(found: Assessment, words: Words) -> TableView:
    """A row for each repair at each point where something had been read before it."""
    columns = [
        Column(words("Item"), "w-10"),
        Column(words("Inspection"), "w-15"),
        Column(words("Found before")),
        Column(words("Repair"), "w-25"),
        Column(words("By"), "w-8"),
        Column(words("Since then"), "w-12"),
    ]
    rows = [
        (
            one.item.id,
            one.point.check,
            "\n".join(words(text) for text in one.found) or words("nothing was read"),
            "\n".join(one.repair.record.text(name) for name in ("on", "remark")),
            one.repair.record.text("by") or words("not stated"),
            words(one.verdict.value),
        )
        for one in found.deviations
    ]
    return table_view(words("Deviations found and repaired"), columns, rows)


def said(text: str, words: Words) -> str:
    """A text of ours in the language of the page; what the author of the job wrote stands as it is."""
    return words(text) if isinstance(text, Phrase) else text
