"""What a published table calls the row whose id a leaf holds. Called by `compare`.

`pu_latent` says nothing to who does not write sources; the table of the binders calls it polyurethane with blocked hardener.
"""

from __future__ import annotations

from specgen.comparison.changes import Difference
from specgen.model.outline import value_type
from specgen.standards.tables import table


def row_name(fact: Difference, key: object) -> str:
    """The name of the row; empty where the leaf holds no id of a table, the row is not there, or has no name.

    An id that is a designation of the trade, `St 2`, is printed as it is.
    """
    info = type(fact.owners[-1].record).model_fields.get(fact.name)
    kind = value_type(info) if info is not None else None
    if kind is None or not kind.table or not isinstance(key, str) or "_" not in key:
        return ""
    held = table(kind.table)
    if "name" not in held.columns:
        return ""
    return next((str(row["name"]) for row in held.rows if row["id"] == key), "")
