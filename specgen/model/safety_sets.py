"""Protection, first aid and cautions that several products share: stated once, named by each. Called by `based_on`.

Nothing is carried over silently: a product has the entries of the sets it names, beside its own, of which one with the same id
goes before that of a set.
"""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import Id
from specgen.model.hazards import Caution, FirstAid, Protection
from specgen.model.node import Node

# the block at the top of a file, and the key of the hazards that names entries of it
SETS = "safety_sets"


class SafetySet(Node):
    """What products name under `hazards: safety_sets`."""

    id: Id = leaf(Polarity.SCOPE, Concern.SAFETY, "id of the set", required=True)
    protection: tuple[Protection, ...] = entries("personal protective equipment by task")
    first_aid: tuple[FirstAid, ...] = entries("first aid")
    cautions: tuple[Caution, ...] = entries("further cautions of the manufacturer")
