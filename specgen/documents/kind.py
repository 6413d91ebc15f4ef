"""A kind of document as data. Each folder of documents declares its own as `KIND`; `specgen.printing` prints any of them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Generic, Literal, Protocol, TypeVar

from specgen.documents.context import Context
from specgen.documents.parts.tables import TableView
from specgen.model.spec import Spec

About = Literal["job", "product", "folder", "jobs", "comparison"]
"""What a document is about: its subject is a Job, a Product, the Spec (twice), or two sides compared."""


class View(Protocol):
    """What every view has: the number of its document, and its title."""

    @property
    def number(self) -> str: ...
    @property
    def title(self) -> str: ...


Subject = TypeVar("Subject")
AnyView = TypeVar("AnyView", bound=View)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sides(Generic[Subject, AnyView]):
    """How a document whose parts stand on one side of paper each is cut until they do.

    `cuts` are what is given up, mildest first; `count` how many parts are cut by themselves. `view` takes a cut for each,
    None leaves a part out; for a trial, of sides that differ by a name only, the one that takes most room is enough.
    `pages` are those a view may take; `too_much` ends the sentence that it does not fit, from a trial with the last cut.
    """

    cuts: tuple[Any, ...]
    count: Callable[[Subject, Spec], int]
    view: Callable[[Subject, Context, Sequence[Any], bool], AnyView]
    pages: Callable[[AnyView], int]
    too_much: Callable[[AnyView], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind(Generic[Subject, AnyView]):
    """`name` as on the command line; `place` its place in every list. Formats are pdf, html and csv.

    `view` is the document uncut; `sheet` its rows for a spreadsheet, where it comes as csv. A document that is `issued` goes
    out under the number of its job or product; the others are drawn up anew when they are wanted. What is kept of a
    `form` is the sheet with its entries, so its file need not last.
    """

    name: str
    place: int
    about: About
    formats: tuple[str, ...]
    view: Callable[[Subject, Context], AnyView]
    sides: Sides[Subject, AnyView] | None = None
    sheet: Callable[[AnyView], TableView] | None = None
    issued: bool = False
    form: bool = False

    @property
    def title(self) -> str:
        """`method statement`."""
        return self.name.replace("-", " ")

    @property
    def template(self) -> str:
        """The name of its template below the templates folder."""
        return f"{self.name.replace('-', '_')}/document.html.j2"
