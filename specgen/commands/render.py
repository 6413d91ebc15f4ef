"""`specgen render`: check a folder, and where nothing forbids it print its documents into another."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Collection, Mapping, Sequence
from pathlib import Path

from specgen.checking import Checked
from specgen.commands.folder import checked_folders, declare_folder, prefix_of, project_folders
from specgen.commands.outcome import REFUSED, CannotRunError, Outcome
from specgen.commands.targets import write_files
from specgen.findings import Severity
from specgen.register.names import REGISTER
from specgen.rendering.failure import RenderError
from specgen.report import as_text
from specgen.report.lines import one_line, tally
from specgen.source.characters import printable_name
from specgen.units.locale import counted

ABOUT = "Check the sources of a folder, then print its documents. Where there is an error nothing is written."

# also in `printing`, which is too heavy to load for a slip on the command line; a test compares the two
FORMATS = ("pdf", "html", "csv")

_NOTHING = "specgen: nothing was written\n"


def declare(parser: argparse.ArgumentParser) -> None:
    declare_folder(parser)
    parser.add_argument("--out", metavar="DIR", required=True, help="output folder; created if missing")
    parser.add_argument(
        "--format",
        choices=FORMATS,
        action="append",
        help="pdf, html or csv; may be given several times (every format a document comes in if left out)",
    )
    parser.add_argument(
        "--document",
        metavar="NAME",
        action="append",
        help="document to print, as in method-statement; may be given several times (every one if left out)",
    )
    parser.add_argument("--job", metavar="ID", action="append", help="id of a job to print (every job if left out)")
    parser.add_argument(
        "--product",
        metavar="ID",
        action="append",
        help="id of a product to print (those of the jobs named, or every product, if left out)",
    )
    parser.add_argument(
        "--offer",
        metavar="ID",
        action="append",
        help="id of an offer; alone it prints the review of that offer and nothing else (the offers for the jobs printed if left out)",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    out = _folder_for(arguments.out)
    folders = project_folders(arguments)
    each = list(zip(folders, checked_folders(folders, arguments), strict=True))
    if faulty := [one for one in each if one[1].report.count(Severity.ERROR)]:
        reports = (as_text.write(held.report, prefix=prefix_of(folder), on=held.on) for folder, held in faulty)
        return Outcome("\n".join(reports), REFUSED, _NOTHING)
    # printing loads the whole of the layout, which a folder with errors need not wait for
    from specgen.printing.documents import Refused

    _known([held for _, held in each], arguments)
    # of several projects each is printed into a folder of its own, and those that hold nothing of what is named are left out
    asked = [(folder, held) for folder, held in each if len(each) == 1 or _holds(held, arguments)]
    try:
        made = [
            (out if len(each) == 1 else out / folder.name, _documents(folder, held, arguments))
            for folder, held in asked
        ]
    except (Refused, RenderError) as reason:
        return Outcome("", REFUSED, f"specgen: {one_line(str(reason))}\n{_NOTHING}")
    for place, files in made:
        write_files(place, files)
    written = "".join(f"{printable_name((place / name).as_posix())}\n" for place, files in made for name in files)
    count = sum(len(files) for _, files in made)
    number = f"{count} {counted('file', 'files', count)} written"
    told = "; ".join(tally(held.report, held.on) for _, held in asked)
    return Outcome(f"{written}{number}; {told}.\n")


def _holds(held: Checked, arguments: argparse.Namespace) -> bool:
    """Whether a project holds any of the jobs and products that are named; all of them hold what is not named."""
    spec = held.loaded.spec
    named = [("jobs", key) for key in arguments.job or ()] + [("products", key) for key in arguments.product or ()]
    named += [("offers", key) for key in arguments.offer or ()]
    return not named or any(
        spec is not None and key in getattr(spec, kind) and not held.loaded.of_range(kind, key) for kind, key in named
    )


def _folder_for(named: str) -> Path:
    out = Path(named)
    try:
        usable = bool(named) and (out.is_dir() or not out.exists())
    except OSError as error:
        raise CannotRunError(f"{named} cannot be used: {error.strerror or error}; name another folder") from error
    if not usable:
        raise CannotRunError(f"{named or 'the name after --out'} is not a folder; name one for the documents")
    return out


def _known(checked: Sequence[Checked], arguments: argparse.Namespace) -> None:
    """A name that is not there is a slip on the command line, not a fault of the sources."""
    from specgen.printing.documents import DOCUMENTS

    specs = [held.loaded.spec for held in checked if held.loaded.spec is not None]
    there: Mapping[str, Collection[str]] = {
        "document": DOCUMENTS,
        "job": [key for spec in specs for key in spec.jobs],
        "product": list(dict.fromkeys(key for spec in specs for key in spec.products)),
        "offer": [key for spec in specs for key in spec.offers],
    }
    for what, known in there.items():
        for name in getattr(arguments, what) or ():
            if name not in known:
                raise CannotRunError(f"--{what}: there is no {what} {name!r}; there is: {', '.join(known) or 'none'}")


def _documents(folder: Path, checked: Checked, arguments: argparse.Namespace) -> Mapping[str, bytes]:
    from specgen.printing.documents import print_documents

    return print_documents(
        checked,
        documents=_once(arguments.document),
        formats=_once(arguments.format),
        jobs=_here(_once(arguments.job), checked, "jobs"),
        products=_here(_once(arguments.product), checked, "products"),
        offers=_here(_once(arguments.offer), checked, "offers"),
        told=_progress(),
        register=folder / REGISTER,
    )


def _progress() -> Callable[[str], None] | None:
    """Says each file as it is finished to whoever sits and waits; a program that reads along wants the end only."""
    # a process without a screen has no stream at all
    if sys.stderr is None or not sys.stderr.isatty():
        return None
    return lambda file: print(f"specgen: {file} is laid out", file=sys.stderr, flush=True)


def _once(names: list[str] | None) -> tuple[str, ...] | None:
    """What is named twice is printed once; None stands for all."""
    return None if names is None else tuple(dict.fromkeys(names))


def _here(names: tuple[str, ...] | None, checked: Checked, kind: str) -> tuple[str, ...] | None:
    """Those of the names that a project holds, where several are printed at once."""
    return names if names is None else tuple(name for name in names if name in getattr(checked.loaded.spec, kind))
