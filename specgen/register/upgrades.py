"""Frozen models of older versions of the source format, brought to the present one by pure functions. Called by `frozen`.

A version of the format that changes what is written adds one function here, from its number to the next, and a golden file of
each edition in `tests/register/frozen`. There is one version so far, so there is none to upgrade from.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from specgen.model.project import SCHEMA_VERSION
from specgen.register.failure import RegisterError

Model = dict[str, Any]
UPGRADES: Mapping[int, Callable[[Model], Model]] = {}


def upgraded(model: Model, named: str) -> Model:
    """The model in the present version. Raises RegisterError for a version this program does not know."""
    said = model.get("schema_version")
    version = int(said) if isinstance(said, str) and said.isascii() and said.isdigit() and len(said) < 4 else 0
    while version < SCHEMA_VERSION and version in UPGRADES:
        model, version = UPGRADES[version](model), version + 1
    if version != SCHEMA_VERSION:
        raise RegisterError(
            f"{named} is of version {said} of the source format, this program knows {SCHEMA_VERSION}; use a newer program"
        )
    return model
