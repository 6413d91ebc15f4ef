"""The author's pictures as printed: number, caption, marks, and where the text refers to them.

Called by the method statement, and by the job card for the sketches on which something is marked to be inspected.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.parts.wording import Words
from specgen.facts.job.pictures import Placed, marks_of, pictures_of
from specgen.model.acceptance import InspectionPoint
from specgen.model.figure import Figure
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation, PreparationStep
from specgen.model.spec import Spec
from specgen.pictures.prepared import Prepared

# of the 178 mm of type; two pictures side by side would each be too small to be worked by
_WIDEST_MM, _HIGHEST_MM = 120, 75


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkView:
    """Letter and place, in hundredths of width and height."""

    letter: str
    left: str
    top: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureView:
    """`address` is what the page names it by; `legend` says of each mark what is inspected there."""

    number: str
    caption: str
    belongs: str
    alternative: str
    address: str
    width: str
    marks: tuple[MarkView, ...]
    legend: tuple[str, ...]


def pictures(job: Job, spec: Spec, words: Words) -> tuple[PictureView, ...]:
    return tuple(_view(placed, job, spec, words) for placed in pictures_of(job, spec))


def marked_pictures(points: Sequence[InspectionPoint], job: Job, spec: Spec, words: Words) -> tuple[PictureView, ...]:
    """Those on which one of `points` has its marks."""
    there = marks_of(job, spec)
    needed = {placed.number for point in points for name in point.marked for placed, _ in there.get(name, ())}
    return tuple(_view(placed, job, spec, words) for placed in pictures_of(job, spec) if placed.number in needed)


def picture_of(figure: Figure, number: int, spec: Spec, words: Words) -> PictureView:
    """A picture that belongs to nothing inspected, under its number."""
    picture = spec.pictures.get(figure.file)
    return PictureView(
        number=words("Figure {}").format(number),
        caption=figure.caption,
        belongs="",
        alternative=figure.alternative_text,
        address=picture.address if picture is not None else "",
        width=_width(picture),
        marks=_marks(figure),
        legend=(),
    )


def see(
    owner: Item | PreparationStep | InspectionPoint,
    job: Job,
    spec: Spec,
    words: Words,
    within: Preparation | None = None,
) -> str:
    """`see figure 2`; empty where nothing is drawn for it."""
    if not owner.figures:
        return ""
    shown = [one.number for one in pictures_of(job, spec) if one.owner is owner and one.preparation is within]
    return ", ".join(words("see figure {}").format(number) for number in shown)


def marked(point: InspectionPoint, job: Job, spec: Spec, words: Words) -> str:
    """`marked A, B on figure 2`; of three letters or more in a row the first and the last."""
    if not point.marked:
        return ""
    there = marks_of(job, spec)
    letters: dict[int, list[str]] = {}
    for name in point.marked:
        for placed, mark in there.get(name, ()):
            letters.setdefault(placed.number, []).append(mark.letter)
    text = words("marked {letters} on figure {number}")
    return "; ".join(text.format(letters=_run(held, words), number=number) for number, held in letters.items())


def _view(placed: Placed, job: Job, spec: Spec, words: Words) -> PictureView:
    figure, picture = placed.figure, spec.pictures.get(placed.figure.file)
    return PictureView(
        number=words("Figure {}").format(placed.number),
        caption=figure.caption,
        belongs=_belongs(placed, job, words),
        alternative=figure.alternative_text,
        address=picture.address if picture is not None else "",
        width=_width(picture),
        marks=_marks(figure),
        legend=tuple(_legend(figure, job.inspection, words)),
    )


def _width(picture: Prepared | None) -> str:
    shape = picture.width / picture.height if picture is not None else 1
    return f"{min(_WIDEST_MM, _HIGHEST_MM * shape):.1f}mm"


def _marks(figure: Figure) -> tuple[MarkView, ...]:
    return tuple(
        MarkView(letter=mark.letter, left=f"{float(mark.x * 100):.1f}%", top=f"{float(mark.y * 100):.1f}%")
        for mark in figure.marks
    )


def _belongs(placed: Placed, job: Job, words: Words) -> str:
    owner = placed.owner
    if isinstance(owner, Item):
        return words("item {}").format(owner.id)
    if isinstance(owner, PreparationStep):
        title = placed.preparation.title if placed.preparation is not None else ""
        return words("{preparation}: {step}").format(preparation=title, step=words.word(owner.do))
    if isinstance(owner, InspectionPoint):
        return words("inspection {}").format(_number(owner, job.inspection))
    return ""


def _legend(figure: Figure, points: Sequence[InspectionPoint], words: Words) -> Iterator[str]:
    """Marks that are inspected alike are named together."""
    alike: dict[str, list[str]] = {}
    for mark in figure.marks:
        here = [point for point in points if f"{figure.id}/{mark.id}" in point.marked]
        if here:
            alike.setdefault(", ".join(str(_number(point, points)) for point in here), []).append(mark.letter)
    text = words("{letters}: inspection {numbers}")
    yield from (text.format(letters=_run(letters, words), numbers=numbers) for numbers, letters in alike.items())


def _run(letters: Sequence[str], words: Words) -> str:
    """`A, B`, `A to E`: one letter after the other, as the alphabet has them."""
    numbers = [ord(letter) if len(letter) == 1 else 0 for letter in letters]
    in_a_row = numbers == list(range(numbers[0], numbers[0] + len(numbers)))
    if len(letters) > 2 and in_a_row:
        return words("{first} to {last}").format(first=letters[0], last=letters[-1])
    return ", ".join(letters)


def _number(point: InspectionPoint, points: Sequence[InspectionPoint]) -> int:
    return next(number for number, one in enumerate(points, 1) if one is point)
