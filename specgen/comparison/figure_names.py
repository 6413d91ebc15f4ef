"""What a figure is of, in the names a reader knows: `Fennholt 210 epoxy primer, light grey` of `packs.primer-210.light-grey`.

Called by `figures`; the steps of the id are looked up in the specification it was worked out from.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import System


def named_of(id: str, spec: Spec, left_out: Collection[str]) -> str:
    """The records on the way to the figure, by their names; `left_out` are the jobs, which are told beside. An id that is none stays."""
    _, *steps = re.split(r"[./]", id)
    return ", ".join(_names([step for step in steps if step not in left_out], spec))


def _names(steps: list[str], spec: Spec) -> Iterator[str]:
    within: System | Product | None = None
    for step in steps:
        if isinstance(within, System) and (coat := _coat(step, within)):
            yield coat
        elif isinstance(within, Product) and (
            variant := next((one for one in within.variants if one.id == step), None)
        ):
            yield variant.name
        elif (found := spec.systems.get(step) or spec.products.get(step)) is not None:
            within = found
            yield found.title if isinstance(found, System) else found.name
        else:
            yield step


def _coat(id: str, system: System) -> str:
    """`2 surfacer`: the place of the coat from the part up, and what it is for."""
    places = {layer.id: f"{at} {layer.role.value.replace('-', ' ')}" for at, layer in enumerate(system.layers, 1)}
    return places.get(id, "")
