"""`specgen render`: check a folder, and where nothing forbids it print its documents into another."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Collection, Mapping
from pathlib import Path

from specgen.checking import Checked
from specgen.commands.folder import checked_folder, declare_folder, prefix_of, project_folder
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


def run(arguments: argparse.Namespace) -> Outcome:
    out = _folder_for(arguments.out)
    checked = checked_folder(arguments)
    if checked.report.count(Severity.ERROR):
        prefix = prefix_of(project_folder(arguments))
        return Outcome(as_text.write(checked.report, prefix=prefix, on=checked.on), REFUSED, _NOTHING)
    # printing loads the whole of the layout, which a folder with errors need not wait for
    from specgen.printing.documents import Refused

    _known(checked, arguments)
    try:
        files = _documents(checked, arguments)
    except (Refused, RenderError) as reason:
        return Outcome("", REFUSED, f"specgen: {one_line(str(reason))}\n{_NOTHING}")
    write_files(out, files)
    written = "".join(f"{printable_name((out / name).as_posix())}\n" for name in files)
    number = f"{len(files)} {counted('file', 'files', len(files))} written"
    return Outcome(f"{written}{number}; {tally(checked.report, checked.on)}.\n")


def _folder_for(named: str) -> Path:
    out = Path(named)
    try:
        usable = bool(named) and (out.is_dir() or not out.exists())
    except OSError as error:
        raise CannotRunError(f"{named} cannot be used: {error.strerror or error}; name another folder") from error
    if not usable:
        raise CannotRunError(f"{named or 'the name after --out'} is not a folder; name one for the documents")
    return out


def _known(checked: Checked, arguments: argparse.Namespace) -> None:
    """A name that is not there is a slip on the command line, not a fault of the sources."""
    from specgen.printing.documents import DOCUMENTS

    spec = checked.loaded.spec
    there: Mapping[str, Collection[str]] = {
        "document": DOCUMENTS,
        "job": spec.jobs if spec is not None else (),
        "product": spec.products if spec is not None else (),
    }
    for what, known in there.items():
        for name in getattr(arguments, what) or ():
            if name not in known:
                raise CannotRunError(f"--{what}: there is no {what} {name!r}; there is: {', '.join(known) or 'none'}")


def _documents(checked: Checked, arguments: argparse.Namespace) -> Mapping[str, bytes]:
    from specgen.printing.documents import print_documents

    return print_documents(
        checked,
        documents=_once(arguments.document),
        formats=_once(arguments.format),
        jobs=_once(arguments.job),
        products=_once(arguments.product),
        told=_progress(),
        register=project_folder(arguments) / REGISTER,
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
