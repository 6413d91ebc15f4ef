"""The film readings of a report: what the rule accepts, what was read, item by item, plots, and other rules. Called by `view`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from specgen.assessing.results import Assessment, LessBefore, Lot, Reason, SpotRead, Verdict
from specgen.assessing.wording import accepted_text, film_in_column, film_text, names, outside, reason_text, spot_text
from specgen.documents.parts.inspection import limits, run_on
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.zinc_beneath import zinc_point
from specgen.figures.film_plots import Group, Limit, Mark, histogram, spot_plot
from specgen.model.spec import Spec
from specgen.units.display import unit_sign

MOST_SPOTS = 240
"""Spots of one lot that are printed; those of a larger one stand in the files alone, but for those outside."""
_DASHES = {"min": "7 3", "max": "7 3", "nominal": "2 3"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """`drawing` is SVG; `text` says the same in words."""

    drawing: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LotView:
    """One lot: what is asked, what was read, and how it looks. `more` says what is left out."""

    title: str
    verdict: str
    asked: str
    accepted: str
    unconfirmed: str
    conceded: str
    by_item: TableView
    deducted: str
    plots: tuple[Drawing, ...]
    others: TableView
    spots: TableView
    dropped: TableView
    more: str


def lot_views(found: Assessment, spec: Spec, words: Words) -> tuple[LotView, ...]:
    return tuple(_view(lot, found, spec, words) for lot in found.lots if lot.area.count)


def _view(lot: Lot, found: Assessment, spec: Spec, words: Words) -> LotView:
    verdict = lot.judged.verdict if lot.judged is not None else Verdict.NOT_DECIDED
    title = words("{point}, area {area}").format(point=lot.point.check, area=lot.name) if lot.name else lot.point.check
    less = {at.item.id: at.less for at in found.results if at.less is not None and lot in at.lots}
    spots, more = _printed(lot, less, words)
    basis = lot.counting.unconfirmed if lot.counting is not None else None
    return LotView(
        title=title,
        verdict=words(verdict.value),
        asked=run_on(
            "\n".join(text for text in (limits(lot.point, found.job, spec, words), lot.point.criterion.text) if text)
        ),
        accepted=words(accepted_text(lot.counting, lot.unit)) if lot.counting is not None else words(lot.why),
        unconfirmed=words("limits of this rule: {basis}").format(basis=words(basis.value)) if basis is not None else "",
        conceded="; ".join(_conceded(lot, found, words)),
        by_item=_by_item(lot, less, words),
        deducted="; ".join(_deducted(lot, less, found, words)),
        plots=tuple(plot for plot in _plots(lot, words) if plot.drawing),
        others=_others(lot, words),
        spots=spots,
        dropped=_dropped(lot, words),
        more=more,
    )


def _reasons(lot: Lot) -> tuple[Reason, ...]:
    return lot.judged.reasons if lot.judged is not None else ()


def _inside(lot: Lot) -> set[str]:
    """The spots at which nothing is outside its limits."""
    return {spot.name for spot in lot.spots} - outside(_reasons(lot))


def _conceded(lot: Lot, found: Assessment, words: Words) -> Iterator[str]:
    """Which items of the lot conform under a concession, and which one it is."""
    for at in found.results:
        if at.point is lot.point and at.item.id in lot.items and lot in at.lots and at.conceded:
            yield words("{item} under the concession {id}").format(
                item=at.item.id, id=", ".join(one.id for one in at.conceded)
            )


def _by_item(lot: Lot, less: Mapping[str, LessBefore], words: Words) -> TableView:
    columns = [
        Column(words("Item"), "w-12"),
        Column(words("Spots"), "w-8", numeric=True),
        Column(words("Readings"), "w-10", numeric=True),
        Column(words("Mean of the spots"), "w-12", numeric=True),
        Column(words("Lowest reading"), "w-12", numeric=True),
        Column(words("Highest reading"), "w-12", numeric=True),
        Column(words("Lowest, deducted"), "w-12", numeric=True),
        Column(words("Highest, deducted"), "w-12", numeric=True),
    ]
    means = dict(lot.area.means)
    rows: list[tuple[str, ...]] = []
    for item in lot.items:
        mine = [spot for spot in lot.spots if spot.item == item]
        if not mine:
            rows.append((item, "0", "0", words("not read"), "", "", "", ""))
            continue
        low, high = lot.area.ends({spot.name for spot in mine})
        mean = sum((means[spot.name] for spot in mine), Fraction(0)) / len(mine)
        read = str(sum(len(spot.readings) for spot in mine))
        shown = (film_in_column(film, lot.unit) for film in (mean, low, high))
        left = [spot.left for spot in less[item].spots] if item in less else []
        ends = [film_in_column(end(left), lot.unit) for end in (min, max)] if left else ["", ""]
        rows.append((item, str(len(mine)), read, *shown, *ends))
    if lot.judged is not None and lot.judged.mean is not None and len(lot.items) > 1:
        low, high = min(lot.area.values), max(lot.area.values)
        counts = (str(len(lot.spots)), str(lot.area.count), lot.judged.mean.printed(words.translate))
        rows.append((words("together"), *counts, film_in_column(low, lot.unit), film_in_column(high, lot.unit), "", ""))
    return table_view(words("What was read, by item"), columns, rows, empty="–")


def _deducted(lot: Lot, less: Mapping[str, LessBefore], found: Assessment, words: Words) -> Iterator[str]:
    """What is taken off every reading, and off each spot with what is asked of the rest, once for all items that share it."""
    zinc = zinc_point(lot.point, found.job)
    if zinc is not None:
        yield words("the mean of each part from {check}, off every reading").format(check=zinc.check)
    text = words("{check} at the same spot; required of what is left: {range}")
    yield from dict.fromkeys(
        text.format(check=one.before.check, range=words.phrase(one.asked)) for one in less.values()
    )


def _plots(lot: Lot, words: Words) -> Iterator[Drawing]:
    lines = tuple(_limits(lot, words))
    unit, inside = unit_sign(lot.unit), _inside(lot)
    means = dict(lot.area.means)
    groups: dict[str, list[SpotRead]] = {}
    for spot in lot.spots:
        groups.setdefault(" ".join(text for text in (spot.item, spot.part) if text), []).append(spot)
    out = len(lot.spots) - len(inside)
    told = words("no spot is outside its limits")
    if out:
        told = words.plural("{number} spot is outside its limits", "{number} spots are outside their limits", out)
    if len(lot.spots) <= MOST_SPOTS:
        text = words(
            "Every spot: its mean as a dot (outside a limit as an open square), its readings as a line; {told}."
        ).format(told=told)
        marks = [
            Group(name, tuple(_mark(lot, [spot], means, inside) for spot in spots)) for name, spots in groups.items()
        ]
        yield Drawing(drawing=spot_plot(marks, lines, unit, text), text=text)
    if len(groups) > 1:
        text = words("Every part: the mean of its spots as a dot, its readings as a line; {told}.").format(told=told)
        if len(groups) <= MOST_SPOTS:
            marks = [Group(name, (_mark(lot, spots, means, inside),)) for name, spots in groups.items()]
            yield Drawing(drawing=spot_plot(marks, lines, unit, text), text=text)
    text = words("How many readings of each film: {count} readings from {low} to {high}.").format(
        count=lot.area.count,
        low=film_text(min(lot.area.values), lot.unit),
        high=film_text(max(lot.area.values), lot.unit),
    )
    films = [(float(value), count) for value, count in sorted(lot.area.values.items())]
    axes = (words("DFT, {unit}").format(unit=unit), words("Number of readings"))
    yield Drawing(drawing=histogram(films, lines, *axes, text), text=text)


def _mark(lot: Lot, spots: Sequence[SpotRead], means: dict[str, Fraction], inside: set[str]) -> Mark:
    of = {spot.name for spot in spots}
    low, high = lot.area.ends(of)
    mean = sum((means[name] for name in of), Fraction(0)) / len(of)
    return Mark(float(mean), float(low), float(high), of <= inside)


def _limits(lot: Lot, words: Words) -> Iterator[Limit]:
    called = {"min": words("min {film}"), "nominal": words("nominal {film}"), "max": words("max {film}")}
    for name, text in called.items():
        film = getattr(lot.criterion, name)
        if film is not None:
            number = film.to(lot.unit)
            yield Limit(float(number), text.format(film=film_text(number, lot.unit)), _DASHES[name])


def _others(lot: Lot, words: Words) -> TableView:
    columns = [Column(words("Rule"), "w-30"), Column(words("Would come to"), "w-20"), Column(words("Because"))]
    rows = []
    for other in lot.others:
        if other.judged is None:
            rows.append((words(other.rule), words("cannot be told"), words(other.why)))
            continue
        marked = words("not verified against the published text") if other.unconfirmed else ""
        why = "\n".join(words(reason_text(reason, lot.unit)) for reason in other.judged.reasons)
        verdict = words(other.judged.verdict.value)
        rows.append(
            (words(other.rule), f"{verdict}\n({marked})" if marked else verdict, why or words("nothing against it"))
        )
    return table_view(words("The same readings under other common rules"), columns, rows)


def _printed(lot: Lot, less: Mapping[str, LessBefore], words: Words) -> tuple[TableView, str]:
    """Every spot, with what is left where something is deducted; of very many those of which something is told."""
    means = dict(lot.area.means)
    left = {spot.name: spot for one in less.values() for spot in one.spots}
    every = (*_reasons(lot), *(reason for one in less.values() for reason in one.judged.reasons))
    told = {name for reason in every for name in reason.at}
    shown = lot.spots if len(lot.spots) <= MOST_SPOTS else [spot for spot in lot.spots if spot.name in told]
    more = ""
    if len(shown) < len(lot.spots) or len(shown) > MOST_SPOTS:
        text = words(
            "{count} spots were read; those of which something is told are printed, up to {most}; all stand in the files."
        )
        more = text.format(count=len(lot.spots), most=MOST_SPOTS)
    columns = [
        Column(words("Part and spot"), "w-20"),
        Column(words("Readings, {unit}").format(unit=unit_sign(lot.unit))),
        Column(words("Spot measurement"), "w-15", numeric=True),
        Column(words("To be deducted"), "w-15", numeric=True),
        Column(words("What is left"), "w-15", numeric=True),
        Column(words("Result"), "w-15"),
    ]
    rows = [
        (
            spot.name,
            names(film_in_column(value, lot.unit).partition("\N{NO-BREAK SPACE}")[0] for value in spot.readings),
            film_in_column(means[spot.name], lot.unit),
            *(
                [film_in_column(film, lot.unit) for film in (left[spot.name].before, left[spot.name].left)]
                if spot.name in left
                else ["", ""]
            ),
            words(spot_text(every, spot.name)),
        )
        for spot in shown[:MOST_SPOTS]
    ]
    return table_view(words("Every spot"), columns, rows, empty="–"), more


def _dropped(lot: Lot, words: Words) -> TableView:
    columns = [
        Column(words("Row"), "w-10", numeric=True),
        Column(words("Reading"), "w-15"),
        Column(words("Dropped by"), "w-20"),
        Column(words("Why")),
    ]
    rows = [(str(one.row), one.text("value"), one.text("dropped_by"), one.text("dropped_why")) for one in lot.dropped]
    return table_view(words("Readings dropped by a person"), columns, rows)
