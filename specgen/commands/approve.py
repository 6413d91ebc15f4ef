"""`specgen approve`: record that a named person checks or approves a document as it stands now."""

from __future__ import annotations

import argparse

from specgen.clock import now, today
from specgen.commands.outcome import REFUSED, Outcome
from specgen.commands.register_place import declare_place, project, register_of
from specgen.commands.typed import day, line
from specgen.register.signatures import signing_command
from specgen.report.lines import one_line
from specgen.source.characters import printable_name

ABOUT = (
    "Record that a named person checks or approves a document. The approval is bound to the content as it stands: "
    "any change of it voids the approval. The person who prepared a document may neither check nor approve it, and nobody may do both."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("document", metavar="DOC", help="number of the document, as in MS-001")
    parser.add_argument(
        "--role",
        choices=("check", "approve"),
        required=True,
        help="check: the content is correct; approve: released for use",
    )
    parser.add_argument("--name", required=True, type=line, help="name of the person, as printed")
    parser.add_argument("--meaning", required=True, type=line, help="meaning of the signature, in one sentence")
    declare_place(parser)
    parser.add_argument("--on", metavar="DATE", type=day, help="assess as at this date (today in UTC if left out)")


def run(arguments: argparse.Namespace) -> Outcome:
    from specgen.issuing.approve import approve
    from specgen.issuing.refused import Refused

    folder = project(arguments)
    try:
        done = approve(
            folder,
            register_of(arguments, folder),
            arguments.document,
            role=arguments.role,
            name=arguments.name,
            meaning=arguments.meaning,
            on=arguments.on or today(),
            now=now(),
        )
    except Refused as reason:
        return Outcome("", REFUSED, refusal(reason.lines, "not recorded"))
    file = printable_name(done.path.as_posix())
    given = done.approval
    return Outcome(
        f"{given.role} of {given.document} {given.revision} by {given.name} recorded in {file}; it is not signed.\n"
        f"To sign it: {signing_command(file)}\n"
    )


def refusal(lines: tuple[str, ...], what: str) -> str:
    """What stands against it, a line each, and what came of it."""
    return "".join(f"specgen: {one_line(one)}\n" for one in lines) + f"specgen: {what}\n"
