"""What a product may go over by the overcoating tables, grouped by verdict and condition; and on which preparation of steel.

Only what a source holds is listed: a paint or metal that is not named is not listed, which is neither leave nor prohibition.
Called by `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.parts.preparation import grade_in_full
from specgen.documents.parts.source_marks import Marks, listed, mark
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.families import paint_name
from specgen.facts.pairs.old_paint import pass_limits
from specgen.facts.pairs.overcoat import Overcoating, Verdict, in_words, mechanism, overcoating
from specgen.model.product import Product, Role
from specgen.model.spec import Spec
from specgen.standards.tables import Row, table
from specgen.units.locale import N_

_SAID = {
    Verdict.ACCEPTED: N_("Suitable if prepared"),
    Verdict.SAME: N_("Suitable if prepared"),
    Verdict.CONDITIONAL: N_("Conditional"),
    Verdict.NOT_RECOMMENDED: N_("Not recommended"),
}
_GROUPS = ("epoxy", "pu", "vinyl_or_cr", "galvanized", "bare_steel")
_ORDER = tuple(dict.fromkeys(_SAID.values()))
_SERVICES = {
    "normal": N_("normal exposure"),
    "small spots": N_("small areas"),
    "severe": N_("immersion or severe exposure"),
    "new steel": N_("new steel"),
    "painted or pitted steel": N_("painted or pitted steel"),
}


@dataclass(frozen=True, slots=True)
class GoesOver:
    """The table; `sources` are (mark in the table, on whose word), in the order of their marks."""

    table: TableView
    sources: tuple[tuple[str, str], ...]


def goes_over(product: Product, spec: Spec, words: Words) -> GoesOver:
    """Verdict, what the product may go over, the conditions or the reason, and the mark of each source."""
    columns = (
        Column(words("Suitability"), "w-15"),
        Column(words("Existing coating or metal"), "w-35"),
        Column(words("Condition or reason"), "w-40"),
        Column(words("Source"), "w-10"),
    )
    grouped: dict[tuple[str, str], list[Overcoating]] = {}
    for verdict in _verdicts(product, spec):
        grouped.setdefault((_SAID[verdict.verdict], _why(verdict, words)), []).append(verdict)
    marks: Marks = {}
    rows = [
        (words(said), _together(found, words), _with_contrary(why, found, marks, words), _marked(found, marks, words))
        for (said, why), found in sorted(grouped.items(), key=lambda entry: _ORDER.index(entry[0][0]))
    ]
    caption = words("Suitability over existing coatings and metals, by generic type (published tables)")
    return GoesOver(table_view(caption, columns, rows), listed(marks))


def not_listed(words: Words) -> str:
    """What holds for whatever the table does not name."""
    text = words(
        "Combinations not listed here are not covered by any source: they are neither approved nor excluded. "
        "Prove them with a test patch of the full system. Acceptance criterion: {limits}."
    )
    return text.format(limits=words(pass_limits()))


def preparation_of_steel(product: Product, words: Words) -> str:
    """The least grade of bare steel below a product that goes direct to metal: its own, else those listed, by source, or empty.

    A grade is named in full once.
    """
    if not product.direct_to_metal:
        return ""
    if product.least_grade is not None:
        return grade_in_full(product.least_grade, words)
    named: set[str] = set()
    told: dict[str, list[str]] = {}
    for row in table("minimum_preparation").rows:
        if row["family"] == product.binder:
            source = words(str(table("minimum_preparation").row_citation(row)))
            told.setdefault(source, []).append(_least(row, named, words))
    return "; ".join(
        words("{grades} ({source})").format(grades="; ".join(grades), source=source) for source, grades in told.items()
    )


def _least(row: Row, named: set[str], words: Words) -> str:
    """The grades of a row with what they are for; those `named` stand by their code."""
    service = words(_SERVICES.get(row["service"], row["service"]))
    grades = []
    for grade in row["grades"].split(" or "):
        grades.append(grade if grade in named else grade_in_full(grade, words))
        named.add(grade)
    return words("{grades}: {paint}{service}").format(
        grades=words(" or ").join(grades), paint=f"{words(row['paint'])}, " if row["paint"] else "", service=service
    )


def _verdicts(product: Product, spec: Spec) -> Iterator[Overcoating]:
    """Every pair of which a table speaks, families first; fresh paint where the table speaks of that state.

    Bare metal is left out where the product's own word is that it does not go direct to metal, and a type that is not
    recommended where a product of it names this one as its next coat: that statement takes precedence over the tables.
    """
    named = {other.binder for other in spec.products.values() if any(w.next_coat == product.id for w in other.overcoat)}
    clear = set(product.roles) == {Role.CLEARCOAT}
    metals = () if not product.direct_to_metal else ("metal",)
    families = [row["id"] for row in table("binder_families").rows]
    materials = [row["id"] for row in table("materials").rows if row["kind"] in (*metals, "plastic", "wood")]
    for old in (*families, *materials):
        dry = overcoating(product.binder, old, clear=clear)
        fresh = overcoating(product.binder, old, fresh=True, clear=clear)
        for verdict in (dry, fresh) if fresh.fresh and not fresh.from_ladder else (dry,):
            if verdict.refused and old in named:
                continue
            if not verdict.from_ladder and verdict.verdict in _SAID:
                yield verdict


def _together(found: Sequence[Overcoating], words: Words) -> str:
    """The names below, a whole group of the overcoating tables by its own name."""
    below = {verdict.old: verdict for verdict in found}
    names: dict[str, str] = {}
    for group in _GROUPS:
        members = {row["member"]: row["name"] for row in table("overcoat_groups").rows if row["id"] == group}
        if len(members) > 1 and set(members) <= set(below) - set(names):
            names |= dict.fromkeys(members, words(next(iter(members.values()))))
    said = [names.get(old) or _below(verdict, words) for old, verdict in below.items()]
    return "; ".join(dict.fromkeys(said))


def _below(verdict: Overcoating, words: Words) -> str:
    name = words(paint_name(verdict.old))
    return words("{}, not yet through-dry").format(name) if verdict.fresh else name


def _with_contrary(why: str, found: Sequence[Overcoating], marks: Marks, words: Words) -> str:
    """The condition or reason, and after it every source that says otherwise."""
    contrary: dict[tuple[str, str], list[str]] = {}
    for verdict in found:
        if verdict.other is not None:
            says = (mark(words(str(verdict.other)), marks), words(verdict.other_verdict))
            contrary.setdefault(says, []).append(words(paint_name(verdict.old)))
    said = [why]
    for (number, says_so), below in contrary.items():
        on = words(" on {}").format(", ".join(below)) if len(below) < len(found) else ""
        said.append(words("sources differ{on}: {mark} states {verdict}").format(on=on, mark=number, verdict=says_so))
    return "; ".join(said)


def _marked(found: Sequence[Overcoating], marks: Marks, words: Words) -> str:
    return ", ".join(dict.fromkeys(mark(words(str(verdict.citation)), marks) for verdict in found))


def _why(verdict: Overcoating, words: Words) -> str:
    if verdict.refused:
        why = "; ".join(words(mechanism(key)["text"]) for key in verdict.mechanisms)
        way = words(in_words(verdict.needs))
        return words("{why}. Possible with: {way}").format(why=why, way=way) if way else why
    return words(verdict.asked()) or words("no conditions")
