"""What a product can do to people, as its safety data sheet declares it. The data sheet stays the authority."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.field_types import Code, Id, IsoDate, Line, Temperature, Text, choice
from specgen.model.node import Node
from specgen.model.senses import Concern, Sense, entries, leaf, part


class SignalWord(StrEnum):
    DANGER = "Danger"
    WARNING = "Warning"
    NONE = "none"


class Task(StrEnum):
    """What the person is doing when the protection is needed."""

    PREPARING = "preparing"
    SANDING = "sanding"
    MIXING = "mixing"
    SPRAYING = "spraying"
    CLEARING_UP = "clearing-up"
    ANY = "any"


class Route(StrEnum):
    INHALED = "inhaled"
    SKIN = "skin"
    EYES = "eyes"
    SWALLOWED = "swallowed"


class SafetyDataSheet(Node):
    """Where the current safety data sheet is."""

    number: Code = leaf(Sense.EXACTLY, Concern.SAFETY, "number of the sheet", required=True)
    revision: Code | None = leaf(Sense.EXACTLY, Concern.SAFETY, "revision of the sheet")
    date: IsoDate | None = leaf(Sense.EXACTLY, Concern.SAFETY, "date of the sheet")
    obtain: Line | None = leaf(Sense.WORDING, Concern.SAFETY, "where the current sheet is to be had")


class Protection(Node):
    """Protective equipment for one task."""

    id: Id = leaf(Sense.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    task: Annotated[Task, choice(Task)] = leaf(Sense.SCOPE, Concern.SAFETY, "task it is for", required=True)
    respiratory: Line | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "breathing protection, type and standard")
    gloves: Line | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "gloves, material and standard")
    eyes: Line | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "eye protection")
    skin: Line | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "clothing")


class FirstAid(Node):
    """First aid in a line."""

    id: Id = leaf(Sense.SCOPE, Concern.SAFETY, "id of the entry", required=True)
    route: Annotated[Route, choice(Route)] = leaf(Sense.SCOPE, Concern.SAFETY, "how it got there", required=True)
    act: Line = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "what to do", required=True)


class Caution(Node):
    """A caution in the maker's words."""

    id: Id = leaf(Sense.SCOPE, Concern.SAFETY, "id of the caution", required=True)
    task: Annotated[Task, choice(Task)] = leaf(Sense.SCOPE, Concern.SAFETY, "task at which it bites", required=True)
    text: Text = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "the caution", required=True)


class Hazards(Node):
    """Declared classification, label elements and protection."""

    signal_word: Annotated[SignalWord, choice(SignalWord)] | None = leaf(
        Sense.EXACTLY, Concern.SAFETY, "Danger, Warning, or none"
    )
    statements: tuple[Code, ...] = leaf(Sense.ALL_OF, Concern.SAFETY, "H statements, as in H222", default=())
    supplemental: tuple[Code, ...] = leaf(Sense.ALL_OF, Concern.SAFETY, "EUH statements", default=())
    precautions: tuple[Code, ...] = leaf(Sense.ALL_OF, Concern.SAFETY, "P statements, as in P210", default=())
    pictograms: tuple[Code, ...] = leaf(Sense.ALL_OF, Concern.SAFETY, "pictograms, as in GHS02", default=())
    safety_data_sheet: SafetyDataSheet | None = part("the current safety data sheet")
    protection: tuple[Protection, ...] = entries("protective equipment by task")
    ventilation: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "air at the work")
    first_aid: tuple[FirstAid, ...] = entries("first aid")
    cautions: tuple[Caution, ...] = entries("further cautions of the maker")
    storage_max: Temperature | None = leaf(Sense.AT_MOST, Concern.SAFETY, "warmest storage")
    disposal: Text | None = leaf(Sense.REQUIREMENT_TEXT, Concern.SAFETY, "what becomes of cans, rags and rests")
