"""What an inspection point looks for by its words, beside the film. Called by the rules on inspection points."""

from __future__ import annotations

import re

from specgen.model.acceptance import InspectionPoint, Stage

_BEFORE_PAINT = frozenset({Stage.RECEIPT, Stage.PREPARED})
_FINISH = re.compile(
    r"adhes|cross.?cut|pull.?off|tape test|appearance|colou?r|gloss|\blook|visual|finish|defect|\bruns?\b|\bsags?\b|pinhole|"
    r"porosity|holiday|spark test|cosmetic",
    re.I,
)
SALT = re.compile(r"\bsalts?\b(?!.?(?:spray|fog|mist))|chloride|conductivity|8502-(?:6|9)", re.I)
PORES = re.compile(r"\bpores?\b|pinhole|porosity|holiday|high.voltage|spark|wet sponge|29601|D5162", re.I)
CLIMATE = re.compile(
    r"\bclimat|ambient|dew.?point|humid|hygromet|psychromet|weather|"
    # that of an oven or of a first heating is no ambient condition
    r"(?:air|surface|steel|metal)(?: and \w+)? temperature(?! of (?:at (?:least|most) )?\d{3})",
    re.I,
)
WET_FILM = re.compile(r"\bWFT\b|\bwet.?film|\bcomb gauge", re.I)
FILM = re.compile(r"\bDFT\b|\bdry film|film thickness|\bthickness of (?:the )?(?:coat|film|paint)", re.I)
PROTECTION = re.compile(
    r"explosi(?:ve|on) limit|\bLEL\b|\bLFL\b|\boxygen\b|gas.free|exposure limit|workplace limit|\bTLV\b|\bOEL\b|"
    r"ventilat\w*|extraction|respirat\w*|breathing (?:air|protection)|entry permit|hot.work permit|standby person",
    re.I,
)
DUST = re.compile(r"\bdust|8502-3|clear tape|adhesive tape", re.I)


def words_of(point: InspectionPoint) -> str:
    """Everything an inspection point says of what it looks at."""
    return " ".join(text for text in (point.check, point.method, point.criterion.text) if text)


def reads_wet_film(point: InspectionPoint) -> bool:
    """True for a point of the application that is made in the wet film, and so after the coat is applied; not one of the air."""
    said = words_of(point)
    return point.at is Stage.APPLICATION and bool(WET_FILM.search(said)) and not CLIMATE.search(said)


def looks_at_the_finish(point: InspectionPoint) -> bool:
    """True for a point that looks at the finished work, or tests how it holds."""
    if point.at is Stage.COMPLETION:
        return True
    # a point of film names colour and gloss as coats
    of_film = point.gauge is not None or point.criterion.rule is not None or point.criterion.as_specified
    return point.at not in _BEFORE_PAINT and not of_film and bool(_FINISH.search(words_of(point)))
