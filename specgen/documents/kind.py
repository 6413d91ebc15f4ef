"""A kind of document as data. Each folder of documents declares its own as `KIND`; `specgen.printing` prints any of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, Literal, Protocol, TypeVar

from specgen.documents.context import Context
from specgen.documents.parts.apart import Apart
from specgen.documents.parts.tables import TableView
from specgen.model.spec import Spec

About = Literal["job", "product", "folder", "jobs", "offer", "bid", "report", "comparison", "assessment", "records"]
"""What a document is about: its subject is a Job, a Product, the Spec (twice), an Offer, a Bid (a job with one offer for it, or none), a
LabReport, two sides compared, readings assessed, or the
records that release a job or do not."""


class View(Protocol):
    """What every view has: the number of its document, and its title."""

    @property
    def number(self) -> str: ...
    @property
    def title(self) -> str: ...


def _always(_subject: object, _spec: Spec) -> bool:
    return True


Subject = TypeVar("Subject")
AnyView = TypeVar("AnyView", bound=View)


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind(Generic[Subject, AnyView]):
    """`name` as on the command line; `place` its place in every list. Formats are pdf, html and csv.

    `sheet` are its rows for a spreadsheet, where it comes as csv; `apart` are its calculations where they stand in a file of
    their own. `applies` says of which subjects it is printed, with the specification they stand in; `called` what one is called
    by its view, where that is not always its name. A document that is `issued` goes out under the number of its
    job or product; the others are drawn up anew when they are wanted. A `record` says what was done or found: it instructs nobody, so
    no page of it warns of a draft. `fields` makes a form of its PDF: names and texts of the fields nobody fills; a form is drawn by
    its viewer, so that it is the one PDF that is no archival one. `halves` divides a view that is too much for one file, in none where it
    cannot be divided.
    """

    name: str
    place: int
    about: About
    formats: tuple[str, ...]
    view: Callable[[Subject, Context], AnyView]
    sheet: Callable[[AnyView], TableView] | None = None
    apart: Callable[[AnyView], Apart | None] | None = None
    applies: Callable[[Subject, Spec], bool] = _always
    called: Callable[[AnyView], str] | None = None
    issued: bool = False
    record: bool = False
    fields: Callable[[AnyView], Mapping[str, str]] | None = None
    halves: Callable[[AnyView], Sequence[AnyView]] | None = None

    @property
    def title(self) -> str:
        """`method statement`."""
        return self.name.replace("-", " ")

    @property
    def template(self) -> str:
        """The name of its template below the templates folder."""
        return f"{self.name.replace('-', '_')}/document.html.j2"
