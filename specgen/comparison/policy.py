"""House rules of the comparison that the model does not say by itself: which lists have an order, which entries ask for nothing.

Called by `differences` and `effects`. A test holds that every name here is one of the model.
"""

from __future__ import annotations

from functools import cache

from specgen.model.acceptance import InspectionPoint
from specgen.model.concession import EASED
from specgen.model.contract_document import ClauseAnswer, ClauseLimit, ContractDocument, MadeTo
from specgen.model.declaring import Polarity
from specgen.model.drying import OvercoatWindow
from specgen.model.job import Item, Job, MaskedArea
from specgen.model.node import Node
from specgen.model.offer import Offer, OfferedCoat, OfferedTest
from specgen.model.preparation import Preparation
from specgen.model.product import Product, Variant
from specgen.model.project import Holder
from specgen.model.requirement import Alternative
from specgen.model.system import System
from specgen.model.test_report import LabReport
from specgen.model.walk import declaration, models
from specgen.units.locale import N_

# Lists whose order says something; every other list may be sorted as its author likes.
ORDERED: frozenset[tuple[type[Node], str]] = frozenset(
    {(System, "layers"), (Preparation, "steps"), (Item, "old_coats"), (Job, "inspection")}
)

# What stands on the shelf binds nobody until something refers to it, and that reference is judged.
ON_THE_SHELF: frozenset[type[Node]] = frozenset({ContractDocument, LabReport, Product, Preparation, System, Variant})

# An entry of these asks for something and gives something up at once, so a person decides.
CUTS_BOTH_WAYS: dict[type[Node], str] = {
    MaskedArea: N_("what is masked is protected from paint and left uncoated"),
    ClauseAnswer: N_("an answer says how a clause is met, or that it does not apply"),
    OvercoatWindow: N_("an overcoating interval permits a coat on top, and limits when"),
}

# An entry of these lets something in that was not accepted before.
GRANTED: frozenset[type[Node]] = frozenset({Alternative})

# What these state is accepted from the moment it is stated, and no more once it is gone: the limit that is not eased is the job's.
EASES: frozenset[type[Node]] = frozenset(EASED)

# An offer and its entries answer what is asked for; they ask for nothing.
ANSWERS: frozenset[type[Node]] = frozenset({Offer, OfferedCoat, OfferedTest})

# A value of the item that is left out is the job's.
INHERITED: frozenset[tuple[type[Node], str]] = frozenset({(Item, "system"), (Item, "preparation"), (Item, "exposure")})

# A part of the item that is left out is the job's, one that is there goes before all of the job's.
INHERITED_PARTS: frozenset[tuple[type[Node], str]] = frozenset({(Item, "substrate"), (Item, "environment")})

# A list that is left out names all there are.
ALL_WHERE_LEFT_OUT: frozenset[tuple[type[Node], str]] = frozenset(
    {(InspectionPoint, "items"), (Holder, "documents"), (ClauseLimit, "materials"), (MadeTo, "items")}
)

# The word that takes in every other of its list.
WHOLE = "any"

_ASKS_NOTHING = {Polarity.FACT, Polarity.NOTE, Polarity.WORDING, Polarity.SCOPE}


@cache
def polarity_of_entry(model: type[Node]) -> Polarity:
    """How an entry that comes or goes is judged: by what its leaves ask for, taken together.

    WAIVER for a waiver, PERMISSION for what is accepted instead, FACT where nothing in it is a requirement, NOTE where it explains
    only, else SCOPE: a job is scope though it may hold waivers.
    """
    if any(
        (said := declaration(model, name)) is not None and said.polarity is Polarity.WAIVER
        for name in model.model_fields
    ):
        return Polarity.WAIVER
    senses = {
        said.polarity
        for record in models(model)
        for name in record.model_fields
        if name != "id" and (said := declaration(record, name)) is not None
    }
    if model in GRANTED:
        return Polarity.PERMISSION
    if model in ON_THE_SHELF | ANSWERS:
        return Polarity.FACT
    if senses <= {Polarity.NOTE, Polarity.WORDING}:
        return Polarity.NOTE
    return Polarity.FACT if senses <= _ASKS_NOTHING else Polarity.SCOPE
