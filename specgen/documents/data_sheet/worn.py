"""What to wear with one product, by task: tasks with the same equipment share a row, and a ground stands with its task.

Called by `data_sheet`.
"""

from __future__ import annotations

from specgen.documents.parts.protection import protection
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.product import Product

_MARK = "*"


def worn_table(product: Product, words: Words) -> TableView:
    """The table of `protection` without its column for the product."""
    listed = protection([product], words)
    heads = [column.heading for column in listed.columns]
    ground = heads.index(words("Product")) if words("Product") in heads else None
    kits: dict[tuple[str, ...], list[str]] = {}
    for row in listed.rows:
        kit = tuple(text or words("not stated") for at, text in enumerate(row) if at not in {0, ground})
        on_own = ground is not None and not row[ground]
        kits.setdefault(kit, []).append(row[0] if ground is None or on_own else row[0] + _MARK)
    widths = {heads[0]: "w-12", words("Hands"): "w-24", words("Eyes"): "w-20", words("Body"): "w-14"}
    columns = [Column(head, widths.get(head, "")) for head in heads if head != words("Product")]
    grounds = {row[ground] for row in listed.rows if ground is not None and row[ground]}
    caption = "; ".join((listed.caption, *(f"{_MARK} {text}" for text in sorted(grounds))))
    return table_view(caption, columns, [(",\n".join(tasks), *kit) for kit, tasks in kits.items()])
