"""What the method statement says of coats whose product is not chosen: what is required of it, what is left open, how much film.

With such a coat it prints as a performance specification. Nothing is said of hazards: they are those of the product chosen.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from specgen.documents.method_statement.tests_asked import tests_to_show
from specgen.documents.parts.clauses import alternative_named, clause_name, clause_value, to_be_offered, types_in_words
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.quantities import Quantities
from specgen.facts.requirement import Asked, clauses, names_products
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.locale import N_

BY_SHEET = N_("According to the safety data sheet of the product chosen.")
INTERVAL_BY_SHEET = N_("Overcoating interval: according to the product data sheet of the product chosen.")
HARD_BY_SHEET = N_("Start sanding only when the product data sheet of each product chosen allows it.")
AIR_BY_SHEET = N_(
    "The flow of fresh air and the time before re-entry are calculated for the products chosen, from their safety data sheets."
)

# What a clause is shown by, where the requirement does not say.
_SHOWN_BY = {
    Asked.TEST: N_("test report, with laboratory and date"),
    Asked.TEXT: N_("statement of the supplier"),
    Asked.COLOUR: N_("sample, with its order number"),
}
_BY_DATA_SHEET = N_("product data sheet")


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenCoats:
    """The requirements of each system in a table, the tests of all coats together, what is left open as sentences, and the dry film in
    litres."""

    required: tuple[TableView, ...]
    tests: TableView
    choices: tuple[str, ...]
    films: TableView


def open_coats(builds: Sequence[Build], job: Job, spec: Spec, figures: Quantities, words: Words) -> OpenCoats | None:
    """None where every coat names its product."""
    if names_products(job, spec):
        return None
    systems = {build.system.id: (build.letter, build.system) for build in reversed(builds)}
    listed = [(letter, system) for letter, system in reversed(systems.values()) if _open(system)]
    return OpenCoats(
        required=tuple(_required(letter, system, words) for letter, system in listed),
        tests=tests_to_show(job, spec, words),
        choices=tuple(text for letter, system in listed for text in _choices(letter, system, words)),
        films=_films(listed, figures, words),
    )


def _open(system: System) -> tuple[tuple[int, Layer], ...]:
    return tuple((number, layer) for number, layer in numbered(system) if layer.product is None)


def _required(letter: str, system: System, words: Words) -> TableView:
    columns = [
        Column(words("Coat"), "w-12"),
        Column(words("Clause"), "w-20"),
        Column(words("Required")),
        Column(words("Shown by"), "w-25"),
    ]
    caption = words("System {}: what each product offered has to be, and what the supplier hands in to show it")
    rows = [row for number, layer in _open(system) for row in _rows(number, layer, words)]
    return table_view(caption.format(letter), columns, rows)


def _rows(number: int, layer: Layer, words: Words) -> Iterator[tuple[str, str, str, str]]:
    """The requirement itself in full, then each alternative with what it asks for otherwise."""
    seen: set[tuple[Asked, str]] = set()
    for id, choice in layer.required.choices() if layer.required is not None else ():
        for clause in clauses(layer, choice):
            value = clause_value(clause, words)
            if (clause.asked, value) in seen:
                continue
            seen.add((clause.asked, value))
            name = clause_name(clause, words)
            other = alternative_named(layer, id, words) if id else ""
            said = words("{clause}, alternative {named}").format(clause=name, named=other) if id else name
            yield coat_name(number, layer, words), said, value, words(_SHOWN_BY.get(clause.asked, _BY_DATA_SHEET))


def _choices(letter: str, system: System, words: Words) -> Iterator[str]:
    """What the specification does not settle: it follows from the product that is chosen."""
    coats = list(numbered(system))
    for number, layer in _open(system):
        if layer.required is not None and layer.required.alternatives:
            text = words("System {letter}, {coat}: {types}, as the supplier chooses.")
            coat = coat_name(number, layer, words)
            yield text.format(letter=letter, coat=coat, types=types_in_words(layer, words))
    for (below_at, below), (above_at, above) in pairwise(coats):
        if below.product is None and below.overcoat_interval is None:
            text = words(
                "System {letter}: the overcoating interval between {below} and {above}, for the air of this job."
            )
            names = (coat_name(below_at, below, words), coat_name(above_at, above, words))
            yield text.format(letter=letter, below=names[0], above=names[1])
    times = [
        name
        for name, stated in (
            (words("the time before handling"), system.handle_after),
            (words("the time before return to service"), system.service_after),
        )
        if stated is None
    ]
    if times:
        yield words("System {letter}: {times}.").format(letter=letter, times=words(" and ").join(times))


def _films(listed: Sequence[tuple[str, System]], figures: Quantities, words: Words) -> TableView:
    columns = [
        Column(words("System"), "w-10"),
        Column(words("Coat"), "w-25"),
        Column(words("Product")),
        Column(words("Volume of dry film"), "w-20", numeric=True),
    ]
    rows = [
        (letter, coat_name(number, layer, words), to_be_offered(layer, words), words.worked(volume))
        for letter, system in listed
        for number, layer in _open(system)
        if (volume := figures.film_volumes.get((system.id, layer.id))) is not None
    ]
    return table_view(words("Dry film on the parts, for the products that are not chosen yet"), columns, rows)
