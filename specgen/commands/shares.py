"""How long each part of a check took, as lines of text: the longest first, with its share of the whole. Called by `check`."""

from __future__ import annotations

from collections.abc import Mapping


def shares(seconds: Mapping[str, float]) -> str:
    """One line a part, `  0.012 s   4.1 %  FLM003`, and the whole below. A figure that several rules need counts for the first."""
    whole = sum(seconds.values())
    longest = sorted(seconds.items(), key=lambda part: (-part[1], part[0]))
    lines = [f"{took:8.3f} s {took / whole if whole else 0:7.1%}  {name}" for name, took in longest]
    return "\n".join([*lines, f"{whole:8.3f} s {1:7.0%}  reading and {len(seconds) - 1} rules", ""])
