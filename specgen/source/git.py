"""git, asked for a list of files and for their bytes, and for nothing else. Called by `at_revision` and by the command line.

No file is written, no hook, filter or converter runs, nothing is fetched. What goes wrong is a SourceError for the user.
"""

from __future__ import annotations

import os
import subprocess
import tempfile
import threading
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from specgen.source.characters import printable, printable_name
from specgen.source.project import TOTAL_LIMIT, SourceError

_SECONDS = 60
# bytes of a list of files: half a million of them, of any kind
_LISTED_LIMIT = 32 * 1024 * 1024
_ASK = (
    "git",
    "-c",
    "core.hooksPath=/dev/null",
    "-c",
    "core.fsmonitor=false",
    "-c",
    "protocol.allow=never",
    "--no-pager",
)
_QUIET = {
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_NO_REPLACE_OBJECTS": "1",
}


@dataclass(frozen=True, slots=True)
class Git:
    """git as it answers in one folder. Every method raises SourceError where it does not."""

    folder: Path

    def commit(self, revision: str) -> str:
        """The commit a revision stands for."""
        try:
            return self.line(["rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"])
        except SourceError:
            raise SourceError(f"git knows no revision {printable_name(revision)!r} here") from None

    def here(self) -> str:
        """The folder git is asked in, from the top of the repository; empty at the top."""
        return self.line(["rev-parse", "--show-prefix"]).rstrip("/")

    def entries(self, arguments: Sequence[str]) -> Iterator[tuple[str, str, int]]:
        """Name, blob and size of the ordinary files that `ls-tree` lists."""
        for entry in self.run(["ls-tree", *arguments]).split(b"\0"):
            about, tab, name = entry.partition(b"\t")
            if tab:
                mode, kind, blob, size = about.split()
                # a link, or another repository inside this one, is no source
                if kind == b"blob" and mode in (b"100644", b"100755"):
                    named = printable_name(name.decode("utf-8", "replace"))
                    yield named, blob.decode(), int(size) if size.isdigit() else 0

    def contents(self, blobs: Collection[str]) -> dict[str, bytes]:
        """The bytes of each blob, asked for in one go and each once, however many names it has."""
        asked = "".join(f"{blob}\n" for blob in blobs).encode()
        answer, at, held = self.run(["cat-file", "--batch"], asked, 2 * TOTAL_LIMIT), 0, {}
        for blob in blobs:
            head = answer.find(b"\n", at)
            about = answer[at:head].split() if head >= 0 else []
            if len(about) != 3 or about[1] != b"blob":
                raise SourceError(
                    f"git cannot read the object {blob} of this repository; `git fsck` says what is wrong"
                )
            size = int(about[2])
            held[blob] = answer[head + 1 : head + 1 + size]
            at = head + 1 + size + 1
        return held

    def line(self, arguments: Sequence[str]) -> str:
        return self.run(arguments).decode("utf-8", "replace").rstrip("\n")

    def run(self, arguments: Sequence[str], said: bytes = b"", most: int = _LISTED_LIMIT) -> bytes:
        """What git answers, read no further than `most`: a tree that names itself twice lists more files than any memory holds."""
        with tempfile.TemporaryFile() as asked, tempfile.TemporaryFile() as complaints:
            asked.write(said)
            asked.seek(0)
            try:
                git = subprocess.Popen(
                    [*_ASK, *arguments], stdin=asked, stdout=subprocess.PIPE, stderr=complaints, cwd=self.folder,
                    env={**os.environ, **_QUIET, "LC_ALL": "C"},
                )  # fmt: skip
            except FileNotFoundError:
                raise SourceError("git is not installed here") from None
            except (OSError, ValueError) as error:
                raise SourceError(f"git did not answer: {_one_line(str(error))}") from None
            late = threading.Timer(_SECONDS, git.kill)
            late.start()
            try:
                answer = git.stdout.read(most + 1) if git.stdout is not None else b""
                if len(answer) > most:
                    raise SourceError("git lists more than can be read; name the folder of the sources")
                code = git.wait()
            finally:
                given_up = not late.is_alive()
                late.cancel()
                git.kill()
                git.communicate()
            if given_up:
                raise SourceError(f"git did not answer within {_SECONDS} s")
            if code:
                complaints.seek(0)
                complaint = _one_line(complaints.read(2_000).decode("utf-8", "replace")).removeprefix("fatal: ")
                raise SourceError(f"git says: {complaint or 'no'}")
            return answer


def _one_line(text: str) -> str:
    return printable(" ".join(text.split()))[:200]
