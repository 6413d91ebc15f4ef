"""`specgen issue`: make the next revision of a document, with its approvals, and put it into the register."""

from __future__ import annotations

import argparse

from specgen.clock import now, today
from specgen.commands.approve import refusal
from specgen.commands.outcome import REFUSED, Outcome
from specgen.commands.register_place import declare_place, declare_receipt, project, receipt_written, register_of
from specgen.commands.typed import day, line
from specgen.report.lines import one_line
from specgen.source.characters import printable_name

ABOUT = (
    "Issue the next revision of a document: what it rests on has to be clean, and the approvals that the policy of the "
    "project asks for have to be there. Its documents, frozen model and record go into the register in one step."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("document", metavar="DOC", help="number of the document, as in MS-001")
    parser.add_argument("--reason", required=True, type=line, help="reason for this revision; printed in it")
    declare_place(parser)
    declare_receipt(parser)
    parser.add_argument(
        "--on", metavar="DATE", type=day, help="assess the sources as at this date (today in UTC if left out)"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    # laying out loads a great deal, which a slip on the command line need not wait for
    from specgen.issuing.issue import issue
    from specgen.issuing.refused import Refused
    from specgen.rendering.failure import RenderError

    folder = project(arguments)
    register = register_of(arguments, folder)
    try:
        done = issue(
            folder,
            register,
            arguments.document,
            reason=arguments.reason,
            on=arguments.on or today(),
            now=now(),
        )
    except Refused as reason:
        return Outcome("", REFUSED, refusal(reason.lines, "nothing was issued"))
    except RenderError as reason:
        return Outcome("", REFUSED, f"specgen: {one_line(str(reason))}\nspecgen: nothing was issued\n")
    record = done.kept.record
    listed = "".join(f"{printable_name(path.as_posix())}\n" for path in done.documents)
    told = f"To be told: {'; '.join(record.holders)}.\n" if record.holders else ""
    return Outcome(
        f"{listed}{record.document} {record.revision} issued {record.time}, fingerprint {done.fingerprint}.\n{told}"
        f"Record {record.number}: {done.kept.sha256}\n"
        f"{receipt_written(arguments, register)}"
    )
