"""What a record that is based on another carries over unasked, and what stays with the other until it is named. Called by `based_on`.

What could do harm where it is merely copied stays: safety, permissions, waivers, and what a field declares to belong to one record
alone (title block, claims, order numbers, dates, parts and packs). A recipe goes with the facts on its substances.
"""

from __future__ import annotations

from functools import cache

from specgen.model.declaring import LEAF_KEY, PASSES_ON, Audience, Concern, Polarity
from specgen.model.node import Node
from specgen.model.walk import Declared, declaration, inner_record, models

_BESIDE = {Polarity.WORDING, Polarity.NOTE}


@cache
def stays(model: type[Node], name: str) -> bool:
    """True where a field stays with the record that states it."""
    declared = _declared(model, name)
    if declared is not None:
        return not declared
    said, inner = declaration(model, name), inner_record(model, name)
    if said is not None:
        return said.polarity in {Polarity.PERMISSION, Polarity.WAIVER} or _is_safety(said)
    if inner is None:
        return False
    weighty = [leaf for leaf in _leaves(inner) if leaf.polarity not in _BESIDE]
    return all(leaf.concern is Concern.SAFETY for leaf in weighty) and any(_is_safety(leaf) for leaf in weighty)


def passes_whole(model: type[Node], name: str) -> bool:
    """True where a field that holds records declares that they pass on: then all of each does."""
    return name in model.model_fields and inner_record(model, name) is not None and _declared(model, name) is True


def _is_safety(said: Declared) -> bool:
    return said.concern is Concern.SAFETY and said.audience is Audience.CUSTOMER


def _leaves(root: type[Node]) -> list[Declared]:
    return [
        said for model in models(root) for name in model.model_fields if (said := declaration(model, name)) is not None
    ]


def _declared(model: type[Node], name: str) -> bool | None:
    extra = model.model_fields[name].json_schema_extra
    if not isinstance(extra, dict):
        return None
    leaf = extra.get(LEAF_KEY)
    passes = leaf.get(PASSES_ON) if isinstance(leaf, dict) else extra.get(PASSES_ON)
    return passes if isinstance(passes, bool) else None
