"""How many lines a cell of a table takes in print, told from its text. Called by the cards, which choose the size of their type by it."""

from __future__ import annotations

# the mean width of a sign in narrow cells, in the size of the type; the padding of a cell in points
_SIGN, _PADDING = 0.46, 4


def cell_lines(text: str, width: float, type_of: float) -> int:
    """In a cell `width` points wide in type of `type_of` points; a word that does not fit on a line is taken to the next."""
    room = (width - _PADDING) / (type_of * _SIGN)
    lines, used = 1, 0.0
    for word in text.split(" "):
        if used and used + 1 + len(word) > room:
            lines, used = lines + 1, 0.0
        used += len(word) + (used > 0)
    return lines
