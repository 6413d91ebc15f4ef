"""Precautionary statements that belong to a classification, and which six of them go on the label.

The safety part of a document names all of them; the limit of six is one of the label. Which ones come first is policy
of this project beyond what an aerosol or goods for the general public must carry, and a competent person may choose
otherwise. Called by the rules on hazards and by views.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import table
from specgen.trade.codes import firmest, parts
from specgen.trade.hazard_class import Classification, Element, elements_of, source_of_cell
from specgen.trade.labelling import Package
from specgen.units.locale import listed, phrase

_KINDS = ("prevention", "response", "storage", "disposal")
# Ranks 1 and 2 of the table precaution_priority are not a choice.
_REQUIRED_RANKS = 2
_BULK = ("flammable_liquids", "flammable_gases", "gases_under_pressure")


class Precautions(NamedTuple):
    """Every precaution in order of its code, those of the label in order of rank, and the rest with the reason.

    `required` are those of which a missing one is a fault by itself; `more_than_six` says why the label may need more.
    """

    every: tuple[Element, ...]
    on_label: tuple[Element, ...]
    beyond: tuple[Element, ...]
    redundant: tuple[Element, ...]
    required: tuple[str, ...]
    more_than_six: str = ""


@remembered
def precautions(classifications: tuple[Classification, ...], package: Package, *, public: bool) -> Precautions:
    """The precautions of a package; `public` where it is supplied to the general public.

    Source: CLP Annex I parts 2 to 4, Article 28. Raises KeyError for a class that the table of label elements does not
    hold: ask `labelling.label_elements` first.
    """
    found: dict[str, Element] = {}
    for entry in classifications:
        if package == "aerosol" and entry.hazard_class in _BULK:
            continue
        row = elements_of(entry)
        for kind in _KINDS:
            for code in parts(row[kind]):
                _add(found, code, str(entry), source_of_cell(row, kind, code))
    required = [code for code in found if package == "aerosol" and code in _first_rank()]
    for code, reason, source in _for_the_public(package) if public else ():
        _add(found, code, reason, source)
        required.append(code)
    redundant = _take_redundant(found)
    ordered = sorted(found.values(), key=lambda element: (_rank(element.code, required), element.code))
    # What must stand there does, even where that alone is more than six.
    most = max(int(table("precaution_rules").row("id", "most")["value"]), len(set(required)))
    beyond = tuple(
        Element(
            element.code,
            element.reasons,
            element.source,
            phrase("rank {rank}", rank=str(_rank(element.code, required))),
        )
        for element in ordered[most:]
    )
    every = tuple(sorted(found.values(), key=lambda element: element.code))
    why = _why_more(classifications) if beyond else ""
    return Precautions(every, tuple(ordered[:most]), beyond, redundant, tuple(sorted(set(required))), why)


def _add(found: dict[str, Element], code: str, reason: str, source: Citation) -> None:
    """One confirmed ground is enough for a statement, whatever else it follows from."""
    before = found.get(code)
    grounds = (source,) if before is None else (before.source, source)
    reasons = (reason,) if before is None else (*before.reasons, reason)
    found[code] = Element(code, reasons, firmest(grounds))


def _take_redundant(found: dict[str, Element]) -> tuple[Element, ...]:
    """Takes out what another statement already says: the weaker of a pair, and the parts of a combination."""
    pairs = [(row["omitted"], row["present"]) for row in table("redundant_precautions").rows]
    gone = [(code, present) for code, present in pairs if code in found and present in found]
    for whole in found:
        pieces = whole.split("+")
        gone += [(piece, whole) for piece in pieces if len(pieces) > 1 and piece in found]
    source = table("redundant_precautions").citation
    taken = []
    for code, present in dict(gone).items():
        taken.append(Element(code, found.pop(code).reasons, source, phrase("{code} makes it redundant", code=present)))
    return tuple(taken)


def _for_the_public(package: Package) -> list[tuple[str, str, Citation]]:
    rules = table("precaution_rules")
    disposal = rules.row("id", "disposal")
    wanted = [(code, disposal["when"], rules.row_citation(disposal)) for code in parts(disposal["codes"])]
    if package == "aerosol":
        consumer = table("aerosol_marks").row("id", "consumer")
        wanted += [
            (code, consumer["when"], table("aerosol_marks").row_citation(consumer)) for code in parts(consumer["what"])
        ]
    return wanted


def _first_rank() -> tuple[str, ...]:
    return parts(table("precaution_priority").row("rank", "1")["codes"])


def _rank(code: str, required: Sequence[str]) -> int:
    """The first rank that names the code; the ranks of what must stand there hold only where it must."""
    rows = table("precaution_priority").rows
    ranks = [int(row["rank"]) for row in rows if code in parts(row["codes"])]
    usable = [rank for rank in ranks if rank > _REQUIRED_RANKS or code in required]
    return min(usable, default=len(rows) + 1)


def _why_more(classifications: Sequence[Classification]) -> str:
    severe = [str(found) for found in classifications if _is_danger_to_health(found)]
    rule = table("precaution_rules").row("id", "most")["when"]
    found = listed("{first}; {more}", severe)
    return phrase("{rule}: {found}", rule=phrase(rule), found=found) if severe else ""


def _is_danger_to_health(found: Classification) -> bool:
    kind = table("hazard_classes").row("id", found.hazard_class)["kind"]
    return kind == "health" and elements_of(found)["signal_word"] == "Danger"
