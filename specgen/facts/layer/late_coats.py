"""Coats that may be overcoated past their interval without preparation, by what is said of it in words.

Called by the rule on late coats, and where others give way to it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.facts.job.goes_on import lets_stand
from specgen.facts.layer.intervals import windows_for
from specgen.facts.pairs.answers import says_sanding
from specgen.facts.pairs.families import binder_family
from specgen.model.spec import Spec
from specgen.model.system import System

_CURES = {"chemical", "moisture", "released by moisture"}
_CLEANS = re.compile(r"\b(?:wip|wash|clean|degreas|tack|rins|dust(?:ed)? off|bl(?:ow|own) (?:it )?off)\w*", re.I)
_DENIED = re.compile(r"\b(?:no|without|not)\b[^.;,]*", re.I)
_STRAIGHT_ON = re.compile(
    r"\b(?:paint|coat|overcoat|spray|lay)\w* (?:\w+ )?(?:straight|right|directly) (?:on|over)|"
    r"\bat any (?:age|time)\b|no (?:upper )?limit\b",
    re.I,
)
_MORE = re.compile(
    r"blast|strip|grind|remov|take\w* off|taken off|ask|call|stop|engineer|technical|"
    r"manufacturer|agree|reject|patch|key|mechanic|roughen|test",
    re.I,
)


def unprepared(system: System, spec: Spec) -> Iterator[tuple[str, str]]:
    """The id of each such coat, and what is wrong with it."""
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        product, late = spec.product_of(below), below.if_exceeded or ""
        family = binder_family(product.binder)
        if family["cure"] in _CURES and (
            lets_stand(late)
            or (_STRAIGHT_ON.search(late) and not _prepares(_DENIED.sub("", _STRAIGHT_ON.sub("", late))))
        ):
            yield below.id, f"past its interval {below.id} is overcoated without preparation: {late}"
        elif _CLEANS.search(late) and not _prepares(_DENIED.sub("", late)):
            ordered = [window.if_exceeded or "" for window in windows_for(below, above, spec)]
            abraded = next((text for text in ordered if says_sanding(text)), None)
            if abraded is not None:
                yield below.id, f"past its interval {below.id} is only cleaned: {late}; the product orders: {abraded}"


def _prepares(text: str) -> bool:
    return says_sanding(text) or _MORE.search(text) is not None
