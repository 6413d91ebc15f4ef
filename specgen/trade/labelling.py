"""Label elements that follow from a classification: statements, signal word and pictograms after precedence.

Nothing is classified here. Each element names the row it follows from, so that a rule can set the declared label beside
the derived one (`label_comparison`). Precautions are worked out in `precautions`, EUH statements in `supplemental`.
Called by the rules on hazards and by views.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.codes import firmest, parts
from specgen.trade.hazard_class import (
    Classification,
    Element,
    elements_of,
    severity_rank,
    source_of_cell,
    statements_of,
)
from specgen.trade.known import NotKnown
from specgen.units.locale import phrase

Package = Literal["aerosol", "liquid"]

_EXCLUSIONS = "aerosol_exclusions"
_PRECEDENCE = "pictogram_precedence"


class LabelElements(NamedTuple):
    """What the label carries, and what gives way to something else, each with its ground.

    `optional` may be left out or shown: to show it, or not, is no fault.
    """

    signal_word: Element
    statements: tuple[Element, ...]
    pictograms: tuple[Element, ...]
    left_out: tuple[Element, ...]
    optional: tuple[Element, ...]


class _Assigned(NamedTuple):
    found: Classification
    row: Row


@remembered
def label_elements(classifications: tuple[Classification, ...], package: Package) -> LabelElements | NotKnown:
    """Statements, signal word and pictograms of a package. Source: CLP Annex I parts 2 to 4, Articles 20, 26 and 27.

    NotKnown where a class and category is not in the table of label elements, or an aerosol has no aerosol category.
    """
    assigned, unknown = [], []
    for found in classifications:
        try:
            assigned.append(_Assigned(found, elements_of(found)))
        except KeyError:
            unknown.append(f"{found.hazard_class} {found.category}")
    if unknown:
        return NotKnown("label elements", "the table of label elements does not contain this class", tuple(unknown))
    if package == "aerosol" and not any(entry.found.hazard_class == "aerosols" for entry in assigned):
        return NotKnown("label elements", "an aerosol has its own category, and none is stated", ("aerosols",))
    left_out: list[Element] = []
    kept = _without_bulk_classes(assigned, left_out) if package == "aerosol" else assigned
    statements, optional = _statements(kept, package, left_out)
    pictograms = _pictograms(kept, {entry.code for entry in statements}, left_out, optional)
    return LabelElements(_signal_word(kept), statements, pictograms, tuple(left_out), tuple(optional))


def _without_bulk_classes(assigned: Sequence[_Assigned], left_out: list[Element]) -> list[_Assigned]:
    """An aerosol is not in addition a flammable gas, liquid or solid, nor a gas under pressure."""
    excluded = {row["code"]: row for row in table(_EXCLUSIONS).rows if row["effect"] == "surplus"}
    kept = []
    for entry in assigned:
        against = [code for code in parts(entry.row["statements"]) if code in excluded]
        for code in against:
            source = table(_EXCLUSIONS).row_citation(excluded[code])
            left_out.append(
                Element(code, (str(entry.found),), source, "an aerosol is not additionally classified for it")
            )
        if not against:
            kept.append(entry)
    return kept


def _statements(
    assigned: Sequence[_Assigned], package: Package, left_out: list[Element]
) -> tuple[tuple[Element, ...], list[Element]]:
    found: dict[str, Element] = {}
    for entry in assigned:
        for code in statements_of(entry.found, entry.row):
            reasons = (*(found[code].reasons if code in found else ()), str(entry.found))
            before = (found[code].source,) if code in found else ()
            # One confirmed class is enough for a statement, whatever else it follows from.
            source = firmest((*before, source_of_cell(entry.row, "statements", code)))
            found[code] = Element(code, reasons, source)
    optional = []
    for row in table(_EXCLUSIONS).rows if package == "aerosol" else ():
        if row["effect"] == "not needed" and row["code"] in found:
            gone = found.pop(row["code"])
            note = "not required on the label of an aerosol"
            optional.append(Element(gone.code, gone.reasons, table(_EXCLUSIONS).row_citation(row), note))
    for row in table("redundant_statements").rows:
        if row["present"] in found and row["omitted"] in found:
            gone = found.pop(row["omitted"])
            note = phrase("{code} makes it redundant", code=row["present"])
            left_out.append(Element(gone.code, gone.reasons, table("redundant_statements").row_citation(row), note))
    return tuple(found[code] for code in sorted(found)), optional


def _signal_word(assigned: Sequence[_Assigned]) -> Element:
    """The highest of all classes; `none` is never printed as words."""
    ranks = {row["word"]: int(row["rank"]) for row in table("signal_words").rows}
    word = max((entry.row["signal_word"] for entry in assigned), key=lambda name: ranks[name], default="none")
    behind = [entry for entry in assigned if entry.row["signal_word"] == word]
    grounds = [source_of_cell(entry.row, "signal_word") for entry in behind]
    source = firmest(grounds) if grounds else table("signal_words").citation
    return Element(word, tuple(str(entry.found) for entry in behind), source)


def _pictograms(
    assigned: Sequence[_Assigned], statements: set[str], left_out: list[Element], optional: list[Element]
) -> tuple[Element, ...]:
    shown: dict[str, list[_Assigned]] = {}
    for entry in _most_severe_of_each_class(assigned):
        for code in parts(entry.row["pictograms"]):
            # A class whose statements are all left out (H304 on an aerosol) brings no pictogram either.
            if any(code_h in statements for code_h in statements_of(entry.found, entry.row)):
                shown.setdefault(code, []).append(entry)
    present = dict(shown)
    for row in table(_PRECEDENCE).rows:
        if not row["present"] or not any(code in present for code in parts(row["present"])):
            continue
        if row["because_of"] and not _stands_for(present, parts(row["present"]), row["because_of"]):
            continue
        for code in parts(row["yields"]):
            _give_way(shown, code, row, left_out, optional)
    return tuple(_pictogram(code, shown[code]) for code in sorted(shown))


def _give_way(
    shown: dict[str, list[_Assigned]], code: str, row: Row, left_out: list[Element], optional: list[Element]
) -> None:
    """Takes from a pictogram the classes it no longer stands for; it goes where none is left."""
    if code not in shown:
        return
    only = set(parts(row["standing_for"]))
    rest = [entry for entry in shown[code] if only and not only & set(parts(entry.row["statements"]))]
    if rest:
        shown[code] = rest
        return
    gone = shown.pop(code)
    note = f"{row['effect']} beside {row['present'].replace(' ', ' or ')}"
    reasons = tuple(str(entry.found) for entry in gone)
    element = Element(code, reasons, table(_PRECEDENCE).row_citation(row), note)
    (optional if row["effect"] == "optional" else left_out).append(element)


def _stands_for(present: dict[str, list[_Assigned]], codes: Sequence[str], statement: str) -> bool:
    entries = [entry for code in codes for entry in present.get(code, [])]
    return any(statement in parts(entry.row["statements"]) for entry in entries)


def _most_severe_of_each_class(assigned: Sequence[_Assigned]) -> list[_Assigned]:
    """Several categories of one class show only the pictogram of the most severe, Article 26(2)."""
    kept = []
    for entry in assigned:
        rivals = [other for other in assigned if other.found.hazard_class == entry.found.hazard_class]
        if severity_rank(entry.found) == min(severity_rank(other.found) for other in rivals):
            kept.append(entry)
    return kept


def _pictogram(code: str, entries: Sequence[_Assigned]) -> Element:
    grounds = [source_of_cell(entry.row, "pictograms", code) for entry in entries]
    return Element(code, tuple(str(entry.found) for entry in entries), firmest(grounds))
