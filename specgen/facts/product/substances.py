"""What the published tables say of a substance by its registry number: harmonised class, limits, physical data, limits at work.

The one place where a component is followed into all of them. A substance that was looked up and has no harmonised entry is
told apart from one that was never looked up; neither is free of hazards for it. Called by rules on hazards and by the pages
that name substances.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from enum import Enum, auto
from typing import NamedTuple

from specgen.facts.product.harmonised import classes_of, harmonised
from specgen.facts.product.hazard_facts import table_row
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.exposure import ExposureLimit, exposure_limits, laws_with_limits
from specgen.trade.hazard_class import Classification

_TABLE = "harmonised_classes"
_NUMBER = re.compile(r"[0-9]{2,7}-[0-9]{2}-[0-9]")
# What stands in brackets and names no single substance.
_NO_NAMES = frozenset({"impurity", "group entry", "solid", "liquid", "isomers", "monomer", "white spirit"})
_NAMED_IN = (("harmonised_classes", "name"), ("heat_of_combustion", "name"), ("exposure_limits", "substance"))


class Standing(Enum):
    """Whether the law has a class of its own for a substance."""

    ENTRY = auto()
    NO_ENTRY = auto()
    NOT_LOOKED_UP = auto()
    NO_NUMBER = auto()


class Substance(NamedTuple):
    """What the tables hold for one registry number on a day.

    `entry` is the row of harmonised_classes in force, `coming` the one that follows it, `classes` those that hold without
    proof. `estimates` are those of acute toxicity by route (oral, dermal, vapour, mist, gas). `physical` is its row of
    physical_data.
    """

    cas: str
    standing: Standing
    name: str
    group: str
    entry: Row | None
    coming: Row | None
    classes: tuple[Classification, ...]
    estimates: Mapping[str, str]
    supplemental: tuple[str, ...]
    physical: Row | None

    def at_work(self, jurisdictions: Sequence[str], on: date) -> tuple[ExposureLimit, ...]:
        """Its limits of exposure under the laws named, on a day; empty where none was read."""
        laws = laws_with_limits(jurisdictions)
        return tuple(limit for law in laws for limit in exposure_limits(law, on, self.cas))


def substance(cas: str, on: date) -> Substance:
    """All that the tables say of a registry number. Sources: CLP Annex VI, Table 3, and the tables of each figure."""
    rows = rows_of(cas)
    entry = harmonised(cas, on)
    later = sorted((row for row in rows if row["from"] > on.isoformat()), key=lambda row: row["from"])
    if entry is not None:
        standing = Standing.ENTRY
    elif rows:
        standing = Standing.NO_ENTRY
    else:
        standing = Standing.NOT_LOOKED_UP if cas else Standing.NO_NUMBER
    estimates = [cell.split(" ", 1) for cell in entry["ate"].split(", ") if cell] if entry is not None else []
    return Substance(
        cas,
        standing,
        rows[0]["name"] if rows else "",
        rows[0]["group"] if rows else "",
        entry,
        later[0] if later else None,
        classes_of(entry) if entry is not None else (),
        {cell[0]: cell[1] for cell in estimates},
        tuple(entry["supplemental"].split()) if entry is not None else (),
        table_row("physical_data", "cas", cas) if cas else None,
    )


def is_registry_number(text: str) -> bool:
    """True where the last digit is the one that the others give: counted from the right, each times its place, modulo ten."""
    if not _NUMBER.fullmatch(text):
        return False
    *digits, check = (int(sign) for sign in text if sign != "-")
    return sum(place * digit for place, digit in enumerate(reversed(digits), start=1)) % 10 == check


def numbers_of(name: str) -> frozenset[str]:
    """The registry numbers that the tables give for a name as it stands; none where no table knows it."""
    return _by_name().get(_plain(name), frozenset())


def names_of(cas: str) -> frozenset[str]:
    """The names that the tables give for a registry number, in small letters."""
    return frozenset(name for name, numbers in _by_name().items() if cas in numbers)


def rows_of(cas: str) -> tuple[Row, ...]:
    """The rows of a registry number in harmonised_classes, those not in force among them; none where it was not looked up."""
    return _by_number().get(cas, ())


@remembered
def _by_number() -> Mapping[str, tuple[Row, ...]]:
    found: dict[str, tuple[Row, ...]] = {}
    for row in table(_TABLE).rows:
        if row["cas"]:
            found[row["cas"]] = (*found.get(row["cas"], ()), row)
    return found


@remembered
def _by_name() -> Mapping[str, frozenset[str]]:
    found: defaultdict[str, set[str]] = defaultdict(set)
    for name, column in _NAMED_IN:
        for row in table(name).rows:
            for part in re.split(r" \(|\)$", row[column]) if row["cas"] else ():
                if _plain(part) and _plain(part) not in _NO_NAMES:
                    found[_plain(part)].add(row["cas"])
    return {name: frozenset(numbers) for name, numbers in found.items()}


def _plain(name: str) -> str:
    return " ".join(name.casefold().split()).removesuffix(", isomers").removesuffix(" monomer")
