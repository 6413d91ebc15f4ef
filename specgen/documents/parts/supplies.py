"""What is ordered beside the packs: thinner as calculated, and what the author lists. Called by documents that order."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.parts.cautions import data_sheet_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.quantities import Quantities
from specgen.model.job import Job, SupplyKind
from specgen.model.spec import Spec

Row = tuple[str, str, str, str, str]


def supplies(job: Job, spec: Spec, figures: Quantities, words: Words) -> tuple[Row, ...]:
    """(order number, what, amount, what for, cautions), thinner first, with the product it thins."""
    return (*_thinners(spec, figures, words), *_stated(job, words))


def supplies_table(rows: tuple[Row, ...], words: Words) -> TableView:
    columns = [
        Column(words("Order number"), "w-15"),
        Column(words("Supply"), "w-30"),
        Column(words("Amount"), "w-12"),
        Column(words("Use"), "w-15"),
        Column(words("Safety")),
    ]
    return table_view(words("Thinner, cleaners, abrasives and other supplies"), columns, rows)


def _thinners(spec: Spec, figures: Quantities, words: Words) -> Iterator[Row]:
    """A row a thinner and product; what several coats take of it stands as a sum."""
    found: dict[tuple[str, str], list[str]] = {}
    for (system_id, layer_id), needed in figures.thinners.items():
        layer = next(layer for layer in spec.systems[system_id].layers if layer.id == layer_id)
        product = spec.product_of(layer)
        mixing = product.application.mixing if product.application is not None else None
        name = mixing.thinner if mixing is not None and mixing.thinner else words("thinner of the product")
        found.setdefault((name, product.name), []).append(words.worked(needed))
    for (name, thinned), amounts in found.items():
        yield "", name, " + ".join(amounts), words("thinning of {}").format(thinned), words("not stated")


def _stated(job: Job, words: Words) -> Iterator[Row]:
    for entry in job.consumption.supplies if job.consumption is not None else ():
        sheet = data_sheet_words(entry.safety_data_sheet, words)
        gloves = words("gloves: {}").format(entry.gloves) if entry.gloves else ""
        cautions = "; ".join(part for part in (", ".join(entry.statements), gloves, sheet) if part)
        # an abrasive has none; of a cleaner nobody spoke
        none = words("not stated") if entry.kind in (SupplyKind.THINNER, SupplyKind.CLEANER) else "–"
        yield entry.order_number or "", entry.what, entry.amount, entry.use or "", cautions or none
