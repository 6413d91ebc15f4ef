"""Check a folder: read it, parse it, run the rules, apply the waivers. Called by `check` and `render`, and promised as `specgen.check`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from specgen.findings import Report
from specgen.model.parse import Loaded, load
from specgen.rules.most_findings import severest
from specgen.rules.run import run_rules
from specgen.rules.waivers import apply_waivers


@dataclass(frozen=True, slots=True)
class Checked:
    """What was read, the findings on it, and the day it was judged by."""

    loaded: Loaded
    report: Report
    on: date


def check(folder: Path, on: date) -> Checked:
    """All findings on a folder of sources, by date `on`. Raises SourceError where the folder cannot be read at all."""
    return check_loaded(load(folder), on)


def check_loaded(loaded: Loaded, on: date) -> Checked:
    """All findings on sources already read."""
    judged = apply_waivers(run_rules(loaded), loaded, on)
    return Checked(loaded, Report.of([*loaded.findings, *severest(judged)]), on)
