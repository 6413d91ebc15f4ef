"""Each change as one plain sentence with its numbers, for reports and the change notice.

A sentence is put together from the declaration of the leaf and the names of the entries on its path (`naming`); values stand in
the unit their author chose. `translate` turns the frames into the language of the document.
"""

from __future__ import annotations

import re
from datetime import date
from enum import Enum
from fractions import Fraction
from typing import Any

from specgen.comparison.address_words import address_in_words
from specgen.comparison.changes import Change, Difference, Effect, Kind, Rounding
from specgen.comparison.effects import is_entry
from specgen.comparison.naming import is_prose, noun, of_where, place_named
from specgen.comparison.values import is_list, members
from specgen.model.audience import customer_path
from specgen.model.declaring import PATH, Audience, Polarity
from specgen.model.node import Node
from specgen.model.walk import leaves
from specgen.units.count import Count, show_count
from specgen.units.display import show, show_range, unit_sign
from specgen.units.locale import ENGLISH, Locale
from specgen.units.quantity import CalendarSpan, Quantity, Range
from specgen.units.rounding import plain_text, significant

_PROSE = {Polarity.REQUIREMENT_TEXT, Polarity.WORDING, Polarity.NOTE}
_JOBS, _ITEMS = 3, 4
"""So many jobs, and items of each, a line names; the others are counted."""
_QUOTED = 110
"""Signs of a text that a sentence quotes; the whole of it stands side by side further on."""
_JOINED = re.compile(r"[a-z0-9]+(_[a-z0-9]+)+")
_BEFORE, _WORD = 45, 20
"""Signs quoted before the first difference of two long texts, and as many more to begin with a whole word."""


def sentence(change: Change, translate: Locale = ENGLISH, *, by_name: bool = False) -> str:
    """One sentence, ending with its full stop; `by_name` for a reader without sources, to whom an id says nothing."""
    extra = notes(change, translate)
    said = _said(change, translate, by_name=by_name) + _in_place_of(change.difference, translate)
    whole = _capital(said) + (f" ({'; '.join(extra)})" if extra else "")
    return whole if whole.endswith((".”", "…”")) else f"{whole}."


def _in_place_of(fact: Difference, translate: Locale) -> str:
    """Of what a reference reaches: which record has taken the place of which."""
    if fact.through is None:
        return ""
    first = fact.owners[0]
    old, new = ("" if not path else path.rsplit(".", 1)[-1] for path in fact.through)
    named = {"kind": noun(type(first.record)), "old": old, "new": new}
    if not new:
        return translate(", because the {kind} {old} is no longer asked for").format(**named)
    if not old:
        return translate(", because the {kind} {new} is newly asked for").format(**named)
    return translate(", because the {kind} {new} takes the place of {old}").format(**named)


def notes(change: Change, translate: Locale = ENGLISH) -> tuple[str, ...]:
    """What a change of unit left over, and why the effect is what it is, where that is not plain."""
    alike = (_alike(change, translate),) if change.alike else ()
    return (
        *alike,
        *(_rounded(entry, translate) for entry in change.rounding),
        *((translate(change.note),) if change.note else ()),
    )


def _alike(change: Change, translate: Locale) -> str:
    places, jobs = len(change.alike) + 1, len(change.reaches)
    if not jobs:
        return translate("the same in {places} places").format(places=places)
    frame = translate.plural(
        "the same in {places} places, in one job", "the same in {places} places, in {number} jobs", jobs
    )
    return frame.format(places=places, number=jobs)


def subject(change: Change, translate: Locale = ENGLISH, *, by_name: bool = False) -> str:
    """What the change is about, without its values: `Least dry film of the primer of the system cab`; `by_name` as in `sentence`."""
    fact = change.difference
    if is_entry(fact) or fact.kind is Kind.RENAMED:
        return _capital(place_named(fact, translate, brief=True, by_name=by_name))
    if fact.kind is Kind.REORDERED:
        frame = translate("the order of the {entries} of {where}")
        where = place_named(fact, translate, brief=True, by_name=by_name)
        return _capital(frame.format(entries=fact.name.replace("_", " "), where=where))
    return _capital(of_where(fact, translate, brief=True, by_name=by_name))


def reach_text(change: Change, translate: Locale = ENGLISH) -> str:
    """`in MS-001: DOOR, STEP; MS-002: RAIL and 3 more`; empty where the change is a job's own."""
    if not change.reaches:
        return ""
    shown = []
    for job in change.reaches[:_JOBS]:
        items = ", ".join(job.items[:_ITEMS]) + (" …" if len(job.items) > _ITEMS else "")
        shown.append(f"{job.number}: {items}" if items else job.number)
    more = len(change.reaches) - _JOBS
    said = translate("in {jobs}").format(jobs="; ".join(shown))
    return translate("{said} and {number} more").format(said=said, number=more) if more > 0 else said


def value_text(value: Any, language: Locale = ENGLISH) -> str:
    """A value as a reader sees it: quantities with their unit, yes or no, a list with commas; empty for nothing."""
    match value:
        case None | ():
            return ""
        case Quantity():
            return show(value, language=language)
        case Range():
            return show_range(value, language=language)
        case Count():
            return show_count(value, language)
        case bool():
            return language("yes") if value else language("no")
        case Fraction():
            return language.figures(plain_text(value))
        case Enum():
            return _worded(str(value.value))
        case date():
            return value.isoformat()
        case tuple() if is_list(value):
            return ", ".join(value_text(part, language) for part in value)
        case tuple():
            return language.figures(":".join(plain_text(part) for part in value))
        case Node():
            return ""
        case _:
            return _worded(str(value))


def _worded(text: str) -> str:
    """A word of a closed list or of a table, which sources join by low lines: `epoxy latent`."""
    return text.replace("_", " ") if _JOINED.fullmatch(text) else text


def whole_text(value: Any, *, everything: bool, language: Locale = ENGLISH) -> str:
    """A value in full; of an entry what it states, what is the maker's only with `everything`."""
    if not isinstance(value, Node):
        return value_text(value, language)
    stated = [
        f"{path[-1].replace('_', ' ')}: {value_text(_in_words(held) if said.refers == PATH else held, language)}"
        for path, held, said in leaves(value)
        if (everything or said.audience is Audience.CUSTOMER) and path[-1] != "id"
    ]
    return "; ".join(stated)


def _in_words(address: str) -> str:
    return address_in_words(customer_path(address))


def _said(change: Change, translate: Locale, *, by_name: bool) -> str:
    fact = change.difference
    if fact.kind is Kind.RENAMED:
        named = {"entry": noun(type(fact.owners[-1].record)), "old": fact.old_path[-1], "new": fact.path[-1]}
        within = place_named(fact, translate, skip_last=True, by_name=by_name) if _is_inside(fact) else ""
        said = translate("the {entry} {old} is now called {new}").format(**named)
        return translate("{said}, in {where}").format(said=said, where=within) if within else said
    if fact.kind is Kind.REORDERED:
        frame = translate("the order of the {entries} of {where} was {old} and is now {new}")
        entries = fact.name.replace("_", " ")
        where = place_named(fact, translate, by_name=by_name)
        return frame.format(entries=entries, where=where, old=", ".join(fact.old), new=", ".join(fact.new))
    if is_entry(fact):
        frame = _entry_frame(fact, translate)
        return frame.format(entry=place_named(fact, translate, by_name=by_name)) + _quoted_text(fact)
    return _leaf(change, translate, by_name=by_name)


def _entry_frame(fact: Difference, translate: Locale) -> str:
    if fact.kind is Kind.ADDED:
        return translate("{entry} is new")
    # nobody took it out of the record that holds it: another record counts now
    return translate("{entry} was removed") if fact.through is None else translate("{entry} no longer applies")


def _is_inside(fact: Difference) -> bool:
    return len([owner for owner in fact.owners if owner.key]) > 1


def _quoted_text(fact: Difference) -> str:
    """The words of a caution or a claim, for its id says nothing to a reader."""
    record = fact.owners[-1].record
    text = next(
        (getattr(record, name) for name in ("text", "action") if isinstance(getattr(record, name, None), str)), ""
    )
    return f": {_quote(text)}" if text else ""


def _leaf(change: Change, translate: Locale, *, by_name: bool) -> str:
    fact = change.difference
    named = {"subject": of_where(fact, translate, by_name=by_name)}
    old, new = fact.old, fact.new
    if is_list(old) or is_list(new):
        return _list(fact, named, translate)
    if old is None:
        return translate("{subject} is now stated: {new}").format(
            new=_shown(new, translate, quoted=is_prose(fact)), **named
        )
    if new is None:
        return translate("{subject} is no longer stated; it was {old}").format(
            old=_shown(old, translate, quoted=is_prose(fact)), **named
        )
    # a gauge or a paper in the author's words is set apart from the sentence; a grade of two words is not
    quoted = is_prose(fact)
    before, after = value_text(old, translate), value_text(new, translate)
    if quoted:
        before, after = _quoted_apart(before, after)
    if by_name:
        values = {"old": change.names[0] or before, "new": change.names[1] or after}
    else:
        values = {"old": before + _named(change.names[0]), "new": after + _named(change.names[1])}
    if (fell := _fell(change)) is not None:
        if fell:
            return translate("{subject} fell from {old} to {new}").format(**values, **named)
        return translate("{subject} rose from {old} to {new}").format(**values, **named)
    # a limit that its scale orders became another limit; in words alone it was reworded
    if quoted and (fact.polarity in _PROSE or change.effect is Effect.REWORDED):
        return translate("{subject} was reworded: it was {old} and is now {new}").format(**values, **named)
    return translate("{subject} was {old} and is now {new}").format(**values, **named)


def _fell(change: Change) -> bool | None:
    """Whether an amount or a grade went down; None where it did neither."""
    old, new = (_one(value) for value in (change.difference.old, change.difference.new))
    if change.difference.polarity is Polarity.LADDER:
        return {Effect.RELAXED: True, Effect.TIGHTENED: False}.get(change.effect)
    # of a range the ends are told, not a fall or a rise, also where one side alone is a range
    alike = any(isinstance(old, kind) and isinstance(new, kind) for kind in (Quantity, CalendarSpan, Fraction | int))
    if alike and not isinstance(old, bool) and old != new:
        return bool(new < old)
    return None


def _one(value: Any) -> Any:
    """A count of one number as that number; anything else as it is."""
    return value.one if isinstance(value, Count) and value.one is not None else value


def _list(fact: Difference, named: dict[str, str], translate: Locale) -> str:
    gone, come = sorted(members(fact.old) - members(fact.new)), sorted(members(fact.new) - members(fact.old))
    pieces = []
    if gone:
        pieces.append(translate("{gone} removed").format(gone=", ".join(map(_worded, gone))))
    if come:
        pieces.append(translate("{come} added").format(come=", ".join(map(_worded, come))))
    return translate("{subject}: {pieces}").format(pieces="; ".join(pieces), **named)


def _shown(value: Any, language: Locale, *, quoted: bool) -> str:
    text = value_text(value, language)
    return _quote(text) if quoted else text


def _named(name: str) -> str:
    return f" ({name})" if name else ""


def _quote(text: str) -> str:
    flat = " ".join(text.split())
    return f"“{flat}”" if len(flat) <= _QUOTED else f"“{flat[:_QUOTED].rsplit(' ', 1)[0]} …”"


def _quoted_apart(old: str, new: str) -> tuple[str, str]:
    """Both texts, long ones around the word in which they part, so that the two quotations are never alike."""
    before, after = " ".join(old.split()), " ".join(new.split())
    if len(before) <= _QUOTED and len(after) <= _QUOTED:
        return f"“{before}”", f"“{after}”"
    shorter = min(len(before), len(after))
    apart = next((at for at in range(shorter) if before[at] != after[at]), shorter)
    # a word that begins too long before the difference is cut through
    start = max(before.rfind(" ", 0, max(apart - _BEFORE, 0)) + 1, apart - _BEFORE - _WORD, 0)
    return _around(before, start, apart), _around(after, start, apart)


def _around(text: str, start: int, apart: int) -> str:
    end = start + _QUOTED
    if end < len(text):
        end = max(text.rfind(" ", apart + 1, end), apart + 1) if " " in text[apart + 1 : end] else end
    return f"“{'… ' if start else ''}{text[start:end].strip()}{' …' if end < len(text) else ''}”"


def _rounded(entry: Rounding, translate: Locale) -> str:
    amounts = {
        "old": f"{_signed(entry.in_old_unit, translate)} {unit_sign(entry.old_unit, entry.in_old_unit, translate)}",
        "new": f"{_signed(entry.in_new_unit, translate)} {unit_sign(entry.new_unit, entry.in_new_unit, translate)}",
    }
    share = "" if entry.percent is None else f", {_signed(entry.percent, translate, 2)} %"
    frame = (
        translate("by rounding: {old} or {new}") if entry.by_rounding else translate("the unit changed: {old} or {new}")
    )
    return frame.format(**amounts) + share


def _signed(number: Fraction, language: Locale, digits: int = 3) -> str:
    figure = language.figures(plain_text(Fraction(significant(abs(number), digits))))
    return f"{'+' if number > 0 else '−'}{figure}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
