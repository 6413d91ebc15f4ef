"""`--audience customer|maker`, and `--for`, its former name, which help does not list. Called by the commands that withhold data."""

from __future__ import annotations

import argparse
from typing import Any

_CHOICE: dict[str, Any] = {"dest": "audience", "choices": ("customer", "maker")}


def audience_options(about: str) -> dict[str, dict[str, Any]]:
    """The options by their names, as `add_argument` takes them; `about` is their help."""
    return {
        "--audience": {**_CHOICE, "default": "customer", "help": about},
        "--for": {**_CHOICE, "default": argparse.SUPPRESS, "help": argparse.SUPPRESS},
    }


def declare_audience(parser: argparse.ArgumentParser, about: str) -> None:
    for name, option in audience_options(about).items():
        parser.add_argument(name, **option)
