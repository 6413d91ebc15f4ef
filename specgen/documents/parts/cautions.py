"""Hazards of products as printed: panels by signal word, statements in their official wording, first aid.

The statements come from the published tables; a wording from memory is marked. Products whose label is the same share a
panel, and a line that not all of them have names its own. Called by `method_statement`, `data_sheet` and the cards.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from specgen.documents.parts.caution_catalogue import EMERGENCY, FILLED_IN, LABEL_FILLS_IN, NO_VOMITING
from specgen.documents.parts.hazard_lines import hazard_lines
from specgen.documents.parts.pictogram import PictogramView, pictograms
from specgen.documents.parts.short_names import apart
from specgen.documents.parts.wording import Words
from specgen.facts.job.chemicals import chemicals, marks_of
from specgen.facts.product.dangers import STATEMENTS
from specgen.model.hazards import Hazards, Route, SafetyDataSheet, SignalWord
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.project import Project
from specgen.model.spec import Spec
from specgen.standards.citations import Basis
from specgen.standards.tables import Table, table, table_names

_LEVEL = {SignalWord.DANGER: "danger", SignalWord.WARNING: "warning", SignalWord.NONE: "notice"}
_RANKED = tuple(_LEVEL.values())
# What an official wording leaves to the supplier.
_OPEN = "…"
_NAME_OF_SUBSTANCE = "(name of sensitising substance)"

Label = tuple[SignalWord, tuple[str, ...], tuple[str, ...], tuple[str, ...], tuple[str, ...], tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """A code with its wording; `unconfirmed` where the wording is from memory; `note` says who fills in what is open."""

    code: str
    text: str
    unconfirmed: bool
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardView:
    """One panel: what the products named in it have on their label, then their lines of (name, text)."""

    product: str
    level: str
    signal_word: str
    pictograms: tuple[PictogramView, ...]
    statements: tuple[Statement, ...]
    precautions: tuple[Statement, ...]
    data_sheets: tuple[str, ...]
    lines: tuple[tuple[str, str], ...]
    cautions: tuple[tuple[str, str], ...]


def hazards(products: Sequence[Product], spec: Spec, words: Words) -> tuple[HazardView, ...]:
    """One panel for each label there is among the products, the gravest signal word first."""
    alike: dict[Label, list[tuple[Product, Hazards]]] = {}
    for product in products:
        if product.hazards is not None:
            alike.setdefault(_label(product.hazards), []).append((product, product.hazards))
    rank = list(_LEVEL)
    ordered = sorted(alike.items(), key=lambda entry: rank.index(entry[0][0]))
    return tuple(_panel(label, members, spec, words) for label, members in ordered)


def chemical_hazards(job: Job, words: Words) -> tuple[HazardView, ...]:
    """One panel for each thinner and cleaner of a job, by the H statements it states; none for one that states none."""
    return tuple(
        HazardView(
            product=entry.what,
            level=_LEVEL[marks_of(entry).signal_word],
            signal_word=words.word(marks_of(entry).signal_word),
            pictograms=pictograms(marks_of(entry).pictograms, words),
            statements=tuple(statements("h_statements", entry.statements, words)),
            precautions=(),
            data_sheets=tuple(sheet for sheet in (data_sheet_words(entry.safety_data_sheet, words),) if sheet),
            lines=(),
            cautions=(),
        )
        for entry in chemicals(job)
        if entry.statements
    )


def gravest_of(panels: Sequence[HazardView]) -> HazardView:
    """The panel with the gravest signal word; a thinner or cleaner may be graver than every product."""
    return min(panels, key=lambda panel: _RANKED.index(panel.level))


def first_aid(
    products: Sequence[Product], words: Words, short: Mapping[str, str] | None = None
) -> tuple[tuple[str, str], ...]:
    """(route, act), each act once; where acts differ from product to product, each names its products, by `short` names if given."""
    found, called = acts(products), short or {}
    ways = [route for route, *_ in found]
    return tuple(
        (
            words.word(route)
            + (f" ({', '.join(called.get(name, name) for name in names)})" if ways.count(route) > 1 else ""),
            act,
        )
        for route, act, names in found
    )


def if_swallowed(job: Job, words: Words) -> tuple[str, str]:
    """(names, act) of the thinners and cleaners that kill when they enter the airways; empty texts where there are none."""
    named = [entry.what for entry in chemicals(job) if {*entry.statements} & {*STATEMENTS["aspiration"]}]
    return (apart(named), words(NO_VOMITING)) if named else ("", "")


def acts(products: Sequence[Product]) -> tuple[tuple[Route, str, list[str]], ...]:
    """Each act of first aid once with the names of its products, in the order of the routes."""
    found: dict[tuple[Route, str], list[str]] = {}
    for product in products:
        for entry in product.hazards.first_aid if product.hazards is not None else ():
            found.setdefault((entry.route, entry.action), []).append(product.name)
    order = list(Route)
    return tuple(
        (route, act, names) for (route, act), names in sorted(found.items(), key=lambda pair: order.index(pair[0][0]))
    )


def emergency(project: Project, words: Words) -> str:
    """The line with the number to call; empty where the project names none."""
    return f"{words(EMERGENCY)}: {project.emergency_phone}" if project.emergency_phone is not None else ""


def statements(name: str, codes: Sequence[str], words: Words, named: Sequence[str] = ()) -> Iterator[Statement]:
    """Each code with its wording of the table `name`, or of the one in the language of the page; `named` are what EUH208 names."""
    known = {row["id"]: row for row in _official(name, words.translate.code).rows}
    for code in codes:
        row = known.get(code)
        if row is None:
            yield Statement(
                code=code, text=words("wording not in the published table: see the safety data sheet"), unconfirmed=True
            )
            continue
        text = row["text"].replace(_NAME_OF_SUBSTANCE, ", ".join(named)) if named else row["text"]
        note = words(FILLED_IN.get(code, LABEL_FILLS_IN)) if _OPEN in text else ""
        yield Statement(code=code, text=text, unconfirmed=row["basis"] == Basis.MEMORY.name.lower(), note=note)


def _official(name: str, language: str) -> Table:
    """`h_statements_de` for `h_statements` on a German page; the English wording where there is no such table."""
    own = f"{name}_{language.lower().replace('-', '_')}"
    return table(own if own in table_names() else name)


def data_sheet_line(declared: Hazards, words: Words) -> str:
    """Number, revision and date of the safety data sheet, and where it is had; empty where none is named."""
    return data_sheet_words(declared.safety_data_sheet, words)


def data_sheet_words(sheet: SafetyDataSheet | None, words: Words) -> str:
    """The same of a sheet by itself."""
    if sheet is None:
        return ""
    said = sheet_in_short(sheet, words)
    if sheet.language:
        said += ", " + (words("in English") if sheet.language == "en" else words("language {}").format(sheet.language))
    return said + (f" ({sheet.available_from})" if sheet.available_from else "")


def sheet_in_short(sheet: SafetyDataSheet | None, words: Words) -> str:
    """Number, revision and date alone."""
    if sheet is None:
        return ""
    parts = [sheet.number]
    if sheet.revision:
        parts.append(words("revision {}").format(sheet.revision))
    if sheet.date is not None:
        parts.append(sheet.date.isoformat())
    return ", ".join(parts)


def _label(declared: Hazards) -> Label:
    return (
        declared.signal_word or SignalWord.NONE,
        tuple(sorted(set(declared.pictograms))),
        declared.statements,
        declared.supplemental,
        declared.precautions,
        declared.sensitisers_named,
    )


def _panel(label: Label, members: list[tuple[Product, Hazards]], spec: Spec, words: Words) -> HazardView:
    signal, symbols, codes, supplemental, precautions, named = label
    several = len(members) > 1
    lines, cautions, sheets = _Shared(len(members)), _Shared(len(members)), []
    for product, declared in members:
        for line in hazard_lines(product, spec, words):
            lines.add(line, product.name)
        for caution in declared.cautions:
            cautions.add((words.word(caution.task), caution.text), product.name)
        if sheet := data_sheet_line(declared, words):
            sheets.append(f"{product.name}: {sheet}" if several else sheet)
    return HazardView(
        product=", ".join(product.name for product, _ in members),
        level=_LEVEL[signal],
        signal_word=words.word(signal),
        pictograms=pictograms(symbols, words),
        statements=tuple(statements("h_statements", codes, words))
        + tuple(statements("euh_statements", supplemental, words, named)),
        precautions=tuple(statements("p_statements", precautions, words)),
        data_sheets=tuple(sheets),
        lines=lines.named(),
        cautions=cautions.named(),
    )


class _Shared:
    """Lines of several products: one that all have stands once, one of some names them; in the order of their names."""

    def __init__(self, members: int) -> None:
        self._members = members
        self._found: dict[tuple[str, str], list[str]] = {}

    def add(self, line: tuple[str, str], product: str) -> None:
        owners = self._found.setdefault(line, [])
        if product not in owners:
            owners.append(product)

    def named(self) -> tuple[tuple[str, str], ...]:
        order = list(dict.fromkeys(name for name, _ in self._found))
        ranked = sorted(self._found.items(), key=lambda entry: order.index(entry[0][0]))
        return tuple(
            (f"{name} ({', '.join(owners)})" if len(owners) < self._members else name, text)
            for (name, text), owners in ranked
        )
