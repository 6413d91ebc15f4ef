"""An address of the sources in words, for who has no sources: `most dry film of the layer primer of the system cab`.

Called by `edition` and `sentences`, where a waiver names the value it sets a rule aside for.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import get_origin

from specgen.comparison.naming import leaf_named, noun
from specgen.model.audience import CUT
from specgen.model.node import Node
from specgen.model.spec import KINDS, LIST_KINDS
from specgen.model.walk import inner_record
from specgen.units.locale import ENGLISH, Locale

NO_NAMES: Mapping[tuple[str, ...], str] = MappingProxyType({})


def address_in_words(address: str, translate: Locale = ENGLISH, names: Mapping[tuple[str, ...], str] = NO_NAMES) -> str:
    """What stands at an address, and the entries it stands in, the innermost first; what is the maker's only as such.

    `names` are what entries are called, by the steps that lead to them; one that has none goes by its id. An address that leads
    nowhere in the model is "a value that is not there".
    """
    kind, *steps = address.split(".")
    model: type[Node] | None = KINDS.get(kind)
    what, where, is_id = "", list[str](), kind in LIST_KINDS
    for at, step in enumerate(steps, 2):
        if model is None:
            return translate("a value that is not there")
        if is_id:
            name = names.get(tuple(address.split(".")[:at]), step)
            where.insert(0, translate("the {named}").format(named=f"{noun(model)} {name}"))
            is_id = False
        elif step == CUT:
            what, model = translate("data held by the manufacturer"), None
        elif step not in model.model_fields:
            return translate("a value that is not there")
        else:
            inner = inner_record(model, step)
            is_id = inner is not None and get_origin(model.model_fields[step].annotation) is tuple
            what = leaf_named(model, step) if inner is None else "" if is_id else step.replace("_", " ")
            model = inner
    named = [*([what] if what else []), *(where or [translate("the project")])]
    return translate(" of ").join(named)
