"""What is ordered beside the packs: thinner as calculated, and what the author lists. Called by documents that order."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from specgen.documents.parts.caution_catalogue import THINNER
from specgen.documents.parts.cautions import data_sheet_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.thinners import Thinner, ordered_as, thinners_of
from specgen.model.job import Job, Supply, SupplyKind
from specgen.model.spec import Spec

_COUNTED = re.compile(r"([0-9]+(?:\.[0-9]+)?)(?![0-9.,])(.*)", re.DOTALL)


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyLine:
    """One line of an order, its number empty where none is stated. `stated` is the amount its author orders, `needed` what the
    coats take; either may be empty.

    `thinner` is the name of the thinner that the line is.
    """

    order_number: str
    what: str
    stated: str = ""
    needed: str = ""
    use: str = ""
    safety: str = ""
    thinner: str = ""

    def amount(self, words: Words) -> str:
        if self.stated and self.needed:
            return words("{ordered} (calculated: {needed})").format(ordered=self.stated, needed=self.needed)
        return self.stated or self.needed


def supplies(job: Job, spec: Spec, words: Words) -> tuple[SupplyLine, ...]:
    """Thinner first, with the products it thins; one that the author orders stands as he orders it."""
    listed = job.consumption.supplies if job.consumption is not None else ()
    taken, lines = [], []
    for thinner in thinners_of(job, spec):
        entry = ordered_as(thinner, listed)
        if entry is not None:
            taken.append(entry.id)
        lines.append(_thinner(thinner, entry, words))
    lines += [_stated(entry, words) for entry in listed if entry.id not in taken]
    return tuple(lines)


def supplies_table(lines: Sequence[SupplyLine], words: Words) -> TableView:
    columns = [
        Column(words("Order number"), "w-15"),
        Column(words("Supply"), "w-20"),
        Column(words("Amount"), "w-12"),
        Column(words("Use"), "w-18"),
        Column(words("Safety")),
    ]
    # a column that nobody fills is left out
    unknown = words("not stated") if any(line.order_number for line in lines) else ""
    rows = [(line.order_number or unknown, line.what, line.amount(words), line.use, line.safety) for line in lines]
    return table_view(words("Thinner, cleaners, abrasives and other supplies"), columns, rows)


def total(amounts: Sequence[str]) -> str:
    """`3 L` of `2 L` and `1 L`; amounts that are not counted in the same words stand side by side."""
    counted = [_COUNTED.fullmatch(amount.strip()) for amount in amounts]
    if all(counted) and len({met[2].strip() for met in counted if met}) == 1:
        whole = sum((Decimal(met[1]) for met in counted if met), Decimal(0))
        return f"{whole}{next(met[2] for met in counted if met)}"
    return " + ".join(amounts)


def _thinner(thinner: Thinner, entry: Supply | None, words: Words) -> SupplyLine:
    needed = words.worked(thinner.amount)
    use = words("thinning of {}").format(", ".join(product.name for product in thinner.products))
    if entry is None:
        name, unknown = thinner.name or words(THINNER), words("not stated")
        return SupplyLine(order_number="", what=name, needed=needed, use=use, safety=unknown, thinner=thinner.name)
    return SupplyLine(
        order_number=entry.order_number or "",
        what=entry.what,
        stated=entry.amount,
        needed=needed,
        use=entry.use or use,
        safety=_safety(entry, words),
        thinner=thinner.name,
    )


def _stated(entry: Supply, words: Words) -> SupplyLine:
    return SupplyLine(
        order_number=entry.order_number or "",
        what=entry.what,
        stated=entry.amount,
        use=entry.use or "–",
        safety=_safety(entry, words),
    )


def _safety(entry: Supply, words: Words) -> str:
    sheet = data_sheet_words(entry.safety_data_sheet, words)
    gloves = words("gloves: {}").format(entry.gloves) if entry.gloves else ""
    cautions = "; ".join(part for part in (", ".join(entry.statements), gloves, sheet) if part)
    # an abrasive has none; of a cleaner nobody spoke
    none = words("not stated") if entry.kind in (SupplyKind.THINNER, SupplyKind.CLEANER) else "–"
    return cautions or none


def together(
    jobs: Sequence[tuple[str, Sequence[SupplyLine]]], needed: dict[str, str]
) -> Iterator[tuple[SupplyLine, str]]:
    """The lines of several jobs, each supply once with its total, and what of it is for which job.

    `needed` is what all jobs take of each thinner, by its name.
    """
    found: dict[tuple[str, str, str], list[tuple[str, SupplyLine]]] = {}
    for number, lines in jobs:
        for line in lines:
            found.setdefault((line.order_number, line.what, line.safety), []).append((number, line))
    for held in found.values():
        first = held[0][1]
        whole = SupplyLine(
            order_number=first.order_number,
            what=first.what,
            stated=total([line.stated for _, line in held]) if first.stated else "",
            needed=needed.get(first.thinner, first.needed),
            use="; ".join(dict.fromkeys(line.use for _, line in held)),
            safety=first.safety,
        )
        yield whole, "; ".join(f"{number}: {line.stated or line.needed}" for number, line in held)
