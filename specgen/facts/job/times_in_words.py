"""When a sentence lets parts be handled or go into service, held against the times that the systems state.

Called by the rule on limits in words, and where others give way to it. A sentence by nights or days ("the next morning") is told only
where even the longest it can mean is too short.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from specgen.facts.product.spans_said import Span, spans_between
from specgen.model.system import System
from specgen.units.quantity import Quantity

DENIED = re.compile(
    r"\b(?:not|never|no|nothing|nobody|none|unless|before|earlier|instead|until|if|existing|old|was|were)\b", re.I
)
"""What says that a clause forbids, or speaks of another state."""
_HANDLED = re.compile(
    r"\b(?:stack|handl|lift|load|pack|turn|move|ship|wrap|bundl)(?:s|es|ed|led|ped|ing)?\b|\bsent (?:out|off)\b", re.I
)
_FITTED = re.compile(
    r"\b(?:fitted|mounted|assembled|bolted|screwed|hung|riveted)\b.*\bafter (?:the )?"
    r"(?:finish\w*|last coat|top[ -]?coat|clear[ -]?coat|painting|coating|spraying|lining)\b",
    re.I,
)
_STAYS_ON_ITS_STAND = re.compile(r"\b(?:moved?s?|moving|handl(?:ed|ing)|turn(?:s|ed|ing)?)\b", re.I)
_GROUND = r"(?:the )?(?:work|road|rails?|track|line|site|duty|service|traffic|use|operation|quarry|fields?|sea|water)"
_SERVED = re.compile(
    r"\b(?:fill(?:s|ed|ing)?|commission\w*|immers\w*|launch\w*|under water)\b|"
    r"\b(?:in|into|to) (?:service|use|operation|traffic)\b|"
    rf"\b(?:back|returns?|returned) (?:at|to|in|into|on) {_GROUND}\b|\bat work again\b|"
    r"\b(?:works?|working|runs?|running|drives?|driving|sails?|digs?|carr(?:y|ies)|hauls?) (?:\w+ )?again\b|"
    r"\b(?:works?|working|runs?|running|drives?|driving|sails?|digs?)\W* (?:the |on the )?(?:next|following|same|day after)\b|"
    r"\b(?:its|their|the) first (?:load|trip|run|journey|cargo)\b|\bfirst load is\b|"
    r"\b(?:rented|hired|leased) out\b|\bworks? with (?:it|them)\b|"
    r"\b(?:carr(?:y|ies)|hauls?|tips?) (?:gravel|sand|coal|stone|ore|loads?|goods|freight|cargo|grain)\b|"
    r"\b(?:pressure[- ]?washed|wash\w*\b.*\bpressure washer)\b",
    re.I,
)
_COUNTED_FROM = re.compile(r"\b(?:after|later)\b", re.I)
_AT_LATEST = re.compile(r"\bwithin\b", re.I)
_FIRST_USE = re.compile(r"\bfirst (?:load|trip|run|journey|cargo)\b", re.I)
_BY_DAYS = re.compile(rf"\b(?:next|following) (?:day|morning|week)\b|\bday after\b|{_FIRST_USE.pattern}", re.I)
_OTHER_START = re.compile(
    r"\b(?:primer|first|second|intermediate|between|next|stripe|mist|base[ -]?coat|surfacer|blast\w*|wash(?:ed|ing)\b|mixing|"
    r"activat\w*|delivery|putty|body filler)\b|"
    r"\bafter (?:the |its |their |full |a )?(?:\w+ )?"
    r"(?:inspection|acceptance|release|tests?|testing|cure|curing|handover|approval|assembly|repairs?)\b",
    re.I,
)
_OTHERS = re.compile(
    r"\b(?:crew|painters?|sprayers?|blasters?|team|shift|people|men|foreman|fitters?|others?|spare|replacement|hire machine)\b|"
    r"(?<!to )(?<!at )\bwork (?:on|goes)\b",
    re.I,
)


def released_too_early(clause: str, systems: Sequence[System]) -> Iterator[str]:
    """What a clause says of handling and of service that comes before every system allows it."""
    if DENIED.search(clause) or _OTHERS.search(clause) or _OTHER_START.search(_BY_DAYS.sub("", clause)):
        return
    lifted = _HANDLED.search(_FIRST_USE.sub("", clause)) is not None
    served = _SERVED.search(clause) is not None
    handled = _FITTED.search(clause) is not None or (lifted and not served)
    if handled:
        waits = [system.handle_after for system in systems]
        yield from _too_early(clause, "handling", waits, _of_handling(clause))
    elif served and not lifted:
        waits = [system.service_after for system in systems]
        yield from _too_early(clause, "service", waits, _spans(clause, _AT_LATEST))


def _too_early(clause: str, of: str, waits: Sequence[Quantity | None], spans: Sequence[Span]) -> Iterator[str]:
    stated = [wait for wait in waits if wait is not None]
    most = [span.longest for span in spans]
    if not most or not stated or len(stated) < len(waits):
        return
    if all(one < wait for one in most for wait in stated):
        shortest = min(stated, key=lambda wait: wait.base)
        yield f"'{clause.strip()}'; the minimum time before {of} is {shortest}"


def _of_handling(clause: str) -> list[Span]:
    """The spans that count for handling; a part that stays on its stand or trolley may be moved on the same day."""
    found = _spans(clause)
    return [one for one in found if one.counted] if _STAYS_ON_ITS_STAND.search(clause) else found


def _spans(clause: str, *also: re.Pattern[str]) -> list[Span]:
    """The spans of a clause; one that is counted where a word says from when, or by when, alone."""
    bounded = any(pattern.search(clause) for pattern in (_COUNTED_FROM, *also))
    return [span for span in spans_between(clause) if bounded or not span.counted]
