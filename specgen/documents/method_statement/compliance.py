"""The clauses of the customer's documents that a job is made to: what each asks for, where it is met, and the verdict."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from enum import StrEnum

from specgen.documents.parts.clauses import value_in_words
from specgen.documents.parts.place_words import place_in_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import WORDS, Words
from specgen.facts.contract.held import Held, Value, Verdict
from specgen.facts.contract.trace import Traced, traced
from specgen.facts.job.builds import Build
from specgen.facts.job.waivers import in_force
from specgen.facts.requirement import Asked
from specgen.model.contract_document import ContractDocument, Force, MadeTo
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.count import Count
from specgen.units.locale import N_, Phrase
from specgen.units.quantity import CalendarSpan, Quantity, Range

# what says that a limit of a clause is not met
_RULES = {"CUS001", "CUS002"}

_VERDICTS: Mapping[Verdict, str] = {
    Verdict.MET: N_("met"),
    Verdict.NOT_MET: N_("not met"),
    Verdict.NOT_TOLD: N_("to be judged"),
    Verdict.NOT_ANSWERED: N_("open"),
    Verdict.BY_WORD: N_("met as stated"),
    Verdict.DEVIATION: N_("deviation agreed"),
    Verdict.NOT_APPLICABLE: N_("does not apply"),
    Verdict.PERMISSION: N_("permission"),
    Verdict.MOVED: N_("moved"),
}


def compliance(job: Job, spec: Spec, builds: Sequence[Build], day: date, words: Words) -> tuple[TableView, ...]:
    """A table for each document the job is made to; none where it is made to none. A waiver in force on the day is told at its clause."""
    listed = traced(job, spec)
    letters = {system.id: build.letter for build in reversed(builds) for system, _ in build.painted}
    # one system needs no letter
    letters = letters if len({*letters.values()}) > 1 else {}
    return tuple(
        table_view(
            _caption(made, spec.contract_documents[made.document], words),
            (
                Column(words("Clause"), "w-8"),
                Column(words("Requirement"), "w-35"),
                Column(words("Where it is met")),
                Column(words("Result"), "w-20"),
            ),
            [_row(one, letters, job, spec, day, words) for one in listed if one.made is made],
            "–",
        )
        for made in job.made_to
    )


def _caption(made: MadeTo, document: ContractDocument, words: Words) -> str:
    named = [document.number]
    if document.edition is not None:
        named.append(words("edition {}").format(document.edition))
    if document.date is not None:
        named.append(document.date.isoformat())
    if document.issued_by is not None:
        named.append(document.issued_by)
    said = [f"{', '.join(named)}: {document.title}"]
    if made.items:
        said.append(words("Items: {}").format(", ".join(made.items)))
    if made.warranty is not None:
        said.append(words("Warranty period: {}").format(words.phrase(made.warranty)))
    return ". ".join(said)


def _row(one: Traced, letters: Mapping[str, str], job: Job, spec: Spec, day: date, words: Words) -> tuple[str, ...]:
    clause = one.clause
    text = clause.text
    if clause.force is not Force.REQUIRED:
        text = words("{requirement} ({force})").format(requirement=text, force=words.word(clause.force))
    where = dict.fromkeys(_where(one, letters, job, spec, words))
    result = ", ".join((words(_VERDICTS[one.verdict]), *dict.fromkeys(_waived(one, job, day, words))))
    return clause.number, text, "\n".join(where), result


def _waived(one: Traced, job: Job, day: date, words: Words) -> Iterator[str]:
    """Who took on that a limit is not met, and until when."""
    missed = {".".join(held.path) for held in one.those(Verdict.NOT_MET)}
    for waiver in job.waivers:
        if waiver.rule in _RULES and waiver.path in missed and in_force(waiver, day):
            yield words("waived by {who} until {day}").format(who=waiver.by, day=waiver.until.isoformat())


def _where(one: Traced, letters: Mapping[str, str], job: Job, spec: Spec, words: Words) -> Iterator[str]:
    there = one.clause.moved_to
    if there is not None:
        edition = words(", edition {}").format(there.edition) if there.edition is not None else ""
        yield words("{document}, clause {clause}").format(document=f"{there.number}{edition}", clause=there.clause)
        return
    if one.deviation is not None:
        yield words("{text} Agreed by {who}.").format(text=one.deviation.text, who=one.deviation.agreed_by)
        return
    answer = one.answer
    if answer is not None:
        if answer.text is not None:
            yield answer.text
        if answer.at is not None:
            # of which job this is its title says
            own = words(" of ") + words("the {named}").format(named=f"job {job.document.number}")
            place = place_in_words(answer.at, spec, words).removesuffix(own)
            yield place[:1].upper() + place[1:]
    if one.verdict in {Verdict.NOT_APPLICABLE, Verdict.PERMISSION}:
        return
    # what a person has answered needs no list of what figures leave open
    open_yet = {Verdict.NOT_TOLD, Verdict.NOT_ANSWERED} if answer is not None else set()
    for held in one.held:
        if held.verdict not in open_yet:
            yield _line(held, letters, words)


def _line(held: Held, letters: Mapping[str, str], words: Words) -> str:
    letter = letters.get(held.path[1], "") if held.path[0] == "systems" else ""
    # how the maker's own composition gives a figure stays with the maker
    kept = held.of is not None and held.path[-1] == "composition"
    found = words("by the manufacturer's figures") if kept else _value(held.found, held.of, words)
    text = words("{what}: {found}").format(what=words(held.what), found=found)
    if held.verdict is not Verdict.MET:
        asked = _value(held.asked, held.of, words)
        if held.of is Asked.VOC:
            asked = words("at most {}").format(asked)
        text = words("{text} (clause: {asked})").format(text=text, asked=asked)
    if held.why:
        text = words("{text}; {why}").format(text=text, why=words(held.why))
    return words("System {letter}: {text}").format(letter=letter, text=text) if letter else text


def _value(value: Value | tuple[Value, ...] | None, of: Asked | None, words: Words) -> str:
    match value:
        case None:
            return words("not stated")
        case tuple():
            return ", ".join(_value(one, of, words) for one in value)
        case Quantity() | Range() | Count() | CalendarSpan():
            return words.phrase(value)
        case StrEnum():
            return words.word(value) if (type(value), value) in WORDS else value.value
        case Phrase():
            return words(value)
    return value_in_words(of, value, words) if of is not None else str(value)
