"""What a change is about, in words taken from the model: what its leaf is for, and the names of the entries on its path.

Called by `sentences`. A new leaf or record needs nothing here: its declaration names it.
"""

from __future__ import annotations

import re
from dataclasses import replace
from enum import Enum
from functools import cache

from specgen.comparison.changes import Difference, Kind, Owner
from specgen.comparison.effects import is_entry
from specgen.model.drying import Drying, OvercoatWindow, PotLifeAt, SandableAfter, Stoving
from specgen.model.job import Item, Job, OldCoat, Ordered
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.product import ComponentClass, Coverage, Product, VocCategory
from specgen.model.system import Layer
from specgen.model.test_report import DoneTest, LabReport
from specgen.model.walk import declaration, inner_record
from specgen.standards.reads import remembered
from specgen.units.display import show, show_range
from specgen.units.locale import N_, Locale
from specgen.units.quantity import Range

# From here on a remark for editors says how to write the value, not what it is.
_TAIL = re.compile(r"(, (as in|where|if|or |an id|under |in words|printed |type and|material and)|; | \(|: ).*")
# Where the name of a record is no noun an entry can be called by.
_NOUNS: dict[type[Node], str] = {
    Ordered: "order line",
    Drying: "drying stage",
    SandableAfter: "minimum time before sanding",
    PotLifeAt: "pot life",
    Stoving: "stoving",
    Coverage: "claim of coverage",
    VocCategory: "VOC category",
    ComponentClass: "hazard class",
    Layer: "coat",
    OldCoat: "existing coat",
    OvercoatWindow: "overcoating interval",
    LabReport: "test report",
    DoneTest: "test",
}
_LEANS = re.compile(
    r"[(,]| (to|in|before|after|between|by|on|with|from|for|of|at|above|below|without"
    r"|that|it|whose|as|if|which|who|here|count)\b|^whose\b"
)
_NAMES = ("name", "title", "check", "what", "stage", "task", "route", "jurisdiction", "rule")
_TITLES = ("title", "check")
_NEXT = {"any": N_("any coat"), "itself": N_("itself")}
_SHOWN = 48


def thing(fact: Difference) -> str:
    """What the leaf is, `minimum DFT`; with the part it stands in where its record has two alike."""
    part = _part(fact)
    named = leaf_named(type(fact.owners[-1].record), fact.name)
    return f"{named} ({part})" if part else named


@remembered
def leaf_named(model: type[Node], name: str) -> str:
    """What a leaf of a record is, whatever it holds: every remark begins with a noun phrase, a test holds it."""
    return _short(model.model_fields[name].description or name.replace("_", " "))


def of_where(fact: Difference, translate: Locale, *, brief: bool = False, by_name: bool = False) -> str:
    """What and where as one phrase: `minimum DFT of the primer of the system cab`, `minimum time before handling for the system ...`."""
    what = thing(fact)
    entry = fact.owners[-1]
    if entry.key:  # "text of the caution" of the caution training
        what = what.removesuffix(f" of the {noun(type(entry.record))}")
    # "of" after a phrase with a preposition of its own would be read as a part of it
    joins = translate("{what} for {where}") if _LEANS.search(what) else translate("{what} of {where}")
    return joins.format(what=what, where=place_named(fact, translate, brief=brief, by_name=by_name))


def noun(model: type[Node]) -> str:
    """`InspectionPoint` is an inspection point."""
    return _NOUNS.get(model) or re.sub(r"(?<!^)(?=[A-Z])", " ", model.__name__).lower()


def place_named(
    fact: Difference, translate: Locale, *, skip_last: bool = False, brief: bool = False, by_name: bool = False
) -> str:
    """The entries on the path, the innermost first: `the layer primer of the system cab (Primer and top coat)`.

    `brief` names by its title only an entry that stands alone; `by_name` tells every entry as a reader without sources knows it.
    """
    keyed = [owner for owner in _owners(fact) if owner.key]
    if skip_last:
        keyed = keyed[:-1]
    keyed = [owner for owner in keyed if not owner.implied] or keyed[:1]
    if not keyed:
        return translate("the project")
    last = len(keyed) - 1
    titled = {last} if brief else {0, last}
    steps = [entry_named(owner, translate, full=at in titled, by_name=by_name) for at, owner in enumerate(keyed)]
    return translate(" of ").join(reversed(steps))


def _owners(fact: Difference) -> tuple[Owner, ...]:
    """The records on the way; what only the record held whose place another has taken goes by that record."""
    first, *others = fact.owners
    if fact.through is None or first.old is None or fact.kind is not Kind.REMOVED or not is_entry(fact):
        return fact.owners
    return (replace(first, key=fact.through[0].rsplit(".", 1)[-1], new=None), *others)


def entry_named(owner: Owner, translate: Locale, *, full: bool = True, by_name: bool = False) -> str:
    """`the item STEP (Step tube)`; a job goes by the number of its document, a layer by what it is for.

    `by_name` leaves the id out where the record has a name, as in `the product Deck primer`, `the preparation “Wash and sand”`.
    """
    record = owner.record
    if isinstance(record, Job):
        title = _cut(record.document.title)
        return translate("the job {number}").format(number=record.document.number) + (f" ({title})" if full else "")
    if isinstance(record, Layer):
        role = record.role.value.replace("-", " ")
        named = role if record.id == record.role.value else f"{role} {record.id}"
        return translate("the {named}").format(named=named)
    if by_name and (name := _without_id(record, translate)):
        return translate("the {named}").format(named=f"{noun(type(record))} {name}")
    shown = _name_of(record) if full or by_name else ""
    if by_name and shown == "any":
        shown = ""
    named = f"{noun(type(record))} {owner.key}"
    return translate("the {named}").format(named=named) + (f" ({shown})" if shown else "")


def _without_id(record: Node, translate: Locale) -> str:
    """What a page calls the record, or the conditions it holds for; empty where it has neither, or its id is printed on pages."""
    if isinstance(record, Item):
        return ""
    if isinstance(record, Product):
        return record.name
    if isinstance(record, OvercoatWindow):
        following = translate(_NEXT.get(record.next_coat, record.next_coat))
        return translate("to {following} at {air}").format(
            following=following, air=show(record.air, language=translate)
        )
    if isinstance(record, Drying | SandableAfter):
        kind = record.stage if isinstance(record, Drying) else record.sanding
        air = record.air
        shown = show_range(air, language=translate) if isinstance(air, Range) else show(air, language=translate)
        return translate("{stage} at {air}").format(stage=kind.value.replace("-", " "), air=shown)
    title = next((value for name in _TITLES if isinstance(value := getattr(record, name, None), str)), "")
    return translate("“{title}”").format(title=title) if title else ""


def _name_of(record: Node) -> str:
    for name in _NAMES:
        value = getattr(record, name, None)
        if isinstance(value, Enum):
            return str(value.value).replace("-", " ")
        if isinstance(value, str):
            return "" if value.lower() == getattr(record, "id", "").lower() else _cut(value)
    return ""


def is_prose(fact: Difference) -> bool:
    """True for a line or a text in its author's words, which a sentence quotes."""
    model = type(fact.owners[-1].record)
    kind = value_type(model.model_fields[fact.name]) if fact.name in model.model_fields else None
    return kind is not None and kind.name in {"line of text", "text"}


def _cut(text: str) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= _SHOWN else f"{flat[:_SHOWN].rsplit(' ', 1)[0].rstrip(',.;:')} …"


@cache
def _short(about: str) -> str:
    return _TAIL.sub("", about)


def _part(fact: Difference) -> str:
    """The part a leaf stands in, where the record above has another part with the same keys."""
    if len(fact.owners) < 2 or fact.owners[-1].key:
        return ""
    above, part = type(fact.owners[-2].record), fact.owners[-1].name
    alike = [
        name
        for name in above.model_fields
        if _is_part(above, name) and inner_record(above, name) is inner_record(above, part)
    ]
    return part.replace("_", " ") if len(alike) > 1 else ""


def _is_part(model: type[Node], name: str) -> bool:
    return declaration(model, name) is None and inner_record(model, name) is not None
