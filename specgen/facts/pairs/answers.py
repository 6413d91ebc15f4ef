"""Which conditions of the overcoating tables the work itself answers, as ids of the table overcoat_needs.

Rules ask what is left open, pages print what is left to say: both take from here what is answered already.
"""

from __future__ import annotations

import re

from specgen.facts.pairs.papers import papers_in
from specgen.model.drying import Sanding
from specgen.model.preparation import Preparation, StepKind
from specgen.model.product import Role
from specgen.model.system import Layer

# Any of these takes the gloss off a coat.
DULLING = frozenset({"abrade", "sand", "sweep"})
# What is done to the metal itself, and not to a coat on it.
ON_THE_METAL = DULLING | {"degrease", "passivate", "conversion_coat", "not_treated"}
_SPEAKS_OF_SANDING = re.compile(r"(?<!not )(?<!never )(?<!without )\b(sand|abrad|scuff)", re.IGNORECASE)
WORK = r"(?:sand|abrade|abrad|scuff|flat)(?:ing|down)?"
_ORDERS = {
    Sanding.DRY: re.compile(rf"\bdry[- ]{WORK}|\bP ?\d+ dry\b", re.IGNORECASE),
    Sanding.WET: re.compile(rf"\bwet[- ]{WORK}|\bP ?\d+ wet\b", re.IGNORECASE),
}
# Steps that take the gloss off, and those that take dirt and grease off.
_ROUGHENS = {StepKind.SAND, StepKind.SWEEP, StepKind.BLAST, StepKind.POWER_TOOL, StepKind.FEATHER}
_CLEANS = {StepKind.DEGREASE, StepKind.WASH, StepKind.STEAM}


def dulled(layer: Layer) -> bool | None:
    """True where a coat is abraded before the next, by a paper, a pad or in words; False where nothing is said of it.

    None where something else is said, perhaps in another language: a page then prints the condition, no rule misses it.
    """
    said = layer.before_next
    if layer.abraded_with is not None or says_sanding(said or ""):
        return True
    return None if said is not None else False


def says_sanding(text: str) -> bool:
    """True where a text orders that a coat is abraded."""
    return bool(papers_in(text)) or _SPEAKS_OF_SANDING.search(text) is not None


def sanding_ordered(text: str | None) -> Sanding | None:
    """How a text orders sanding, dry or wet; None where it says neither, or both."""
    found = [way for way, words in _ORDERS.items() if words.search(text or "")]
    return found[0] if len(found) == 1 else None


def answered_by_coat(layer: Layer, family: str) -> frozenset[str]:
    """What a new coat answers by how it begins and what it is, `family` its binder: a primer is the primer asked for."""
    primer = layer.role is Role.PRIMER
    answers = {
        "mist_coat": layer.mist_coat is True,
        "tie_coat": layer.tie_coat is True,
        "primer_first": primer,
        "epoxy_primer": primer and family.startswith("epoxy"),
        "sealer": primer or layer.role is Role.SEALER,
    }
    return frozenset(need for need, yes in answers.items() if yes)


def answered_on_part(preparation: Preparation) -> frozenset[str]:
    """What the steps answer on the bare part. A hand tool keys metal, though it does not take the gloss off paint all over."""
    done = {step.do for step in preparation.steps}
    keyed = DULLING if StepKind.HAND_TOOL in done else frozenset()
    converted = frozenset({"passivate", "conversion_coat"}) if StepKind.CONVERT in done else frozenset()
    return answered_by_preparation(preparation) | keyed | converted


def answered_by_preparation(preparation: Preparation | None) -> frozenset[str]:
    """What the steps of a preparation do to old paint: DULLING, degrease, both or neither."""
    done = {step.do for step in preparation.steps} if preparation is not None else set()
    return (DULLING if done & _ROUGHENS else frozenset()) | (frozenset({"degrease"}) if done & _CLEANS else frozenset())
