"""What a cell of a table holds when it holds several codes, and how firmly several sources stand together.

Called by the modules of `trade` on hazards.
"""

from __future__ import annotations

from collections.abc import Iterable

from specgen.standards.citations import Basis, Citation

# From the best confirmed to the least: a figure stands no firmer than the weakest it is made of.
_FIRMNESS = tuple(Basis)


def parts(cell: str) -> tuple[str, ...]:
    """The codes of a cell that holds several, parted by blanks."""
    return tuple(cell.split())


def weakest(sources: Iterable[Citation]) -> Citation:
    """The least confirmed of several sources. Raises ValueError for none."""
    return max(sources, key=lambda source: _FIRMNESS.index(source.basis))


def firmest(sources: Iterable[Citation]) -> Citation:
    """The best confirmed of several sources, each of which would do alone. Raises ValueError for none."""
    return min(sources, key=lambda source: _FIRMNESS.index(source.basis))
