"""Document control in the sources: number, title, owner, reason for change.

Revision, approvals and status are not written here; they live in the register alone.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import PATH, Concern, Polarity, leaf
from specgen.model.field_types import Code, Id, IsoDate, Line, Text, choice
from specgen.model.node import Node


class Section(StrEnum):
    """A section an author may leave out. Safety, hold points, waivers and document control are none of them."""

    REPAIR = "repair"
    DEFECTS = "defects"
    MATERIALS = "materials"
    DRAWINGS = "drawings"
    COVERAGE = "coverage"
    CLAIMS = "claims"


class Calculations(StrEnum):
    """Where the calculations of a document stand: at its end, in a file of their own, or nowhere."""

    ANNEX = "annex"
    APART = "apart"
    NONE = "none"


class ExtraSection(StrEnum):
    """A section that is printed only where its author asks for it."""

    GENERIC_OVERCOATING = "generic-overcoating"


class DocumentControl(Node):
    """The title block of a document."""

    number: Code = leaf(Polarity.WORDING, Concern.DOCUMENT, "document number", required=True)
    title: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "title as printed", required=True)
    owner: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "owner of the document", required=True)
    prepared_by: Line | None = leaf(Polarity.WORDING, Concern.DOCUMENT, "author of the document; the owner if left out")
    reason_for_change: Text | None = leaf(Polarity.NOTE, Concern.DOCUMENT, "reason for change")
    leave_out: tuple[Annotated[Section, choice(Section)], ...] = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "sections left out: repair, defects, materials or drawings of a method statement, coverage or claims of a data sheet",
        default=(),
    )
    calculations: Annotated[Calculations, choice(Calculations)] | None = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "place of the calculations: annex of the document, apart in a file of their own, or none; as the project says if left out",
    )
    add: tuple[Annotated[ExtraSection, choice(ExtraSection)], ...] = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "sections added on request: generic-overcoating, the published tables by generic type in a data sheet",
        default=(),
    )


class Contact(Node):
    """Someone to call."""

    name: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "person or desk", required=True, administrative=True)
    phone: Line | None = leaf(Polarity.WORDING, Concern.DOCUMENT, "telephone number", administrative=True)
    email: Line | None = leaf(Polarity.WORDING, Concern.DOCUMENT, "e-mail address", administrative=True)
    hours: Line | None = leaf(Polarity.WORDING, Concern.DOCUMENT, "opening hours", administrative=True)


class OnCall(Contact):
    """Who to call during the work, and so when somebody is hurt."""

    phone: Line | None = leaf(Polarity.EXACTLY, Concern.SAFETY, "telephone number")


class Waiver(Node):
    """A finding that a named person takes on, for a reason, until a day."""

    id: Id = leaf(Polarity.WORDING, Concern.DOCUMENT, "id of the waiver", required=True)
    rule: Code = leaf(Polarity.WAIVER, Concern.DOCUMENT, "rule waived, as in FLM002", required=True)
    path: Line = leaf(
        Polarity.WAIVER,
        Concern.DOCUMENT,
        "place of the deviation (its address, as a finding prints it)",
        required=True,
        refers=PATH,
    )
    reason: Text = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "reason for accepting the deviation", required=True
    )
    by: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "person who accepts the deviation", required=True)
    until: IsoDate = leaf(Polarity.WAIVER, Concern.DOCUMENT, "last day of validity", required=True)
