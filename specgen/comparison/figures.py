"""The computed figures of a job or product with all they lean on, and which moved from what cause. Called by `compare` and its callers.

A figure leans on the values its workings take, directly or through others, and on the choices that lead to them: which product a
layer names, which system an item gets.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass, replace
from datetime import date
from functools import partial
from typing import Any

from specgen.comparison.changes import Change, FigureMoved, Kind
from specgen.comparison.figure_names import named_of
from specgen.comparison.renames import Renames
from specgen.facts.job.air import air_of_job
from specgen.facts.job.quantities import quantities
from specgen.facts.product.emissions import voc_let_off
from specgen.facts.product.figures import product_figures
from specgen.model.declaring import Audience
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.trade.working import Working

_CHAIN = "working:"
_PACKS = "packs."
_FOR_ALL = (".needed", ".longest")


@dataclass(frozen=True, slots=True)
class Choices:
    """The addresses of choices that lead to the figures of layers and packs, by the id of the working.

    `products`: which product and variant a layer names. `items`: which items get the system.
    """

    products: Mapping[str, frozenset[str]] = field(default_factory=dict)
    items: Mapping[str, frozenset[str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of one job or product, by their ids: what each is called, and the figure as printed.

    `leans_on` gives the addresses in the sources that a figure comes from, through whatever other figures; its second argument
    asks for what the figure would not be there without as well: the items that get the system. `named` is what a reader calls the
    job or product. `makers` are those whose name or result tells of the composition. `told` says of an id which record it is of.
    """

    shown: Mapping[str, tuple[str, str]]
    leans_on: Callable[[str, bool], frozenset[str]]
    named: str = ""
    makers: frozenset[str] = frozenset()
    told: Callable[[str], str] = str


class _Leaning:
    """What the figures of a job or product lean on, gathered when it is asked for: few move.

    `counted` are those summed over the items of a job.
    """

    def __init__(
        self, workings: Mapping[str, Working], choices: Callable[[], Choices], counted: frozenset[str] = frozenset()
    ) -> None:
        self.workings = workings
        self._counted = counted
        self._choices = choices
        self._chosen: Choices | None = None
        self._known: dict[str, frozenset[str]] = {}

    def on(self, id: str, is_there_at_all: bool) -> frozenset[str]:
        if self._chosen is None:
            self._chosen = self._choices()
        found = _origins(self.workings[id], self.workings, self._chosen.products, self._known)
        # packs are counted over items, everything else is the same for one item as for two
        counted = is_there_at_all or _PACKS in id or id in self._counted
        return found | self._chosen.items.get(id, frozenset()) if counted else found


NO_FIGURES = Figures({}, _Leaning({}, Choices).on)


def figures_of_job(job: Job, spec: Spec, on: date) -> Figures:
    """Every figure of a job; `on` is the day whose limits of exposure hold."""
    found = quantities(job, spec)
    let_off = {entry.id: entry for entry in voc_let_off(job, spec, found.packs)}
    workings = {entry.id: entry for entry in found.workings()} | let_off
    air = {entry.id: entry for entry in _workings_in(air_of_job(job, spec, on))} if job.ventilation is not None else {}
    # the air for one vapour names a substance of the composition; what all of them ask for together does not
    makers = frozenset(id for id in air if not id.endswith(_FOR_ALL))
    choices = partial(_choices, job, spec, workings, frozenset(let_off))
    number = job.document.number
    leaning = _Leaning(workings | air, choices, frozenset(let_off))
    told = partial(named_of, spec=spec, left_out=(job.id,))
    return Figures(_shown(leaning.workings), leaning.on, number, makers, told)


def figures_of_product(product: Product, spec: Spec, on: date) -> Figures:
    """Every figure of a product by itself: its comb, its coverage, its VOC and what stands behind its label."""
    found = product_figures(product, spec, on)
    workings = {entry.id: entry for entry in found.workings()}
    told = partial(named_of, spec=spec, left_out=())
    return Figures(_shown(workings), _Leaning(workings, Choices).on, product.name, found.makers(), told)


def _shown(workings: Mapping[str, Working]) -> dict[str, tuple[str, str]]:
    return {id: (working.name, working.printed()) for id, working in workings.items()}


def moved(
    subjects: Iterable[tuple[str, str, Figures, Figures]], changes: Iterable[Change], renames: Renames
) -> tuple[FigureMoved, ...]:
    """Figures that are printed otherwise or stand on one side only: of each job or product (its kind and id) the old and new ones."""
    called = {path[-1]: now for path, now in renames.items()}
    causes = _Causes(changes)
    alike: dict[tuple[str, str, str], FigureMoved] = {}
    for kind, subject, old, new in subjects:
        jobs, products = ((subject,), ()) if kind == "jobs" else ((), (subject,))
        where = (new.named or old.named or subject,)
        was = {_now(key, called): key for key in old.shown}
        for key in dict.fromkeys((*was, *new.shown)):
            before, after = old.shown.get(was.get(key, "")), new.shown.get(key)
            printed = (before[1] if before else "", after[1] if after else "")
            shown = after or before
            if shown is None or printed[0] == printed[1]:
                continue
            makers_own = was.get(key) in old.makers or key in new.makers
            alone = before is None or after is None
            sides = ((old, was.get(key, "")), (new, key))
            held = [side.leans_on(own, alone) for side, own in sides if own in side.shown]
            named, makers = causes.of(frozenset().union(*held))
            first = alike.get((key, *printed))
            if first is None:
                told = new.told(key) if after else old.told(was[key])
                alike[key, *printed] = FigureMoved(
                    key, shown[0], *printed, jobs, products, where, named, makers, makers_own, told
                )
            else:
                alike[key, *printed] = replace(
                    first,
                    jobs=(*first.jobs, *jobs),
                    products=(*first.products, *products),
                    where=(*first.where, *where),
                    causes=tuple(dict.fromkeys((*first.causes, *named))),
                    makers_cause=first.makers_cause or makers,
                    is_makers=first.is_makers or makers_own,
                )
    return tuple(alike.values())


def _now(key: str, called: Mapping[str, str]) -> str:
    """The id of a figure of the old side with the ids in it as the new side calls them."""
    return "".join(called.get(piece, piece) for piece in re.split(r"([./])", key)) if called else key


class _Causes:
    """The changes, found by the address of anything below or above them."""

    def __init__(self, changes: Iterable[Change]) -> None:
        self.at: dict[str, list[Change]] = {}
        for change in changes:
            for path in {change.difference.path, change.difference.old_path}:
                self.at.setdefault(".".join(path), []).append(change)

    def of(self, leans_on: Iterable[str]) -> tuple[tuple[str, ...], bool]:
        found: dict[str, Change] = {}
        for address in sorted(leans_on):
            steps = address.split(".")
            for length in range(2, len(steps) + 1):
                for change in self.at.get(".".join(steps[:length]), ()):
                    # a value deep in an entry is moved by the entry coming or going, not by another value above it
                    if length == len(steps) or change.difference.kind in {Kind.ADDED, Kind.REMOVED}:
                        found.setdefault(change.path, change)
        shown = tuple(path for path, change in found.items() if change.difference.audience is Audience.CUSTOMER)
        return shown, len(shown) < len(found)


def _origins(
    working: Working,
    workings: Mapping[str, Working],
    chosen: Mapping[str, frozenset[str]],
    known: dict[str, frozenset[str]],
) -> frozenset[str]:
    if working.id in known:
        return known[working.id]
    # set first: a chain that bit its own tail would not end
    known[working.id] = chosen.get(working.id, frozenset())
    gathered = set(known[working.id])
    for given in working.inputs:
        if not given.origin.startswith(_CHAIN):
            gathered.add(given.origin)
        elif (below := workings.get(given.origin.removeprefix(_CHAIN))) is not None:
            gathered |= _origins(below, workings, chosen, known)
    known[working.id] = frozenset(gathered)
    return known[working.id]


def _choices(job: Job, spec: Spec, workings: Mapping[str, Working], let_off: frozenset[str]) -> Choices:
    """The choices behind the figures of layers and packs, behind what those build on, and behind the VOC `let_off`."""
    found = quantities(job, spec)
    products: dict[str, set[str]] = {}
    items: dict[str, set[str]] = {}
    for painted in spec.systems_of(job):
        placed = [f"jobs.{job.id}.items.{item.id}" for item in job.items if spec.system_of(job, item) is painted]
        led = {f"jobs.{job.id}.system", *placed, *(f"{item}.system" for item in placed)}
        for coat in painted.layers:
            at = f"systems.{painted.id}.layers.{coat.id}"
            key = (painted.id, coat.id)
            pack = found.packs.get((coat.product or "", coat.variant))
            for working in (found.wet_targets.get(key), found.wet_thinnest.get(key), found.layer_packs.get(key), pack):
                if working is not None:
                    _lead(working, workings, {at, f"{at}.product", f"{at}.variant"}, products)
                    _lead(working, workings, led, items)
    for id in let_off:
        for choices in (products, items):
            choices[id] = set().union(*(choices.get(below, set()) for below in _below(workings[id], workings)))
    return Choices(*({key: frozenset(held) for key, held in by_id.items()} for by_id in (products, items)))


def _lead(working: Working, workings: Mapping[str, Working], led: set[str], chosen: dict[str, set[str]]) -> None:
    """The figure and everything below it would not be there without these choices."""
    waiting = [working]
    while waiting:
        entry = waiting.pop()
        known = chosen.setdefault(entry.id, set())
        if led <= known:
            continue
        known |= led
        below = (workings.get(given.origin.removeprefix(_CHAIN)) for given in entry.inputs)
        waiting.extend(found for found in below if found is not None)


def _below(working: Working, workings: Mapping[str, Working]) -> Iterator[str]:
    """The ids of all a figure builds on, through others."""
    for given in working.inputs:
        below = workings.get(given.origin.removeprefix(_CHAIN)) if given.origin.startswith(_CHAIN) else None
        if below is not None:
            yield below.id
            yield from _below(below, workings)


def _workings_in(value: Any) -> Iterator[Working]:
    """Every working anywhere in a record of finished arithmetic."""
    if isinstance(value, Working):
        yield value
    elif isinstance(value, tuple | list):
        for entry in value:
            yield from _workings_in(entry)
    elif is_dataclass(value) and not isinstance(value, type):
        for held in fields(value):
            yield from _workings_in(getattr(value, held.name))
