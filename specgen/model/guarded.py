"""What stands between a rule and a record that is not whole: whoever looks it up is stopped, so that nobody judges by half.

`parse` hands the rules a specification whose lists and project are guarded. Going through a list gives the whole records only;
asking for one by its id gives it where it was read, even if what it rests on was not, and raises NotWholeError where it has
faults, is in no file, or may stand in a file that was not read to its end.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from typing import Any, TypeVar

from specgen.model.node import Node
from specgen.model.project import Project

Held = TypeVar("Held")


class NotWholeError(Exception):
    """What was looked up is not whole; `address` says what, as in `products.primer` or `project.jurisdictions`."""

    def __init__(self, address: str) -> None:
        super().__init__(address)
        self.address = address


class Guarded(Mapping[str, Held]):
    """The records of one kind: `whole` ones, `partial` ones that rest on something not whole, the ids of `broken` ones, and
    the ids that are `lost`: named, and in no file. Any other id may stand in one of the files that were not read, `unread`."""

    def __init__(
        self,
        kind: str,
        whole: Mapping[str, Held],
        partial: Mapping[str, Held],
        broken: Set[str],
        lost: Set[str],
        unread: tuple[str, ...],
    ) -> None:
        self.kind, self.whole, self.partial = kind, whole, partial
        self.broken, self.lost, self.unread = broken, lost, unread

    def __getitem__(self, key: str) -> Held:
        if key in self.whole:
            return self.whole[key]
        if key in self.partial:
            return self.partial[key]
        if key in self.broken or key in self.lost or self.unread:
            raise NotWholeError(f"{self.kind}.{key}")
        raise KeyError(key)

    def __iter__(self) -> Iterator[str]:
        return iter(self.whole)

    def __len__(self) -> int:
        return len(self.whole)


def every(records: Mapping[str, Held]) -> Iterator[tuple[str, Held]]:
    """The records that were read, whole or partial, each with its id."""
    yield from records.items()
    if isinstance(records, Guarded):
        yield from records.partial.items()


def with_record(records: Mapping[str, Held], key: str, record: Held) -> Mapping[str, Held]:
    """The same records with another in the place of one that was read."""
    if not isinstance(records, Guarded):
        return {**records, key: record}
    whole, partial = ({**held, key: record} if key in held else held for held in (records.whole, records.partial))
    return Guarded(records.kind, whole, partial, records.broken, records.lost, records.unread)


def demand_all(records: Mapping[str, Any]) -> None:
    """Stops who would take it that none of the records does something. Raises NotWholeError where some were not read."""
    if isinstance(records, Guarded):
        if records.broken:
            raise NotWholeError(f"{records.kind}.{min(records.broken)}")
        if records.unread:
            raise NotWholeError(records.unread[0])


def demand_found(records: Mapping[str, Any]) -> None:
    """Stops who would take it that nothing names a record, where something names one of its kind that is in no file.

    The lost id may have been meant for it. Raises NotWholeError.
    """
    if isinstance(records, Guarded) and records.lost:
        raise NotWholeError(f"{records.kind}.{min(records.lost)}")


class GuardedProject:
    """In the place of a project with faults: what was read of it, and a stop at every key that was not."""

    def __init__(self, read: Mapping[str, Any], barred: Set[str]) -> None:
        self._read, self._barred = Project.model_construct(**read), barred

    def __getattr__(self, name: str) -> Any:
        if name in self._barred:
            raise NotWholeError(f"project.{name}")
        return getattr(self._read, name)


def values_read(model: type[Node], plain: Mapping[str, Any], barred: Set[str]) -> dict[str, Any]:
    """The values of the keys that are not barred, each by the type of its field."""
    from pydantic import TypeAdapter

    adapters = {name: info.rebuild_annotation() for name, info in model.model_fields.items() if name not in barred}
    return {name: TypeAdapter(adapters[name]).validate_python(plain[name]) for name in adapters if name in plain}
