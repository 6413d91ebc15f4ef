"""`specgen explain`: the page behind the id of a finding, or a published table."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from difflib import get_close_matches

from specgen.commands.outcome import CannotRunError, Outcome
from specgen.report.explanations import explanations
from specgen.report.printed_table import printed_table
from specgen.standards.tables import table, table_names

ABOUT = "Print the page of a rule or fault: what it checks, why, examples, what to do, and on whose word."

_TABLE = "table:"


def declare(parser: argparse.ArgumentParser) -> None:
    wanted = parser.add_mutually_exclusive_group(required=True)
    wanted.add_argument("id", metavar="ID", nargs="?", help="id of a finding, as in FLM002, or table:NAME")
    wanted.add_argument("--list", action="store_true", help="print id, severity and title of every rule and fault")


def run(arguments: argparse.Namespace) -> Outcome:
    if arguments.list:
        pages = explanations().values()
        return Outcome("".join(f"{page.id}  {page.severity.value:<7}  {page.title}\n" for page in pages))
    asked = str(arguments.id)
    if asked.lower().startswith(_TABLE):
        return Outcome(_table(asked[len(_TABLE) :]))
    page = explanations().get(asked.upper())
    if page is None:
        raise CannotRunError(f"there is no page for {asked!r}; {_nearest(asked.upper(), explanations())}")
    return Outcome(page.text())


def _table(name: str) -> str:
    known = table_names()
    if name not in known:
        raise CannotRunError(f"there is no table {name!r}; {_nearest(name, known, _TABLE)}")
    return printed_table(table(name))


def _nearest(asked: str, known: Iterable[str], prefix: str = "") -> str:
    close = get_close_matches(asked, known, n=3, cutoff=0.5)
    if close:
        return f"nearest: {', '.join(prefix + name for name in close)}"
    return "`specgen explain --list` lists them" if not prefix else f"tables: {', '.join(known)}"
