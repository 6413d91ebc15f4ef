"""A published table as text: its title, on whose word it stands, and its rows. Called by `specgen explain`."""

from __future__ import annotations

from specgen.standards.citations import documents
from specgen.standards.tables import Table


def printed_table(table: Table) -> str:
    """The whole table, ending with a line end."""
    heads = [f"{table.title} (table:{table.name})", ""]
    if table.document:
        heads.append(f"document  {documents()[table.document].title}")
    heads += [f"{name:<10}{said}" for name, said in (("edition", table.edition), ("clause", table.clause)) if said]
    heads += [f"basis     {table.basis}", ""]
    rows = [table.columns, *(tuple(row[column] for column in table.columns) for row in table.rows)]
    widths = [max(len(row[at]) for row in rows) for at in range(len(table.columns))]
    rows.insert(1, tuple("-" * width for width in widths))
    lines = ["  ".join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    return "\n".join([*heads, *lines]) + "\n"
