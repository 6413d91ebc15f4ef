"""How a change of a value is judged, what it concerns, and who may see it: declared beside every leaf of the model.

`comparison` judges by polarity; `canonical` and the documents go by audience. A test fails on any leaf without a declaration.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Any

from pydantic import Field


class Polarity(StrEnum):
    """How a new value compares with the old one."""

    AT_LEAST = "at_least"  # a lower limit, or something asked for: raised, or no become yes, is tightened
    AT_MOST = "at_most"  # an upper limit: lowered is tightened
    WITHIN = "within"  # a range: judged by inclusion
    EXACTLY = "exactly"  # one value: any change shifts
    ONE_OF = "one_of"  # a choice that is allowed: fewer is tightened
    ALL_OF = "all_of"  # everything listed is asked for: more is tightened
    PERMISSION = "permission"  # granted, or more of it, is relaxed; what is not stated is not granted
    LADDER = "ladder"  # a grade ordered by a published table
    SCOPE = "scope"  # what is treated or inspected at all
    TEST_LIMIT = (
        "test_limit"  # the limit of a test: judged by the scale and the unit of its method; in words a person decides
    )
    REPLACED = "replaced"  # another product, method or rule: never ordered
    WAIVER = "waiver"  # added or prolonged is relaxed
    FACT = "fact"  # what follows from it is judged, not it
    REQUIREMENT_TEXT = "requirement_text"  # reworded: a person decides
    WORDING = "wording"  # names, titles, addresses
    NOTE = "note"  # explanation only


class Concern(StrEnum):
    """What a change touches."""

    SAFETY = "safety"
    PREPARATION = "preparation"
    FILM = "film"
    COMPATIBILITY = "compatibility"
    CLIMATE = "climate"
    ACCEPTANCE = "acceptance"
    PRODUCT = "product"
    DOCUMENT = "document"


class Audience(StrEnum):
    """Who may see a leaf. What is the maker's never enters a customer document."""

    CUSTOMER = "customer"
    MAKER = "maker"


LEAF_KEY = "specgen-leaf"
# Beside a field that holds records, or in the declaration of a leaf: whether a record based on another carries it over.
PASSES_ON = "passes_on"

# What a leaf refers to that is no source of its own: the address of any value.
PATH = "path"


def leaf(
    polarity: Polarity,
    concern: Concern,
    about: str,
    *,
    required: bool = False,
    audience: Audience = Audience.CUSTOMER,
    refers: str = "",
    administrative: bool = False,
    passes_on: bool | None = None,
    default: Any = None,
) -> Any:
    """A field that holds a value of its own. `about` is a line for editors; `refers` names the kind of source an id points to.

    What is administrative (contacts, distribution, review periods) is no part of the content that is approved: a change of it
    voids no approval and makes no revision due. `passes_on` says whether a record that is based on another takes the value over
    unasked; left open it follows from polarity and concern (`model.passing_on`).
    """
    declared = {
        "polarity": polarity.value,
        "concern": concern.value,
        "audience": audience.value,
        "refers": refers,
        "administrative": administrative,
        PASSES_ON: passes_on,
    }
    return Field(
        default=... if required else default,
        description=about,
        json_schema_extra={LEAF_KEY: declared},  # type: ignore[dict-item]  # plain strings, which pydantic types too narrowly
    )


def part(about: str, *, required: bool = False, passes_on: bool | None = None) -> Any:
    """A field that holds a mapping of further fields."""
    return Field(default=... if required else None, description=about, json_schema_extra=_passing(passes_on))


def entries(about: str, *, required: bool = False, least: int = 0, passes_on: bool | None = None) -> Any:
    """A field that holds a list of `least` entries or more, each with an id of its own."""
    default = ... if required else ()
    return Field(default=default, description=about, min_length=least or None, json_schema_extra=_passing(passes_on))


def _passing(passes_on: bool | None) -> Any:
    return None if passes_on is None else {PASSES_ON: passes_on}
