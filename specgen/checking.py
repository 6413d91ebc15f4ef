"""Check folders: read, parse, run the rules, apply the waivers. Called by `check` and `render`, and promised as `specgen.check`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from time import perf_counter

from specgen.findings import Report
from specgen.model.parse import Loaded, load, without_collector
from specgen.rules.judge import Judged, is_many, judge
from specgen.rules.most_findings import severest
from specgen.rules.not_judged import not_judged
from specgen.rules.range_taken_in import range_notes
from specgen.rules.run import Timings
from specgen.rules.waivers import apply_waivers

READING = "reading the sources"


@dataclass(frozen=True, slots=True)
class Checked:
    """What was read, the findings on it, the day it was judged by, and the seconds each part of the work took."""

    loaded: Loaded
    report: Report
    on: date
    timings: Timings = field(default_factory=dict, compare=False)


def check(folder: Path, on: date) -> Checked:
    """All findings on a folder of sources, by date `on`. Raises SourceError where the folder cannot be read at all."""
    with without_collector():
        return check_loaded(load(folder), on)


def check_loaded(loaded: Loaded, on: date) -> Checked:
    """All findings on sources already read."""
    (judged,) = judge([loaded], on)
    return _checked(loaded, judged, on)


def check_each(folders: Iterable[Path], on: date) -> Iterator[Checked]:
    """`check` of each folder, for a program that has just begun. They are read one after the other and judged together, those that have
    been read as soon as they hold many records, so that no more are kept at once."""
    with without_collector():
        held: list[tuple[Loaded, float]] = []
        for folder in folders:
            begun = perf_counter()
            loaded = load(folder)
            held.append((loaded, perf_counter() - begun))
            if is_many([one for one, _ in held]):
                yield from _together(held, on)
                held = []
        if held:
            yield from _together(held, on)


def _together(held: Sequence[tuple[Loaded, float]], on: date) -> Iterator[Checked]:
    judged = judge([loaded for loaded, _ in held], on, beginning=True)
    for (loaded, took), one in zip(held, judged, strict=True):
        yield _checked(loaded, one._replace(timings={READING: took, **one.timings}), on)


def _checked(loaded: Loaded, judged: Judged, on: date) -> Checked:
    found = [*loaded.findings, *range_notes(loaded), *severest(apply_waivers(judged, loaded, on))]
    return Checked(loaded, Report.of(found, not_judged(loaded, judged.stopped)), on, judged.timings)
