"""The files of readings that a folder keeps: in `readings` beside the sources, each called by its job (`DOORS-film.csv` is of `DOORS`).

`columns.txt` among them maps the headings of instruments, a line each, as `--columns` does (`value=Thickness`); a line `dates=day-first`
says how days with strokes are read. Called by `assess` and by the recall of a batch.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from specgen.assessing.cells import Dates
from specgen.assessing.columns import COLUMNS
from specgen.assessing.readings import File
from specgen.assessing.text_table import MOST_BYTES
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.register.names import READINGS
from specgen.source.characters import printable_name

HEADINGS = "columns.txt"
_KINDS = frozenset({".csv", ".txt", ".tsv", ".xlsx", ".pdf"})
_OTHER_TABLES = frozenset({".xls", ".xlsm", ".xlsb", ".ods", ".numbers"})
"""What may hold readings and is not read; a photograph or a letter beside them holds none."""
_MOST_FILES = 2000
_MOST_LINES = 200


@dataclass(frozen=True, slots=True)
class Kept:
    """The files of one job, how their headings and days are read, and what could not be read, in a sentence each.

    `headings` are the bytes of `columns.txt` that say so, empty where there is none.
    """

    files: tuple[File, ...] = ()
    columns: Mapping[str, str] = field(default_factory=dict)
    dates: Dates = Dates.ISO
    unread: tuple[str, ...] = ()
    headings: bytes = b""

    @property
    def contents(self) -> dict[str, bytes]:
        """Every file as it was read, by its name in the folder; none where there are no readings."""
        found = {file.name: file.data for file in self.files}
        return found | {f"{READINGS}/{HEADINGS}": self.headings} if found and self.headings else found


def kept_of(job: Job, folder: Path, spec: Spec) -> Kept:
    """What a folder keeps of one job."""
    unread: list[str] = []
    mine = tuple(
        File(f"{READINGS}/{path.name}", path.read_bytes())
        for path in kept_files(folder, unread, lambda path: job_of(path, spec) is job)
    )
    said = headings(folder)
    columns, dates = columns_in(said, unread)
    return Kept(mine, columns, dates, tuple(unread), said)


def kept_files(folder: Path, unread: list[str], mine: Callable[[Path], bool] = lambda _: True) -> Iterator[Path]:
    """Every file of readings, of whatever job or those that are `mine`; `unread` takes what cannot be read of them."""
    place = folder / READINGS
    if not place.is_dir() or place.is_symlink():
        return
    there = sorted(one for one in place.iterdir() if one.name != HEADINGS and mine(one))
    unread.extend(
        f"{READINGS}/{printable_name(one.name)} is a table that is not read; save it as xlsx or CSV"
        for one in there
        if one.suffix.lower() in _OTHER_TABLES
    )
    found = [one for one in there if one.suffix.lower() in _KINDS]
    if len(found) > _MOST_FILES:
        unread.append(f"{READINGS} holds more than {_MOST_FILES} files; the others are not read")
    for file in found[:_MOST_FILES]:
        if file.is_symlink() or not file.is_file() or file.stat().st_size > MOST_BYTES:
            unread.append(f"{READINGS}/{printable_name(file.name)} is a link, no file, or too large")
        else:
            yield file


def job_of(file: Path, spec: Spec) -> Job | None:
    """The job with the longest id that the name of the file begins with, up to a sign that is no part of the id."""
    named = [key for key in spec.jobs if file.stem == key or file.stem.startswith((f"{key}-", f"{key}_", f"{key}."))]
    return spec.jobs[max(named, key=len)] if named else None


def headings(folder: Path) -> bytes:
    """The bytes of `columns.txt`; none where there is no such file, or a link."""
    file = folder / READINGS / HEADINGS
    return file.read_bytes()[:MOST_BYTES] if file.is_file() and not file.is_symlink() else b""


def columns_in(data: bytes, unread: list[str]) -> tuple[dict[str, str], Dates]:
    """What the bytes of `columns.txt` say; nothing where there are none."""
    columns, dates = dict[str, str](), Dates.ISO
    lines = data.decode("utf-8-sig", "replace").splitlines()[:_MOST_LINES]
    for number, line in enumerate(lines, 1):
        name, sign, value = (part.strip() for part in line.partition("="))
        if not line.strip() or line.startswith("#"):
            continue
        if name == "dates" and value in set(Dates):
            dates = Dates(value)
        elif name in COLUMNS and sign and value:
            columns[name] = value
        else:
            unread.append(
                f"{READINGS}/{HEADINGS}:{number}: {printable_name(line[:60])!r} is not understood; write value=Thickness"
            )
    return columns, dates
