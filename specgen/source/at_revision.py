"""A folder of sources as it stands in a revision of a git repository, read into memory by the rules and bounds of a folder on the disk.

Called by `commands.git_side` and `shared_range`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from specgen.findings import Finding
from specgen.source.beside import LARGEST, Beside, not_there, too_large_beside
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.git import Git
from specgen.source.project import (
    BESIDE,
    FILES_LIMIT,
    TOTAL_LIMIT,
    Bounds,
    SourceError,
    Sources,
    read_within,
)
from specgen.source.reader import read_text, too_large

_ENDINGS = (".yaml", ".yml")


@dataclass(frozen=True, slots=True)
class AtRevision:
    """A folder in a revision: `folder` from the top of the repository, an empty text for the top; `revision` as it was spelled."""

    git: Git
    commit: str
    revision: str
    folder: str

    def fetched(self) -> Fetched:
        """The bytes of its sources; nothing is parsed yet, and pictures are fetched where a source names them."""
        tree = f"{self.commit}:{self.folder}"
        listed = sorted(one for one in self.git.entries(["-r", "-z", "-l", "--full-tree", tree]) if _is_source(one[0]))
        if len(listed) > FILES_LIMIT or sum(min(size, FILE_LIMIT + 1) for _, _, size in listed) > TOTAL_LIMIT:
            raise SourceError(
                f"{self.folder or 'the repository'} holds more than can be read; name the folder of the sources"
            )
        # what is past the bound is never asked for: git would hand over all of it
        held = self.git.contents({blob for _, blob, size in listed if size <= FILE_LIMIT})
        return Fetched({name: held.get(blob) for name, blob, _ in listed}, self._other)

    def _other(self, name: str) -> bytes:
        """A file that is no source, by its name from the folder. Raises NotRead."""
        asked = ["-z", "-l", "--full-tree", f"{self.commit}:{self.folder}", "--", name]
        found = [(blob, size) for listed, blob, size in self.git.entries(asked) if listed == name]
        if not found:
            raise not_there()
        blob, size = found[0]
        if size > LARGEST:
            raise too_large_beside()
        return self.git.contents([blob])[blob]


def _is_source(name: str) -> bool:
    return name.lower().endswith(_ENDINGS) and not any(step.startswith(".") for step in name.split("/"))


@dataclass(frozen=True, slots=True)
class Fetched:
    """The bytes of the sources by their names, None for one that is too large to be fetched; `beside` fetches what else is named."""

    files: Mapping[str, bytes | None]
    beside: Beside

    def read(self, before: str = "", bounds: Bounds | None = None) -> Sources:
        """The files as sources, `before` put before their names."""
        findings: list[Finding] = []
        named = [(before + name, name) for name in self.files if name not in BESIDE]
        files = read_within(
            named,
            lambda name: len(self.files[name] or b""),
            lambda name, shown: read_text(raw, shown) if (raw := self.files[name]) is not None else too_large(shown),
            bounds or Bounds(),
            findings,
        )
        return Sources(Path(), files, tuple(findings), beside=self.beside, raw=self._bytes_of(before), before=before)

    def _bytes_of(self, before: str) -> Callable[[str], bytes]:
        def read(name: str) -> bytes:
            own = name.removeprefix(before)
            held = self.files.get(own)
            return held if held is not None else self.beside(own)

        return read


def inside(prefix: str, path: str) -> str:
    """A path from the top of the repository, as it is spelled in the folder `prefix`. Raises SourceError where it leads out."""
    steps: list[str] = []
    for step in PurePosixPath(prefix, path.replace("\\", "/")).parts:
        if step == "..":
            if not steps:
                raise SourceError(f"the path {printable_name(path)} leads out of the repository")
            steps.pop()
        elif step == "/":
            raise SourceError(f"the path {printable_name(path)} is absolute; write it from the current folder")
        else:
            steps.append(step)
    return "/".join(steps)
