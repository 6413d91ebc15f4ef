"""The film of a product as printed: its limits, the wet film for the comb, and what the paint covers at a stated film.

Called by `data_sheet` with the figures of `product_figures`.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.comb import Comb
from specgen.facts.product.coverage import Coverage
from specgen.facts.product.figures import ProductFigures
from specgen.facts.product.variants import OF_A_VARIANT, stated_anew
from specgen.model.product import PackForm, Product
from specgen.trade.working import Working
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

Numbers = Mapping[str, str]
"""The id of a working to its number in the annex."""

_LIMITS = (
    ("min", N_("DFT min.")),
    ("nominal", N_("DFT nominal")),
    ("max", N_("DFT max.")),
    ("per_pass", N_("DFT per cross coat, on a flat panel")),
    ("max_single_coat", N_("Max. DFT per coat")),
    ("sag_limit_wet", N_("Sag limit, wet film thickness (WFT)")),
    ("hiding", N_("DFT for full hiding")),
)
_AT = {"nominal": N_("nominal DFT"), "max": N_("max. DFT"), "min": N_("min. DFT")}


def film_limits(product: Product, words: Words) -> tuple[tuple[str, str], ...]:
    """(name, finished text) of every film the product states, and of its volume solids.

    What variants state anew stands with every variant in the table of them, and not here: a figure for all would be wrong for some.
    """
    by_variant = {key for key, _ in _LIMITS if key in OF_A_VARIANT and stated_anew(product, key)}
    stated = [(words(name), getattr(product.film, key)) for key, name in _LIMITS if key not in by_variant]
    solids = product.solids
    if solids is not None and product.pack.form is PackForm.LIQUID:
        stated.append((words("Volume solids"), solids.in_can if solids.in_can is not None else solids.sprayed))
    elif solids is not None:
        stated.append((words("Volume solids of the can contents"), solids.in_can))
        stated.append((words("Volume solids without propellant"), solids.sprayed))
    return tuple((name, words.phrase(value)) for name, value in stated if value is not None)


def comb_table(product: Product, figures: ProductFigures, numbers: Numbers, words: Words) -> TableView:
    """The wet film to read on the comb, for each film of a pass."""
    columns = (
        Column(words("For a DFT of"), "w-20"),
        Column(words("Variant"), "w-30"),
        Column(words("Thinner added"), "w-20", numeric=True),
        Column(words("WFT by comb gauge"), "w-20", numeric=True),
        Column(words("Calc."), "w-10"),
    )
    thinned = any(comb.thinner is not None for comb in figures.combs)
    pass_known = product.film.per_pass is not None
    caption = (
        words("Wet film thickness (WFT) per cross coat")
        if pass_known
        else words("Wet film thickness (WFT) of one coat at the nominal DFT")
    )
    return table_view(caption, columns, [_comb(comb, thinned, numbers, words) for comb in figures.combs])


def coverage_table(product: Product, figures: ProductFigures, numbers: Numbers, words: Words) -> TableView:
    """The area of a pack, for each way of working, with the film in every line."""
    can = product.pack.form is PackForm.AEROSOL
    columns = (
        Column(words("At a DFT of"), "w-25"),
        Column(words("Variant"), "w-15"),
        Column(words("Type of work") if can else words("Application method"), "w-20"),
        Column(words("Transfer efficiency") if can else words("Loss of paint"), "w-12", numeric=True),
        Column(words("Coverage per can") if can else words("Practical spreading rate"), "w-15", numeric=True),
        Column(words("Calc."), "w-10"),
    )
    caption = words("Coverage per can") if can else words("Practical spreading rate")
    return table_view(caption, columns, [_covers(line, numbers, words) for line in figures.coverage])


def stated_coverage(product: Product, words: Words) -> TableView:
    """What the maker says a pack or a litre covers. A figure without its film says nothing and is not printed."""
    columns = (
        Column(words("At a DFT of"), "w-25"),
        Column(words("Coverage per pack"), "w-20", numeric=True),
        Column(words("Spreading rate"), "w-20", numeric=True),
        Column(words("Losses")),
        Column(words("Transfer efficiency"), "w-15", numeric=True),
    )
    rows = [
        (
            words.phrase(claim.film),
            words.phrase(claim.area_per_pack),
            words.phrase(claim.spreading_rate),
            words.word(claim.losses) if claim.losses is not None else "",
            words.phrase(claim.transfer_efficiency),
        )
        for claim in product.coverage
        if claim.film is not None
    ]
    return table_view(words("Coverage stated by the manufacturer"), columns, rows)


def coverage_grounds(figures: ProductFigures, words: Words) -> str:
    """On whose word the shares of the coverage stand; empty where there is no coverage."""
    grounds = dict.fromkeys(str(line.source) for line in figures.coverage)
    return "; ".join(words(ground) for ground in grounds)


def _comb(comb: Comb, thinned: bool, numbers: Numbers, words: Words) -> tuple[str, ...]:
    thinner = words.phrase(comb.thinner) or (words("none") if thinned else "")
    return words.phrase(comb.film), comb.variants, thinner, words.film(comb.wet), numbers[comb.wet.id]


def _covers(line: Coverage, numbers: Numbers, words: Words) -> tuple[str, ...]:
    ends = list(dict.fromkeys((line.least.id, line.most.id)))
    return (
        words("{film}, {limit}").format(film=words.phrase(line.film), limit=words(_AT[line.limit])),
        line.variants,
        words(line.way),
        _shares(*line.share, words),
        _between(line.least, line.most, words),
        ", ".join(filter(None, (numbers[end] for end in ends))),
    )


def _shares(low: Quantity, high: Quantity, words: Words) -> str:
    return words.phrase(low) if low == high else words.phrase(Range("share", low, high))


def _between(least: Working, most: Working, words: Words) -> str:
    if words.worked(least) == words.worked(most):
        return words.worked(least)
    figure = words.figures(str(least.rounded))
    return words("{low} to {high}").format(low=figure, high=words.worked(most))
