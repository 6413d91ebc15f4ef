"""Every text that a record states, gathered once for all the rules that read words. Called by those rules and by `tests.cited`."""

from __future__ import annotations

import re

from specgen.facts.memo import memoised
from specgen.model.node import Node
from specgen.model.spec import Spec
from specgen.model.walk import Declared, Path, leaves

CLAUSE = re.compile(r"[;\n]|[,.](?!\d)")
"""Where one clause of a text ends and the next begins; a comma or point within a figure parts nothing."""

Text = tuple[Path, str, Declared]


def texts(spec: Spec, record: Node) -> tuple[Text, ...]:
    """Path, text and declaration of each leaf of a record of the specification that is a text or a list of texts.

    An entry of a list is named by its number, as in `sensitisers_named.[0]`.
    """
    known = _known(spec)
    # a record lives as long as its specification; to hash one costs more than to walk it
    if id(record) not in known:
        known[id(record)] = tuple(
            (where, text, said) for path, value, said in leaves(record) for where, text in _of(path, value)
        )
    return known[id(record)]


@memoised
def _known(spec: Spec) -> dict[int, tuple[Text, ...]]:
    return {}


def _of(path: Path, value: object) -> tuple[tuple[Path, str], ...]:
    if isinstance(value, str):
        return ((path, value),)
    if isinstance(value, tuple):
        return tuple(found for number, entry in enumerate(value) for found in _of((*path, f"[{number}]"), entry))
    return ()
