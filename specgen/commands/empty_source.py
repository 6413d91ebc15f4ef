"""An empty source of a kind, every key with what it is for, by the model, so that it cannot drift. Called by `specgen new`.

Keys that must be there, or that the rules ask of nearly everybody, stand open; a default stands as the value that counts anyway;
other keys are named, or printed as comments with what they are for.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import replace

from specgen.model.acceptance import Criterion, InspectionPoint
from specgen.model.base_named import BasedOn
from specgen.model.control import DocumentControl
from specgen.model.drying import Drying, OvercoatWindow
from specgen.model.film import FilmLimits, ProductFilm
from specgen.model.hazards import Hazards, Protection, SafetyDataSheet
from specgen.model.job import Consumption, Item, Job
from specgen.model.node import Node
from specgen.model.outline import Default, Key, outline
from specgen.model.preparation import Preparation, PreparationStep, Substrate
from specgen.model.product import ApplicationClimate, Product, ServiceTemperature, Variant, Voc
from specgen.model.project import Project
from specgen.model.spec import KINDS, LIST_KINDS, SINGULAR
from specgen.model.system import Layer, System

# an open key without a value behind it, and its remark in one column where there is room
_REMARK_AT = 34

# The model lets each item, or an alternative, say it instead, but whoever begins says it here; a range alone has no customer.
_BEGUN_WITH: Mapping[type[Node], Set[str]] = {
    Job: {"substrate", "preparation", "system"},
    Layer: {"product"},
    Project: {"customer"},
}

# What the model leaves open and the rules ask of nearly every source: it stands open too where the others are only named.
_STAND_OPEN: Mapping[type[Node], Set[str]] = {
    Project: {"schema_version", "customer", "jurisdictions", "emergency_phone", "users"},
    Job: {
        *(
            "substrate",
            "preparation",
            "system",
            "call",
            "exposure",
            "workplace",
            "climate",
            "consumption",
            "inspection",
        ),
    },
    Substrate: {"thickness", "condition"},
    Item: {"area"},
    ApplicationClimate: {"air", "surface", "humidity", "dew_point_margin"},
    Consumption: {"transfer_efficiency"},
    InspectionPoint: {"check", "at", "method", "frequency", "criterion", "hold_point", "if_failed"},
    Criterion: {"text"},
    System: {"total", "handle_after", "service_after"},
    Layer: {"product", "variant", "film", "passes", "overcoat_interval", "if_exceeded"},
    FilmLimits: {"min", "nominal", "max"},
    Preparation: {"coat_within"},
    PreparationStep: {"grade", "abrasive", "acceptance"},
    Product: {
        *("document", "solids", "drying", "overcoat", "shelf_life", "service_temperature", "climate", "application"),
        *("voc", "hazards"),
    },
    DocumentControl: {"number", "title", "owner"},
    Variant: {"name"},
    ProductFilm: {"min", "nominal", "max"},
    Drying: {"stage", "time", "air"},
    OvercoatWindow: {"if_exceeded"},
    ServiceTemperature: {"continuous_max"},
    Voc: {"content"},
    Hazards: {
        "classification",
        "signal_word",
        "statements",
        "precautions",
        "pictograms",
        "safety_data_sheet",
        "protection",
    },
    SafetyDataSheet: {"number", "revision", "date", "available_from"},
    Protection: {"respiratory", "gloves", "eyes"},
}

# What stands open, and what may be written in its place.
_INSTEAD: Mapping[type[Node], Mapping[str, str]] = {InspectionPoint: {"at": "after"}}

# what a project on a range takes from the project of the range where it leaves it out
_OF_THE_RANGE = {"maker", "emergency_phone", "users"}

_HINT = (
    "# Text with a comma inside { } or [ ], a colon with a blank, or a sign such as > or @ in front goes in quotes: "
    '"Abrade, then wipe."'
)


def empty_source(kind: str, *, whole: bool = False) -> str:
    """The text of an empty source; `whole` with every key, else with those that stand open and the names of the others."""
    block = SINGULAR[kind]
    key = Key(block, "", True, None, (), "", KINDS[block], block != "project")
    if whole:
        head = f"# A new {kind}. Fill every key that stands open; take the # away from those you need besides.\n"
        return head + "\n".join(_lines(key, 0, None)) + "\n"
    head = f"# A new {kind}. Fill every key that stands open; `specgen new {kind} --all` prints the others with what they are for.\n"
    return f"{head}{_HINT}\n" + "\n".join(_open_lines(key, 0)) + "\n"


def project_on_range(way: str) -> str:
    """The text of an empty project that stands on a shared range: what holds there does not stand open here."""
    lines = [f"# A new project on a range. Fill every key that stands open.\n{_HINT}", "project:"]
    for held in outline(Project):
        if held.name == "range":
            lines.append(_line(replace(held, default=way), "  ", None))
        elif held.name not in _OF_THE_RANGE and (stands := _stands(held, Project, _STAND_OPEN, _BEGUN_WITH)).required:
            lines += _open_lines(stands, 2)
    return "\n".join(lines) + "\n"


def empty_item(depth: int) -> str:
    """The lines of one open item of a job, `items:` first, at a depth in blanks."""
    (key,) = (held for held in outline(Job) if held.name == "items")
    return "\n".join(_open_lines(key, depth))


def _open_lines(key: Key, depth: int) -> Iterator[str]:
    """The lines of one key that stands open, with the names of those below it that do not."""
    yield _line(key, " " * depth, None)
    if key.inner is None:
        return
    below = depth + (4 if key.many else 2)
    keys = [_stands(held, key.inner, _STAND_OPEN, _BEGUN_WITH) for held in _keys(key.inner)]
    first = True
    for held in (held for held in keys if held.required):
        lines = list(_open_lines(held, below))
        if key.many and first:
            lines[0] = lines[0][: below - 2] + "- " + lines[0][below:]
            first = False
        yield from lines
    if others := [held.name for held in keys if not held.required]:
        yield f"{' ' * below}# also: {', '.join(others)}"


def _stands(held: Key, model: type[Node], *tables: Mapping[type[Node], Set[str]]) -> Key:
    stands = any(held.name in table.get(model, frozenset()) for table in tables)
    if instead := _INSTEAD.get(model, {}).get(held.name):
        held = replace(held, about=f"{held.about}, or in its place `{instead}`")
    return replace(held, required=True) if stands else held


def _lines(key: Key, depth: int, struck: int | None) -> Iterator[str]:
    """The lines of one key at a depth in blanks; what may be left out is struck with # at the column `struck`."""
    if struck is None and not key.required and key.default is None:
        struck = depth
    yield _line(key, " " * depth, struck)
    if key.inner is None:
        return
    below = depth + (4 if key.many else 2)
    for number, held in enumerate(_keys(key.inner)):
        lines = list(_lines(_stands(held, key.inner, _BEGUN_WITH), below, struck))
        if key.many and number == 0:
            # every entry of a list begins with its id
            lines[0] = lines[0][: below - 2 + _mark(struck)] + "- " + lines[0][below + _mark(struck) :]
        yield from lines


def _keys(model: type[Node]) -> tuple[Key, ...]:
    """The keys of a record; of one that may be based on another, how it says so stands behind its id."""
    name, *others = outline(model)
    return (name, *outline(BasedOn), *others) if model in LIST_KINDS.values() else (name, *others)


_MOST_WORDS = 120  # a line of a source is bounded, and its author is to read it


def _mark(struck: int | None) -> int:
    return 0 if struck is None else 2


def _line(key: Key, indent: str, struck: int | None) -> str:
    text = f"{indent}{key.name}:{_value(key.default)}"
    if struck is not None:
        text = f"{text[:struck]}# {text[struck:]}"
    about = _about(key, marked=struck is not None)
    return f"{text:<{_REMARK_AT}}  # {about}" if about else text


def _value(default: Default) -> str:
    if default is None:
        return ""
    return f" [{', '.join(default)}]" if isinstance(default, tuple) else f" {default}"


def _about(key: Key, *, marked: bool) -> str:
    said = key.about
    # words that the remark names already are not listed again
    if key.words and not all(word in said for word in key.words):
        shown = [word for word, _ in zip(key.words, range(_MOST_WORDS), strict=False)]
        left = len(key.words) - len(shown)
        said += f"; one of: {', '.join(shown)}" + (f" and {left} more, other spellings among them" if left else "")
    if key.table:
        said += f"; `specgen explain table:{key.table}` says what each is"
    return f"{said} (must be there)" if marked and key.required and said else said
