"""A declared label beside the one its classification gives: what is missing, surplus or wrong.

Called by the rules on hazards; the finding cites the source of the difference, and only a confirmed one may refuse a
document.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, NamedTuple

from specgen.standards.citations import Basis, Citation, cite
from specgen.standards.tables import table
from specgen.trade.hazard_class import Element
from specgen.trade.labelling import LabelElements
from specgen.trade.precautions import Precautions

Verdict = Literal["missing", "surplus", "wrong"]
Part = Literal["signal word", "statement", "pictogram", "precaution"]

_ALLOTTED = cite("CLP", "Annex I, parts 2 to 4", Basis.REGULATION)


class DeclaredLabel(NamedTuple):
    """The label as the safety data sheet declares it: codes, and the signal word (`none` where it has none)."""

    signal_word: str
    statements: tuple[str, ...]
    pictograms: tuple[str, ...]
    precautions: tuple[str, ...]


class Difference(NamedTuple):
    """One code or word that does not agree."""

    part: Part
    verdict: Verdict
    code: str
    why: str
    source: Citation


def compare_label(declared: DeclaredLabel, derived: LabelElements, wanted: Precautions) -> tuple[Difference, ...]:
    """Every difference, signal word first. What may be left out or shown is no difference.

    A precaution is missing only where the package must carry it; it is surplus where no class assigned has it, except
    the general ones P101 to P103.
    """
    found: list[Difference] = []
    word = derived.signal_word
    if declared.signal_word != word.code:
        why = f"the most severe class requires {word.code}: {_grounds(word)}"
        found.append(Difference("signal word", "wrong", declared.signal_word, why, word.source))
    found += _codes("statement", declared.statements, derived.statements, derived)
    found += _codes("pictogram", declared.pictograms, derived.pictograms, derived)
    known = {element.code: element for element in wanted.every}
    for code in wanted.required:
        if code not in declared.precautions:
            element = known[code]
            found.append(Difference("precaution", "missing", code, _grounds(element), element.source))
    behind = {*known, *(element.code for element in wanted.redundant)}
    clause = table("precaution_rules").citation
    for code in declared.precautions:
        if code not in behind and not code.startswith("P10"):
            found.append(Difference("precaution", "surplus", code, "no assigned class carries it", clause))
    return tuple(found)


def _codes(
    part: Literal["statement", "pictogram"], declared: Sequence[str], wanted: Sequence[Element], derived: LabelElements
) -> Iterable[Difference]:
    allowed = {element.code for element in (*wanted, *derived.optional)}
    given_way = {element.code: element for element in derived.left_out}
    for element in wanted:
        if element.code not in declared:
            yield Difference(part, "missing", element.code, _grounds(element), element.source)
    for code in declared:
        if code in allowed:
            continue
        if code in given_way:
            yield Difference(part, "surplus", code, given_way[code].note, given_way[code].source)
        else:
            source, why = _excluded(code, derived)
            yield Difference(part, "surplus", code, why, source)


def _excluded(code: str, derived: LabelElements) -> tuple[Citation, str]:
    """A code that an aerosol never carries cites that; any other cites the tables that allot codes to classes."""
    on_aerosol = any(element.code == "H229" for element in derived.statements)
    rows = [row for row in table("aerosol_exclusions").rows if row["code"] == code]
    if on_aerosol and rows:
        return table("aerosol_exclusions").row_citation(rows[0]), "it does not belong on an aerosol"
    return _ALLOTTED, "no assigned class carries it"


def _grounds(element: Element) -> str:
    return "; ".join(element.reasons)
