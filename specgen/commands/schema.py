"""`specgen schema`: the JSON Schema of a kind of source, for an editor that completes and marks keys."""

from __future__ import annotations

import argparse
import json

from specgen.commands.outcome import Outcome
from specgen.model.schema import schema
from specgen.model.spec import SINGULAR

ABOUT = "Print the JSON Schema of a file that holds this kind of source. Editors that know YAML 1.2 complete keys."


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", metavar="KIND", choices=list(SINGULAR), help=f"one of: {', '.join(SINGULAR)}")


def run(arguments: argparse.Namespace) -> Outcome:
    return Outcome(json.dumps(schema(arguments.kind), ensure_ascii=False, indent=2) + "\n")
