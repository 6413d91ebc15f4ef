"""`specgen render`: check a folder, and where nothing forbids it print its documents into another."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Mapping
from pathlib import Path

from specgen.checking import Checked
from specgen.commands.folder import checked_folder, declare_folder, prefix_of, project_folder
from specgen.commands.outcome import REFUSED, CannotRunError, Outcome
from specgen.findings import Severity
from specgen.rendering.failure import RenderError
from specgen.rendering.writing import write_all
from specgen.report import as_text
from specgen.report.lines import one_line, tally

ABOUT = "Check the sources of a folder, then print its documents. Where there is an error nothing is written."

FORMATS = ("pdf", "html")

_NOTHING = "specgen: nothing was written\n"


def declare(parser: argparse.ArgumentParser) -> None:
    declare_folder(parser)
    parser.add_argument(
        "--out", metavar="DIR", required=True, help="folder the documents go into; it is made if it is not there"
    )
    parser.add_argument(
        "--format", choices=FORMATS, action="append", help="pdf or html; give it twice for both (both if left out)"
    )
    parser.add_argument(
        "--document",
        metavar="NAME",
        action="append",
        help="document to print, as in method-statement; may be given several times (every one if left out)",
    )
    parser.add_argument("--job", metavar="ID", action="append", help="id of the job to print (every job if left out)")


def run(arguments: argparse.Namespace) -> Outcome:
    out = Path(arguments.out)
    if not arguments.out or (out.exists() and not out.is_dir()):
        raise CannotRunError(f"{arguments.out or 'the name after --out'} is not a folder; name one for the documents")
    checked = checked_folder(arguments)
    if checked.report.count(Severity.ERROR):
        prefix = prefix_of(project_folder(arguments))
        return Outcome(as_text.write(checked.report, prefix=prefix, on=checked.on), REFUSED, _NOTHING)
    # printing loads the whole of the layout, which a folder with errors need not wait for
    from specgen.printing import Refused

    _known_job(checked, arguments.job or ())
    try:
        files = _documents(checked, arguments)
    except (Refused, RenderError) as reason:
        return Outcome("", REFUSED, f"specgen: {one_line(str(reason))}\n{_NOTHING}")
    _write(out, files)
    written = "".join(f"{(out / name).as_posix()}\n" for name in files)
    number = f"{len(files)} file{'' if len(files) == 1 else 's'} written"
    return Outcome(f"{written}{number}; {tally(checked.report, checked.on)}.\n")


def _known_job(checked: Checked, wanted: Iterable[str]) -> None:
    """A job that is not there is a slip on the command line, not a fault of the sources."""
    known = checked.loaded.spec.jobs if checked.loaded.spec is not None else {}
    for name in wanted:
        if name not in known:
            raise CannotRunError(f"--job: there is no job {name!r}; the folder has: {', '.join(known) or 'none'}")


def _documents(checked: Checked, arguments: argparse.Namespace) -> Mapping[str, bytes]:
    from specgen.printing import DOCUMENTS, print_documents

    # what is named twice is printed once
    documents = tuple(dict.fromkeys(arguments.document or DOCUMENTS))
    for name in documents:
        if name not in DOCUMENTS:
            raise CannotRunError(f"--document: there is no document {name!r}; there is: {', '.join(DOCUMENTS)}")
    formats = tuple(dict.fromkeys(arguments.format or FORMATS))
    jobs = tuple(dict.fromkeys(arguments.job)) if arguments.job else None
    return print_documents(checked, documents=documents, formats=formats, jobs=jobs)


def _write(out: Path, files: Mapping[str, bytes]) -> None:
    try:
        out.mkdir(parents=True, exist_ok=True)
        write_all(out, files)
    except OSError as error:
        raise CannotRunError(f"{out} cannot be written to: {error.strerror or error}") from error
    except ValueError as error:
        raise CannotRunError(str(error)) from error
