"""`specgen schema`: the JSON Schema of a kind of source, for an editor, or of what `compare --format json` prints."""

from __future__ import annotations

import argparse
import json

from specgen.commands.outcome import Outcome
from specgen.model.schema import schema
from specgen.model.spec import SINGULAR
from specgen.report import change_json

ABOUT = (
    "Print the JSON Schema of a file that holds this kind of source, with which editors that know YAML 1.2 complete keys; "
    "or of what `specgen compare --format json` prints."
)

COMPARISON = "comparison"


def declare(parser: argparse.ArgumentParser) -> None:
    kinds = [*SINGULAR, COMPARISON]
    parser.add_argument("kind", metavar="KIND", choices=kinds, help=f"one of: {', '.join(kinds)}")


def run(arguments: argparse.Namespace) -> Outcome:
    whole = change_json.schema() if arguments.kind == COMPARISON else schema(arguments.kind)
    return Outcome(json.dumps(whole, ensure_ascii=False, indent=2) + "\n")
