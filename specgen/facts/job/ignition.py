"""What a sentence lets burn beside wet paint or in a confined space, and whether it lets the extraction stop. Called by the rule on
flames and extraction.

A sentence is read clause by clause; one that forbids, or that speaks of the time before or after, lets nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_SENTENCE, _CLAUSE = re.compile(r"[;\n]|\.(?!\d)"), re.compile(r",(?!\d)|\bbut\b")
_FIRED = (
    r"(?:(?:open|naked|bare) (?:flame|fire|light|burner|heater)s?"
    r"|(?:(?:bottled|natural) )?(?:gas|propane|butane|LPG|oil|paraffin|kerosene|diesel|petrol|charcoal|coke|roofing|direct)[- ]"
    r"(?:fired |burning |fuelled )?(?:[\w-]+ )?(?:heater|burner|torch|blower|cannon|stove|radiator|lance)(?:s|es)?\b"
    r"|(?:diesel|petrol|combustion) (?:generator|compressor|engine|pump)s?\b(?=[^.;]*\b(?:in|inside|on the floor of|at the bottom of) the "
    r"(?:tank|hold|vessel|silo|pipe|hull|space|booth)\b)"
    r"|(?:direct|open)[- ]fired \w+|flame heaters?|blow ?(?:lamp|torch)(?:s|es)?|salamanders?|braziers?|campfires?)"
)
_BURNING = re.compile(rf"\b{_FIRED}", re.I)
_SOURCE = re.compile(
    rf"\b(?:{_FIRED}|smoking|cigarettes?"
    r"|(?:halogen|ordinary|household|site|unprotected|non-explosion-proof)(?: halogen)? "
    r"(?:lamp|light|floodlight|fan|motor|heater|socket)s?)\b",
    re.I,
)
_HOT_WORK = re.compile(r"\b(?:weld|grind|flame[- ]?cut|gas[- ]?cut|braz|solder|hot work)\w*", re.I)
_BESIDE = re.compile(
    r"\b(?:goes on|go on|carr(?:y|ies) on|continues?|while|meanwhile|beside|next to|alongside|same time|parallel)\b",
    re.I,
)
_WET_WORK = re.compile(r"\b(?:spray|paint|coat|solvent|mixing|wet film|drying|dries)\w*", re.I)
_FORBIDDEN = re.compile(
    r"\b(?:no|not|never|without|nobody|nothing|none|forbid\w*|forbidden|prohibit\w*|ban|banned|away|off|out|outside|outdoors|remove\w*|"
    r"clear of|before|until|after|once|explosion[- ]?(?:proof|protected)|indirect\w*|distance|isolat\w*|stops?|stopped|ends|ended|finished|"
    r"instead of|keep \d|at least \d|[1-9]\d+ ?(?:m|metres?) (?:from|away))\b",
    re.I,
)
_EXTRACTION = (
    r"(?:extraction|extractors?|ventilation|exhausts?|(?:exhaust |booth |extraction )?fans?|ventilators?|air movers?)"
)
_OFF = re.compile(
    rf"\b{_EXTRACTION}\b[^,.;]{{0,60}}?\b(?:shut|switched|turned|put|left|kept|stays?|is|are|remains?) (?:off|down)\b"
    rf"|\b(?:shut|switch|turn) (?:off|down) (?:the )?{_EXTRACTION}\b|\b(?:shut|switch|turn) (?:the )?{_EXTRACTION} (?:off|down)\b"
    rf"|\bwithout (?:any )?{_EXTRACTION}\b|\b{_EXTRACTION} (?:is |are )?(?:stopped|not running|not used)\b"
    rf"|[;,.] ?(?:switched|turned|shut) off\b",
    re.I,
)
_ON_AGAIN = re.compile(r",?\s*\b(?:and )?(?:back )?on again\b[^.;]*", re.I)
_MAY_STOP = re.compile(
    r"\b(?:never|nobody|no one|only|if|fails?|alarm|must not|may not|cannot|not be|is not|are not|isn't)\b"
    r"|\b(?:once|after|until|when|as soon as)\b[^.;]*\b(?:dry|dried|cured?|hard|hardened|clear\w*|done|finished|over|gone|flashed)\b"
    r"|\b(?:blast|wash|mask)\w*",
    re.I,
)


def burning_let(text: str) -> Iterator[str]:
    """Each thing that burns fuel and that a text lets stand where the work is done, in its own words."""
    for sentence in _SENTENCE.split(text):
        for clause in _CLAUSE.split(sentence):
            if not _FORBIDDEN.search(clause):
                yield from (found[0] for found in _BURNING.finditer(clause))


def ignition_let(text: str) -> Iterator[str]:
    """Each source of ignition that a text lets stand beside the work, in its own words."""
    for sentence in _SENTENCE.split(text):
        for clause in _CLAUSE.split(sentence):
            if _FORBIDDEN.search(clause):
                continue
            yield from (found[0] for found in _SOURCE.finditer(clause))
            hot = _HOT_WORK.search(clause)
            drawn_off = re.search(rf"{_EXTRACTION}|dust|mask|filter|hood", clause, re.I)
            if hot is not None and _BESIDE.search(clause) and _WET_WORK.search(sentence) and not drawn_off:
                yield hot[0]


def extraction_stopped(text: str) -> str | None:
    """The words by which a text lets the extraction stop while there is wet paint; None where it does not."""
    for sentence in re.split(r"\n|\.(?!\d)", text):
        found = _OFF.search(sentence)
        if (
            found is not None
            and not _MAY_STOP.search(_ON_AGAIN.sub("", sentence))
            and re.search(_EXTRACTION, sentence, re.I)
        ):
            return found[0].strip(" ,;.")
    return None
