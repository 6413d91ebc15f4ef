"""Which revision of a job a sheet, or a report on its readings, was made from. Called by their views and by printing."""

from __future__ import annotations

from specgen.documents.context import Context


def revision_said(number: str, context: Context) -> str:
    """`B, issued 2026-03-09`, where the sources are those of the revision in force; else that it is a draft, and after which."""
    words, known = context.words, context.revisions.get(number)
    if known is None or not (known.issued or not known.whole):
        return words("DRAFT, not issued")
    if not known.whole:
        return words("DRAFT; the register of the job is damaged")
    last = known.current or known.issued[-1]
    said = (
        words("{revision}, issued {day}")
        if known.current is not None
        else words("DRAFT, after revision {revision} of {day}")
    )
    return said.format(revision=last.revision, day=last.day)


def sheet_said(number: str, context: Context) -> str:
    """`DS-210 revision B of 2026-03-09, changed since`: which revision of a data sheet a job rests on."""
    words, known = context.words, context.revisions.get(number)
    if known is None or not (known.issued or not known.whole):
        return words("{number}, not issued").format(number=number)
    if not known.whole:
        return words("{number}, whose register is damaged").format(number=number)
    last = known.current or known.issued[-1]
    said = words("{number} revision {revision} of {day}")
    if known.current is None:
        said = (
            words("{number} revision {revision} of {day}, changed since")
            if last.withdrawn is None
            else words("{number} revision {revision} of {day}, withdrawn")
        )
    return said.format(number=number, revision=last.revision, day=last.day)


def is_current(number: str, context: Context) -> bool:
    """True where the sources say what the revision in force says."""
    known = context.revisions.get(number)
    return known is not None and known.current is not None
