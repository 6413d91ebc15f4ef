"""What of a path a customer may see. Called by the customer edition of the canonical form and by the views.

A path that runs into a record of the maker's (a line of the composition) names the maker's own data, so it is cut where it enters.
"""

from __future__ import annotations

from functools import cache

from specgen.model.declaring import Audience
from specgen.model.node import Node
from specgen.model.spec import KINDS
from specgen.model.walk import declaration, inner_record, models

CUT = "…"


def customer_path(path: str) -> str:
    """`products.primer.film.max` as it is; `products.primer.composition.resin` becomes `products.primer.…`."""
    kind, *steps = path.split(".")
    model: type[Node] | None = KINDS.get(kind)
    shown = [kind]
    for step in steps:
        if model is not None and step in model.model_fields:
            if _is_makers(model, step):
                return ".".join((*shown, CUT))
            model = inner_record(model, step)
        shown.append(step)
    return ".".join(shown)


@cache
def _is_makers(model: type[Node], name: str) -> bool:
    said = declaration(model, name)
    if said is not None:
        return said.audience is Audience.MAKER
    inner = inner_record(model, name)
    return inner is not None and all(
        leaf.audience is Audience.MAKER
        for record in models(inner)
        for field in record.model_fields
        if (leaf := declaration(record, field)) is not None
    )
