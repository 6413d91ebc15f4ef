"""Supplemental (EUH) statements from what a mixture contains.

Called by the rules on hazards and by views. What is not known of the mixture gives NotKnown, never silence.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.tables import Row, table
from specgen.trade.codes import parts
from specgen.trade.hazard_class import Classification, Element
from specgen.trade.known import NotKnown
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_TRIGGERS = "euh_triggers"
_SENSITISATION = {"skin_sensitisation": "H317", "respiratory_sensitisation": "H334"}


class Sensitiser(NamedTuple):
    """A sensitising substance: its name, share by mass, class and category (1, 1A or 1B).

    `covered_by` is EUH204 or EUH205 where it is an isocyanate or an epoxy constituent, `limit` its specific limit.
    """

    name: str
    share: Quantity
    hazard_class: str
    category: str
    covered_by: str = ""
    limit: Quantity | None = None

    @property
    def named_from(self) -> Quantity:
        """The share from which it is named: a tenth of its specific limit, else by category (Table 3.4.6, note 1)."""
        if self.limit is not None:
            tenth = Fraction(table("elicitation_limits").row("category", "specific limit")["at_least"])
            return Quantity.of("share", self.limit.to("%") * tenth, "%")
        return Quantity.of(
            "share", Fraction(table("elicitation_limits").row("category", self.category)["at_least"]), "%"
        )

    @property
    def to_its_limit(self) -> Fraction:
        """How much of the share that classifies a mixture it reaches."""
        if self.limit is not None:
            return self.share.to("%") / self.limit.to("%")
        row = table("mixture_limits").row("id", f"{self.hazard_class}_1{'A' if self.category == '1A' else ''}")
        return self.share.to("%") / Fraction(row["at_least"])


class MixtureFacts(NamedTuple):
    """What has to be known of a mixture; None where it is not.

    `epoxy_weight` is the average molecular weight of the epoxy constituents, a bare number. `lead` and
    `titanium_dioxide` are shares by mass, the latter of particles of respirable size in a liquid.
    """

    isocyanates: bool | None
    epoxy: bool | None
    epoxy_weight: Fraction | None = None
    sensitisers: tuple[Sensitiser, ...] = ()
    dries_skin: bool = False
    lead: Quantity | None = None
    titanium_dioxide: Quantity | None = None
    contents: Quantity | None = None


def supplemental(
    facts: MixtureFacts, classifications: Sequence[Classification], market: str
) -> tuple[Element | NotKnown, ...]:
    """The EUH statements of a mixture in one market (EU, GB, US). Source: CLP Annex II.

    EUH211 comes as NotKnown in the EU: its legal ground was annulled and it needs a recorded decision.
    """
    found: list[Element | NotKnown] = []
    if facts.dries_skin:
        found.append(_element("EUH066", "the classifier expects dry or cracked skin"))
    if facts.lead is not None and facts.lead > _percent(_row("EUH201")):
        small = _row("EUH201A")
        least = Quantity.of("volume", Fraction(small["limit"]), small["unit"])
        code = "EUH201A" if facts.contents is not None and facts.contents < least else "EUH201"
        found.append(_element(code, f"contains {facts.lead} of lead"))
    if facts.isocyanates is None:
        found.append(NotKnown("EUH204", "it is not stated whether it contains isocyanates", ("isocyanates",)))
    elif facts.isocyanates:
        found.append(_element("EUH204", N_("contains isocyanates")))
    found += _epoxy(facts)
    covered = {entry.code for entry in found if isinstance(entry, Element)}
    found += _sensitisers(facts.sensitisers, covered, {entry.hazard_class for entry in classifications})
    if facts.titanium_dioxide is not None and facts.titanium_dioxide >= _percent(_row("EUH211")):
        row = _row("EUH211")
        found.append(NotKnown("EUH211", row["note"], ("the decision, with date and authority",), (), _source(row)))
    return tuple(entry for entry in found if market in parts(_row(_code(entry))["jurisdictions"]))


def _epoxy(facts: MixtureFacts) -> list[Element | NotKnown]:
    row = _row("EUH205")
    if facts.epoxy is None:
        return [NotKnown("EUH205", "it is not stated whether it contains epoxy constituents", ("epoxy",))]
    if not facts.epoxy:
        return []
    if facts.epoxy_weight is None:
        return [NotKnown("EUH205", "the average molecular weight of the epoxy is not stated", ("epoxy_weight",))]
    if facts.epoxy_weight > Fraction(row["limit"]):
        return []
    return [
        _element(
            "EUH205", phrase("epoxy constituents of an average molecular weight up to {limit}", limit=row["limit"])
        )
    ]


def _sensitisers(sensitisers: Sequence[Sensitiser], covered: set[str], classes: set[str]) -> list[Element | NotKnown]:
    """EUH208 names each substance from its elicitation limit on, but those that the class of the mixture comes from."""
    named: dict[tuple[str, str], str] = {}
    for entry in sensitisers:
        leading = entry.hazard_class in classes and _leads(entry, sensitisers)
        if entry.share >= entry.named_from and not leading and entry.covered_by not in covered:
            told = f"{entry.name}, {_SENSITISATION[entry.hazard_class]}, {entry.share}"
            named[entry.name, entry.hazard_class] = told
    row = _row("EUH208")
    return [Element("EUH208", tuple(named.values()), _source(row), "names each substance")] if named else []


def _leads(entry: Sensitiser, all_of_them: Sequence[Sensitiser]) -> bool:
    """True where the class of the mixture comes from it: it reaches its limit, or comes nearest where none does."""
    alike = [other.to_its_limit for other in all_of_them if other.hazard_class == entry.hazard_class]
    own = max(o.to_its_limit for o in all_of_them if (o.name, o.hazard_class) == (entry.name, entry.hazard_class))
    return own >= min(Fraction(1), max(alike))


def _element(code: str, reason: str) -> Element:
    row = _row(code)
    return Element(code, (reason,), _source(row), row["note"])


def _code(entry: Element | NotKnown) -> str:
    return entry.code if isinstance(entry, Element) else entry.what


def _percent(row: Row) -> Quantity:
    return Quantity.of("share", Fraction(row["limit"]), row["unit"])


def _row(code: str) -> Row:
    return table(_TRIGGERS).row("id", code)


def _source(row: Row) -> Citation:
    return table(_TRIGGERS).row_citation(row)
