"""Papers by P number, as a step or a layer names them in words, and their grain. Asked by rules on sanding and by the method statement."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache
from itertools import pairwise

from specgen.facts.pairs.parts import members
from specgen.model.product import Role
from specgen.model.system import Layer
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

_ON_MATERIAL = {
    "aluminium": "bare_aluminium",
    "stainless": "stainless_key",
    "grp": "grp_gelcoat",
    "plastic": "plastic_scuff",
    "plastic_low_energy": "plastic_scuff",
    "ecoat_part": "ecoat_scuff",
}
COLOUR = frozenset({Role.BASECOAT, Role.TOPCOAT, Role.CLEARCOAT})


@cache
def papers_in(text: str | None) -> tuple[str, ...]:
    """The P numbers a text names, in its order: `P150, then P180` gives 150 and 180."""
    return tuple(re.findall(r"\bP ?(\d{2,4})\b", text or ""))


@remembered
def grain(paper: str) -> Fraction | None:
    """Mean grain in micrometres; None for a number that no paper of the P series has."""
    found = [row["um"] for row in table("abrasive_grains").rows if row["p"] == paper]
    return Fraction(found[0]) if found else None


def side_of_window(paper: str, task: Row) -> str:
    """`coarser` or `finer` where a paper is outside the range of its task, empty where it is inside."""
    if int(paper) < int(task["coarsest_p"]):
        return "coarser"
    return "finer" if int(paper) > int(task["finest_p"]) else ""


_GRITS = re.compile(
    r"(?:\bP ?|#|\bgrit (?:P ?)?|(?<![\w.,]))(?P<number>\d{2,4})(?P<grit>[- ]?grit\b)?(?![\w%]|[.,]\d| (?:um|µm|mm|bar|m\b|°|deg))",
    re.I,
)
_THEN = re.compile(
    r"[ ,;:>\u2192-]*(?:(?:and|then|next|later|last|lastly|finally|after that|afterwards|followed by|finish(?:ed|ing)?(?: off)?|"
    r"with|by|a|the|paper|discs?|sheets?|dry|wet)[ ,;]*)*",
    re.I,
)
_ENDS = re.compile(r"\s*(?:$|[.,;]|then\b|and\b|grit\b|papers?\b)", re.I)
_ELSEWHERE = re.compile(r"\s*(?:paper )?(?:on|at|for|in|round|around|where|near|along)\b", re.I)


@remembered
def finer_first(text: str | None) -> tuple[str, str] | None:
    """The first two papers that a text names one after the other from fine to coarse, as it writes them; None where it names none.

    A higher number is finer in the P series and in the other one alike. What is parted by `or`, or said of another place, is no order.
    """
    said = text or ""
    found = [one for one in _GRITS.finditer(said) if _is_marked(one) or grain(one["number"]) is not None]
    for fine, coarse in pairwise(found):
        between, after = said[fine.end() : coarse.start()], said[coarse.end() :]
        if not (_is_marked(fine) or _is_marked(coarse)) or (not _is_marked(coarse) and _ENDS.match(after) is None):
            continue
        if int(fine["number"]) > int(coarse["number"]) and _one_after_the_other(between, after):
            return fine[0].strip(), coarse[0].strip()
    return None


def _is_marked(one: re.Match[str]) -> bool:
    """A number of a paper, by the P, the sign or the word beside it."""
    return not one[0][0].isdigit() or one["grit"] is not None


def _one_after_the_other(between: str, after: str) -> bool:
    return bool(between.strip()) and _THEN.fullmatch(between) is not None and _ELSEWHERE.match(after) is None


def too_wide_steps(run: list[str]) -> list[tuple[str, str, Fraction]]:
    """Each pair of papers between which the grain falls by more than the table allows, and by how much."""
    most, found = _most_fall(), []
    for coarse, fine in pairwise(run):
        fall = _fall(coarse, fine)
        if fall is not None and fall > most:
            found.append((coarse, fine, fall))
    return found


@remembered
def _most_fall() -> Fraction:
    return Fraction(table("sanding_step").rows[0]["most_ratio"])


@remembered
def _fall(coarse: str, fine: str) -> Fraction | None:
    before, after = grain(coarse), grain(fine)
    return before / after if before is not None and after is not None else None


def sanding_task(name: str) -> Row:
    """The row of sanding_stages: coarsest and finest paper of a task. Raises KeyError for a name it does not have."""
    return table("sanding_stages").row("id", name)


def papers_between(below: Layer, above: Layer) -> str:
    """The row of sanding_stages that speaks of this coat before that one."""
    if below.role is Role.BODY_FILLER:
        return "filler_finish"
    if below.role is Role.SURFACER and above.role in COLOUR:
        return "surfacer_before_basecoat" if above.role is Role.BASECOAT else "surfacer_before_solid_2k"
    if below.role in COLOUR and above.role in COLOUR:
        return "old_finish_before_colour"
    return "epoxy_primer_reactivate"


def papers_on_material(material: str, first: Role) -> str:
    """The row of sanding_stages that keys a bare material for a first coat; empty where the table has none, as for zinc."""
    if material in members("bare_steel"):
        return "metal_under_filler" if first is Role.BODY_FILLER else "bare_metal_key_for_primer"
    return _ON_MATERIAL.get(material, "")


def papers_around_repair(last: Role) -> str:
    """The row of sanding_stages for the sound coat around a repaired place."""
    return "blend_area_clear" if last is Role.CLEARCOAT else "old_finish_before_colour"


def papers_on_old_paint(family: str | None, first: Role) -> str:
    """The row of sanding_stages that speaks of a first coat on old paint of a family; None for paint nobody knows."""
    if family == "ecoat":
        return "ecoat_scuff"
    return "old_finish_before_colour" if first in COLOUR else "old_2k_before_epoxy_primer"


def consequence(side: str) -> str:
    """What a paper outside its window does."""
    if side == "coarser":
        return "its scratches show through the coat"
    return "it leaves too little key"
