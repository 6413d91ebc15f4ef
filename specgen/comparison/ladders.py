"""Where a grade stands among others, by the table or list that orders it. Called by `effects`.

A grade the table does not hold has no place, and two on one level are not in order: neither is then above the other.
"""

from __future__ import annotations

from enum import Enum

from specgen.model.hazards import SignalWord
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.standards.reads import remembered
from specgen.standards.tables import table


def level(model: type[Node], name: str, value: str | Enum) -> int | None:
    """How high `value` stands as the leaf `name` of a record, larger asking for more; None where nothing orders it."""
    if isinstance(value, SignalWord):
        return _signal_words().get(value.value)
    if isinstance(value, Enum):
        # the words of a closed list stand in the order of what they ask for
        return list(type(value)).index(value)
    kind = value_type(model.model_fields[name])
    return _of_table(kind.name if kind is not None else "").get(value)


def basis(model: type[Node], name: str) -> str:
    """The table the order is taken from, empty for a closed list that is an order in itself."""
    kind = value_type(model.model_fields[name])
    return _TABLES.get(kind.name if kind is not None else "", "")


_TABLES = {
    "id of the table preparation_grades": "preparation_ladder",
    "id of the table steel_defect_grades": "steel_defect_grades",
}


@remembered
def _of_table(kind: str) -> dict[str, int]:
    name = _TABLES.get(kind)
    if name == "preparation_ladder":
        return {row["grade"]: int(row["level"]) for row in table(name).rows}
    # the grades of ISO 8501-3 are listed from light to very thorough
    return {row["id"]: at for at, row in enumerate(table(name).rows)} if name is not None else {}


@remembered
def _signal_words() -> dict[str, int]:
    return {row["word"]: int(row["rank"]) for row in table("signal_words").rows}
