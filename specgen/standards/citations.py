"""On whose word a rule, a table or a formula stands.

A citation names a document of `documents.yaml`, the clause, and the basis: how well the figure is confirmed. Every finding and
every Working prints its citation. What is not confirmed is printed as such and never refuses a document by itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cache
from importlib import resources

from specgen.source.reader import read_shipped
from specgen.standards.reads import note
from specgen.units.locale import phrase


class Basis(StrEnum):
    """How well a figure is confirmed; the value is the wording that is printed."""

    PUBLISHED = "published"
    REGULATION = "regulation"
    LOGIC = "arithmetic and the specification's own data"
    POLICY = "policy of this project"
    ARITHMETIC = "own calculation"
    PRACTICE = "common practice, no source"
    SECONDARY = "secondary source, unconfirmed"
    MEMORY = "not verified against the published text"

    @property
    def confirmed(self) -> bool:
        """True where an error may rest on it."""
        return self in {Basis.PUBLISHED, Basis.REGULATION, Basis.LOGIC, Basis.POLICY}


@dataclass(frozen=True, slots=True)
class Citation:
    """`document` is an id of `documents.yaml`, or empty where the ground is the specification itself or practice.

    `read_in` names the table it was read in, as `table comb`: a rule takes its citation from a table long before it judges.
    """

    basis: Basis
    document: str = ""
    clause: str = ""
    read_in: tuple[str, ...] = field(default=(), compare=False, repr=False)

    def __str__(self) -> str:
        return self._told(documents()[self.document].title if self.document else "", self.clause)

    @property
    def place(self) -> str:
        """The clause and the basis alone, where the document is named beside it."""
        return self._told(self.clause)

    def _told(self, *parts: str) -> str:
        note(self.read_in)
        # a document goes by the name its publisher gave it, in every language
        named = ", ".join(filter(None, parts))
        return (
            phrase("{document} ({basis})", document=named, basis=phrase(self.basis.value))
            if named
            else self.basis.value
        )


@dataclass(frozen=True, slots=True)
class Document:
    """One document cited somewhere in specgen; `read` says in what form its figures were seen."""

    id: str
    title: str
    read: str


def cite(document: str, clause: str = "", basis: Basis = Basis.PUBLISHED) -> Citation:
    """A citation of a document in `documents.yaml`; a test looks every one of them up."""
    return Citation(basis, document, clause)


LOGIC = Citation(Basis.LOGIC)
PRACTICE = Citation(Basis.PRACTICE)
MEMORY = Citation(Basis.MEMORY)
ARITHMETIC = Citation(Basis.ARITHMETIC)


class Documents(Mapping[str, Document]):
    """Documents by their id; whoever looks one up notes it, as `document CLP`."""

    def __init__(self, entries: Mapping[str, Document]) -> None:
        self._entries = entries

    def __getitem__(self, key: str) -> Document:
        note((f"document {key}",))
        return self._entries[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)


@cache
def documents() -> Documents:
    """Every document cited, by id."""
    entries = read_shipped(resources.files(__package__).joinpath("documents.yaml").read_bytes())
    if not isinstance(entries, dict):
        raise TypeError("documents.yaml of the package is not a mapping")
    return Documents({key: Document(key, entry["title"], entry["read"]) for key, entry in entries.items()})
