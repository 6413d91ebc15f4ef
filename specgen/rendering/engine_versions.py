"""Which typesetter, and which libraries under it, set the documents: for the record of an issue. Called by issuing.

A file issued is never set again; these versions say what would be needed to come to the same bytes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import count

from specgen.rendering.pdf import typesetter


@dataclass(frozen=True, slots=True)
class EngineVersions:
    """The versions in use, as their makers write them ("70.0", "1.50.12", "6.0.0")."""

    weasyprint: str
    pango: str
    harfbuzz: str


def engine_versions() -> EngineVersions:
    """The versions of this machine. Loads the typesetter; raises RenderError when Pango is not installed."""
    engine = typesetter()
    pango = engine.pango.pango_version()
    return EngineVersions(
        weasyprint=engine.version,
        # Pango gives one number, its parts in two digits each
        pango=f"{pango // 10_000}.{pango // 100 % 100}.{pango % 100}",
        harfbuzz=_asked(engine.harfbuzz.hb_version_atleast),
    )


def _asked(at_least: Callable[[int, int, int], int]) -> str:
    """A version found by asking whether it is at least this or that; the typesetter reaches no other way to it."""
    major = next(number for number in count() if not at_least(number + 1, 0, 0))
    minor = next(number for number in count() if not at_least(major, number + 1, 0))
    micro = next(number for number in count() if not at_least(major, minor, number + 1))
    return f"{major}.{minor}.{micro}"
