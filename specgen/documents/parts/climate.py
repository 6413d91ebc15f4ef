"""A climate for application as printed, of a product or of a job.

Called by `data_sheet`, `method_statement` and `job_card`.
"""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.model.product import ApplicationClimate


def climate(stated: ApplicationClimate | None, words: Words) -> tuple[tuple[str, str], ...]:
    """(name, finished text) of every limit that is stated."""
    if stated is None:
        return ()
    named = (
        (words("Air temperature"), stated.air),
        (words("Surface temperature"), stated.surface),
        (words("Relative humidity"), stated.humidity),
        (words("Absolute humidity"), stated.absolute_humidity),
        (words("Surface above dew point"), stated.dew_point_margin),
    )
    return tuple((name, words.phrase(value)) for name, value in named if value is not None)


def in_a_line(stated: ApplicationClimate | None, words: Words) -> str:
    """`Air 16 to 26 °C, surface 16 to 28 °C, 40 to 70 % RH, surface at least 3 K above dew point`; empty where nothing is stated."""
    if stated is None:
        return ""
    named = (
        (words("air {}"), stated.air),
        (words("surface {}"), stated.surface),
        (words("{} RH"), stated.humidity),
        (words("{} of water in the air"), stated.absolute_humidity),
        (words("surface {} above dew point"), stated.dew_point_margin),
    )
    text = ", ".join(text.format(words.phrase(value)) for text, value in named if value is not None)
    return f"{text[:1].upper()}{text[1:]}"
