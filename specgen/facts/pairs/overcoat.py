"""May this coat go over that one? The published matrix looked up for a pair of families, then the ladder of practice.

A pair that nobody lists is not listed: it is never accepted by that, nor refused. Called by the rules on old paint and on
layers, by the method statement and by the data sheet ("what it may go over").
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from enum import StrEnum
from typing import NamedTuple

from specgen.facts.pairs.families import NOT_NAMED, ZINC_RICH, binder_family, paint_name
from specgen.standards.citations import LOGIC, PRACTICE, Basis, Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, cell_citation, table
from specgen.units.locale import listed, phrase

# From what anybody may look up to what nobody wrote down; a verdict weighs as the weakest word it rests on.
_STRENGTH = (
    Basis.LOGIC,
    Basis.REGULATION,
    Basis.PUBLISHED,
    Basis.POLICY,
    Basis.ARITHMETIC,
    Basis.SECONDARY,
    Basis.PRACTICE,
    Basis.MEMORY,
)
ZINC = ZINC_RICH | {"galvanized_hot_dip", "galvanized_electro"}
_CLEAR = "pu_clear"


class Verdict(StrEnum):
    """What is said of a pair; the values are those of the table overcoat_matrix, and the last one its silence."""

    ACCEPTED = "accepted"
    CONDITIONAL = "conditional"
    NOT_RECOMMENDED = "not recommended"
    SAME = "same material"
    NOT_LISTED = "not listed"


class Overcoating(NamedTuple):
    """The verdict on a new coat over an old one.

    `needs` are ids of overcoat_needs: all entries, of each entry one. On a pair not recommended they would make it possible.
    `by_likeness` says which family was taken for which, `other` is the source that says `other_verdict` instead.
    """

    new: str
    old: str
    fresh: bool
    verdict: Verdict
    needs: tuple[tuple[str, ...], ...] = ()
    need_words: str = ""
    mechanisms: tuple[str, ...] = ()
    citation: Citation = PRACTICE
    other_verdict: str = ""
    other: Citation | None = None
    remark: str = ""
    by_likeness: str = ""
    from_ladder: bool = False

    @property
    def patch_test(self) -> bool:
        """True where the pair asks for a patch test."""
        return ("patch_test",) in self.needs

    @property
    def refused(self) -> bool:
        return self.verdict is Verdict.NOT_RECOMMENDED

    def spoken(self) -> str:
        """The pair and what is said of it, in words: `two-pack epoxy over vinyl is not recommended: strong solvent ...`."""
        said = {
            Verdict.ACCEPTED: "is accepted",
            Verdict.CONDITIONAL: "is accepted on conditions",
            Verdict.NOT_RECOMMENDED: "is not recommended",
            Verdict.SAME: "is accepted as the same material",
            Verdict.NOT_LISTED: "is not listed",
        }[self.verdict]
        state = "fresh " if self.fresh else ""
        text = f"{paint_name(self.new)} over {state}{paint_name(self.old)} {said}"
        why = "; ".join(mechanism(key)["text"] for key in self.mechanisms) if self.refused else ""
        if why:
            text = f"{text}: {why}"
        if self.by_likeness:
            text = f"{text} ({self.by_likeness})"
        if self.other is not None:
            text = f"{text}; sources differ: {self.citation} states {self.verdict}, {self.other} states {self.other_verdict}"
        return text

    def asked(self) -> str:
        """The conditions in words, `abrade the old coat dull; patch test with a written pass limit`."""
        return in_words(self.needs)


@remembered
def overcoating(new: str, old: str, *, fresh: bool = False, clear: bool = False) -> Overcoating:
    """The verdict on the family `new` over `old`, a family or an id of materials.

    `fresh`: the old coat is not hard through. `clear`: the new coat is a clear coat. Raises KeyError for a family not known.
    """
    binder_family(new)
    found = next(_rows(new, old, fresh, clear), None)
    return _from_ladder(new, old, fresh) if found is None else _from_row(new, old, found)


def on_rub(new: str, rub: str) -> Overcoating:
    """The verdict where only the solvent rub (a class of rub_test_classes) tells what the old paint is."""
    strong = binder_family(new)["solvent_strength"] == "strong"
    ground = weakest(
        cell_citation("binder_families", new, "solvent_strength"), table_row("old_paint_tests", "rub_test")
    )
    base = Overcoating(new, rub, False, Verdict.NOT_LISTED, citation=PRACTICE, from_ladder=True)
    if rub == "soluble" and strong:
        return base._replace(verdict=Verdict.NOT_RECOMMENDED, mechanisms=("lifting",), citation=ground)
    needs = (("abrade",),) if rub == "resistant" else (("abrade",), ("patch_test",))
    return base._replace(verdict=Verdict.CONDITIONAL, needs=needs)


def in_words(needs: Iterable[tuple[str, ...]], papers: str = "") -> str:
    """Needs as a painter reads them: all of them, of each one. `papers` names a row of sanding_stages for what is abraded."""
    texts = {row["id"]: row["text"] for row in table("overcoat_needs").rows}
    if papers:
        task = table("sanding_stages").row("id", papers)
        texts["abrade"] = phrase(
            "{abrade} with P{coarsest} to P{finest}",
            abrade=phrase(texts["abrade"]),
            coarsest=task["coarsest_p"],
            finest=task["finest_p"],
        )
    choices = [listed("{first} or {more}", [texts[need] for need in choice]) for choice in needs]
    return listed("{first}; {more}", choices)


def mechanism(key: str) -> Row:
    """How coats fail on each other, the first row of that id."""
    return next(row for row in table("mechanisms").rows if row["id"] == key)


def table_row(name: str, key: str) -> Citation:
    """On whose word a row stands, by its first cell."""
    return table(name).row_citation(table(name).row(table(name).columns[0], key))


def weakest(*citations: Citation) -> Citation:
    """The one that weighs least; the first of several that weigh the same."""
    return max(citations, key=lambda citation: _STRENGTH.index(citation.basis))


class _Found(NamedTuple):
    row: Row
    new_group: Row | None
    old_group: Row | None


def _rows(new: str, old: str, fresh: bool, clear: bool) -> Iterator[_Found]:
    """The rows that speak of the pair, the nearest first: a state before none, the pair itself before a group."""
    of_new, of_old = _names(new), _names(old)
    if not clear:
        of_new.pop(_CLEAR, None)
    elif _CLEAR in of_new:
        of_new = {_CLEAR: of_new[_CLEAR], **of_new}
    # a row for a preferred state says what is better, not what is on the part
    for state in ("fresh", "") if fresh else ("", "preferred"):
        for name, new_group in of_new.items():
            for under, old_group in of_old.items():
                for row in table("overcoat_matrix").rows:
                    if (row["new"], row["old"], row["state"]) == (name, under, state):
                        yield _Found(row, new_group, old_group)


def _names(key: str) -> dict[str, Row | None]:
    """What the matrix may call it: its own id, then its groups from the narrowest to the widest."""
    groups = table("overcoat_groups").rows
    sizes = Counter(row["id"] for row in groups)
    own = sorted((row for row in groups if row["member"] == key), key=lambda row: sizes[row["id"]])
    return {key: None, **{row["id"]: row for row in own}}


def _from_row(new: str, old: str, found: _Found) -> Overcoating:
    row = found.row
    groups = [group for group in (found.new_group, found.old_group) if group is not None]
    cited = weakest(
        table("overcoat_matrix").row_citation(row), *(table("overcoat_groups").row_citation(group) for group in groups)
    )
    other = Citation(Basis.SECONDARY, row["other_document"]) if row["other_document"] else None
    says = table("overcoat_matrix").row_citation(row)
    alike = [
        phrase(
            "{paint} is treated as {family}",
            paint=phrase(paint_name(group["member"])),
            family=phrase(group["name"].split(",")[0]),
        )
        for group in groups
        if not table("overcoat_groups").row_citation(group).basis.confirmed
    ]
    likeness = listed("{first} and {more}", list(dict.fromkeys(alike)))
    if likeness and says.document:
        likeness = phrase("{likeness}, as covered by {says}", likeness=phrase(likeness), says=phrase(str(says)))
    return Overcoating(
        new,
        old,
        row["state"] == "fresh",
        Verdict(row["verdict"]),
        _needs(row["needs"]),
        row["need_words"],
        tuple(name.strip() for name in row["mechanisms"].split(",") if name.strip()),
        cited,
        row["other_verdict"],
        other,
        row["remark"],
        likeness,
    )


def _needs(cell: str) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(choice.strip().split(" or ")) for choice in cell.split(";") if choice.strip())


def _from_ladder(new: str, old: str, fresh: bool) -> Overcoating:
    """Step by step what practice says of a pair that no table lists."""
    family = {row["id"]: row for row in table("binder_families").rows}
    bite, sensitive = family[new]["solvent_strength"], family[new]["alkali_sensitive"] == "yes"
    base = Overcoating(new, old, fresh, Verdict.NOT_LISTED, from_ladder=True, citation=LOGIC)
    if NOT_NAMED in (new, old):
        return base
    if sensitive and old in ZINC:
        return _refuse(base, "saponification")
    if old not in family:
        return base
    rub, oxidative = family[old]["cured_rub"], family[old]["cure"] == "oxidative"
    if rub == "soluble" and bite == "strong":
        return _refuse(base, "lifting")
    if oxidative and fresh and bite in {"strong", "medium"}:
        return _refuse(base, "lifting")
    if oxidative and bite == "strong":
        return _on_conditions(base, ("aged_hard",), ("abrade",), ("patch_test",))
    if rub == "resistant":
        return _on_conditions(base, ("abrade", "in_window"))
    if rub == "soluble" and bite == "weak":
        return _on_conditions(base, ("abrade",), ("patch_test",))
    return base


def _refuse(base: Overcoating, by: str) -> Overcoating:
    return base._replace(verdict=Verdict.NOT_RECOMMENDED, mechanisms=(by,), citation=PRACTICE)


def _on_conditions(base: Overcoating, *needs: tuple[str, ...]) -> Overcoating:
    return base._replace(verdict=Verdict.CONDITIONAL, needs=needs, citation=PRACTICE)
