"""Where else a finding holds that is told once, in words. Called by the reports of this floor."""

from __future__ import annotations

from collections.abc import Sequence

from specgen.findings import Told
from specgen.units.locale import counted

_SHOWN = 12


def elsewhere(told: Told) -> str:
    """`at 2 more places: systems.cab.total, systems.box.total; for P261`; empty where it holds at one place only.

    At one and the same place findings of one cause differ in what they name, so that is told.
    """
    first = told.finding
    places = list(dict.fromkeys(other.path for other in told.also if other.path != first.path))
    names = [name for other in told.also if other.path == first.path and (name := _differing(other.what, first.what))]
    said = []
    if places:
        said.append(f"at {len(places)} more {counted('place', 'places', len(places))}: {_listed(places)}")
    if names:
        said.append(f"for {_listed(names)}")
    return "; ".join(said)


def _differing(other: str, first: str) -> str:
    known = set(first.split())
    return " ".join(word for word in other.split() if word not in known).rstrip(",;:")


def _listed(names: Sequence[str]) -> str:
    left = len(names) - _SHOWN
    return ", ".join(names[:_SHOWN]) + (f" and {left} more" if left > 0 else "")
