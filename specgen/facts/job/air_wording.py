"""Whether a sentence on air speaks of explosions alone. Called by the rules on air."""

from __future__ import annotations

import re

_EXPLOSION = re.compile(r"explosive limit|explosion limit|\bLEL\b|\bLFL\b|lower flammab", re.I)
_BREATH = re.compile(r"exposure|breath|respirat|\bmask|lungs|supplied air|air-fed", re.I)


def explosion_alone(text: str) -> bool:
    """True where the explosive limit is named and nothing that keeps people from breathing the vapour."""
    return bool(_EXPLOSION.search(text)) and not _BREATH.search(text)
