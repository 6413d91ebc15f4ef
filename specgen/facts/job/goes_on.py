"""Whether an instruction for a fault lets it stand or shifts it elsewhere while work goes on.

Called by the rules on failed inspections and on late coats.
"""

from __future__ import annotations

import re

from specgen.facts.texts import CLAUSE

_GOES_ON = re.compile(
    r"\baccept(?:ed)?\b|\bleave (?:it |them )?as\b|\bas (?:it|they) (?:is|are)\b|\bcarry on\b|\bgo on\b|\bcontinue\b|\bproceed\b"
    r"|\bignore\b|\bno (?:action|measures?|preparation|abrading|sanding)\b|\bnothing (?:is done|to do|needed)\b|\bcovers? it\b"
    r"|\b(?:coat|paint)(?:ed)? (?:it |them )?over\b|\b(?:go|work) ahead\b"
    r"|\bwithout (?:any |further |more |other )?(?:preparation|abrading|sanding|keying|work|treatment|ado)\b"
    r"|\bmark(?:ed)? and leave\b|\bleave(?: it| them)?\W*$"
    r"|^\W*(?:note|record|enter|write|report|tell|inform)\b",
    re.I,
)
_WORK = (
    r"(?:repair|abrad|sand|scuff|key|roughen|grind|ground|strip(?!e)|sweep|swept|blast|clean|wash|degreas|wip|repeat|re-?\w*coat|"
    r"remov|recover)\w*"
)
_NO_WORK = re.compile(rf"\b(?:no|without)(?: (?:any|further|more|other))? {_WORK}", re.I)
_NEEDLESS = re.compile(
    r"\b(?:(?:needs?|have|has) not|nothing need|(?:does|do) not (?:need|have) to|"
    r"(?:is|are) (?:not (?:needed|necessary|required)|unnecessary)|"
    r"needs? no|may (?:stay|remain)(?: on| where it is)?\W*$)\b|\b(?:may|can) (?:stay|remain)\W*$",
    re.I,
)
_WORK_OR_NOT = re.compile(rf"\b(?:{_WORK}|not|again)\b", re.I)
_DECIDES = (
    r"stop|hold|wait|ask|call|not|never|only|until|once|after|when|before|unless|written|in writing|concession|agree\w*|engineer|again|"
    r"new|if|extend"
)
_STOPS = re.compile(rf"\b(?:{_DECIDES}|{_WORK})\b", re.I)
_PLACE = r"(?:air|booth|bay|hall|tent|shop|room|place|shelter|oven|chamber|humidity|temperature|condition)s?"
_AIR_PUT_RIGHT = re.compile(
    rf"\b(?:{_DECIDES}|(?:heat|warm|cool|dry|clos|correct|adjust|chang|rais|lower)\w*(?: \w+){{0,3}} {_PLACE}|"
    r"(?:dehumid|humid|moisten|ventilat|extract|shelter|shad|mov)\w*|"
    r"(?:heat|temperature|humidity|fans?|heaters?)\b.{0,15} (?<!go )(?<!goes )(?:on|up|down))\b",
    re.I,
)


def lets_stand(text: str) -> bool:
    """True where a text accepts what is wrong or works on, and names neither a work that mends it nor who decides."""
    asked = "; ".join(_without_needless(clause) for clause in CLAUSE.split(text))
    goes_on = _GOES_ON.search(text) is not None or _NEEDLESS.search(text) is not None
    return goes_on and _STOPS.search(_NO_WORK.sub("", asked)) is None


def works_on_in_the_same_air(text: str) -> bool:
    """True where a text on air outside its limits works on without waiting, and changes nothing of the air: a surface that is wiped is
    wet again with the next dew."""
    return (lets_stand(text) or _GOES_ON.search(text) is not None) and _AIR_PUT_RIGHT.search(text) is None


def _without_needless(clause: str) -> str:
    """The clause without the work that it calls needless ("salts need not be washed off")."""
    return _WORK_OR_NOT.sub("", clause) if _NEEDLESS.search(clause) else clause


_EVADES = re.compile(
    r"\b(?:coating|painting|spraying|work|job) (?:goes|may go|can go) on\b"
    r"|\b(?:lower|reduc\w+|turn(?:ed)? down|less)\b (?:the )?voltage"
    r"|\bvoltage\b.{0,10}\b(?:lowered|reduced|turned down|down)\b|\bturn the voltage down\b"
    r"|\b(?:make|lay|apply|made|laid) (?:the )?(?:finish|top ?coat|(?:next|first|following) coat)\b.{0,8}\b(?:thicker|thinner|heavier)\b"
    r"|\bcover (?:it |them )?(?:with|by) (?:the )?(?:next|finish|top|following)\b"
    r"|\b(?:fill|close) .{0,20}\bwith (?:the )?(?:finish|next coat|top ?coat)\b"
    r"|\b(?:test|measure|read|repeat)\w*\b.{0,15}\buntil (?:it|they|one) (?:pass\w*|fits?|is right)\b"
    r"|\btake the (?:mean|average|best)\b|\b(?:use|try|take) another gauge\W*$"
    r"|\b(?:lower|relax|change|reduce|ease)\b (?:the )?(?:requirements?|limits?|grade|criterion|minimum)\b"
    r"|\bas the new (?:limit|minimum|grade)\b"
    r"|\b(?:deliver|ship|load|send out)\b.{0,30}\b(?:and|with)\b|\bafter (?:the )?delivery\b|\bon delivery\b|\bcomplain\w*"
    r"|\bat the (?:next (?:meeting|overhaul|service|docking)|end of the (?:week|job|month|project))\b|\bwith the invoice\b"
    r"|\b(?:painter|sprayer|blaster|applicator|contractor)s? (?:decides?|sees? fit|chooses?|judges?|may decide)\b"
    r"|^\W*(?:none|nothing|not applicable|n/?a|no|skip\b.*|leave (?:it|them)?(?: ?out)?|omit\b.*)\W*$",
    re.I,
)
_ELSEWHERE = re.compile(
    r"\b(?:test|read|measure|choose|try|repeat|look)\b.{0,20}\b(?:another|a better|a thicker|an easier) (?:place|spot|part|panel|area)\b"
    r"|\b(?:test|read|measure) elsewhere\b|\bwhere it is thicker\b",
    re.I,
)
_PUT_RIGHT = re.compile(r"\b(?:repair|abrad|strip(?!e)|blast|grind|recoat|rework)\w*", re.I)
_HELD_BACK = re.compile(
    r"\b(?:not|never|no|without|only|once|if|unless|before|in writing|written|agree\w*|concession)\b", re.I
)
_IS_NONE = re.compile(r"^\W*(?:none|nothing|not applicable|n/?a|no)\W*$", re.I)


def evades(text: str) -> bool:
    """True where a clause shifts the fault elsewhere: another place or part, a lower limit or voltage, a thicker coat above, a later day,
    whoever did the work; or where it says that nothing is done. To look elsewhere too is sound where the first place is put right."""
    shifted = [_EVADES] if _PUT_RIGHT.search(_NO_WORK.sub("", text)) else [_EVADES, _ELSEWHERE]
    return _IS_NONE.match(text) is not None or any(
        pattern.search(clause) and not _HELD_BACK.search(clause) for clause in CLAUSE.split(text) for pattern in shifted
    )
