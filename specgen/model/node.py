"""The base of every record of the model.

Records are frozen, know no key but their own, and take no value but from one of our own field types (`field_types`).
"""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Node(BaseModel):
    """A mapping of a source file. Lax coercions of pydantic never run: each field type parses text by itself."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    def states(self, name: str) -> bool:
        """True where the source says something for `name`; absent stays absent."""
        return name in self.model_fields_set
