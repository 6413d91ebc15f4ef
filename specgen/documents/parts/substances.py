"""The substances a product names, with what the law and the tables say of each. Called by `data_sheet` and `label_sheet`.

Nothing of the composition is shown but what the product names itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.named import named_substances
from specgen.facts.product.substances import Standing, Substance
from specgen.model.product import Product
from specgen.standards.tables import table


def substance_table(product: Product, jurisdictions: Sequence[str], on: date, words: Words) -> TableView:
    """A row for each name: its harmonised class, or that it has none, and its limits of exposure at work."""
    rows = [
        (
            name,
            _harmonised(found, words),
            "\n".join(_limits(found, jurisdictions, on, words)) or words("see the safety data sheet"),
        )
        for name, found in named_substances(product, on)
    ]
    columns = (
        Column(words("Substance"), "w-13"),
        Column(words("Harmonised classification as at {}").format(on.isoformat()), "w-43"),
        Column(words("Occupational exposure limits")),
    )
    caption = words("{caption}; harmonised classification: {source}").format(
        caption=words("Substances named"), source=words(str(table("harmonised_classes").citation))
    )
    return table_view(caption, columns, rows)


def _harmonised(found: Substance, words: Words) -> str:
    match found.standing:
        case Standing.NO_NUMBER | Standing.NOT_LOOKED_UP:
            return words("not looked up: see the safety data sheet")
        case Standing.NO_ENTRY:
            told = words("no harmonised entry: its supplier classifies it; this does not mean that it has no hazard")
        case Standing.ENTRY:
            told = "; ".join(words(str(entry)) for entry in found.classes) or words("none without further proof")
    if found.coming is not None:
        changed = words("the entry changes on {day}").format(day=found.coming["from"])
        return f"{told}; {changed}"
    return told


def _limits(found: Substance, jurisdictions: Sequence[str], on: date, words: Words) -> list[str]:
    """A line for each list of limits, with all its periods."""
    lists: dict[tuple[str, str, str], list[str]] = {}
    for limit in found.at_work(jurisdictions, on):
        figures = ", ".join(words.phrase(value) for value in (limit.ppm, limit.concentration) if value is not None)
        said = words("{period}: {figures}").format(period=limit.period, figures=figures)
        lists.setdefault((limit.jurisdiction, limit.body, words(str(limit.source))), []).append(said)
    return [
        words("{law} {body}, {limits} ({source})").format(law=law, body=body, limits="; ".join(said), source=source)
        for (law, body, source), said in lists.items()
    ]
