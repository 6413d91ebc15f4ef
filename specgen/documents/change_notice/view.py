"""The change notice: what became weaker on its first page, then old and new side by side. Called by `specgen.printing`.

The template `change_notice/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.comparison.changes import Change, Comparison, Effect
from specgen.comparison.sentences import reach_text, sentence
from specgen.documents.change_notice.annex import Annex, annex_of
from specgen.documents.change_notice.rows import ChangeRow, change_row
from specgen.documents.change_notice.tables import CONCERNS, approvals, counts
from specgen.documents.context import Context
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.wording import Words
from specgen.model.declaring import Concern
from specgen.model.project import Project
from specgen.units.locale import N_

LINES = 8
"""So many sentences the first page holds; what is left is named by its numbers."""
MOST_ROWS = 300

_GROUPS = (
    (N_("Relaxed"), N_("More is accepted than before, or less is required.")),
    (
        N_("For decision"),
        N_("The values do not show which version is stricter. A person must read both and decide."),
    ),
    (N_("Tightened"), N_("Less is accepted than before, or more is required.")),
    (
        N_("Data"),
        N_(
            "No requirement has changed here. The effect of these data is assessed under the requirements that "
            "depend on them."
        ),
    ),
    (N_("Editorial"), N_("No requirement has changed.")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class WeakerLine:
    """One thing that became weaker: its number in the tables, its concern, its sentence, and the jobs it reaches."""

    number: str
    concern: str
    is_safety: bool
    text: str
    reach: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeGroup:
    heading: str
    lead: str
    rows: tuple[ChangeRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeNotice:
    """The whole document. `makers` warns that it holds data of the maker's, and is empty in a customer's copy."""

    number: str
    title: str
    maker: PartyView
    customer: PartyView
    on: str
    old_name: str
    new_name: str
    makers: str
    unread: str
    refused: str
    answer: str
    weaker: tuple[WeakerLine, ...]
    rest: str
    waiting: str
    counts: TableView
    groups: tuple[ChangeGroup, ...]
    rows_left_out: str
    annex: Annex
    approvals: TableView
    approvals_needed: str
    program: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What a notice is about: the changes its reader may see, all of them with `for_maker`, and what both sides are called.

    The notice has `number`, that of the project where it is empty. The specification of its context is the new side.
    """

    found: Comparison
    old_name: str
    new_name: str
    number: str = ""
    for_maker: bool = False


def change_notice(compared: Compared, context: Context) -> ChangeNotice:
    """The view of a comparison as its reader may see it."""
    found, project, words = compared.found, context.spec.project, context.words
    numbered = [(str(at), change) for at, change in enumerate(found.changes, start=1)]
    weaker = [(number, change) for number, change in numbered if change.weighed is Effect.RELAXED]
    return ChangeNotice(
        number=compared.number or f"CN-{project.id}",
        title=words("What has changed, and what has been relaxed"),
        maker=party(project.maker),
        customer=party(project.customer),
        on=context.day.isoformat(),
        old_name=compared.old_name,
        new_name=compared.new_name,
        makers=words("MANUFACTURER'S COPY: contains confidential data. Not for customers.")
        if compared.for_maker
        else "",
        unread=_unread(found, words),
        refused=_refused(found, words),
        answer=_answer([change for _, change in weaker], found, words),
        weaker=tuple(_line(number, change, words) for number, change in weaker[:LINES]),
        rest=_rest([number for number, _ in weaker[LINES:]], words),
        waiting=_waiting([number for number, change in numbered if change.is_open], words),
        counts=counts(found.changes, words),
        groups=tuple(_groups(numbered[:MOST_ROWS], words, for_maker=compared.for_maker)),
        rows_left_out=_left_out(len(numbered) - MOST_ROWS, words),
        annex=annex_of(found, words, for_maker=compared.for_maker),
        approvals=approvals(project, words),
        approvals_needed=_needed(project, words),
        program=context.program,
    )


def _unread(found: Comparison, words: Words) -> str:
    """What could not be read or compared, which goes before any answer; empty where all could be."""
    said = []
    if found.unread_files:
        said.append(
            words.plural(
                "One source file could not be read; its contents are unknown.",
                "{number} source files could not be read; their contents are unknown.",
                len(found.unread_files),
            )
        )
    if found.not_compared:
        said.append(
            words.plural(
                "One entry could not be compared: it contains errors in one version, or may be in a file that could "
                "not be read.",
                "{number} entries could not be compared: they contain errors in one version, or may be in a file "
                "that could not be read.",
                len(found.not_compared),
            )
        )
    return " ".join(said)


def _refused(found: Comparison, words: Words) -> str:
    """What the rules newly refuse, which goes before any answer too; empty where there is none."""
    number = len(found.new_errors)
    if not number:
        return ""
    return words.plural(
        "The new version has one error that the old version did not have: see the findings.",
        "The new version has {number} errors that the old version did not have: see the findings.",
        number,
    )


def _answer(weaker: Sequence[Change], found: Comparison, words: Words) -> str:
    if not weaker and not found.is_whole:
        return words("No requirement has been relaxed in the part that could be compared.")
    if not weaker:
        return words("No requirement has been relaxed, as far as the values show.")
    safety = sum(change.concern is Concern.SAFETY for change in weaker)
    if len(weaker) == 1 and safety:
        return words("One requirement has been relaxed; it is a safety requirement.")
    if not safety:
        return words.plural(
            "One requirement has been relaxed; it is not a safety requirement.",
            "{number} requirements have been relaxed; none of them is a safety requirement.",
            len(weaker),
        )
    # Two numbers in one sentence: the form follows the number it ends on.
    return words.translate.plural(
        "{number} requirements have been relaxed; {safety} of them are safety requirements.",
        "{number} requirements have been relaxed; {safety} of them are safety requirements.",
        safety,
    ).format(number=len(weaker), safety=safety)


def _line(number: str, change: Change, words: Words) -> WeakerLine:
    is_safety = change.concern is Concern.SAFETY
    said, reach = sentence(change, words.translate, by_name=True), reach_text(change, words.translate)
    return WeakerLine(
        number=number, concern=words(CONCERNS[change.concern]), is_safety=is_safety, text=said, reach=reach
    )


def _rest(numbers: Sequence[str], words: Words) -> str:
    if not numbers:
        return ""
    return words.translate.plural(
        "One more requirement was relaxed: see {numbers} in the tables.",
        "{number} more requirements were relaxed: see {numbers} in the tables.",
        len(numbers),
    ).format(number=len(numbers), numbers=_span(numbers))


def _waiting(numbers: Sequence[str], words: Words) -> str:
    if not numbers:
        return ""
    return words.translate.plural(
        "One change awaits a decision: see {numbers}.",
        "{number} changes await a decision: see {numbers}.",
        len(numbers),
    ).format(number=len(numbers), numbers=_span(numbers))


def _span(numbers: Sequence[str]) -> str:
    """`9 to 14`: numbers of one group stand together."""
    if len(numbers) > 2 and int(numbers[-1]) - int(numbers[0]) == len(numbers) - 1:
        return f"{numbers[0]}–{numbers[-1]}"
    return ", ".join(numbers)


def _groups(numbered: Sequence[tuple[str, Change]], words: Words, *, for_maker: bool) -> Iterator[ChangeGroup]:
    for at, (heading, lead) in enumerate(_GROUPS):
        rows = tuple(
            change_row(number, change, words, for_maker=for_maker)
            for number, change in numbered
            if _group_of(change) == at
        )
        if rows:
            yield ChangeGroup(heading=words(heading), lead=words(lead), rows=rows)


def _group_of(change: Change) -> int:
    if change.is_open:
        return 1
    return {Effect.RELAXED: 0, Effect.TIGHTENED: 2, Effect.FACT: 3, Effect.EDITORIAL: 4}[change.weighed]


def _left_out(number: int, words: Words) -> str:
    if number <= 0:
        return ""
    return words.plural(
        "One further change is not printed here.", "{number} further changes are not printed here.", number
    )


def _needed(project: Project, words: Words) -> str:
    policies = project.policies
    number = policies.approvals_needed if policies is not None else 1
    said = [
        words.plural(
            "The project policy requires one approval.",
            "The project policy requires {number} approvals.",
            number,
        )
    ]
    for asked in policies.approvals if policies is not None else ():
        frame = words("To {role}: at least {count}, signed.") if asked.signed else words("To {role}: at least {count}.")
        said.append(frame.format(count=asked.count, role=asked.role.value))
    return " ".join(said)
