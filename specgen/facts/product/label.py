"""Which of its declared precautions a label has room for. Called by the label sheet."""

from __future__ import annotations

from specgen.facts.product.hazards import DerivedHazards
from specgen.model.hazards import Hazards
from specgen.standards.tables import table
from specgen.trade.precautions import Precautions


def on_label(declared: Hazards, derived: DerivedHazards) -> tuple[str, ...]:
    """The declared precautions that the label has room for, by rank; all of them where that cannot be judged.

    At most as many as the table of rules for precautions says, more only where the law asks for more.
    """
    found = derived.precautions
    if not isinstance(found, Precautions):
        return declared.precautions
    ranked = [entry.code for entry in (*found.on_label, *found.beyond) if entry.code in declared.precautions]
    most = max(int(table("precaution_rules").row("id", "most")["value"]), len(found.required))
    return tuple(dict.fromkeys((*ranked, *declared.precautions)))[:most]
