"""The workings annex: every figure of a document with formula, inputs and source, to be worked out again by hand.

Figures of one formula stand together: formula and symbols once, below them a line a figure with its numbers. A figure whose inputs
are the maker's shows its result alone. Called by the views of every document with calculations.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

from specgen.documents.parts.wording import Words
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.trade.working import HELD_BY_MAKER, Input, Working
from specgen.units.display import unit_sign
from specgen.units.kinds import UNITS


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingView:
    """`about` is its id; `of` the same in names, without what kind of figure it is: the name says that.

    `group` numbers the figures of one formula and `legend` names its symbols with unit and table; `used` says which numbers are
    results of others; `source_number` is that of the source at the foot.
    """

    number: str
    name: str
    about: str
    of: str
    formula: str
    substituted: str
    inputs: tuple[tuple[str, str, str, str], ...]
    result: str
    source: str
    note: str
    held: str
    legend: str = ""
    used: str = ""
    group: int = 0
    source_number: int = 0


def annex(
    workings: Iterable[Working], spec: Spec, words: Words, elsewhere: str = "", own: Mapping[str, str] | None = None
) -> tuple[WorkingView, ...]:
    """Each Working numbered W1, W2 and on; inputs that are results of others name them by that number.

    `elsewhere` says where a result comes from whose working is not in this list. `own` is what the document calls what it is about,
    by id, coats by `system/coat`; what it need not name is empty.
    """
    listed = list(workings)
    numbers = {working.id: f"W{position}" for position, working in enumerate(listed, 1)}
    naming = partial(_of, names={**_names(spec), **(own or {})}, systems=frozenset(spec.systems))
    return grouped(_view(working, numbers, naming, words, elsewhere) for working in listed)


def grouped(listed: Iterable[WorkingView]) -> tuple[WorkingView, ...]:
    """The same, with the numbers of its groups and sources as they come; those that show a result alone are one group."""
    groups: dict[tuple[str, str, str, str], int] = {}
    sources: dict[str, int] = {}
    return tuple(
        replace(
            view,
            group=groups.setdefault((view.formula, view.legend, view.note, view.held), len(groups) + 1),
            source_number=sources.setdefault(view.source, len(sources) + 1),
        )
        for view in listed
    )


def held(working: Working, name: str, about: str, number: str, words: Words) -> WorkingView:
    """A working of which a customer sees the result alone, under a name that gives nothing of its inputs away.

    For figures that build on the maker's through other workings, so that no input of theirs is marked the maker's.
    """
    source, shut = words(str(working.source)), words(HELD_BY_MAKER)
    return WorkingView(
        number=number,
        name=name,
        about=about,
        of="",
        formula="",
        substituted="",
        inputs=(),
        result=words.worked(working),
        source=source,
        note="",
        held=shut,
    )


def _view(
    working: Working, numbers: dict[str, str], naming: Callable[[str], str], words: Words, elsewhere: str
) -> WorkingView:
    held = working.held_by_maker
    return WorkingView(
        number=numbers[working.id],
        name=words(working.name),
        about=working.id,
        of=naming(working.id),
        formula="" if held else working.formula_text(words.translate),
        substituted="" if held else working.substituted(words.translate),
        inputs=() if held else tuple(_inputs(working, numbers, words, elsewhere)),
        result=words.worked(working),
        source=words(str(working.source)),
        note="" if held else words(working.note),
        held=words(HELD_BY_MAKER) if held else "",
        legend="" if held else _legend(working, numbers, words, elsewhere),
        used="" if held else _used(working, numbers),
    )


def _legend(working: Working, numbers: dict[str, str], words: Words, elsewhere: str) -> str:
    """`L: length, m; n: coated sides`: each symbol with its unit, and with the table or document its figure comes from."""
    results = set(numbers.values())
    parts = []
    for entry, (sign, name, _, origin) in zip(working.inputs, _inputs(working, numbers, words, elsewhere), strict=True):
        # what is counted has its word in the name
        unit = f", {unit_sign(entry.unit, language=words.translate)}" if entry.unit in UNITS else ""
        parts.append(f"{sign}: {name}{unit}" + (f" ({origin})" if origin and origin not in results else ""))
    return "; ".join(parts)


def _used(working: Working, numbers: dict[str, str]) -> str:
    """`A₁ W7, S W8`: the symbols whose figures are results of others."""
    listed = ((entry.sign, numbers.get(_result(entry), "")) for entry in working.inputs)
    return ", ".join(f"{sign}\N{NO-BREAK SPACE}{number}" for sign, number in listed if number)


def _result(entry: Input) -> str:
    """The id of the working whose result the input is; empty for one that is stated."""
    return entry.origin.removeprefix("working:") if entry.origin.startswith("working:") else ""


def _inputs(
    working: Working, numbers: dict[str, str], words: Words, elsewhere: str
) -> Iterator[tuple[str, str, str, str]]:
    """Sign, name, figure, and where the figure comes from: another working or a table; a stated figure needs no more."""
    for entry, figure in working.printed_inputs(words.translate):
        origin = ""
        if made := _result(entry):
            origin = numbers.get(made, elsewhere)
        elif entry.origin.startswith("table:"):
            origin = words(table(entry.origin.removeprefix("table:")).title)
        yield entry.sign, words(entry.name), figure, origin


# what follows the id of a job or product where that comes first, and what the program puts behind the author's ids
_AFTER_AN_ID = ("packs", "aerosol")
_MADE = re.compile(r"thinned|packs|exact|all|one|aerosol|flammable|flammable_at_most|heat|\d+-(least|most)|")


def _of(working_id: str, names: Mapping[str, str], systems: frozenset[str]) -> str:
    """`packs.refit/primer/grey` is `MS-001, primer, grey`: what the ids stand for, without the program's own words."""
    first, *rest = re.split(r"[./]", working_id)
    parts = [first, *rest] if rest and rest[0] in _AFTER_AN_ID else rest
    told = []
    for before, part in pairwise(["", *parts]):
        # behind a system stands one of its coats, which may have the id of any product
        name = names.get(f"{before}/{part}", part if before in systems else names.get(part, part))
        if name and not _MADE.fullmatch(part):
            told.append(name)
    return ", ".join(told)


def _names(spec: Spec) -> dict[str, str]:
    """What jobs, products and systems are called in print, by id; an id of two that are called otherwise stays.

    A variant goes by `product/variant`: products of one folder may each have a `grey`, and call it otherwise.
    """
    named: dict[str, set[str]] = {}
    # without the word all products of the folder begin with, for a line has little room
    first = {product.name.partition(" ")[0] for product in spec.products.values()}
    range_name = f"{first.pop()} " if len(first) == 1 and len(spec.products) > 1 else ""
    for job in spec.jobs.values():
        named.setdefault(job.id, set()).add(job.document.number)
    for product in spec.products.values():
        named.setdefault(product.id, set()).add(product.name.removeprefix(range_name))
        for variant in product.variants:
            named.setdefault(f"{product.id}/{variant.id}", set()).add(variant.name)
    # two colours of one system have one title
    titles = Counter(system.title for system in spec.systems.values())
    for system in spec.systems.values():
        title = system.title if titles[system.title] == 1 else f"{system.title} ({system.id})"
        named.setdefault(system.id, set()).add(title)
    return {key: one for key, (one, *more) in ((key, sorted(said)) for key, said in named.items()) if not more}
