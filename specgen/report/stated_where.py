"""Where each value of a record is stated, as text: in its own lines or in those of a record it is based on. Called by `explain`."""

from __future__ import annotations

from specgen.model.based_on import record_named
from specgen.model.canonical import written
from specgen.model.declaring import Audience
from specgen.model.node import Node
from specgen.model.parse import Loaded
from specgen.model.walk import Path, leaves

_VALUE_LIMIT = 60


def stated_where(record: Node, path: Path, below: Path, loaded: Loaded, *, for_maker: bool) -> str:
    """A line for each value of the record that stands at or below the steps `below`; empty where none does."""
    rows = []
    for steps, value, said in leaves(record):
        if steps[: len(below)] != below or (said.audience is Audience.MAKER and not for_maker):
            continue
        whole = (*path, *steps)
        base = loaded.taken_from(whole)
        text = written(value)
        shown = ", ".join(str(one) for one in text) if isinstance(text, list) else " ".join(str(text).split())
        place = loaded.place(whole)
        where = f"{place.file}:{place.line}" + (f" (of {record_named(base)})" if base is not None else "")
        rows.append((".".join(steps), shown, where))
    wide = max((len(steps) for steps, _, _ in rows), default=0)
    # one value that is asked for alone is shown in full
    cut = rows if len(rows) == 1 else [(steps, _cut(shown), where) for steps, shown, where in rows]
    broad = max((len(shown) for _, shown, _ in cut), default=0)
    return "".join(f"{steps:<{wide}}  {shown:<{broad}}  {where}\n" for steps, shown, where in cut) + _base(
        path, below, loaded
    )


def _base(path: Path, below: Path, loaded: Loaded) -> str:
    based = loaded.bases.get(path)
    if based is None or below:
        return ""
    chain = ", which is based on ".join(base[-1] for base in based.on)
    text = f"{path[-1]} is based on {chain}.\n"
    if based.left:
        left = ", ".join(".".join(one) for one in based.left)
        text += f"Not carried over unless named under including: {left}.\n"
    return text


def _cut(text: str) -> str:
    return text if len(text) <= _VALUE_LIMIT else f"{text[: _VALUE_LIMIT - 1]}…"
