"""Air or metal that a sentence lets paint be laid or dried in, colder than the job allows. Called by the rule on limits in words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.facts.job.in_words import quantities_said
from specgen.facts.product.spans_said import spans_between
from specgen.model.product import ApplicationClimate

_LAID = r"(?:coat|paint|spray|prim|lin|roll|brush|laid|lay|appl|work)\w*"
_ABOUT = r"(?:about |only |just |around |still )?"
_FIGURE = rf"{_ABOUT}(?=-?\d[\d.]* ?(?:°|deg))"
_AT = re.compile(
    rf"\b{_LAID}\b(?: (?!after|from|below|above|once)[\w-]+){{0,7}}? (?:at|in air of|on metal of|on steel of) {_FIGURE}|"
    rf"\b(?:has|have|is|are|reaches|stands at)\b (?:at )?{_FIGURE}.*\b(?:while|when|during|as)\b.*\b{_LAID}|"
    rf"\b{_LAID} (?:starts?|begins?) (?:at|from) {_FIGURE}|"
    rf"\b(?:metal|steel|zinc|parts?|panels?|surfaces?) (?:of|at) {_FIGURE}\S+ ?\S* (?:may be|can be|is|are) {_LAID}|"
    rf"\bat {_FIGURE}\S+ ?\S* and (?:are |is )?{_LAID}",
    re.I,
)
_DRIES = re.compile(
    rf"\b(?:falls?|drops?|sinks?|cools?|goes)\b(?: (?:again|down|off))? (?:to|as low as) {_FIGURE}.*"
    r"\b(?:dr(?:y|ies|ying)|cur(?:es|ing)|harden\w*)\b|"
    rf"\b(?:cures?|dries|hardens?)\b(?: (?!in|after)[\w-]+){{0,3}}? at {_FIGURE}",
    re.I,
)
_OTHER = re.compile(
    r"\b(?:cans?|tins?|drums?|pails?|stor\w*|material|warm\w*|heat\w*|dew|service|operat\w*|in use|below|above|stops?|if|where|"
    r"less|more|(?<!at )once|hard|cured|takes|needs|water|thinner|dehumidif\w*|paint (?:is|has)|compressor|gun|hose)\b",
    re.I,
)


def colder(clause: str, climate: ApplicationClimate) -> Iterator[str]:
    """What a clause says, where the lowest temperature of the ambient conditions is above it."""
    lows = [one.low for one in (climate.air, climate.surface) if one is not None and one.low is not None]
    found = _AT.search(clause) or (
        None if any(span.counted for span in spans_between(clause)) else _DRIES.search(clause)
    )
    if found is None or not lows or _OTHER.search(clause):
        return
    said = quantities_said(clause, "temperature")
    least = min(lows, key=lambda low: low.base)
    if said and all(one < least for one in said):
        yield f"'{clause.strip()}'; the ambient conditions begin at {least}"
