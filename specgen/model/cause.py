"""When two findings of one rule have one cause, and so are told once: `findings.Report` folds by it.

Called by `shape` and by the runner of the rules.

They have one where their sentences are the same but for the address: five keys that one product lacks, three items of a job
with one and the same old paint, every job that meets one figure missing in one product. What a sentence measures stays in it,
so two figures are two causes; and each record answers for itself, unless the sentence names another record that it rests on.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Set

from specgen.model.spec import LIST_KINDS
from specgen.model.walk import Path

_WORD = re.compile(r"[A-Za-z][A-Za-z0-9_\-]*")
_CODE = re.compile(r"(?:EUH|[HP])\d{3}[A-Za-z]*")
# addresses and joined codes of any length are one blank
_JOINED = re.compile(r"~(?:[.+]~)+")
_BLANK = "~"
# each kind rests on those before it
_KINDS = tuple(LIST_KINDS)


def cause_of(path: Path, what: str, ids: Mapping[str, Set[str]], record: Path = ()) -> str:
    """The same text for findings of one cause; `path` is the whole address, `ids` are those of the sources by kind.

    `record` is the one that states the value, where that is another than the path leads into.
    """
    steps = frozenset(path)
    before, after = _neighbours(path[0])
    named = False

    def blanked(found: re.Match[str]) -> str:
        nonlocal named
        word = found[0]
        # who merely uses the record does not make another cause of it; an official code is one entry of one list
        if word in steps or _CODE.fullmatch(word) or any(word in ids.get(kind, ()) for kind in after):
            return _BLANK
        named = named or any(word in ids.get(kind, ()) for kind in before)
        return word

    sentence = _JOINED.sub(_BLANK, _WORD.sub(blanked, what))
    return f"{path[0] if named else '.'.join(record or path[:2])}: {sentence}"


def _neighbours(kind: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The kinds of record that one of this kind rests on, and those that rest on it."""
    if kind not in _KINDS:
        return (), ()
    at = _KINDS.index(kind)
    return _KINDS[:at], _KINDS[at + 1 :]
