"""The calculations of a document where its author wants them: at its end, in a file of their own, or nowhere.

Called by the views of the documents whose calculations may stand apart; `calculations.html.j2` prints such a file.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.annex import WorkingView
from specgen.model.control import Calculations
from specgen.model.file_names import file_stem

Listed = tuple[WorkingView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Apart:
    """The calculations of one document as a document of their own; `of` is the file they belong to, without its ending."""

    number: str
    title: str
    of: str
    on: str
    workings: Listed
    program: str

    @property
    def file(self) -> str:
        """Its own file, without the ending."""
        return f"{self.of}-calculations"


def placed(
    place: Calculations, listed: Listed, kind: str, number: str, title: str, context: Context
) -> tuple[Listed, Apart | None]:
    """The calculations to print in the document itself, and those to print apart; `title` is the title of the latter."""
    match place:
        case Calculations.ANNEX:
            return listed, None
        case Calculations.APART if listed:
            return (), Apart(
                number=number,
                title=title,
                of=f"{file_stem(number)}-{kind}",
                on=context.day.isoformat(),
                workings=listed,
                program=context.program,
            )
        case _:
            return (), None
