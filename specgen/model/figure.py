"""A picture or sketch of the author, with what it shows in words, and the marks on it that inspection points refer to."""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import Id, Line, MarkLetter, PictureFile, Position
from specgen.model.node import Node


class Mark(Node):
    """A letter at a place of the picture."""

    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the mark", required=True)
    letter: MarkLetter = leaf(Polarity.EXACTLY, Concern.ACCEPTANCE, "letter of the mark, as in A", required=True)
    x: Position = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "place of the mark from left 0 to right 1, as in 0.25", required=True
    )
    y: Position = leaf(
        Polarity.EXACTLY, Concern.ACCEPTANCE, "place of the mark from top 0 to bottom 1, as in 0.6", required=True
    )


class Figure(Node):
    """One picture; it is numbered in print."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the figure", required=True)
    file: PictureFile = leaf(
        Polarity.REQUIREMENT_TEXT,
        Concern.DOCUMENT,
        "picture, a PNG, JPEG or SVG file of the folder, as in pictures/door.svg",
        required=True,
    )
    caption: Line = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "caption printed below the picture", required=True
    )
    alternative_text: Line = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "alternative text for those who cannot see the picture", required=True
    )
    marks: tuple[Mark, ...] = entries("marks on the picture, to which inspection points refer")
