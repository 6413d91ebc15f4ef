"""Check a folder: read it, parse it, run the rules, apply the waivers. Called by `check` and `render`, and promised as `specgen.check`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from time import perf_counter

from specgen.findings import Report
from specgen.model.parse import Loaded, load, without_collector
from specgen.rules.alternatives import with_alternatives
from specgen.rules.most_findings import severest
from specgen.rules.not_judged import not_judged
from specgen.rules.offers import on_offers
from specgen.rules.range_taken_in import range_notes
from specgen.rules.run import Stopped, Timings
from specgen.rules.shared_out import judged_by_all
from specgen.rules.waivers import apply_waivers

READING = "reading the sources"


@dataclass(frozen=True, slots=True)
class Checked:
    """What was read, the findings on it, and the day it was judged by."""

    loaded: Loaded
    report: Report
    on: date


def check(folder: Path, on: date, timings: Timings | None = None) -> Checked:
    """All findings on a folder of sources, by date `on`; what each part of the work took goes into `timings`.

    Raises SourceError where the folder cannot be read at all.
    """
    with without_collector():
        begun = perf_counter()
        loaded = load(folder)
        if timings is not None:
            timings[READING] = perf_counter() - begun
        return check_loaded(loaded, on, timings)


def check_loaded(loaded: Loaded, on: date, timings: Timings | None = None) -> Checked:
    """All findings on sources already read."""
    stopped: list[Stopped] = []
    found = with_alternatives(judged_by_all(loaded, on, timings, stopped), loaded, on)
    found.extend(on_offers(loaded, on))
    judged = apply_waivers(found, loaded, on, frozenset(one.rule for one in stopped))
    found = [*loaded.findings, *range_notes(loaded), *severest(judged)]
    return Checked(loaded, Report.of(found, not_judged(loaded, stopped)), on)
