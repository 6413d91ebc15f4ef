"""The signs that can be printed: those which every upright font shipped with specgen has.

Called by the rule DOC002. `printable.txt` holds them as stretches of code points; a test compares it with the fonts and
writes it anew (`pytest tests/model/test_printable.py --update-golden`), so that checking needs no font reader.
"""

from __future__ import annotations

from functools import cache
from importlib import resources

from specgen.source.characters import REPLACED

_PASSED_OVER = frozenset(("\n", REPLACED))


def outside_fonts(text: str) -> list[str]:
    """The signs of a text that the fonts lack, each once, in order.

    Passed over are line ends, and U+FFFD, for which the reader has found the sign it stands for.
    """
    signs = _signs()
    return [] if signs.issuperset(text) else [sign for sign in dict.fromkeys(text) if sign not in signs]


@cache
def _signs() -> frozenset[str]:
    lines = resources.files(__package__).joinpath("printable.txt").read_text("ascii").splitlines()
    stretches = (line.partition("-") for line in lines if not line.startswith("#"))
    printed = (chr(code) for first, _, last in stretches for code in range(int(first, 16), int(last or first, 16) + 1))
    return _PASSED_OVER.union(printed)
