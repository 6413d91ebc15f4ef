"""The pot life of a mixed liquid with its conditions, at every temperature it is stated for. Called by views that print a product."""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.model.drying import PotLife, PotLifeAt


def pot_life(stated: PotLife, words: Words) -> str:
    """`3 h at 20 °C, 1 L; 90 min at 30 °C, 1 L`."""
    entries: tuple[PotLife | PotLifeAt, ...] = (stated, *stated.other_temperatures)
    return "; ".join(words.at(entry.time, entry.air, entry.volume) for entry in entries)
