"""`specgen register`: what was issued, what is in force, whether all of it is whole. Only withdraw and acknowledge add to it."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from specgen.commands.audience import audience_options
from specgen.commands.outcome import Outcome
from specgen.commands.register_entries import acknowledge_revision, export_revision, withdraw_revision, write_receipt
from specgen.commands.register_place import declare_place, declare_receipt, register_of
from specgen.commands.register_reports import as_of, list_revisions, overdue, show, verify
from specgen.commands.typed import day, line
from specgen.source.project import find_project

ABOUT = (
    "Query the register: what was issued, what was in force on a date, whether it is intact. Reading writes nothing; "
    "withdraw and acknowledge add a record."
)


def declare(parser: argparse.ArgumentParser) -> None:
    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)
    for name, (about, _, arguments) in _ACTIONS.items():
        own = actions.add_parser(name, help=about, description=f"{about[:1].upper()}{about[1:]}.", allow_abbrev=False)
        for argument, described in arguments.items():
            own.add_argument(argument, **described)
        if name in _ADDING:
            declare_receipt(own)
        declare_place(own)


def run(arguments: argparse.Namespace) -> Outcome:
    folder = find_project(Path(arguments.path))
    return _ACTIONS[arguments.action][1](arguments, register_of(arguments, folder))


_ADDING = ("withdraw", "acknowledge")
_REVISION: dict[str, Any] = {"metavar": "DOC@REV", "help": "number and revision, as in MS-001@B"}
_ACTIONS: Mapping[str, tuple[str, Callable[[argparse.Namespace, Path], Outcome], Mapping[str, dict[str, Any]]]] = {
    "list": ("list every revision and how it stands", list_revisions, {}),
    "show": (
        "show the chain of a document, or one revision of it",
        show,
        {"document": {"metavar": "DOC", "help": "number of the document, as in MS-001 or MS-001@B"}},
    ),
    "verify": (
        "check every record, link and file",
        verify,
        {"--receipt": {"metavar": "FILE", "help": "a receipt taken before: finds the loss of the newest record too"}},
    ),
    "withdraw": (
        "record that a revision is withdrawn",
        withdraw_revision,
        {
            "document": _REVISION,
            "--reason": {"required": True, "type": line, "help": "why"},
            "--by": {"required": True, "type": line, "help": "who withdraws it"},
        },
    ),
    "as-of": (
        "list what was in force at the end of a day (UTC)",
        as_of,
        {"date": {"metavar": "DATE", "type": day, "help": "the day, as in 2026-03-31"}},
    ),
    "acknowledge": (
        "record that a holder has a revision",
        acknowledge_revision,
        {
            "document": _REVISION,
            "--by": {"required": True, "type": line, "help": "the holder, as the project names it"},
        },
    ),
    "overdue": (
        "list what is due: reviews, revisions whose ground moved, holders who have not answered",
        overdue,
        {"--on": {"metavar": "DATE", "type": day, "help": "assess as at this date (today in UTC if left out)"}},
    ),
    "export": (
        "write a revision as a zip that common tools check",
        export_revision,
        {
            "document": _REVISION,
            "--out": {"metavar": "FILE", "required": True, "help": "the zip to write"},
            **audience_options(
                "the record without the manufacturer's confidential data (customer, the default) or whole (maker)"
            ),
        },
    ),
    "receipt": (
        "write down the newest record of every document, to be kept elsewhere",
        write_receipt,
        {"file": {"metavar": "FILE", "help": "the file to write"}},
    ),
}
