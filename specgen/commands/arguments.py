"""The list of commands, and the arguments of the one that is chosen; no other is imported. Called by `main`."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from importlib import import_module
from typing import NoReturn

from specgen import __version__
from specgen.commands.outcome import CannotRunError, Outcome

COMMANDS = {
    "check": "check the sources in a folder and report errors",
    "render": "check the sources, then print documents from them",
    "compare": "report what changed between two versions, relaxed requirements first",
    "approve": "record that someone checks or approves a document as it stands",
    "issue": "make the next revision of a document and put it into the register",
    "verify": "tell whether a file is an issued document and still in force",
    "register": "query the register: what was issued, what is in force, whether it is intact",
    "explain": "print the page of a rule or fault, or a published table",
    "assess": "hold the readings of a job against its acceptance criteria, item by item",
    "climate": "hold measured air against the limits of a job, with waiting times",
    "schedule": "plan a job from its start: steps, intervals, nights, return to service",
    "where-used": "list every system and job that uses a source or a table",
    "range": "show what of the shared range is another than the one taken in, and take it in",
    "schema": "print the JSON Schema of a kind of source, for an editor",
    "new": "print an empty source to begin with",
    "upgrade": "rewrite the sources of a folder in the present version of the source format",
}

Command = Callable[[argparse.Namespace], Outcome]


class Parser(argparse.ArgumentParser):
    """An argparse parser that refuses by exception, so that there is one way to say so."""

    def error(self, message: str) -> NoReturn:
        raise CannotRunError(f"{message.removeprefix('argument ')}; see `{self.prog} --help`")


def read_arguments(argv: Sequence[str]) -> tuple[Command, argparse.Namespace]:
    """The command chosen by `argv` and its arguments.

    Raises CannotRunError where they make no sense, and SystemExit once help or version is printed.
    """
    parser = _parser()
    chosen = argv[0] if argv else ""
    if chosen not in COMMANDS:
        parser.parse_args(argv[:1])
        raise CannotRunError(_unknown(chosen))
    module = import_module(f"specgen.commands.{chosen.replace('-', '_')}")
    own = Parser(prog=f"specgen {chosen}", description=module.ABOUT, allow_abbrev=False)
    module.declare(own)
    run: Command = module.run
    return run, own.parse_args(argv[1:])


def _parser() -> Parser:
    listed = "\n".join(f"  {name:<12}{about}" for name, about in COMMANDS.items())
    parser = Parser(
        prog="specgen",
        usage="specgen COMMAND ...",
        description="Job specifications for protective coatings: checked, computed and printed from YAML sources.",
        epilog=f"commands:\n{listed}\n\n`specgen COMMAND --help` lists the arguments of a command.",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"specgen {__version__}")
    # takes whatever is no option, so that `read_arguments` can name the nearest command
    parser.add_argument("command", nargs="?", help=argparse.SUPPRESS)
    return parser


def _unknown(word: str) -> str:
    known = ", ".join(COMMANDS)
    if not word:
        return f"which command? It is one of: {known}; see `specgen --help`"
    from difflib import get_close_matches

    close = get_close_matches(word, COMMANDS, n=1)
    meant = f"did you mean {close[0]}?" if close else f"it is one of: {known}"
    return f"there is no command {word!r}; {meant}"
