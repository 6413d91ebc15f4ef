"""The language a document is worded in: its translations, its plurals and its decimal sign.

English is what templates, tables and workings are written in and needs no catalogue: `ENGLISH` gives every text back as it is.
`rendering.environment` makes the others. Sources, findings, JSON and CSV know one way of writing a number and ask no language.
Called by all that words a document: `display`, `trade.working`, `comparison.sentences`, `documents`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from math import ceil

POINT = "."
_BETWEEN_DIGITS = re.compile(r"(?<=\d)\.(?=\d)")


def N_(text: str) -> str:  # noqa: N802  # the name by which catalogue tools find texts that are translated later
    """Mark a text for the catalogue; it is translated when a document prints it."""
    return text


def N_n(one: str, many: str) -> tuple[str, str]:  # noqa: N802  # as above
    """Mark the two forms of a text that counts; `Locale.plural` chooses when a document prints it."""
    return one, many


class Phrase(str):
    """An English text that keeps its template and what fills it, so that a document can say it in another language."""

    __slots__ = ("fields", "template")

    template: str
    fields: dict[str, str]


def phrase(template: str, **fields: object) -> Phrase:
    """`template` filled in. A field that is a Phrase is a text of ours as well; any other is a name or a number as it stands."""
    if isinstance(template, Phrase):
        return template
    found = Phrase(template.format(**fields) if fields else template)
    found.template = template
    found.fields = {name: value if isinstance(value, Phrase) else str(value) for name, value in fields.items()}
    return found


def listed(template: str, texts: Sequence[str]) -> str:
    """Texts of ours one after the other, two at a time by a template such as `{first}; {more}`; empty for none."""
    return reduce(lambda first, more: phrase(template, first=phrase(first), more=phrase(more)), texts) if texts else ""


def counted(one: str, many: str, number: int) -> str:
    """The English form for a number: `one` for 1, `many` for all others. Called where a text is English only: findings, commands."""
    return one if number == 1 else many


def _same(text: str) -> str:
    return text


@dataclass(frozen=True, slots=True)
class Locale:
    """`gettext` and `ngettext` are those of the catalogue of messages; `decimal_sign` stands between whole and broken part.

    `code` is that of the language, for texts that the law words and no catalogue holds.
    """

    gettext: Callable[[str], str] = _same
    ngettext: Callable[[str, str, int], str] = counted
    decimal_sign: str = POINT
    code: str = "en"

    def __call__(self, text: str) -> str:
        """A text in this language; an empty one stays empty, for to a catalogue it is the name of its header."""
        if isinstance(text, Phrase):
            fields = {name: self(value) if isinstance(value, Phrase) else value for name, value in text.fields.items()}
            template = self.gettext(text.template) if text else ""
            return template.format(**fields) if fields else template
        return self.gettext(text) if text else ""

    def plural(self, one: str, many: str, number: int | Fraction) -> str:
        """The form for a number. A number that is not whole takes the form of the whole one above it, never that of 1."""
        whole = int(number) if number == int(number) else max(2, ceil(number))
        return self.ngettext(one, many, whole)

    def figures(self, text: str) -> str:
        """Figures of our own writing, `2.36` or `0.5 × 12.1`, with the decimal sign; not for prose, which holds clauses and versions."""
        return text if self.decimal_sign == POINT else _BETWEEN_DIGITS.sub(self.decimal_sign, text)


ENGLISH = Locale()
